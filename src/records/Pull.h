// One printing run of a layer on some impressions, with one portion of ink.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "records/Impression.h"
#include "records/Layer.h"

namespace rackbook {

struct Pull {
    static constexpr RecordKind kind = RecordKind::pull;
    std::string id;
    Ref<Layer> layer;
    EdtfDate start = EdtfDate::ofMinute(0);
    std::optional<EdtfDate> end;
    std::optional<Ref<Mix>> portion;
    std::vector<Ref<Impression>> impressions;  // every sheet printed, spoils among them
    std::vector<Ref<Impression>> spoiled;
    std::optional<Ref<Party>> printer;
    std::optional<std::string> press;  // the press, or "hand" and with what
    std::optional<std::string> packing;
    std::optional<double> temperature_C;
    std::optional<double> humidity_pct;  // relative, 0 … 100
    std::optional<double> inkBefore_g;   // ink on the slab before and after; the difference
    std::optional<double> inkAfter_g;    // left the portion
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("id", r.id);
        v("layer", r.layer);
        v("start", r.start);
        v("end", r.end);
        v("portion", r.portion);
        v("impressions", r.impressions);
        v("spoiled", r.spoiled);
        v("printer", r.printer);
        v("press", r.press);
        v("packing", r.packing);
        v("temperature_C", r.temperature_C);
        v("humidity_pct", r.humidity_pct);
        v("inkBefore_g", r.inkBefore_g);
        v("inkAfter_g", r.inkAfter_g);
        v("note", r.note);
    }
};

}  // namespace rackbook
