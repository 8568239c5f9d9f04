// Light measured at a place over some time of one day.
#pragma once

#include <optional>
#include <string>

#include "base/Edtf.h"
#include "records/LightLevels.h"
#include "records/Place.h"

namespace rackbook {

struct Metering {
    static constexpr RecordKind kind = RecordKind::metering;
    std::string id;
    Ref<Place> place;
    // Each known to the minute, `to` after `from`, at most 25 hours between them: a day on which
    // the clocks are put back is that long.
    EdtfDate from = EdtfDate::ofMinute(0);
    EdtfDate to = EdtfDate::ofMinute(0);
    // At least one of the two, each 0 or more.
    std::optional<double> exposure_lxh;
    std::optional<double> nearUltraviolet_Whm2;  // UV-A, 315–400 nm
    std::optional<double> covered_h;  // how much of the time the instrument saw; absent: all of it
    std::optional<std::string> instrument;
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("id", r.id);
        v("place", r.place);
        v("from", r.from);
        v("to", r.to);
        v("exposure_lxh", r.exposure_lxh);
        v("nearUltraviolet_Whm2", r.nearUltraviolet_Whm2);
        v("covered_h", r.covered_h);
        v("instrument", r.instrument);
        v("note", r.note);
    }
};

// Whether the two hold the same light, or the same ultraviolet, of some time at one place: counted
// together, it would count twice. A meter for light and one for ultraviolet may lie side by side.
inline bool measureTheSame(const Metering& a, const Metering& b) {
    const bool sameQuantity =
        (a.exposure_lxh && b.exposure_lxh) || (a.nearUltraviolet_Whm2 && b.nearUltraviolet_Whm2);
    return a.place == b.place && sameQuantity && a.from.earliest() < b.to.latest() &&
           b.from.earliest() < a.to.latest();
}

// Of the time that the instrument saw, in hours; 0 or less where the record is refused.
inline double seen_h(const Metering& metering) {
    const CivilMinute length_min = metering.to.earliest() - metering.from.earliest();
    return metering.covered_h.value_or(static_cast<double>(length_min) / 60);
}

// Whether it saw more than the least of lit places, as a mean of what it saw.
inline bool sawLight(const Metering& metering) {
    const double seen = seen_h(metering);
    return metering.exposure_lxh.value_or(0) > leastOfLitPlaces_lx * seen ||
           metering.nearUltraviolet_Whm2.value_or(0) > leastOfLitPlacesUltravioletA_Wm2 * seen;
}

}  // namespace rackbook
