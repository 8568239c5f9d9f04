// Invented books of any size for measuring: the same seed and size give the same records.
#pragma once

#include <cstdint>
#include <memory>
#include <vector>

#include "records/Record.h"

namespace rackbook {

enum class StudioLife {
    season,  // begun within a year and a half, half of each edition still hanging
    years  // over 25 years up to 2026-06-01: all but the last hundred or so editions in drawers or
           // sold
};

// A studio with about that many impressions in editions of 20 to 60 sheets, five to eight layers
// each: stock mixes, let-downs and driered portions by weight, one or two pulls a layer with
// spoils, hanging after each, looks, signing, half of it or all put into drawers.
class GeneratedStudio {
public:
    // Pre: impressions is 1 or more.
    GeneratedStudio(int impressions, std::uint32_t seed, StudioLife life);
    ~GeneratedStudio();

    // The studio itself first, then one edition after another with all that belongs to it; nothing
    // where there are no more.
    std::vector<Record> next();

private:
    class Inner;
    std::unique_ptr<Inner> m_inner;
};

// All records of a studio of one season.
std::vector<Record> generatedRecords(int impressions, std::uint32_t seed);

}  // namespace rackbook
