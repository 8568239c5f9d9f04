#include "exchange/SheetFacts.h"

#include <map>
#include <set>

#include "base/Error.h"
#include "base/Text.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

class FactsReader {
public:
    explicit FactsReader(const std::string& file) : m_file(file) {}

    SheetFacts read(const std::string& text) const {
        const Tree tree = treeFromJson(text, m_file);
        const Tree* version = tree.find("rackbookSheet");
        if (!version || !version->asWhole())
            refuse("/rackbookSheet", "this is not the record of a sheet");
        if (*version->asWhole() != sheetRecordForm)
            refuse("/rackbookSheet", "it is of form " + std::to_string(*version->asWhole()) +
                                         ", which this version does not know");
        SheetFacts facts;
        facts.heading.sheet = textIn(tree, "", "sheet");
        facts.heading.asOf = textIn(tree, "", "asOf");
        facts.heading.language = textIn(tree, "", "language");
        facts.heading.about = aboutIn(tree);
        const Tree* names = tree.find("namesHolders");
        facts.namesHolders = names && names->asBool() && *names->asBool();
        const Tree* records = tree.find("records");
        if (!records || !records->asArray())
            refuse("/records", "the list of records is missing");
        for (std::size_t i = 0; i < records->asArray()->size(); ++i) {
            const Tree& record = (*records->asArray())[i];
            const std::string pointer = "/records/" + std::to_string(i);
            facts.records.emplace_back(
                textIn(record, pointer, "record") + " " + textIn(record, pointer, "id"), record);
        }
        return facts;
    }

private:
    [[noreturn]] void refuse(const std::string& pointer, const std::string& what) const {
        throw InputError(m_file + " " + pointer, what,
                         "Only sheets that rackbook made can be checked.");
    }

    std::string textIn(const Tree& tree, const std::string& pointer,
                       const std::string& name) const {
        const Tree* value = tree.find(name);
        if (!value || !value->asText())
            refuse(pointer + "/" + name, "a text is missing");
        return *value->asText();
    }

    SheetAbout aboutIn(const Tree& tree) const {
        const Tree* about = tree.find("about");
        if (!about || !about->asObject())
            refuse("/about", "what the sheet is about is missing");
        SheetAbout ids;
        const auto read = [&](const char* name, std::optional<std::string>& id) {
            if (about->find(name))
                id = textIn(*about, "/about", name);
        };
        read("edition", ids.edition);
        read("layer", ids.layer);
        read("mix", ids.mix);
        read("transfer", ids.transfer);
        read("place", ids.place);
        if (const Tree* list = about->find("impressions"); list && list->asArray())
            for (const Tree& id : *list->asArray())
                if (const std::string* words = id.asText())
                    ids.impressions.push_back(*words);
        return ids;
    }

    const std::string& m_file;
};

std::string shownText(const Tree* tree) {
    if (!tree)
        return {};
    if (const std::string* text = tree->asText())
        return *text;
    const std::string text = jsonText(*tree);
    std::string oneLine;
    for (const char c : text)
        if (c == '\n')
            oneLine += ' ';
        else if (!(c == ' ' && !oneLine.empty() && oneLine.back() == ' '))
            oneLine += c;
    return oneLine.substr(0, oneLine.find_last_not_of(' ') + 1);
}

// Fields in the order of the first, then those that only the second has.
void addDifferences(const std::string& record, const Tree& onSheet, const Tree& inBook,
                    std::vector<FactsDifference>& differences) {
    std::set<std::string> seen;
    const auto compare = [&](const std::string& field) {
        if (!seen.insert(field).second)
            return;
        const std::string there = shownText(onSheet.find(field));
        const std::string here = shownText(inBook.find(field));
        if (there != here)
            differences.push_back({record, field, there, here});
    };
    for (const Tree* tree : {&onSheet, &inBook})
        if (const Tree::Object* members = tree->asObject())
            for (const auto& [field, value] : *members)
                compare(field);
}

}  // namespace

SheetFacts sheetFactsFrom(const std::string& text, const std::string& file) {
    return FactsReader(file).read(text);
}

std::vector<FactsDifference> differencesBetween(const SheetFacts& onSheet,
                                                const SheetFacts& inBook) {
    std::vector<FactsDifference> differences;
    std::map<std::string, const Tree*> book;
    for (const auto& [name, record] : inBook.records)
        book.emplace(name, &record);
    std::set<std::string> seen;
    for (const auto& [name, record] : onSheet.records) {
        seen.insert(name);
        const auto found = book.find(name);
        if (found == book.end())
            differences.push_back({name, {}, shownText(&record), {}});
        else
            addDifferences(name, record, *found->second, differences);
    }
    for (const auto& [name, record] : inBook.records)
        if (seen.count(name) == 0)
            differences.push_back({name, {}, {}, shownText(&record)});
    return differences;
}

}  // namespace rackbook
