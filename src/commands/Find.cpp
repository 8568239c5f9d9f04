#include "commands/Find.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/Text.h"
#include "cli/Table.h"
#include "commands/BookAccess.h"
#include "commands/GivenValues.h"
#include "commands/JsonReport.h"
#include "commands/OptionRows.h"
#include "commands/Paragraph.h"
#include "commands/RecordsWanted.h"
#include "exchange/TreeJson.h"
#include "store/TextSearch.h"

namespace rackbook {

namespace {

constexpr int usualMost = 50;
constexpr int largestMost = 100'000;

Tree treeOf(const TextSearch& search) {
    Tree report = newReport("find");
    report.set("count", search.count);
    Tree found = Tree::array();
    for (const FoundText& one : search.found) {
        Tree tree = Tree::object();
        tree.set("kind", textOf(one.kind)).set("id", one.id);
        tree.set("field", one.field).set("text", one.text);
        found.add(std::move(tree));
    }
    report.set("found", std::move(found));
    Tree unknown = Tree::array();
    for (const auto& [word, nearest] : search.unknown) {
        Tree tree = Tree::object();
        tree.set("word", word).set("nearest", nearest ? Tree(*nearest) : Tree());
        unknown.add(std::move(tree));
    }
    report.set("unknownWords", std::move(unknown));
    return report;
}

void print(Console& console, const TextSearch& search) {
    Table table({{"record"}, {"field"}, {"what it says"}});
    for (const FoundText& one : search.found)
        table.addRow({nameOf(one.kind, one.id), one.field, one.text});
    console.out() << table.text(console.width(), "No text of the book has that.");
    for (const auto& [word, nearest] : search.unknown)
        printParagraph(
            console, "No word begins with \"" + printable(word) + "\"." +
                         (nearest ? " Did you mean " + printable(*nearest) + "?" : std::string()));
    if (search.count > search.found.size())
        printParagraph(console, "These are the nearest " + std::to_string(search.found.size()) +
                                    " of " + std::to_string(search.count) + "; --most shows more.");
}

bool hasFilter(const CommandContext& context) {
    const std::vector<OptionSpec> filters = recordFilters();
    return std::any_of(filters.begin(), filters.end(),
                       [&](const OptionSpec& one) { return context.arguments.has(one.name); });
}

// Each kind is asked for once. A record that is named by a filter and is not there is refused even
// where nothing was found that could be chosen by it.
void keepWanted(const CommandContext& context, const BookFile& book, TextSearch& search,
                std::size_t most) {
    std::map<RecordKind, std::optional<std::set<std::string>>> ids;
    wantedRecords(context, book, RecordKind::impression);
    const auto isWanted = [&](const FoundText& one) {
        const auto known = ids.find(one.kind);
        const std::optional<std::set<std::string>>& wanted =
            known != ids.end() ? known->second
                               : (ids[one.kind] = idsWanted(context, book, one.kind));
        return wanted && wanted->count(one.id) > 0;
    };
    std::vector<FoundText>& found = search.found;
    found.erase(std::remove_if(found.begin(), found.end(),
                               [&](const FoundText& one) { return !isWanted(one); }),
                found.end());
    search.count = found.size();
    if (found.size() > most)
        found.resize(most);
}

ExitCode run(CommandContext& context) {
    const int most = wholeGiven(context, "most", "--most", 1, largestMost).value_or(usualMost);
    const BookFile book = bookToRead(context);
    const bool isFiltered = hasFilter(context);
    TextSearch search = searchTexts(book, joined(context.arguments.values("word"), " "),
                                    static_cast<std::size_t>(isFiltered ? largestMost : most));
    if (isFiltered)
        keepWanted(context, book, search, static_cast<std::size_t>(most));
    if (context.arguments.has("json"))
        context.console.out() << jsonText(treeOf(search));
    else
        print(context.console, search);
    return search.found.empty() ? ExitCode::findings : ExitCode::success;
}

}  // namespace

Command findCommand() {
    CommandSpec spec;
    spec.name = "find";
    spec.group = toTranslate("group", "Questions");
    spec.summary =
        toTranslate("summary", "Find records by words in their titles, names, colours and notes");
    spec.details =
        "Looks through every text of every record for fields in which each of the words begins a "
        "word; case and accents make no difference. Contacts of people are never looked at. "
        "rackbook show tells all about what was found. With a filter, only records that it can "
        "choose are looked through. Exit code 1 where nothing was.";
    spec.positionals = {{"word", "What to look for.", true, true}};
    spec.options = {valueOption("most", "N", "How many are shown, the nearest first.",
                                std::to_string(usualMost))};
    for (OptionSpec& filter : recordFilters())
        spec.options.push_back(std::move(filter));
    spec.reportsJson = true;
    spec.examples = {{"rackbook find apricot", "Everything that speaks of apricot."},
                     {"rackbook find rose --edition EEL", "The same of one edition."},
                     {"rackbook find dusk stock", "Fields that have both words."}};
    return {spec, run};
}

}  // namespace rackbook
