// A balance that the studio weighs on.
#pragma once

#include <optional>
#include <string>

#include "base/Edtf.h"
#include "records/RecordKind.h"
#include "records/Ref.h"

namespace rackbook {

struct Balance {
    static constexpr RecordKind kind = RecordKind::balance;
    std::string id;
    std::string name;
    double readability_g = 0;               // the step of its display, above 0
    std::optional<double> repeatability_g;  // standard deviation of one load weighed many times
    std::optional<double> capacity_g;       // the most it can carry, dish and all
    std::optional<EdtfDate> retiredOn;
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("id", r.id);
        v("name", r.name);
        v("readability_g", r.readability_g);
        v("repeatability_g", r.repeatability_g);
        v("capacity_g", r.capacity_g);
        v("retiredOn", r.retiredOn);
        v("note", r.note);
    }
};

}  // namespace rackbook
