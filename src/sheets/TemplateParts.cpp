#include "sheets/TemplateParts.h"

#include <algorithm>

#include "sheets/FileChecks.h"

namespace rackbook {

namespace {

char lower(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

}  // namespace

std::string languageOf(const std::vector<TemplateFile>& layouts) {
    for (const TemplateFile& layout : layouts)
        if (const Tree* language = layout.tree.find("language"))
            return FileChecks(layout.name).languageTag(*language, "/language");
    FileChecks(layouts.back().name)
        .refuse("", "the field \"language\" is missing",
                "Add it; the templates that come with the program have it.");
}

bool isWithinLanguage(const std::string& tag, const std::string& wider) {
    const bool sameStart = tag.size() >= wider.size() &&
                           std::equal(wider.begin(), wider.end(), tag.begin(),
                                      [](char a, char b) { return lower(a) == lower(b); });
    return sameStart && (tag.size() == wider.size() || tag[wider.size()] == '-');
}

}  // namespace rackbook
