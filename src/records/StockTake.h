// What was found in a container when it was weighed again.
#pragma once

#include <optional>
#include <string>

#include "base/Edtf.h"
#include "records/Balance.h"
#include "records/Lot.h"

namespace rackbook {

struct StockTake {
    static constexpr RecordKind kind = RecordKind::stockTake;
    std::string id;
    Ref<Lot> lot;
    EdtfDate at = EdtfDate::ofMinute(0);
    double mass_g = 0;  // of what is still usable, without the container, 0 or more
    std::optional<Ref<Balance>> balance;
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("id", r.id);
        v("lot", r.lot);
        v("at", r.at);
        v("mass_g", r.mass_g);
        v("balance", r.balance);
        v("note", r.note);
    }
};

}  // namespace rackbook
