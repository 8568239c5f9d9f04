#include "commands/Cost.h"

#include <algorithm>
#include <cmath>

#include "base/Numbers.h"
#include "base/Text.h"
#include "cli/Table.h"
#include "commands/BookAccess.h"
#include "commands/InkBill.h"
#include "commands/InkWords.h"
#include "commands/JsonReport.h"
#include "commands/OptionRows.h"
#include "commands/StockReport.h"
#include "commands/StockWords.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

struct CostFacts {
    const InkBook& ink;
    Edition edition;
    InkBill bill;
    bool byUse = false;
    int kept = 0;     // impressions
    int printed = 0;  // impressions, spoiled and destroyed ones among them
};

void countImpressions(CostFacts& facts) {
    for (const Impression& impression : facts.ink.records.of<Impression>()) {
        if (impression.edition.id != facts.edition.id)
            continue;
        ++facts.printed;
        facts.kept += impression.fate == ImpressionFate::kept ? 1 : 0;
    }
}

std::string layerWords(const CostFacts& facts, const LayerBill& bill) {
    const Layer& layer = facts.ink.records.of<Layer>()[bill.layer];
    return std::to_string(layer.ordinal) + ", " + layer.colourWords;
}

std::string lotText(const CostFacts& facts, const BillLine& line) {
    return line.lot < 0 ? "not recorded"
                        : facts.ink.records.of<Lot>()[static_cast<std::size_t>(line.lot)].id;
}

std::string costText(const BillLine& line) {
    return line.isPriced ? estimateWords(line.cost, 2) : "no price";
}

std::string costText(const BillPart& part, const Estimate& cost) {
    const bool any = std::any_of(part.lines.begin(), part.lines.end(),
                                 [](const BillLine& line) { return line.isPriced; });
    return any ? estimateWords(cost, 2) : "no price";
}

void addLines(Table& table, const CostFacts& facts, const std::string& heading,
              const BillPart& part) {
    std::string shown = heading;
    for (const BillLine& line : part.lines) {
        table.addRow({shown, lotText(facts, line), estimateWords(line.laid_g, 2),
                      estimateWords(perSheet(line.laid_g, part.sheets), 3), costText(line)});
        shown.clear();
    }
    table.addRow({shown, "together", estimateWords(part.ink_g, 2),
                  estimateWords(perSheet(part.ink_g, part.sheets), 3), costText(part, part.cost)});
}

void printTable(Console& console, const CostFacts& facts) {
    Table table({{"layer"},
                 {"lot"},
                 {"g", Align::decimal},
                 {"g a sheet", Align::decimal},
                 {moneyWords(facts.ink.studio), Align::decimal}});
    for (const LayerBill& layer : facts.bill.layers) {
        if (layer.part.pulls > 0)
            addLines(table, facts, layerWords(facts, layer), layer.part);
        else
            table.addRow({layerWords(facts, layer), "not pulled yet", "", "", ""});
    }
    console.out() << table.text(console.width(), "No layer is planned.");
}

// The share of the ink that the cost leaves out, on the best values.
double unpricedShare(const BillPart& part) {
    return part.ink_g.best > 0 ? part.unpriced_g.best / part.ink_g.best : notKnown;
}

std::string unpricedWords(const BillPart& part) {
    if (part.unpriced_g.high <= 0)
        return part.pulls == 0 ? "Nothing was pulled yet."
                               : "All of the ink that was weighed has a price.";
    const double share = unpricedShare(part);
    std::string text = "Ink without a price, not in the cost: ";
    text += part.unpriced_g.low <= 0 && std::isinf(part.unpriced_g.high)
                ? "how much is not known"
                : gramsWords(part.unpriced_g, 2);
    if (!std::isnan(share))
        text += " (" + formatFixed(share * 100, 1) + " % of it)";
    return text + ".";
}

void printTotals(Console& console, const CostFacts& facts) {
    const BillPart& whole = facts.bill.whole;
    const std::string money = moneyWords(facts.ink.studio);
    Table table(
        {{"edition " + facts.edition.code}, {"g", Align::decimal}, {money, Align::decimal}});
    table.addRow({"all layers", estimateWords(whole.ink_g, 2), costText(whole, whole.cost)});
    table.addRow({"a good impression (" + std::to_string(facts.kept) + " of " +
                      std::to_string(facts.printed) + " kept)",
                  estimateWords(perSheet(whole.ink_g, facts.kept), 2),
                  costText(whole, perSheet(whole.cost, facts.kept))});
    console.out() << "\n" << table.text(console.width(), {}) << "\n";
    printIndented(console, unpricedWords(whole));
    if (whole.pullsNotWeighed > 0)
        printIndented(console, "In " + std::to_string(whole.pullsNotWeighed) + " of " +
                                   std::to_string(whole.pulls) +
                                   " runs the ink was not weighed before and after; what went "
                                   "there is not in these figures.");
}

