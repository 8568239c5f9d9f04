#include "commands/Trace.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "base/Numbers.h"
#include "base/Ranges.h"
#include "base/Text.h"
#include "cli/Table.h"
#include "commands/BookAccess.h"
#include "commands/InkWords.h"
#include "commands/JsonReport.h"
#include "commands/LotWay.h"
#include "commands/RecordNamed.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

struct TraceFacts {
    const InkBook& ink;
    const Lot& lot;
    LotWay way;
};

const char* holdingWords(Holding holding) {
    switch (holding) {
        case Holding::holds:
            return "yes";
        case Holding::mayHold:
            return "may be";
        case Holding::cannotRuleOut:
            break;
    }
    return "cannot be ruled out";
}

const char* textOf(Holding holding) {
    switch (holding) {
        case Holding::holds:
            return "holds";
        case Holding::mayHold:
            return "mayHold";
        case Holding::cannotRuleOut:
            break;
    }
    return "cannotRuleOut";
}

const Impression& impressionOf(const TraceFacts& facts, const ImpressionOnWay& one) {
    const std::int64_t key = facts.ink.history.impressions[one.traced.impression].key;
    return facts.ink.records.of<Impression>()[static_cast<std::size_t>(key)];
}

// The range of all shares in a group; a best value only where they are one.
void widen(std::optional<Estimate>& range, const Estimate& share) {
    if (!range) {
        range = share;
        return;
    }
    if (!(range->best == share.best))
        range->best = notKnown;
    range->low = std::min(range->low, share.low);
    range->high = std::max(range->high, share.high);
}

void printMixes(Console& console, const TraceFacts& facts) {
    Table table({{"mix"},
                 {"what it is"},
                 {"it came from"},
                 {"% of it", Align::decimal},
                 {"g left", Align::decimal},
                 {"holds it"}});
    for (const MixOnWay& one : facts.way.mixes) {
        const Mix& mix = facts.ink.records.of<Mix>()[one.mix];
        table.addRow({mix.id, mix.name, joined(one.from), percentsOf(one.share, 2),
                      mix.finishedOn ? "finished" : estimateWords(one.left_g, 1),
                      holdingWords(one.holding)});
    }
    console.out() << "\n"
                  << console.emphasis("Mixes it went into") << "\n"
                  << table.text(console.width(), "None.");
}

struct PullGroup {
    std::size_t count = 0;
    TimeSpan when{endOfTime, beginningOfTime};
    std::set<std::string> portions;
    std::optional<Estimate> share;
};

void printPulls(Console& console, const TraceFacts& facts) {
    // By surety, then edition and ordinal.
    std::map<std::tuple<Holding, std::string, int, std::string>, PullGroup> groups;
    for (const TracedPull& traced : facts.way.pulls) {
        const HistoryPull& row = facts.ink.history.pulls[traced.pull];
        const Pull& pull = facts.ink.records.of<Pull>()[traced.pull];
        const HistoryLayer& layer = facts.ink.history.layers[static_cast<std::size_t>(row.layer)];
        PullGroup& group =
            groups[{traced.holding,
                    facts.ink.history.editions[static_cast<std::size_t>(layer.edition)].code,
                    layer.ordinal, layer.colourWords}];
        ++group.count;
        group.when = {std::min(group.when.earliest, row.start.earliest),
                      std::max(group.when.latest, row.start.latest)};
        group.portions.insert(pull.portion ? pull.portion->id : "not recorded");
        widen(group.share, traced.share);
    }
    Table table({{"layer"},
                 {"runs", Align::right},
                 {"when"},
                 {"portion"},
                 {"% of its ink", Align::decimal},
                 {"holds it"}});
    for (const auto& [key, group] : groups)
        table.addRow(
            {std::get<1>(key) + " " + std::to_string(std::get<2>(key)) + ", " + std::get<3>(key),
             std::to_string(group.count), momentWords(group.when),
             joined({group.portions.begin(), group.portions.end()}), percentsOf(*group.share, 2),
             holdingWords(std::get<0>(key))});
    console.out() << "\n"
                  << console.emphasis("Layers printed with it") << "\n"
                  << table.text(console.width(), "None.");
}

