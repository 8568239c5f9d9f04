#include <algorithm>

#include "base/Text.h"
#include "sheets/CommonLabels.h"
#include "sheets/LabelMarks.h"
#include "sheets/TemplateReaders.h"

namespace rackbook {

WordsReader::WordsReader(const TemplateRules& rules, SheetTemplate& made)
    : m_made(made), m_sheetsKeys(rules.labels) {
    m_sheetsKeys.insert(m_sheetsKeys.end(), rules.sections.begin(), rules.sections.end());
    m_allKeys = m_sheetsKeys;
    m_allKeys.insert(m_allKeys.end(), commonLabels().begin(), commonLabels().end());
}

void WordsReader::readCommon(const TemplateFile& file) {
    readWords(file, commonLabels(), {"language", "fonts", "labels"});
    if (const Tree* fonts = file.tree.find("fonts"))
        addFonts(FileChecks(file.name), *fonts);
}

void WordsReader::readSheets(const TemplateFile& file) {
    m_made.m_wordsFile = file.name;
    readWords(file, m_sheetsKeys, {"language", "labels"});
}

void WordsReader::readWords(const TemplateFile& file, const std::vector<std::string>& keys,
                            const std::vector<std::string>& fields) {
    const FileChecks checks(file.name);
    checks.members(file.tree, "", fields, "field");
    for (const char* field : {"language", "labels"})
        if (!file.tree.find(field))
            checks.refuse("", "the field \"" + std::string(field) + "\" is missing",
                          "Add it; the words that come with the program have it.");
    const std::string& language = checks.languageTag(*file.tree.find("language"), "/language");
    if (!isWithinLanguage(m_made.m_language, language))
        checks.refuse("/language",
                      "these are words in \"" + language + "\", but words in \"" +
                          printable(m_made.m_language) + "\" are asked for",
                      "Put the file into the folder of its language, or correct the tag.");
    const Tree& labels = *file.tree.find("labels");
    for (const auto& [key, value] : checks.members(labels, "/labels", keys, "label"))
        m_made.m_labels[key] = checkedLabel(checks, key, value);
    for (const std::string& key : keys)
        if (!labels.find(key))
            checks.refuse("/labels", "the label \"" + key + "\" is missing",
                          "Add it; the words that come with the program have it.");
}

// The families of the layout come first, since they set the look; those of a language lend the
// characters that the others lack.
void WordsReader::addFonts(const FileChecks& checks, const Tree& value) {
    for (const std::string& family : checks.fontFamilies(value, "/fonts"))
        for (std::vector<std::string>* role : {&m_made.m_fonts.text, &m_made.m_fonts.figures})
            if (std::find(role->begin(), role->end(), family) == role->end())
                role->push_back(family);
}

void WordsReader::readLayout(const TemplateFile& layout, bool counts) {
    const Tree* labels = layout.tree.find("labels");
    if (!labels)
        return;
    const FileChecks checks(layout.name);
    for (const auto& [key, value] : checks.members(*labels, "/labels", m_allKeys, "label")) {
        std::string label = checkedLabel(checks, key, value);
        const std::set<std::string> known = marksIn(m_made.m_labels.at(key));
        for (const std::string& mark : marksIn(label))
            if (known.count(mark) == 0)
                checks.refuse(
                    FileChecks::pointerTo("/labels", key), "nothing fills in {" + mark + "} here",
                    known.empty() ? "Leave it out."
                                  : "Known are: " + joined({known.begin(), known.end()}) + ".");
        if (counts)
            m_made.m_labels[key] = std::move(label);
    }
}

std::string WordsReader::checkedLabel(const FileChecks& checks, const std::string& key,
                                      const Tree& value) const {
    const std::string pointer = FileChecks::pointerTo("/labels", key);
    const std::string& label = checks.text(value, pointer);
    if (key == "pageOf" && marksIn(label).count("page") == 0)
        checks.refuse(pointer, "the page number is missing",
                      "Write {page} where it belongs, and {pages} for their count.");
    return label;
}

}  // namespace rackbook
