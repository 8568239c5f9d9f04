// The readiness check over a whole book, light and looks learnt from included, beside the bare scan
// of the same rows and the reckoning of the sun's year.
#pragma once

#include <string>

namespace rackbook {

struct LightFigures {
    std::size_t impressions = 0;
    std::size_t moves = 0;  // of one impression each
    double loadSeconds = 0;
    double learnSeconds = 0;  // inks, doses at all looks, thresholds
    double judgeSeconds = 0;
    double bareScanSeconds = 0;
    std::int64_t scannedRows = 0;
    double solarTableSeconds = 0;  // a year's days under usual skies
    double highestMemory_MB = 0;   // of this process so far
};

// The best of three rounds. Meant for a process of its own, so that the memory is its own.
LightFigures measuredLight(const std::string& bookPath, const std::string& schemaFolder);

}  // namespace rackbook
