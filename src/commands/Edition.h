// rackbook edition: a new edition.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command editionCommand();

}  // namespace rackbook