// "3-5,7 of 30" from 3/30, 4/30, 5/30, 7/30; others as they stand.
std::string designationsWords(const std::vector<std::string>& designations) {
    std::map<std::string, std::vector<int>> numbered;
    std::vector<std::string> words;
    for (const std::string& one : designations) {
        const std::size_t slash = one.find('/');
        const auto number = parseWhole(one.substr(0, slash));
        if (slash == std::string::npos || !number || *number < 1 || *number > 100'000)
            words.push_back(one);
        else
            numbered[one.substr(slash + 1)].push_back(static_cast<int>(*number));
    }
    std::vector<std::string> parts;
    for (auto& [whole, numbers] : numbered) {
        std::sort(numbers.begin(), numbers.end());
        parts.push_back(formatRanges(numbers) + "/" + whole);
    }
    parts.insert(parts.end(), words.begin(), words.end());
    return joined(parts, ", ");
}

struct ImpressionGroup {
    std::vector<int> numbers;
    std::vector<std::string> designations;
    std::optional<Estimate> share;
};

void printImpressions(Console& console, const TraceFacts& facts) {
    // By surety, then edition, then those in others' hands first.
    std::map<std::tuple<Holding, std::string, bool, std::string>, ImpressionGroup> groups;
    for (const ImpressionOnWay& one : facts.way.impressions) {
        const Impression& impression = impressionOf(facts, one);
        const std::string fate = impression.fate == ImpressionFate::kept
                                     ? one.where
                                     : std::string(rackbook::textOf(impression.fate));
        ImpressionGroup& group =
            groups[{one.traced.holding, facts.ink.records.find(impression.edition)->code,
                    !one.isAway, fate}];
        group.numbers.push_back(impression.workingNumber);
        if (impression.designation)
            group.designations.push_back(*impression.designation);
        widen(group.share, one.traced.share);
    }
    Table table({{"impressions"},
                 {"inscribed"},
                 {"where, with whom"},
                 {"% of an ink", Align::decimal},
                 {"holds it"}});
    for (auto& [key, group] : groups)
        table.addRow({std::get<1>(key) + " " + formatRanges(group.numbers),
                      designationsWords(group.designations), std::get<3>(key),
                      percentsOf(*group.share, 2), holdingWords(std::get<0>(key))});
    console.out() << "\n"
                  << console.emphasis("Impressions") << "\n"
                  << table.text(console.width(), "None.");
}

void printSummary(Console& console, const TraceFacts& facts) {
    std::map<Holding, std::size_t> counts;
    std::size_t away = 0;
    for (const ImpressionOnWay& one : facts.way.impressions) {
        ++counts[one.traced.holding];
        away += one.isAway && impressionOf(facts, one).fate == ImpressionFate::kept ? 1 : 0;
    }
    std::vector<std::string> parts;
    for (const auto& [holding, count] : counts) {
        const std::string number = std::to_string(count);
        if (holding == Holding::holds)
            parts.push_back(number + (count == 1 ? " holds it" : " hold it"));
        else
            parts.push_back(
                number + (holding == Holding::mayHold ? " may hold it" : " cannot be ruled out"));
    }
    console.out() << lotWords(facts.lot) << "\n";
    if (parts.empty()) {
        console.out() << "No impression can hold it, by the book.\n";
        return;
    }
    console.out() << "Impressions: " << joined(parts) << ". In other hands: " << away << ".\n";
}

void printRemarks(Console& console, const TraceFacts& facts) {
    console.out() << "\n";
    std::string text =
        "May be: it was weighed in, but masses are missing. Cannot be ruled "
        "out: what the ink was made of is not recorded.";
    if (facts.way.pullsLeftOut > 0)
        text += " Runs of unrecorded ink from before " + formatDay(*facts.way.notBefore) +
                ", when the lot was " + (facts.lot.openedOn ? "opened" : "bought") +
                ", are left out (" + std::to_string(facts.way.pullsLeftOut) + ").";
    printIndented(console, text);
    printIndented(console, "An impression's share is the greatest in one of its inks.");
}

Tree mixesTree(const TraceFacts& facts) {
    Tree list = Tree::array();
    for (const MixOnWay& one : facts.way.mixes) {
        const Mix& mix = facts.ink.records.of<Mix>()[one.mix];
        Tree tree = Tree::object();
        tree.set("mix", mix.id).set("name", mix.name);
        tree.set("holding", textOf(one.holding)).set("share", treeOf(one.share));
        Tree from = Tree::array();
        for (const std::string& source : one.from)
            from.add(source);
        tree.set("from", std::move(from)).set("left_g", treeOf(one.left_g));
        tree.set("finished", mix.finishedOn.has_value());
        list.add(std::move(tree));
    }
    return list;
}

Tree traceTree(const TraceFacts& facts) {
    Tree report = newReport("trace");
    report.set("lot", facts.lot.id).set("mixes", mixesTree(facts));
    Tree pulls = Tree::array();
    for (const TracedPull& traced : facts.way.pulls) {
        Tree one = Tree::object();
        one.set("pull", facts.ink.records.of<Pull>()[traced.pull].id);
        one.set("layer", facts.ink.records.of<Pull>()[traced.pull].layer.id);
        one.set("holding", textOf(traced.holding)).set("share", treeOf(traced.share));
        pulls.add(std::move(one));
    }
    report.set("pulls", std::move(pulls));
    Tree impressions = Tree::array();
    for (const ImpressionOnWay& one : facts.way.impressions) {
        const Impression& impression = impressionOf(facts, one);
        Tree tree = Tree::object();
        tree.set("impression", impression.id).set("fate", rackbook::textOf(impression.fate));
        if (impression.designation)
            tree.set("designation", *impression.designation);
        tree.set("holding", textOf(one.traced.holding));
        tree.set("share", treeOf(one.traced.share));
        tree.set("where", one.where).set("inOtherHands", one.isAway);
        impressions.add(std::move(tree));
    }
    report.set("impressions", std::move(impressions));
    report.set("runsLeftOut", facts.way.pullsLeftOut);
    return report;
}

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const Lot lot = recordNamed<Lot>(book, context.arguments.text("lot"));
    const InkBook ink = inkBookOf(book);
    const CivilMinute asOf = nowAt(ink.studio).latest();
    const TraceFacts facts{ink, lot, wayOfLot(ink, ink.records.indexOf<Lot>(lot.id), asOf)};
    if (context.arguments.has("json")) {
        context.console.out() << jsonText(traceTree(facts));
        return ExitCode::success;
    }
    printSummary(context.console, facts);
    if (facts.way.pulls.empty() && facts.way.mixes.empty())
        return ExitCode::success;
    printMixes(context.console, facts);
    printPulls(context.console, facts);
    printImpressions(context.console, facts);
    printRemarks(context.console, facts);
    return ExitCode::success;
}

}  // namespace

Command traceCommand() {
    CommandSpec spec;
    spec.name = "trace";
    spec.group = toTranslate("group", "Questions");
    spec.summary =
        toTranslate("summary", "Say which impressions hold ink of a lot, and who has them");
    spec.details =
        "From a tin, tube or bottle through every mix to the layers printed with it and the "
        "impressions that carry them, with where each is and who holds it. What is certain, what "
        "may be and what cannot be ruled out are told apart. Contacts are never printed.";
    spec.positionals = {{"lot", "Id of the tin, tube or bottle."}};
    spec.reportsJson = true;
    spec.examples = {{"rackbook trace field-rose-1", "Where did the ink of that tube go?"}};
    return {spec, run};
}

}  // namespace rackbook
