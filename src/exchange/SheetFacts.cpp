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
        requireKnown(tree, "",
                     {"rackbookSheet", "sheet", "asOf", "language", "about", "namesHolders",
                      "records", "estimates"});
        SheetFacts facts;
        facts.heading.sheet = textIn(tree, "", "sheet");
        facts.heading.asOf = textIn(tree, "", "asOf");
        facts.heading.language = textIn(tree, "", "language");
        facts.heading.about = aboutIn(tree);
        const Tree* names = tree.find("namesHolders");
        if (!names || !names->asBool())
            refuse("/namesHolders", "true or false is missing");
        facts.namesHolders = *names->asBool();
        addRecords(tree, facts);
        addEstimates(tree, facts);
        return facts;
    }

private:
    [[noreturn]] void refuse(const std::string& pointer, const std::string& what) const {
        throw InputError(m_file + " " + pointer, what,
                         "Only sheets that rackbook made can be checked.");
    }

    void requireKnown(const Tree& tree, const std::string& pointer,
                      const std::set<std::string>& known) const {
        for (const auto& [name, value] : *tree.asObject())
            if (known.count(name) == 0)
                refuse(pointer + "/" + excerpt(name), "no record of a sheet has that");
    }

    const Tree::Array& listIn(const Tree& tree, const std::string& pointer,
                              const std::string& name) const {
        const Tree* list = tree.find(name);
        if (!list || !list->asArray())
            refuse(pointer + "/" + name, "a list is missing");
        return *list->asArray();
    }

    void addRecords(const Tree& tree, SheetFacts& facts) const {
        const Tree::Array& records = listIn(tree, "", "records");
        for (std::size_t i = 0; i < records.size(); ++i) {
            const std::string pointer = "/records/" + std::to_string(i);
            facts.records.emplace_back(
                textIn(records[i], pointer, "record") + " " + textIn(records[i], pointer, "id"),
                records[i]);
        }
    }

    void addEstimates(const Tree& tree, SheetFacts& facts) const {
        if (!tree.find("estimates"))
            return;
        const Tree::Array& estimates = listIn(tree, "", "estimates");
        for (std::size_t i = 0; i < estimates.size(); ++i)
            facts.records.emplace_back(
                "estimate " + textIn(estimates[i], "/estimates/" + std::to_string(i), "impression"),
                estimates[i]);
    }

    // Text of a line, as ids and names of kinds are.
    std::string textIn(const Tree& tree, const std::string& pointer,
                       const std::string& name) const {
        const Tree* value = tree.find(name);
        if (!value || !value->asText())
            refuse(pointer + "/" + name, "a text is missing");
        if (controlCharacterIn(*value->asText()) ||
            value->asText()->find_first_of("\t\n") != std::string::npos)
            refuse(pointer + "/" + name, "it holds control characters");
        return *value->asText();
    }

    SheetAbout aboutIn(const Tree& tree) const {
        const Tree* about = tree.find("about");
        if (!about || !about->asObject())
            refuse("/about", "what the sheet is about is missing");
        requireKnown(*about, "/about",
                     {"edition", "impressions", "layer", "mix", "transfer", "place"});
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
        if (!about->find("impressions"))
            return ids;
        const Tree::Array& list = listIn(*about, "/about", "impressions");
        for (std::size_t i = 0; i < list.size(); ++i) {
            // Read like a member of that name.
            Tree item = Tree::object();
            item.set(std::to_string(i), list[i]);
            ids.impressions.push_back(textIn(item, "/about/impressions", std::to_string(i)));
        }
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
