// Places out of the studio's hands, on sheets that do not name who holds what.
#pragma once

#include <string>

#include "records/History.h"

namespace rackbook {

// Puts these words instead of the names of galleries and holders' places, and of all that lies
// within them: its own name would tell just as much.
void hideHolders(History& history, const std::string& atGallery, const std::string& atHolder);

}  // namespace rackbook
