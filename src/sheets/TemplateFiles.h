// Finds the files that a sheet's template is made of. Reading them is left to the caller.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "sheets/TemplateParts.h"

namespace rackbook {

// Filled in by a room that reads files.
struct TemplateSource {
    std::string shipped;  // the folder of the program's own templates
    std::function<Tree(const std::string& file)> read;
    std::function<bool(const std::string& file)> exists;
    // Names of the folders below one that hold a file of this name; none where it is not there.
    std::function<std::vector<std::string>(const std::string& folder, const std::string& file)>
        foldersWith;
};

struct TemplateWish {
    std::string sheet;
    std::optional<std::string> file;      // a studio's own template, else the shipped one
    std::optional<std::string> language;  // else the template's
    std::optional<std::string> paper;     // else the template's
};

// Layouts: the file, then what each is based on. "basedOn" names a file beside the one that says
// it, or a shipped one. Words: words/LANGUAGE/SHEET.json and words/LANGUAGE/common.json, beside the
// file where they are there, else the shipped ones; for de-AT those of de-AT, else those of de.
// Throws InputError for a chain that loops or has more than 16 files, for a file that is not there
// and for a template in a language that there are no words for; UsageError for a wish for one.
TemplateParts gatherTemplate(const TemplateSource& source, const TemplateWish& wish);

}  // namespace rackbook
