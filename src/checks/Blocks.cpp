#include <algorithm>
#include <optional>
#include <string>

#include "checks/EachEdition.h"
#include "checks/FindingList.h"
#include "checks/Rules.h"

namespace rackbook::rules {

namespace {

const BlockState* stateOf(const Block& block, int ordinal) {
    for (const BlockState& state : block.states)
        if (state.ordinal == ordinal)
            return &state;
    return nullptr;
}

std::string stateWords(const Block& block, int ordinal) {
    return "state " + std::to_string(ordinal) + " of block " + block.id;
}

void checkAgainstStates(const Block& block, int ordinal, const Pull& pull, FindingList& found) {
    const char* remedy = "Correct the date of the pull or of the cut.";
    const BlockState* own = stateOf(block, ordinal);
    if (own && own->cutOn && certainlyBefore(pull.end.value_or(pull.start), *own->cutOn))
        found.add(Severity::error, pull, "/start",
                  stateWords(block, ordinal) + " was not cut yet at this pull", pull.start.text(),
                  remedy);
    const BlockState* next = stateOf(block, ordinal + 1);
    if (!next || !next->cutOn)
        return;
    if (certainlyBefore(*next->cutOn, pull.start))
        found.add(Severity::error, pull, "/start",
                  stateWords(block, ordinal) + " was cut away before this pull, on " +
                      next->cutOn->text(),
                  pull.start.text(), remedy);
    else if (pull.end && certainlyBefore(*next->cutOn, *pull.end))
        found.add(Severity::error, pull, "/end",
                  stateWords(block, ordinal + 1) + " was cut, on " + next->cutOn->text() +
                      ", before this pull of state " + std::to_string(ordinal) + " had ended",
                  pull.end->text(), remedy);
}

// A cancellation proof is pulled once the matrix is cancelled.
bool isOfCancellation(const AuditContext& context, const Pull& pull) {
    return std::all_of(
        pull.impressions.begin(), pull.impressions.end(), [&](const Ref<Impression>& ref) {
            const Impression* impression = context.records().find(ref);
            return impression && impression->designationKind == DesignationKind::cancellationProof;
        });
}

void checkAgainstFate(const AuditContext& context, const Block& block, const Pull& pull,
                      FindingList& found) {
    if (block.fate == MatrixFate::kept || !block.fateOn ||
        !certainlyBefore(*block.fateOn, pull.start) || isOfCancellation(context, pull))
        return;
    found.add(Severity::error, pull, "/start",
              "block " + block.id + " was " + matrixFateWords(block.fate) + " before this pull",
              pull.start.text(), "Correct the date of the pull or of the block's fate.");
}

void checkBlock(const Block& block, FindingList& found) {
    for (std::size_t i = 1; i < block.states.size(); ++i) {
        const std::optional<EdtfDate>& before = block.states[i - 1].cutOn;
        const std::optional<EdtfDate>& cut = block.states[i].cutOn;
        if (before && cut && certainlyBefore(*cut, *before))
            found.add(Severity::error, block, elementPointer("/states", i) + "/cutOn",
                      "it was cut before the state that comes before it", cut->text(),
                      "Correct one of the two dates.");
    }
    const std::optional<EdtfDate> last =
        block.states.empty() ? std::nullopt : block.states.back().cutOn;
    if (last && block.fateOn && block.fate != MatrixFate::kept &&
        certainlyBefore(*block.fateOn, *last))
        found.add(
            Severity::error, block, "/fateOn",
            std::string("it was ") + matrixFateWords(block.fate) + " before its last state was cut",
            block.fateOn->text(), "Correct one of the two dates.");
}

// What was destroyed can no longer be printed, whatever milder end was promised.
bool keepsPromise(MatrixFate promised, MatrixFate fate) {
    return fate == promised || fate == MatrixFate::destroyed;
}

void checkPromise(const AuditContext& context, const Edition& edition, const Block& block,
                  FindingList& found) {
    const MatrixFate promised = *edition.promisedMatrixFate;
    const bool overdue = edition.promisedBy && edition.promisedBy->latest() < context.asOf();
    const std::string words = std::string("edition ") + edition.id +
                              " promises that the matrix is " + matrixFateWords(promised) +
                              (edition.promisedBy ? " by " + edition.promisedBy->text() : "");
    if (block.fate == MatrixFate::kept && (overdue || edition.status == EditionStatus::closed))
        found.add(overdue ? Severity::error : Severity::note, block, "/fate",
                  words + ", and no fate is recorded", textOf(block.fate),
                  "Do it, or record that it was done and when.");
    else if (block.fate != MatrixFate::kept)
        found.add(Severity::warning, block, "/fate",
                  words + ", but it was " + matrixFateWords(block.fate), textOf(block.fate),
                  "Correct the record of the fate or of the promise.");
}

}  // namespace

Findings blockStates(const AuditContext& context) {
    FindingList found;
    eachEdition(context, [&](const Edition&, const EditionFolder& folder) {
        for (std::size_t i = 0; i < folder.layers.size(); ++i) {
            const Layer& layer = *folder.layers[i];
            const Block* block = context.records().find(layer.block);
            if (!block)
                continue;
            if (layer.blockState && !block->states.empty() && !stateOf(*block, *layer.blockState))
                found.add(Severity::error, layer, "/blockState",
                          "block " + block->id + " has no such state",
                          std::to_string(*layer.blockState),
                          "Correct the number, or record the state.");
            for (const Pull* pull : folder.pulls[i]) {
                if (layer.blockState)
                    checkAgainstStates(*block, *layer.blockState, *pull, found);
                checkAgainstFate(context, *block, *pull, found);
            }
        }
    });
    for (const Block& block : context.records().of<Block>())
        checkBlock(block, found);
    return found.take();
}

Findings promisedFate(const AuditContext& context) {
    FindingList found;
    eachEdition(context, [&](const Edition& edition, const EditionFolder& folder) {
        if (!edition.promisedMatrixFate || *edition.promisedMatrixFate == MatrixFate::kept)
            return;
        for (const Block* block : folder.blocks)
            if (!keepsPromise(*edition.promisedMatrixFate, block->fate))
                checkPromise(context, edition, *block, found);
        if (folder.blocks.empty() && edition.status == EditionStatus::closed)
            found.add(Severity::note, edition, "/promisedMatrixFate",
                      std::string("the matrix is promised to be ") +
                          matrixFateWords(*edition.promisedMatrixFate) +
                          ", but no block is recorded",
                      textOf(*edition.promisedMatrixFate), "Record the block and its fate.");
    });
    return found.take();
}

}  // namespace rackbook::rules
