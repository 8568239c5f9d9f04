// How thick a layer is printed: as aimed at, as pulls taught, or as is common.
#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include "calc/InkAmount.h"
#include "commands/InkBook.h"
#include "records/EnumText.h"

namespace rackbook {

enum class WeightSource { given, aimed, layer, edition, studio, commonPractice };
template <>
struct EnumText<WeightSource> {
    static constexpr const char* names[] = {"given",   "aimed",  "layer",
                                            "edition", "studio", "commonPractice"};
};

struct LayerFilm {
    Estimate weight_gm2;
    WeightSource from = WeightSource::commonPractice;
    std::size_t pulls = 0;  // that it was learnt from
};

// Nothing where the image size is not recorded.
std::optional<double> recordedAreaOf_m2(const Edition& edition);

// Of the layer at that position; -1: of any layer the studio prints. What pulls taught, or, where
// nothing was learnt or `aimedFirst`, the layer's own aim with what was learnt as its bounds.
LayerFilm layerFilm(const InkBook& ink, int layer, bool aimedFirst);

// "3 pulls of this layer", "aimed at", "common practice".
std::string filmSourceWords(const LayerFilm& film);

}  // namespace rackbook
