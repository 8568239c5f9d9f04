#include <algorithm>

#include "sheets/DesignationNotes.h"
#include "sheets/EditionParts.h"
#include "sheets/EditionTally.h"

namespace rackbook::editionparts {

namespace {

// "1–8, 10 / 20" where all are numbered out of the same; else as written, joined.
std::string inscribedAs(const TallyRow& row, const SheetWords& words) {
    if (const std::optional<Numbering> numbering = numberingOf(row))
        return words.filled("count.outOf", {{"numbers", numberRanges(numbering->numbers)},
                                            {"of", std::to_string(numbering->of)}});
    return words.inRow(row.designations);
}

// What was signed beyond what is declared has no meaning where not all that was signed is declared.
bool isAllDeclared(const EditionTally& tally) {
    return tally.designatedWithoutKind == 0 &&
           std::all_of(tally.rows.begin(), tally.rows.end(),
                       [](const TallyRow& row) { return row.declared || row.designated == 0; });
}

void addDeclaredAgainstSigned(Flow& flow, const EditionFacts& facts, const EditionTally& tally,
                              const SheetWords& words) {
    SheetTable table;
    table.columns = {{words("count.kind"), Alignment::left, 1, 0},
                     {words("count.inscription"), Alignment::left, 1.4, 0},
                     {words("count.declared"), Alignment::right, 0, 23},
                     {words("count.signed"), Alignment::right, 0, 16},
                     {words("count.difference"), Alignment::right, 0, 20}};
    const auto row = [&](const std::string& kind, const std::string& inscribed,
                         const std::optional<int>& declared, int designated) {
        return TableRow{{kind, inscribed, declared ? words.count(*declared) : words("notRecorded"),
                         words.count(designated),
                         declared ? words.signedCount(designated - *declared) : std::string()}};
    };
    for (const TallyRow& counted : tally.rows)
        table.rows.push_back(row(words.of("designation", counted.designationKind),
                                 inscribedAs(counted, words), counted.declared,
                                 counted.designated));
    if (tally.designatedWithoutKind > 0)
        table.rows.push_back(
            row(words("count.withoutKind"), "", std::nullopt, tally.designatedWithoutKind));
    TableRow total = row(words("count.total"), "", tally.declaredSum, tally.designated);
    if (!isAllDeclared(tally))
        total.cells.back() = TableCell(std::string());
    total.strong = true;
    total.ruleAbove = true;
    table.rows.push_back(std::move(total));
    flow.table(table);
    const std::optional<int>& stated = facts.edition.declaredTotal;
    if (!stated)
        return;
    if (!tally.declaredSum) {
        flow.paragraph(words.filled("count.stated", {{"total", words.count(*stated)}}),
                       TextStyle::small);
        return;
    }
    flow.paragraph(
        words.filled(*tally.declaredSum == *stated ? "count.statedAgrees" : "count.statedDiffers",
                     {{"total", words.count(*stated)}, {"sum", words.count(*tally.declaredSum)}}),
        TextStyle::small);
}

// "34 printed at layer 1 − 7 spoiled … = 27 kept", and how those divide.
void addSheets(Flow& flow, const EditionTally& tally, const SheetWords& words) {
    if (!tally.printedFirst && tally.notInFirst == 0) {
        flow.labelValues({{words("count.sheets"), words("notRecorded")}});
        return;
    }
    const char* begun = !tally.printedFirst    ? "count.recorded"
                        : tally.notInFirst > 0 ? "count.printedFirstAndOthers"
                        : tally.withGaps       ? "count.recordedOnly"
                                               : "count.printedFirst";
    const auto text = [&](int value) { return words.count(value); };
    const std::string sum = words.filled(
        "count.sum",
        {{"begun", words.filled(begun, {{"printed", text(tally.printedFirst.value_or(0))},
                                        {"others", text(tally.notInFirst)}})},
         {"spoiled", text(tally.spoiled)},
         {"destroyed", text(tally.destroyed)},
         {"kept", text(tally.kept)}});
    const std::string kept = words.filled("count.keptSum", {{"signed", text(tally.keptSigned)},
                                                            {"unsigned", text(tally.keptUnsigned)},
                                                            {"kept", text(tally.kept)}});
    flow.labelValues({{words("count.sheets"), sum}, {words("count.kept"), kept}});
    if (tally.withGaps)
        flow.paragraph(words.filled("count.untraced",
                                    {{"of", std::to_string(tally.withGaps->of)},
                                     {"highest", std::to_string(tally.withGaps->numbers.back())},
                                     {"numbers", numberRanges(tally.withGaps->missing())}}),
                       TextStyle::small);
}

// The first state is gone once a second one is cut.
bool firstStateIsGone(const EditionFacts& facts) {
    if (facts.layers.empty() || !facts.layers.front().layer.block)
        return false;
    for (const Block& block : facts.blocks)
        if (block.id == facts.layers.front().layer.block->id)
            return block.states.size() > 1;
    return false;
}

// An old edition whose record begins late may have had more sheets than are known.
bool recordIsWhole(const EditionTally& tally) {
    return tally.printedFirst && tally.notInFirst == 0 && !tally.withGaps && tally.declaredSum &&
           *tally.declaredSum <= *tally.printedFirst;
}

}  // namespace

std::string proofsWords(const EditionFacts& facts, const SheetWords& words) {
    std::vector<std::string> parts;
    for (const DeclaredProofs& proofs : facts.edition.declaredProofs)
        parts.push_back(words.labelled(words.of("designation", proofs.designationKind),
                                       words.count(proofs.count)));
    return words.inRow(parts);
}

void addCount(Flow& flow, const EditionFacts& facts, const SheetWords& words) {
    const EditionTally tally = tallyOf(facts.edition, facts.impressions, facts.firstLayer);
    addDeclaredAgainstSigned(flow, facts, tally, words);
    std::vector<const Impression*> all;
    for (const Impression& impression : facts.impressions)
        all.push_back(&impression);
    addDesignationNotes(flow, facts.edition, all, words);
    addSheets(flow, tally, words);
    if (recordIsWhole(tally) && firstStateIsGone(facts))
        flow.paragraph(words.filled("count.cap", {{"count", words.count(*tally.printedFirst)}}),
                       TextStyle::small);
}

}  // namespace rackbook::editionparts
