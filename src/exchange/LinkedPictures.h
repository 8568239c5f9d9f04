// Photographs and scans as DigitalObjects, known by their hash. Private to exchange/.
#pragma once

#include "exchange/LinkedWork.h"

namespace rackbook {

Tree pictureOf(const Attachment& picture, const LinkedWork& work);

// VisualItems that depict something, each shown by one of the pictures.
Tree representations(const std::vector<const Attachment*>& pictures, const LinkedWork& work);

}  // namespace rackbook
