#include "sheets/BenchFacts.h"
#include "records/AsItStood.h"

#include <algorithm>
#include <set>

namespace rackbook {

namespace {

std::set<std::string> printedWith(const RecordSet& records, const std::string& layer,
                                  CivilMinute asOf) {
    std::set<std::string> ids;
    for (const Pull& pull : records.of<Pull>())
        if (pull.layer.id == layer && !isAfter(pull.start, asOf))
            for (const Ref<Impression>& impression : pull.impressions)
                ids.insert(impression.id);
    return ids;
}

// Those of the last layer before this one that was printed.
std::set<std::string> printedBefore(const RecordSet& records, const Layer& layer, CivilMinute asOf,
                                    int& ordinal) {
    std::vector<const Layer*> before;
    for (const Layer& other : records.of<Layer>())
        if (other.edition.id == layer.edition.id && other.ordinal < layer.ordinal)
            before.push_back(&other);
    std::sort(before.begin(), before.end(),
              [](const Layer* a, const Layer* b) { return a->ordinal > b->ordinal; });
    for (const Layer* other : before) {
        std::set<std::string> ids = printedWith(records, other->id, asOf);
        if (!ids.empty()) {
            ordinal = other->ordinal;
            return ids;
        }
    }
    return {};
}

void addImpressions(BenchFacts& facts, const RecordSet& records) {
    const std::set<std::string> already = printedWith(records, facts.layer.id, facts.asOf);
    const std::set<std::string> before =
        printedBefore(records, facts.layer, facts.asOf, facts.layerBefore);
    for (const Impression& impression : records.of<Impression>()) {
        const bool isKept =
            impression.fate == ImpressionFate::kept || isAfter(impression.fateOn, facts.asOf);
        if (impression.edition.id != facts.layer.edition.id || !isKept)
            continue;
        if (already.count(impression.id) > 0)
            facts.printed.push_back(impression.workingNumber);
        else if (facts.layerBefore > 0 && before.count(impression.id) == 0)
            facts.missed.push_back(impression.workingNumber);
        else
            facts.impressions.push_back({impression.workingNumber,
                                         isAfter(impression.signedOn, facts.asOf)
                                             ? std::string()
                                             : impression.designation.value_or(""),
                                         impression.id});
    }
    std::sort(facts.printed.begin(), facts.printed.end());
    std::sort(facts.missed.begin(), facts.missed.end());
    std::sort(facts.impressions.begin(), facts.impressions.end(),
              [](const BenchImpression& a, const BenchImpression& b) {
                  return a.workingNumber < b.workingNumber;
              });
}

}  // namespace

BenchFacts benchFactsOf(const RecordSet& records, const Layer& layer, CivilMinute asOf) {
    BenchFacts facts;
    facts.asOf = asOf;
    facts.layer = layer;
    if (!records.of<Book>().empty())
        facts.studio = records.of<Book>().front().studio;
    if (const Edition* edition = records.find(layer.edition)) {
        facts.code = edition->code;
        facts.title = edition->title;
    }
    for (const Layer& other : records.of<Layer>())
        facts.layers += other.edition.id == layer.edition.id ? 1 : 0;
    if (const Block* block = records.find(layer.block)) {
        facts.block = block->name;
        for (const BlockState& state : block->states)
            if (layer.blockState == state.ordinal)
                facts.stateWords = state.words;
    }
    if (const Mix* mix = records.find(layer.mix))
        facts.mix = mix->name;
    addImpressions(facts, records);
    facts.usual = benchUsualOf(records, layer.edition.id, asOf);
    facts.choices = benchChoicesOf(records, layer.edition.id, asOf);
    return facts;
}

}  // namespace rackbook
