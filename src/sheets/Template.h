// A sheet template: paper, margins, fonts, letterhead, the sections of a sheet in order and the
// words on it. The format is described in templates/README.md.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "base/Tree.h"
#include "sheets/FlowSetup.h"

namespace rackbook {

// What the builder of a sheet can fill in and asks for.
struct TemplateRules {
    std::string sheet;                  // value of "template"
    std::vector<std::string> sections;  // names it knows
    std::vector<std::string> labels;    // keys it needs, all of them
};

class SheetTemplate {
public:
    // `file` is named in messages. Throws InputError for the first thing in reading order that is
    // wrong: an unknown field, section or label (with the nearest known name), one given twice, a
    // wrong kind of value, a number out of range; then for fields and labels that are missing.
    static SheetTemplate read(const Tree& tree, const std::string& file,
                              const TemplateRules& rules);

    const std::string& sheet() const { return m_sheet; }
    const std::string& language() const { return m_language; }  // BCP 47
    const FontFamilies& fonts() const { return m_fonts; }
    const std::vector<std::string>& sections() const { return m_sections; }

    // Throws InputError naming the file where the template has no such label.
    const std::string& label(const std::string& key) const;

    // Paper, margins, base size, letterhead and the label "pageOf", where there is one; the
    // builder adds titles and info.
    FlowSetup flowSetup() const;

private:
    friend class TemplateReader;

    std::string m_file;
    std::string m_sheet;
    std::string m_language;
    FontFamilies m_fonts;
    FlowSetup m_setup;
    std::vector<std::string> m_sections;
    std::map<std::string, std::string> m_labels;
};

}  // namespace rackbook
