// A physical swatch of a mix or of one lot.
#pragma once

#include <optional>
#include <string>

#include "records/Lot.h"
#include "records/Mix.h"
#include "records/Place.h"

namespace rackbook {

struct Drawdown {
    static constexpr RecordKind kind = RecordKind::drawdown;
    std::string id;
    std::optional<Ref<Mix>> mix;  // exactly one of mix and lot
    std::optional<Ref<Lot>> lot;
    std::string substrate;
    std::optional<double> filmWeight_gm2;
    std::optional<EdtfDate> madeOn;
    std::optional<Ref<Place>> place;
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("id", r.id);
        v("mix", r.mix);
        v("lot", r.lot);
        v("substrate", r.substrate);
        v("filmWeight_gm2", r.filmWeight_gm2);
        v("madeOn", r.madeOn);
        v("place", r.place);
        v("note", r.note);
    }
};

}  // namespace rackbook
