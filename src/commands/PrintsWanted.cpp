#include "commands/PrintsWanted.h"

#include <optional>
#include <set>

#include "commands/BookAccess.h"
#include "commands/OptionRows.h"
#include "commands/RecordNamed.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

std::set<std::string> sheetsHeldBy(const BookFile& book, const std::string& words) {
    const std::string party = recordNamed<Party>(book, words).id;
    std::set<std::string> ids;
    for (const Impression& impression : allOf<Impression>(book))
        if (impression.holder && impression.holder->id == party)
            ids.insert(impression.id);
    return ids;
}

}  // namespace

std::vector<OptionSpec> printFilters() {
    return {valueOption("edition", "CODE", "Only prints of this edition."),
            valueOption("holder", "PARTY", "Only prints that belong to this party."),
            choiceOption("verdict", "VERDICT", "Only what is judged so.", enumNames<Verdict>())};
}

bool hasPrintFilters(const CommandContext& context) {
    return context.arguments.has("edition") || context.arguments.has("holder") ||
           context.arguments.has("verdict");
}

std::vector<bool> printsWanted(const CommandContext& context, const BookFile& book,
                               const History& history, const std::vector<ImpressionLabel>& labels,
                               const Readiness& readiness) {
    const Arguments& arguments = context.arguments;
    std::optional<std::string> edition;
    if (arguments.has("edition"))
        edition = editionNamed(book, arguments.text("edition")).id;
    std::optional<std::set<std::string>> held;
    if (arguments.has("holder"))
        held = sheetsHeldBy(book, arguments.text("holder"));
    const std::optional<std::string> verdict = arguments.value("verdict");
    std::vector<bool> wanted;
    for (const ReadinessRow& row : readiness.rows) {
        const auto i = static_cast<std::size_t>(row.impression);
        const auto of = static_cast<std::size_t>(history.impressions[i].edition);
        wanted.push_back((!edition || history.editions[of].id == *edition) &&
                         (!held || held->count(labels[i].id) > 0) &&
                         (!verdict || textOf(row.verdict) == *verdict));
    }
    return wanted;
}

}  // namespace rackbook
