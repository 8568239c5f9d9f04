// What the columns of a CGATS.17 table hold.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "exchange/CgatsScan.h"
#include "exchange/MeasurementDraft.h"

namespace rackbook {

struct CgatsColumns {
    std::optional<std::size_t> name;
    std::optional<std::array<std::size_t, 3>> lab;
    std::optional<std::array<std::size_t, 3>> xyz;
    std::vector<std::size_t> spectrum;  // in the order of the axis
    std::optional<SpectralAxis> axis;
    std::optional<SpectralUnit> unit;

    bool hasColour() const { return lab || xyz || axis; }
};

// What is wrong with them goes into the draft.
CgatsColumns cgatsColumns(const std::vector<CgatsWord>& columns, MeasurementDraft& draft);

}  // namespace rackbook
