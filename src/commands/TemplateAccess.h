// Reads the template of a sheet and its words from files.
#pragma once

#include "commands/Command.h"
#include "commands/SheetKinds.h"
#include "sheets/TemplateFiles.h"

namespace rackbook {

// Templates as they lie in folders: the shipped ones in the one named, a studio's own anywhere.
TemplateSource templatesInFiles(const std::string& shipped);

// As the options --template, --language and --paper ask for.
SheetTemplate sheetTemplateFor(const CommandContext& context, const SheetKind& kind);

}  // namespace rackbook
