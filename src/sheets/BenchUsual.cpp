#include "sheets/BenchUsual.h"

#include <algorithm>

#include "records/AsItStood.h"
#include "sheets/NamesInBoxes.h"

namespace rackbook {

namespace {

// A lot or a mix that is not finished; the record as it stood.
template <class R>
bool isLeft(const R& record, CivilMinute asOf) {
    return !record.finishedOn || isAfter(record.finishedOn, asOf);
}

// The latest of those that `fits`; of two at one moment the one recorded later.
template <class R, class When, class Fits>
const R* latest(const std::vector<R>& records, When&& when, CivilMinute asOf, Fits&& fits) {
    const R* found = nullptr;
    for (const R& record : records)
        if (!isAfter(when(record), asOf) && fits(record) &&
            (!found || when(record).earliest() >= when(*found).earliest()))
            found = &record;
    return found;
}

template <class R>
std::string nameOf(const RecordSet& records, const std::optional<Ref<R>>& ref) {
    const R* record = ref ? records.find<R>(ref->id) : nullptr;
    return record ? nameInBox(records, *record) : std::string();
}

bool isPulledFor(const RecordSet& records, const Pull& pull, const std::string& edition) {
    const Layer* layer = records.find<Layer>(pull.layer.id);
    return layer && layer->edition.id == edition;
}

bool isOwn(const Place& place) {
    return !place.holder;
}

bool isToHangAt(const Place& place) {
    switch (place.placeKind) {
        case PlaceKind::room:
        case PlaceKind::rack:
        case PlaceKind::wall:
        case PlaceKind::other:
            return isOwn(place);
        default:
            return false;
    }
}

// The lot that the edition's ink was last weighed from.
std::string lastLot(const RecordSet& records, LotKind kind, const std::string& edition,
                    CivilMinute asOf) {
    const Weighing* weighing = latest<Weighing>(
        records.of<Weighing>(), [](const Weighing& one) { return one.at; }, asOf,
        [&](const Weighing& one) {
            const Lot* lot = one.lot ? records.find<Lot>(one.lot->id) : nullptr;
            const Mix* mix = records.find<Mix>(one.mix.id);
            return lot && lot->lotKind == kind && isLeft(*lot, asOf) && mix && mix->edition &&
                   mix->edition->id == edition;
        });
    return weighing ? nameOf(records, weighing->lot) : std::string();
}

template <class R, class Fits>
std::vector<std::string> namesOf(const RecordSet& records, Fits&& fits) {
    std::vector<std::string> names;
    for (const R& record : records.of<R>())
        if (fits(record))
            names.push_back(nameInBox(records, record));
    std::sort(names.begin(), names.end());
    return names;
}

}  // namespace

BenchUsual benchUsualOf(const RecordSet& records, const std::string& edition, CivilMinute asOf) {
    BenchUsual usual;
    const Pull* pull = latest<Pull>(
        records.of<Pull>(), [](const Pull& one) { return one.start; }, asOf,
        [&](const Pull& one) { return isPulledFor(records, one, edition); });
    if (pull) {
        usual.press = pull->press.value_or("");
        usual.packing = pull->packing.value_or("");
        usual.printer = nameOf(records, pull->printer);
    }
    const Move* move = latest<Move>(
        records.of<Move>(), [](const Move& one) { return one.at; }, asOf,
        [&](const Move& one) {
            const Impression* impression =
                one.impressions.empty() ? nullptr : records.find(one.impressions.front());
            const Place* place = records.find<Place>(one.to.id);
            return one.why == MoveWhy::hang && impression && impression->edition.id == edition &&
                   place && isOwn(*place);
        });
    if (move)
        usual.hungAt = nameInBox(records, *records.find<Place>(move->to.id));
    usual.baseLot = lastLot(records, LotKind::base, edition, asOf);
    usual.drierLot = lastLot(records, LotKind::drier, edition, asOf);
    return usual;
}

BenchChoices benchChoicesOf(const RecordSet& records, const std::string& edition,
                            CivilMinute asOf) {
    const auto lotsOf = [&](LotKind kind) {
        return namesOf<Lot>(
            records, [&](const Lot& lot) { return lot.lotKind == kind && isLeft(lot, asOf); });
    };
    BenchChoices choices;
    choices.printers = namesOf<Party>(records, [](const Party& party) {
        return std::find(party.roles.begin(), party.roles.end(), PartyRole::printer) !=
               party.roles.end();
    });
    choices.baseLots = lotsOf(LotKind::base);
    choices.drierLots = lotsOf(LotKind::drier);
    choices.portions = namesOf<Mix>(records, [&](const Mix& mix) {
        return mix.purpose == MixPurpose::portion && mix.edition && mix.edition->id == edition &&
               isLeft(mix, asOf);
    });
    choices.places = namesOf<Place>(records, isToHangAt);
    return choices;
}

}  // namespace rackbook
