// One change to the mass of a mix: an addition from a lot or from another mix, a withdrawal, a
// discard. An addition from another mix is that mix's withdrawal at the same time.
#pragma once

#include <optional>
#include <string>

#include "base/Edtf.h"
#include "records/Balance.h"
#include "records/Lot.h"
#include "records/Mix.h"

namespace rackbook {

enum class WeighingAct { add, withdraw, discard };
template <>
struct EnumText<WeighingAct> {
    static constexpr const char* names[] = {"add", "withdraw", "discard"};
};

struct Weighing {
    static constexpr RecordKind kind = RecordKind::weighing;
    std::string id;
    Ref<Mix> mix;
    WeighingAct act = WeighingAct::add;
    EdtfDate at = EdtfDate::ofMinute(0);
    int sequence = 0;                 // order among weighings of the same time, 0 … 100,000
    std::optional<Ref<Lot>> lot;      // where an addition comes from: a lot …
    std::optional<Ref<Mix>> fromMix;  // … or another mix
    std::optional<double> mass_g;     // above 0; absent where it is not known
    std::optional<double> massLow_g;  // bounds of a badly known mass, 0 or more
    std::optional<double> massHigh_g;
    std::optional<Ref<Balance>> balance;  // what it was weighed on
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("id", r.id);
        v("mix", r.mix);
        v("act", r.act);
        v("at", r.at);
        v("sequence", r.sequence);
        v("lot", r.lot);
        v("fromMix", r.fromMix);
        v("mass_g", r.mass_g);
        v("massLow_g", r.massLow_g);
        v("massHigh_g", r.massHigh_g);
        v("balance", r.balance);
        v("note", r.note);
    }
};

}  // namespace rackbook
