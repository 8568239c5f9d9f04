#include "exchange/LinkedProduction.h"

#include <algorithm>

#include "base/Text.h"
#include "exchange/LinkedEdition.h"

namespace rackbook {

namespace {

Tree activity(const std::string& label) {
    return Tree::object().set("type", "Production").set("_label", label);
}

Tree actorPart(const Ref<Party>& party, const std::string& role, LinkedWork& work) {
    Tree part = activity(role);
    Tree statements = Tree::array();
    work.addActor(part, statements, party, role);
    setUnlessEmpty(part, "referred_to_by", std::move(statements));
    return part;
}

const BlockState* stateOf(const Block* block, const Layer& layer) {
    if (block && layer.blockState)
        for (const BlockState& state : block->states)
            if (state.ordinal == *layer.blockState)
                return &state;
    return nullptr;
}

std::string inkWords(const Pull& pull, const Layer& layer, const LinkedWork& work) {
    std::string words = "Ink: " + layer.colourWords;
    const Mix* portion = work.records().find(pull.portion);
    const Mix* mix = portion ? portion : work.records().find(layer.mix);
    const std::set<std::string> pigments =
        mix ? work.pigmentsOf(*mix, pull.start) : std::set<std::string>();
    if (!pigments.empty())
        words += "; pigments weighed into it (Colour Index generic names): " +
                 joined({pigments.begin(), pigments.end()}, ", ");
    return words;
}

Tree partOf(const Pull& pull, const Layer& layer, LinkedWork& work) {
    Tree part = activity("layer " + std::to_string(layer.ordinal) + ", " + layer.colourWords);
    part.set("identified_by",
             Tree::array().add(linkedIdentifier(pull.id, "id of the record of the run")));
    part.set("timespan", linkedSpan(pull.start, pull.end, work.timeZone()));
    const Block* block = work.records().find(layer.block);
    if (block)
        part.set("used_specific_object", Tree::array().add(work.uris().reference(
                                             LinkedKind::block, block->id, block->name)));
    Tree statements = Tree::array();
    statements.add(linkedStatement(inkWords(pull, layer, work), linkedTerms::materialStatement,
                                   "ink of the layer"));
    if (const BlockState* state = stateOf(block, layer))
        statements.add(linkedStatement(
            "State " + std::to_string(state->ordinal) + " of the block: " + state->words,
            linkedTerms::description, "state of the block"));
    if (pull.press)
        statements.add(
            linkedStatement("Printed with: " + *pull.press, linkedTerms::description, "press"));
    if (pull.printer)
        work.addActor(part, statements, *pull.printer, "printer");
    setUnlessEmpty(part, "referred_to_by", std::move(statements));
    return part;
}

// From the first run to the last. Where there is none, or its end is not known, the edition may
// declare when it was printed.
std::optional<Tree> spanOf(const std::vector<const Pull*>& pulls, const Edition& edition,
                           const std::string& timeZone) {
    if (pulls.empty())
        return edition.year ? std::optional(linkedSpan(*edition.year, timeZone)) : std::nullopt;
    const auto startsEarlier = [](const Pull* a, const Pull* b) {
        return a->start.earliest() < b->start.earliest();
    };
    const Pull& first = **std::min_element(pulls.begin(), pulls.end(), startsEarlier);
    const Pull& last = **std::max_element(pulls.begin(), pulls.end(), startsEarlier);
    const bool yearBounds =
        !last.end && edition.year && edition.year->latest() >= last.start.latest();
    return yearBounds ? linkedSpanWithin(first.start, *edition.year, timeZone)
                      : linkedSpan(first.start, last.end, timeZone);
}

}  // namespace

Tree productionOf(const Impression& impression, const Edition& edition, LinkedWork& work) {
    const std::vector<const Pull*> pulls = work.pullsOf(impression);
    Tree production = activity("making of the print");
    if (std::optional<Tree> span = spanOf(pulls, edition, work.timeZone()))
        production.set("timespan", std::move(*span));
    if (!edition.process.empty())
        production.set("technique", Tree::array().add(work.uris().reference(
                                        LinkedKind::process, processId(edition), edition.process)));
    Tree parts = Tree::array();
    parts.add(actorPart(edition.maker, "maker", work));
    const bool runsNamePrinters =
        std::any_of(pulls.begin(), pulls.end(), [](const Pull* pull) { return pull->printer; });
    if (edition.printer && !runsNamePrinters)
        parts.add(actorPart(*edition.printer, "printer", work));
    for (const Pull* pull : pulls)
        if (const Layer* layer = work.records().find(pull->layer))
            parts.add(partOf(*pull, *layer, work));
    production.set("part", std::move(parts));
    return production;
}

std::optional<Tree> productionOf(const Block& block, const LinkedWork& work) {
    Tree parts = Tree::array();
    for (const BlockState& state : block.states) {
        Tree part = activity("state " + std::to_string(state.ordinal));
        if (state.cutOn)
            part.set("timespan", linkedSpan(*state.cutOn, work.timeZone()));
        if (!state.words.empty())
            part.set("referred_to_by",
                     Tree::array().add(linkedStatement(state.words, linkedTerms::description,
                                                       "what the state shows")));
        parts.add(std::move(part));
    }
    if (parts.asArray()->empty())
        return std::nullopt;
    return activity("cutting of the block").set("part", std::move(parts));
}

Tree destructionOf(const std::optional<EdtfDate>& date, const LinkedWork& work) {
    Tree destruction = Tree::object().set("type", "Destruction").set("_label", "destruction");
    if (date)
        destruction.set("timespan", linkedSpan(*date, work.timeZone()));
    return destruction;
}

}  // namespace rackbook
