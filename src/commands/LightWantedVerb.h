// rackbook light-wanted: what the studio's looks and readings teach about the light that brings
// the colour of its prints back.
#pragma once

#include "commands/Command.h"

namespace rackbook {

Command lightWantedCommand();

}  // namespace rackbook
