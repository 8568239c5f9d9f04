// A sheet template: paper, margins, fonts, letterhead, the sections of a sheet in order and the
// words on it. The format is described in templates/README.md.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "sheets/FlowSetup.h"
#include "sheets/SheetLocale.h"
#include "sheets/TemplateParts.h"

namespace rackbook {

// A field of the template that only some sheets have.
struct NumberRule {
    std::string name;  // with its unit, such as "labelWidth_mm"
    double least = 0;
    double most = 0;
};

// What the builder of a sheet can fill in and asks for.
struct TemplateRules {
    std::string sheet;                  // value of "template"
    std::vector<std::string> sections;  // names it knows; each is a label too, its heading
    std::vector<std::string> labels;    // keys of its own; those of commonLabels() it has anyway
    std::vector<NumberRule> numbers;    // fields of its own
};

class SheetTemplate {
public:
    // A layout overrides those it is based on, field by field, margin by margin, font role by font
    // role and label by label. Labels of a layout count only where the words are in its language.
    // Throws InputError for the first thing that is wrong, naming file and place: an unknown field,
    // section or label (with the nearest known name), one given twice, a wrong kind of value, a
    // number out of range, a label that asks for something that is not filled in there; then for
    // fields and labels that are missing.
    static SheetTemplate read(const TemplateParts& parts, const TemplateRules& rules);

    const std::string& sheet() const { return m_sheet; }
    const std::string& language() const { return m_language; }  // BCP 47
    const SheetLocale& locale() const { return m_locale; }
    const FontFamilies& fonts() const { return m_fonts; }
    const std::vector<std::string>& sections() const { return m_sections; }

    // One of TemplateRules::numbers.
    double number(const std::string& name) const { return m_numbers.at(name); }

    // Throws InputError naming the file where the template has no such label.
    const std::string& label(const std::string& key) const;

    // Paper, margins, base size, letterhead, decimal sign and the label "pageOf"; the builder adds
    // titles and info.
    FlowSetup flowSetup() const;

private:
    friend class LayoutReader;
    friend class WordsReader;

    std::string m_wordsFile;
    std::string m_sheet;
    std::string m_language;
    SheetLocale m_locale;
    FontFamilies m_fonts;
    FlowSetup m_setup;
    std::vector<std::string> m_sections;
    std::map<std::string, double> m_numbers;
    std::map<std::string, std::string> m_labels;
};

}  // namespace rackbook
