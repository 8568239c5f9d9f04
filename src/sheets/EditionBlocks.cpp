#include <algorithm>

#include "sheets/EditionParts.h"

namespace rackbook::editionparts {

namespace {

std::string fateText(const Block& block, const SheetWords& words) {
    std::string text = words.of("matrixFate", block.fate);
    if (block.fateOn)
        text = words.inRow({text, words.tableDate(*block.fateOn)});
    return text;
}

void addStates(Flow& flow, const EditionFacts& facts, const SheetWords& words) {
    SheetTable table;
    table.columns = {{words("blocks.state"), Alignment::right, 0, 12},
                     {words("blocks.cut"), Alignment::left, 1, 0},
                     {words("blocks.cutOn"), Alignment::left, 0, 34}};
    for (const Block& block : facts.blocks) {
        if (block.states.empty())
            continue;
        if (facts.blocks.size() > 1) {
            TableRow heading{{block.name}};
            heading.heading = true;
            table.rows.push_back(std::move(heading));
        }
        for (const BlockState& state : block.states)
            table.rows.push_back({{std::to_string(state.ordinal), state.words,
                                   words.tableDateOrNotRecorded(state.cutOn)}});
    }
    if (table.rows.empty())
        return;
    flow.space(0.5);
    flow.table(table);
}

// What was destroyed can no longer be printed, whatever milder end was promised.
bool keepsPromise(MatrixFate promised, MatrixFate fate) {
    return fate == promised || fate == MatrixFate::destroyed;
}

std::string promiseText(const EditionFacts& facts, const SheetWords& words) {
    const Edition& edition = facts.edition;
    if (!edition.promisedMatrixFate)
        return words("matrix.nothingPromised");
    const std::string& fate = words.of("matrixFate", *edition.promisedMatrixFate);
    return edition.promisedBy
               ? words.filled("matrix.promisedBy",
                              {{"fate", fate}, {"date", words.tableDate(*edition.promisedBy)}})
               : fate;
}

}  // namespace

void addBlocks(Flow& flow, const EditionFacts& facts, const SheetWords& words) {
    if (facts.blocks.empty()) {
        flow.paragraph(words("notRecorded"));
        return;
    }
    SheetTable table;
    table.columns = {{words("blocks.block"), Alignment::left, 1, 0},
                     {words("blocks.material"), Alignment::left, 1, 0},
                     {words("blocks.role"), Alignment::left, 0.8, 0},
                     {words("blocks.fate"), Alignment::left, 1.1, 0}};
    for (const Block& block : facts.blocks)
        table.rows.push_back({{block.name, words.textOrNotRecorded(block.material),
                               words.textOrNotRecorded(block.role), fateText(block, words)}});
    flow.table(table);
    addStates(flow, facts, words);
}

void addMatrix(Flow& flow, const EditionFacts& facts, const SheetWords& words) {
    if (facts.blocks.empty() && !facts.edition.promisedMatrixFate) {
        flow.paragraph(words("notRecorded"));
        return;
    }
    SheetTable table;
    table.columns = {{words("matrix.block"), Alignment::left, 1, 0},
                     {words("matrix.promised"), Alignment::left, 1, 0},
                     {words("matrix.recorded"), Alignment::left, 1, 0}};
    for (const Block& block : facts.blocks)
        table.rows.push_back({{block.name, promiseText(facts, words), fateText(block, words)}});
    if (facts.blocks.empty())
        table.rows.push_back(
            {{words("notRecorded"), promiseText(facts, words), words("notRecorded")}});
    flow.table(table);
    addPromiseNotes(flow, facts, "matrix", words);
}

void addPromiseNotes(Flow& flow, const EditionFacts& facts, const std::string& section,
                     const SheetWords& words) {
    const Edition& edition = facts.edition;
    if (!edition.promisedMatrixFate)
        return;
    const bool overdue = isPromiseOverdue(facts);
    std::vector<std::string> undone;
    std::vector<std::string> different;
    for (const Block& block : facts.blocks)
        if (!keepsPromise(*edition.promisedMatrixFate, block.fate))
            (block.fate == MatrixFate::kept ? undone : different).push_back(block.name);
    if (!undone.empty())
        flow.note(overdue ? NoteKind::caution : NoteKind::note, "",
                  words.filled(section + (overdue ? ".overdue" : ".planned"),
                               {{"blocks", words.listed(undone)}}));
    if (!different.empty())
        flow.note(NoteKind::caution, "",
                  words.filled(section + ".different", {{"blocks", words.listed(different)}}));
}

bool isPromiseOverdue(const EditionFacts& facts) {
    const Edition& edition = facts.edition;
    return edition.promisedMatrixFate && edition.promisedBy &&
           edition.promisedBy->latest() < facts.asOf &&
           std::any_of(facts.blocks.begin(), facts.blocks.end(), [&](const Block& block) {
               return block.fate == MatrixFate::kept &&
                      !keepsPromise(*edition.promisedMatrixFate, block.fate);
           });
}

}  // namespace rackbook::editionparts
