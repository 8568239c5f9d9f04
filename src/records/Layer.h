// One colour run of an edition, planned or printed, in its order.
#pragma once

#include <optional>
#include <string>

#include "records/Block.h"
#include "records/Mix.h"

namespace rackbook {

struct Reading;

struct Layer {
    static constexpr RecordKind kind = RecordKind::layer;
    std::string id;
    Ref<Edition> edition;
    int ordinal = 1;  // 1 is printed first; unique in an edition
    std::optional<Ref<Block>> block;
    std::optional<int> blockState;
    std::string colourWords;
    std::optional<Ref<Mix>> mix;           // the stock mix or let-down it is printed from
    std::optional<double> coverage;        // inked share of the image, 0 … 1
    std::optional<double> filmWeight_gm2;  // wet, aimed at
    std::optional<double> extenderShare;   // as remembered, where no weighings exist, 0 … 1
    std::optional<Ref<Reading>> reading;   // the colour it is held to
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("id", r.id);
        v("edition", r.edition);
        v("ordinal", r.ordinal);
        v("block", r.block);
        v("blockState", r.blockState);
        v("colourWords", r.colourWords);
        v("mix", r.mix);
        v("coverage", r.coverage);
        v("filmWeight_gm2", r.filmWeight_gm2);
        v("extenderShare", r.extenderShare);
        v("reading", r.reading);
        v("note", r.note);
    }
};

}  // namespace rackbook
