// The two halves of reading a template. Private to sheets/.
#pragma once

#include <set>

#include "sheets/FileChecks.h"
#include "sheets/Template.h"

namespace rackbook {

// Layout files, the one at the bottom first.
class LayoutReader {
public:
    LayoutReader(const TemplateRules& rules, SheetTemplate& made) : m_rules(rules), m_made(made) {}

    void read(const TemplateFile& layout);

    // Throws InputError naming the file at the bottom for fields that none of them gave, and for
    // margins that leave too little width.
    void finish(const TemplateFile& bottom) const;

private:
    void readField(const FileChecks& checks, const std::string& name, const Tree& value);
    void readSheet(const FileChecks& checks, const Tree& value);
    void readPaper(const FileChecks& checks, const Tree& value);
    void readMargins(const FileChecks& checks, const Tree& value);
    void readFonts(const FileChecks& checks, const Tree& value);
    void readSections(const FileChecks& checks, const Tree& value);
    void readNumber(const FileChecks& checks, const std::string& name, const Tree& value);

    const TemplateRules& m_rules;
    SheetTemplate& m_made;
    std::set<std::string> m_given;  // fields, and "field/member" of margins and fonts
    std::string m_widthFile;        // who spoke last of paper or margins
};

// Files of words, then the labels of layouts.
class WordsReader {
public:
    WordsReader(const TemplateRules& rules, SheetTemplate& made);

    void readCommon(const TemplateFile& file);
    void readSheets(const TemplateFile& file);

    // Its labels count only where they are in the language of the words.
    void readLayout(const TemplateFile& layout, bool counts);

private:
    void readWords(const TemplateFile& file, const std::vector<std::string>& keys,
                   const std::vector<std::string>& fields);
    void addFonts(const FileChecks& checks, const Tree& value);
    std::string checkedLabel(const FileChecks& checks, const std::string& key,
                             const Tree& value) const;

    SheetTemplate& m_made;
    std::vector<std::string> m_sheetsKeys;
    std::vector<std::string> m_allKeys;
};

}  // namespace rackbook
