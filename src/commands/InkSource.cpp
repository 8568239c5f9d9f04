#include "commands/InkSource.h"

#include <optional>
#include <vector>

#include "base/Error.h"
#include "base/Text.h"

namespace rackbook {

namespace {

template <class R>
const R& at(const InkBook& ink, int position) {
    return ink.records.of<R>()[static_cast<std::size_t>(position)];
}

constexpr std::size_t prefixLength = 4;

bool isPrefixed(const std::string& words, const char* prefix) {
    return words.compare(0, prefixLength, prefix) == 0;
}

[[noreturn]] void refuseUnknown(const InkBook& ink, const std::string& id) {
    std::vector<std::string> ids;
    for (const Lot& lot : ink.records.of<Lot>())
        ids.push_back(lot.id);
    for (const Mix& mix : ink.records.of<Mix>())
        ids.push_back(mix.id);
    const std::optional<std::string> nearest = nearestName(id, ids);
    throw UsageError("the book has no lot or mix \"" + excerpt(id) + "\"",
                     nearest ? "Did you mean " + *nearest + "?"
                             : "rackbook list lot and rackbook list mix show them.");
}

double mostOf(const MixLedger& byKind, int mix, LotKind kind) {
    return byKind.shareAtEnd(static_cast<std::size_t>(mix), static_cast<int>(kind)).high;
}

}  // namespace

InkSource inkSourceNamed(const InkBook& ink, const std::string& words) {
    const bool lotOnly = isPrefixed(words, "lot:");
    const bool mixOnly = isPrefixed(words, "mix:");
    const std::string id = lotOnly || mixOnly ? words.substr(prefixLength) : words;
    const InkSource source{mixOnly ? -1 : ink.records.indexOf<Lot>(id),
                           lotOnly ? -1 : ink.records.indexOf<Mix>(id)};
    if (source.lot >= 0 && source.mix >= 0)
        throw UsageError("the book has a lot and a mix named " + id,
                         "Write lot:" + id + " or mix:" + id + ".");
    if (source.lot < 0 && source.mix < 0)
        refuseUnknown(ink, id);
    return source;
}

std::pair<std::string, std::string> assignmentIn(const std::string& text, const std::string& option,
                                                 const std::string& form) {
    const std::size_t sign = text.find('=');
    if (sign == std::string::npos || sign == 0 || sign + 1 == text.size())
        throw UsageError("--" + option + " is \"" + excerpt(text) + "\"",
                         "Write " + form + " without spaces around the sign.");
    return {text.substr(0, sign), text.substr(sign + 1)};
}

const std::string& idOf(const InkBook& ink, const InkSource& source) {
    return source.lot >= 0 ? at<Lot>(ink, source.lot).id : at<Mix>(ink, source.mix).id;
}

std::string sourceWords(const InkBook& ink, const InkSource& source) {
    if (source.lot >= 0)
        return lotWords(at<Lot>(ink, source.lot));
    const Mix& mix = at<Mix>(ink, source.mix);
    return mix.id + ", " + mix.name;
}

bool mayHoldDrier(const InkBook& ink, const MixLedger& byKind, const InkSource& source) {
    if (source.lot >= 0)
        return at<Lot>(ink, source.lot).lotKind == LotKind::drier;
    return mostOf(byKind, source.mix, LotKind::drier) > 0;
}

WeighingTurn turnOf(const InkBook& ink, const MixLedger& byKind, const InkSource& source) {
    if (source.lot >= 0)
        return turnOf(at<Lot>(ink, source.lot).lotKind);
    return mostOf(byKind, source.mix, LotKind::ink) > 0 ? WeighingTurn::colour : WeighingTurn::base;
}

}  // namespace rackbook
