#include "sheets/Template.h"

#include <algorithm>
#include <optional>

#include "base/Error.h"
#include "base/Numbers.h"
#include "base/Text.h"

namespace rackbook {

namespace {

bool contains(const std::vector<std::string>& names, const std::string& name) {
    return std::find(names.begin(), names.end(), name) != names.end();
}

// RFC 6901
std::string pointerTo(const std::string& parent, const std::string& name) {
    std::string pointer = parent + "/";
    for (const char c : name)
        pointer += c == '~' ? std::string("~0") : c == '/' ? std::string("~1") : std::string(1, c);
    return pointer;
}

std::string pointerTo(const std::string& parent, std::size_t index) {
    return parent + "/" + std::to_string(index);
}

std::optional<double> numberIn(const Tree& tree) {
    if (const std::int64_t* whole = tree.asWhole())
        return static_cast<double>(*whole);
    if (const double* real = tree.asReal())
        return *real;
    return std::nullopt;
}

}  // namespace

// Reads one tree; knows the file's name for messages.
class TemplateReader {
public:
    TemplateReader(const std::string& file, const TemplateRules& rules)
        : m_file(file), m_rules(rules) {}

    SheetTemplate read(const Tree& tree) {
        m_template.m_file = m_file;
        const std::vector<std::string> fields = {"template",   "language", "paper",
                                                 "margins_mm", "fonts",    "baseSize_pt",
                                                 "letterhead", "sections", "labels"};
        for (const auto& [name, value] : members(tree, "", fields, "field"))
            readField(name, value);
        requireAll(tree, "", fields, "field");
        requireAll(*tree.find("labels"), "/labels", m_rules.labels, "label");
        requireWidth();
        return std::move(m_template);
    }

private:
    [[noreturn]] void refuse(const std::string& pointer, const std::string& what,
                             const std::string& remedy) const {
        throw InputError(pointer.empty() ? m_file : m_file + " " + pointer, what, remedy);
    }

    std::string hint(const std::string& name, const std::vector<std::string>& known) const {
        if (const auto near = nearestName(name, known))
            return "Write \"" + *near + "\" if that was meant.";
        return "Known are: " + joined(known) + ".";
    }

    const Tree::Object& members(const Tree& tree, const std::string& pointer,
                                const std::vector<std::string>& known,
                                const std::string& kind) const {
        const Tree::Object* object = tree.asObject();
        if (!object)
            refuse(pointer, "this is not an object", "Write the members in braces.");
        std::vector<std::string> seen;
        for (const auto& [name, value] : *object) {
            if (!contains(known, name))
                refuse(pointerTo(pointer, name), "unknown " + kind + " \"" + printable(name) + "\"",
                       hint(name, known));
            if (contains(seen, name))
                refuse(pointerTo(pointer, name), kind + " \"" + name + "\" is given twice",
                       "Leave one of them out.");
            seen.push_back(name);
        }
        return *object;
    }

    void requireAll(const Tree& tree, const std::string& pointer,
                    const std::vector<std::string>& names, const std::string& kind) const {
        for (const std::string& name : names)
            if (!tree.find(name))
                refuse(pointer, "the " + kind + " \"" + name + "\" is missing",
                       "Add it; the templates that come with the program have it.");
    }

    const std::string& text(const Tree& tree, const std::string& pointer) const {
        const std::string* words = tree.asText();
        if (!words)
            refuse(pointer, "this is not text", "Write it in quotation marks.");
        return *words;
    }

    std::vector<std::string> texts(const Tree& tree, const std::string& pointer) const {
        const Tree::Array* array = tree.asArray();
        if (!array)
            refuse(pointer, "this is not a list", "Write a list of texts in square brackets.");
        std::vector<std::string> words;
        for (std::size_t i = 0; i < array->size(); ++i)
            words.push_back(text((*array)[i], pointerTo(pointer, i)));
        return words;
    }

    double number(const Tree& tree, const std::string& pointer, double least, double most) const {
        const auto value = numberIn(tree);
        if (!value || !(*value >= least && *value <= most))
            refuse(pointer,
                   "this is not a number from " + formatShortest(least) + " to " +
                       formatShortest(most),
                   "Write such a number, without a unit.");
        return *value;
    }

    void readField(const std::string& name, const Tree& value) {
        const std::string pointer = "/" + name;
        if (name == "template")
            readSheet(value, pointer);
        else if (name == "language")
            readLanguage(value, pointer);
        else if (name == "paper")
            readPaper(value, pointer);
        else if (name == "margins_mm")
            readMargins(value, pointer);
        else if (name == "fonts")
            readFonts(value, pointer);
        else if (name == "baseSize_pt")
            m_template.m_setup.baseSize_pt = number(value, pointer, 7, 14);
        else if (name == "letterhead")
            m_template.m_setup.letterhead = texts(value, pointer);
        else if (name == "sections")
            readSections(value, pointer);
        else
            readLabels(value, pointer);
    }

