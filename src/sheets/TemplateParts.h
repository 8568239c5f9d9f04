// The files that a sheet's template is made of, as they were read.
#pragma once

#include <string>
#include <vector>

#include "base/Tree.h"

namespace rackbook {

struct TemplateFile {
    std::string name;  // for messages
    Tree tree;
};

struct TemplateParts {
    std::vector<TemplateFile> layouts;  // the one asked for first, each based on the next
    std::string language;               // BCP 47; figures and dates go by it, its country included
    TemplateFile common;                // words that all sheets share
    TemplateFile words;                 // those of this sheet
};

// The language that the first of these files is written for: its own, else that of the nearest one
// it is based on. Throws InputError where none says one, or what is said is no language tag.
std::string languageOf(const std::vector<TemplateFile>& layouts);

// Whether a tag is the other or a narrower form of it: de-AT of de. Case does not count.
bool isWithinLanguage(const std::string& tag, const std::string& wider);

}  // namespace rackbook
