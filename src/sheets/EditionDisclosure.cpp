#include "calc/Disclosure.h"
#include "sheets/EditionParts.h"
#include "sheets/EditionTally.h"

namespace rackbook::editionparts {

namespace {

// What the records say about an item that nobody answered; empty where they say nothing.
std::string fromRecords(const std::string& item, const EditionFacts& facts,
                        const SheetWords& words) {
    const Edition& edition = facts.edition;
    if (item == "artist")
        return facts.maker;
    if (item == "medium")
        return edition.process;
    if (item == "year")
        return edition.year ? words.tableDate(*edition.year) : std::string();
    if (item == "mostNumbered")
        return edition.declaredNumbered ? words.count(*edition.declaredNumbered) : std::string();
    if (item == "proofs")
        return proofsWords(facts, words);
    if (item == "unsigned" && !facts.impressions.empty()) {
        const EditionTally tally = tallyOf(edition, facts.impressions, facts.firstLayer);
        return words.filled(
            "disclosure.unsignedWords",
            {{"unsigned", words.count(tally.keptUnsigned)}, {"kept", words.count(tally.kept)}});
    }
    if (item == "total" && edition.declaredTotal)
        return words.count(*edition.declaredTotal);
    if (item == "matrix") {
        std::vector<std::string> blocks;
        for (const Block& block : facts.blocks)
            blocks.push_back(words.filled(
                "disclosure.blockWords",
                {{"block", block.name}, {"fate", words.of("matrixFate", block.fate)}}));
        return words.inRow(blocks);
    }
    return {};
}

TableRow rowOf(const DisclosureRow& row, const EditionFacts& facts, const SheetWords& words) {
    const std::string name = row.isListed ? words("disclosure." + row.item) : row.item;
    if (row.answer)
        return {{name, words.of("disclosure", *row.answer), row.text}};
    const std::string recorded = fromRecords(row.item, facts, words);
    if (recorded.empty())
        return {{name, words("disclosure.notKnown"), ""}};
    return {{name, words("disclosure.fromRecord"), recorded}};
}

}  // namespace

void addDisclosure(Flow& flow, const EditionFacts& facts, const SheetWords& words) {
    flow.paragraph(words("disclosure.note"), TextStyle::small);
    SheetTable table;
    table.columns = {{words("disclosure.item"), Alignment::left, 1.2, 0},
                     {words("disclosure.answer"), Alignment::left, 0, 26},
                     {words("disclosure.words"), Alignment::left, 1.4, 0}};
    bool anyFromRecord = false;
    for (const DisclosureRow& row : disclosureOf(facts.edition)) {
        table.rows.push_back(rowOf(row, facts, words));
        anyFromRecord =
            anyFromRecord || table.rows.back().cells[1].text == words("disclosure.fromRecord");
    }
    flow.table(table);
    if (isPromiseOverdue(facts))
        addPromiseNotes(flow, facts, "matrix", words);
    std::vector<std::string> sentences = {words("disclosure.source")};
    if (anyFromRecord)
        sentences.push_back(words("disclosure.fromRecordNote"));
    flow.paragraph(words.sentences(sentences), TextStyle::small);
}

}  // namespace rackbook::editionparts