void printTerms(Console& console, const CostFacts& facts) {
    printIndented(console,
                  "Ink is what left the portion in each run, what stayed on roller and "
                  "slab included; heaps that were thrown away are not in it. A sheet "
                  "counts once for each run it went through, spoiled ones too.");
    if (!facts.byUse) {
        printIndented(console,
                      "Priced by what a gram cost when it was bought. --actual takes what "
                      "a gram costs that is really used.");
        return;
    }
    printIndented(console,
                  "Priced by what a gram costs that is really used: price over the grams "
                  "used of a finished lot; of an open one, over what will have been used "
                  "when it runs out or no longer keeps (projected).");
    printHouseRules(console, facts.ink.rules, rulesOfStock());
}

Tree partTree(const CostFacts& facts, const BillPart& part) {
    Tree tree = Tree::object();
    tree.set("ink_g", treeOf(part.ink_g)).set("cost", treeOf(part.cost));
    tree.set("unpriced_g", treeOf(part.unpriced_g)).set("unpricedShare", unpricedShare(part));
    tree.set("pulls", part.pulls).set("pullsNotWeighed", part.pullsNotWeighed);
    tree.set("sheets", part.sheets);
    Tree lots = Tree::array();
    for (const BillLine& line : part.lines) {
        Tree one = Tree::object();
        if (line.lot >= 0)
            one.set("lot", lotText(facts, line));
        one.set("laid_g", treeOf(line.laid_g));
        one.set("perSheet_g", treeOf(perSheet(line.laid_g, part.sheets)));
        if (line.isPriced)
            one.set("cost", treeOf(line.cost));
        lots.add(std::move(one));
    }
    tree.set("lots", std::move(lots));
    return tree;
}

Tree costTree(const CostFacts& facts) {
    Tree report = newReport("cost");
    report.set("edition", facts.edition.id).set("pricedByUse", facts.byUse);
    if (facts.ink.studio.currency)
        report.set("currency", *facts.ink.studio.currency);
    Tree layers = Tree::array();
    for (const LayerBill& layer : facts.bill.layers) {
        Tree one = partTree(facts, layer.part);
        one.set("layer", facts.ink.records.of<Layer>()[layer.layer].id);
        layers.add(std::move(one));
    }
    report.set("layers", std::move(layers));
    report.set("whole", partTree(facts, facts.bill.whole));
    report.set("impressionsKept", facts.kept).set("impressionsPrinted", facts.printed);
    report.set("costPerKeptImpression", treeOf(perSheet(facts.bill.whole.cost, facts.kept)));
    if (facts.byUse)
        report.set("houseRules", treeOf(facts.ink.rules, rulesOfStock()));
    return report;
}

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const Edition edition = editionNamed(book, context.arguments.text("edition"));
    const InkBook ink = inkBookOf(book);
    const bool byUse = context.arguments.has("actual");
    const std::vector<Estimate> prices =
        byUse ? pricesUsed(lotUseOf(ink, nowAt(ink.studio).latest())) : pricesBought(ink);
    CostFacts facts{ink, edition, inkBillOf(ink, edition.id, prices), byUse, 0, 0};
    countImpressions(facts);
    if (context.arguments.has("json")) {
        context.console.out() << jsonText(costTree(facts));
        return ExitCode::success;
    }
    printTable(context.console, facts);
    printTotals(context.console, facts);
    printTerms(context.console, facts);
    return ExitCode::success;
}

}  // namespace

Command costCommand() {
    CommandSpec spec;
    spec.name = "cost";
    spec.group = toTranslate("group", "Questions");
    spec.summary = toTranslate(
        "summary", "Say how much ink an edition took, layer by layer, and what it cost");
    spec.details =
        "The grams of each lot that the runs of a layer laid down, for the layer and for a sheet "
        "(the mean), their cost, and totals for the edition and for a good impression. What has "
        "no price, and runs whose ink was not weighed, are said.";
    spec.positionals = {{"edition", "Code of the edition."}};
    spec.options = {flagOption("actual",
                               "Price a gram by what was really used of its lot, not by what was "
                               "bought.")};
    spec.reportsJson = true;
    spec.examples = {
        {"rackbook cost EEL", "What the ink of an edition cost."},
        {"rackbook cost EEL --actual", "With what dries up in the tin on the bill as well."}};
    return {spec, run};
}

}  // namespace rackbook
