// What the keywords above a CGATS.17 table say about how its samples were measured.
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "exchange/MeasurementDraft.h"

namespace rackbook {

// The value of a keyword, or of one of the named pairs of a keyword (WEIGHTING_FUNCTION); nothing
// where the table does not have it.
struct CgatsKeywords {
    std::function<std::optional<std::string>(const char* keyword)> value;
    std::function<std::optional<std::string>(const char* keyword, const char* name)> named;
};

// A reading that holds the conditions and nothing else. Refuses what contradicts itself, and where
// `hasComputed` (CIELAB or XYZ columns) an illuminant or observer that a reading cannot hold.
// `line` is where the table begins.
Reading cgatsConditions(const CgatsKeywords& keywords, bool hasComputed, int line,
                        MeasurementDraft& draft);

}  // namespace rackbook