    void readSheet(const Tree& value, const std::string& pointer) {
        m_template.m_sheet = text(value, pointer);
        if (m_template.m_sheet != m_rules.sheet)
            refuse(pointer,
                   "this is a template for \"" + printable(m_template.m_sheet) +
                       "\", but one for \"" + m_rules.sheet + "\" is asked for",
                   "Choose a template whose field \"template\" reads \"" + m_rules.sheet + "\".");
    }

    void readLanguage(const Tree& value, const std::string& pointer) {
        m_template.m_language = text(value, pointer);
        const std::string& tag = m_template.m_language;
        const bool plain = std::all_of(tag.begin(), tag.end(), [](char c) {
            return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
                   c == '-';
        });
        if (tag.size() < 2 || !plain)
            refuse(pointer, "\"" + printable(tag) + "\" is not a language tag",
                   "Write a tag of BCP 47 such as \"en\" or \"pt-BR\".");
    }

    void readPaper(const Tree& value, const std::string& pointer) {
        const std::string& name = text(value, pointer);
        if (name == "A4")
            m_template.m_setup.paper = {210, 297};
        else if (name == "Letter")
            m_template.m_setup.paper = {215.9, 279.4};
        else
            refuse(pointer, "unknown paper \"" + printable(name) + "\"",
                   hint(name, {"A4", "Letter"}));
    }

    void readMargins(const Tree& value, const std::string& pointer) {
        Margins& margins = m_template.m_setup.margins;
        const std::vector<std::string> names = {"top", "right", "bottom", "left"};
        for (const auto& [name, side] : members(value, pointer, names, "margin")) {
            double& margin_mm = name == "top"      ? margins.top_mm
                                : name == "right"  ? margins.right_mm
                                : name == "bottom" ? margins.bottom_mm
                                                   : margins.left_mm;
            margin_mm = number(side, pointerTo(pointer, name), 5, 60);
        }
        requireAll(value, pointer, names, "margin");
    }

    void readFonts(const Tree& value, const std::string& pointer) {
        const std::vector<std::string> roles = {"text", "figures"};
        for (const auto& [name, list] : members(value, pointer, roles, "font role")) {
            const std::string role = pointerTo(pointer, name);
            std::vector<std::string> families = texts(list, role);
            if (families.empty() || contains(families, ""))
                refuse(role, "a font family has no name",
                       "Write at least one family, for instance \"Noto Sans\".");
            (name == "text" ? m_template.m_fonts.text : m_template.m_fonts.figures) =
                std::move(families);
        }
        requireAll(value, pointer, roles, "font role");
    }

    void readSections(const Tree& value, const std::string& pointer) {
        m_template.m_sections = texts(value, pointer);
        const std::vector<std::string>& sections = m_template.m_sections;
        if (sections.empty())
            refuse(pointer, "the list of sections is empty",
                   "Name at least one of: " + joined(m_rules.sections, " or ") + ".");
        for (std::size_t i = 0; i < sections.size(); ++i) {
            if (!contains(m_rules.sections, sections[i]))
                refuse(pointerTo(pointer, i), "unknown section \"" + printable(sections[i]) + "\"",
                       hint(sections[i], m_rules.sections));
            if (std::count(sections.begin(), sections.end(), sections[i]) > 1)
                refuse(pointerTo(pointer, i), "section \"" + sections[i] + "\" is given twice",
                       "Leave one of them out.");
        }
    }

    void readLabels(const Tree& value, const std::string& pointer) {
        for (const auto& [name, words] : members(value, pointer, m_rules.labels, "label")) {
            const std::string& label = text(words, pointerTo(pointer, name));
            if (name == "pageOf" && label.find("{page}") == std::string::npos)
                refuse(pointerTo(pointer, name), "the page number is missing",
                       "Write {page} where it belongs, and {pages} for their count.");
            m_template.m_labels[name] = label;
        }
    }

    void requireWidth() const {
        const FlowSetup& setup = m_template.m_setup;
        constexpr double least_mm = 100;
        if (setup.paper.width_mm - setup.margins.left_mm - setup.margins.right_mm < least_mm)
            refuse("/margins_mm", "less than 100 mm of the page's width is left for text",
                   "Make the left or the right margin smaller.");
    }

    const std::string& m_file;
    const TemplateRules& m_rules;
    SheetTemplate m_template;
};

SheetTemplate SheetTemplate::read(const Tree& tree, const std::string& file,
                                  const TemplateRules& rules) {
    return TemplateReader(file, rules).read(tree);
}

const std::string& SheetTemplate::label(const std::string& key) const {
    const auto found = m_labels.find(key);
    if (found == m_labels.end())
        throw InputError(m_file + " /labels", "the label \"" + key + "\" is missing",
                         "Add it; the templates that come with the program have it.");
    return found->second;
}

FlowSetup SheetTemplate::flowSetup() const {
    FlowSetup setup = m_setup;
    setup.info.language = m_language;
    const auto pageOf = m_labels.find("pageOf");
    if (pageOf != m_labels.end())
        setup.pageOf = pageOf->second;
    return setup;
}

}  // namespace rackbook
