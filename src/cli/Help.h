// Help, manual page and shell completion, all made from the descriptions of the verbs.
#pragma once

#include <string>
#include <vector>

#include "cli/CommandSpec.h"

namespace rackbook {

// What `rackbook VERB --help` shows, wrapped to `width` columns.
std::string helpText(const CommandSpec& spec, int width);

// What `rackbook --help` shows: every verb with its summary, by group, and what all of them share.
std::string programHelp(const std::vector<CommandSpec>& specs, const std::string& version,
                        int width);

// The manual page of the whole program, section 1, as source for the man macros of troff; ASCII
// only. `dateText` stands in the footer as given.
std::string manualPage(const std::vector<CommandSpec>& specs, const std::string& version,
                       const std::string& dateText);

// A completion script for "bash", "zsh" or "fish". Throws UsageError for any other shell.
std::string completionScript(const std::string& shell, const std::vector<CommandSpec>& specs);

// The shells that completionScript() knows, for the choices of an option.
const std::vector<std::string>& completionShells();

}  // namespace rackbook
