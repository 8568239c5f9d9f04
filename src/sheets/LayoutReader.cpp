#include <algorithm>

#include "base/Text.h"
#include "sheets/TemplateReaders.h"

namespace rackbook {

namespace {

const std::vector<std::string> sides = {"top", "right", "bottom", "left"};
const std::vector<std::string> roles = {"text", "figures"};
const std::vector<std::string> needed = {"template", "language",    "paper",      "margins_mm",
                                         "fonts",    "baseSize_pt", "letterhead", "sections"};

std::vector<std::string> knownFields(const TemplateRules& rules) {
    std::vector<std::string> fields = needed;
    for (const NumberRule& number : rules.numbers)
        fields.push_back(number.name);
    fields.insert(fields.end(), {"basedOn", "labels"});
    return fields;
}

}  // namespace

void LayoutReader::read(const TemplateFile& layout) {
    const FileChecks checks(layout.name);
    for (const auto& [name, value] : checks.members(layout.tree, "", knownFields(m_rules), "field"))
        readField(checks, name, value);
}

void LayoutReader::readField(const FileChecks& checks, const std::string& name, const Tree& value) {
    m_given.insert(name);
    if (name == "paper" || name == "margins_mm")
        m_widthFile = checks.file();
    const std::string pointer = "/" + name;
    if (name == "template")
        readSheet(checks, value);
    else if (name == "language")
        checks.languageTag(value, pointer);
    else if (name == "paper")
        readPaper(checks, value);
    else if (name == "margins_mm")
        readMargins(checks, value);
    else if (name == "fonts")
        readFonts(checks, value);
    else if (name == "baseSize_pt")
        m_made.m_setup.baseSize_pt = checks.number(value, pointer, 7, 14);
    else if (name == "letterhead")
        m_made.m_setup.letterhead = checks.texts(value, pointer);
    else if (name == "sections")
        readSections(checks, value);
    else if (name == "basedOn")
        checks.text(value, pointer);
    else if (name != "labels")
        readNumber(checks, name, value);
}

void LayoutReader::readSheet(const FileChecks& checks, const Tree& value) {
    m_made.m_sheet = checks.text(value, "/template");
    if (m_made.m_sheet != m_rules.sheet)
        checks.refuse(
            "/template",
            "this is a template for \"" + printable(m_made.m_sheet) + "\", but one for \"" +
                m_rules.sheet + "\" is asked for",
            "Choose a template whose field \"template\" reads \"" + m_rules.sheet + "\".");
}

void LayoutReader::readPaper(const FileChecks& checks, const Tree& value) {
    const std::string& name = checks.text(value, "/paper");
    if (name == "A4")
        m_made.m_setup.paper = {210, 297};
    else if (name == "Letter")
        m_made.m_setup.paper = {215.9, 279.4};
    else
        checks.refuse("/paper", "unknown paper \"" + printable(name) + "\"",
                      FileChecks::hint(name, {"A4", "Letter"}));
}

void LayoutReader::readMargins(const FileChecks& checks, const Tree& value) {
    Margins& margins = m_made.m_setup.margins;
    for (const auto& [name, side] : checks.members(value, "/margins_mm", sides, "margin")) {
        double& margin_mm = name == "top"      ? margins.top_mm
                            : name == "right"  ? margins.right_mm
                            : name == "bottom" ? margins.bottom_mm
                                               : margins.left_mm;
        margin_mm = checks.number(side, FileChecks::pointerTo("/margins_mm", name), 5, 60);
        m_given.insert("margins_mm/" + name);
    }
}

void LayoutReader::readFonts(const FileChecks& checks, const Tree& value) {
    for (const auto& [name, list] : checks.members(value, "/fonts", roles, "font role")) {
        (name == "text" ? m_made.m_fonts.text : m_made.m_fonts.figures) =
            checks.fontFamilies(list, FileChecks::pointerTo("/fonts", name));
        m_given.insert("fonts/" + name);
    }
}

void LayoutReader::readSections(const FileChecks& checks, const Tree& value) {
    m_made.m_sections = checks.texts(value, "/sections");
    const std::vector<std::string>& sections = m_made.m_sections;
    if (sections.empty())
        checks.refuse("/sections", "the list of sections is empty",
                      "Name at least one of: " + joined(m_rules.sections, " or ") + ".");
    for (std::size_t i = 0; i < sections.size(); ++i) {
        const std::string pointer = FileChecks::pointerTo("/sections", i);
        if (std::count(m_rules.sections.begin(), m_rules.sections.end(), sections[i]) == 0)
            checks.refuse(pointer, "unknown section \"" + printable(sections[i]) + "\"",
                          FileChecks::hint(sections[i], m_rules.sections));
        const auto here = sections.begin() + static_cast<std::ptrdiff_t>(i);
        if (std::find(sections.begin(), here, sections[i]) != here)
            checks.refuse(pointer, "section \"" + sections[i] + "\" is given twice",
                          "Leave one of them out.");
    }
}

void LayoutReader::readNumber(const FileChecks& checks, const std::string& name,
                              const Tree& value) {
    const auto rule = std::find_if(m_rules.numbers.begin(), m_rules.numbers.end(),
                                   [&](const NumberRule& one) { return one.name == name; });
    m_made.m_numbers[name] = checks.number(value, "/" + name, rule->least, rule->most);
}

void LayoutReader::finish(const TemplateFile& bottom) const {
    const FileChecks checks(bottom.name);
    const char* remedy = "Add it; the templates that come with the program have it.";
    const auto require = [&](const std::string& pointer, const std::string& kind,
                             const std::string& name, const std::string& given) {
        if (m_given.count(given) == 0)
            checks.refuse(pointer, "the " + kind + " \"" + name + "\" is missing", remedy);
    };
    for (const std::string& field : needed)
        require("", "field", field, field);
    for (const NumberRule& number : m_rules.numbers)
        require("", "field", number.name, number.name);
    for (const std::string& side : sides)
        require("/margins_mm", "margin", side, "margins_mm/" + side);
    for (const std::string& role : roles)
        require("/fonts", "font role", role, "fonts/" + role);
    const FlowSetup& setup = m_made.m_setup;
    constexpr double least_mm = 100;
    if (setup.paper.width_mm - setup.margins.left_mm - setup.margins.right_mm < least_mm)
        FileChecks(m_widthFile)
            .refuse("/margins_mm", "less than 100 mm of the page's width is left for text",
                    "Make the left or the right margin smaller.");
}

}  // namespace rackbook
