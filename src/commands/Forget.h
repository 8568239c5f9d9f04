// Takes out of the book what names or describes a party.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command forgetCommand();

}  // namespace rackbook
