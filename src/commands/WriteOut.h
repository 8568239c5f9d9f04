// rackbook write-out: the book, or a part of it, as record files.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command writeOutCommand();

}  // namespace rackbook
