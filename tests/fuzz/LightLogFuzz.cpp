// Files of light loggers.
#include "Fuzz.h"
#include "exchange/LightLog.h"

using namespace rackbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    fuzz::tolerateRefusal([&] {
        const LightLog log = lightLogIn(fuzz::textOf(data, size), "log.csv", {});
        fuzz::require(!log.samples.empty(), "what is read has samples");
        for (std::size_t i = 1; i < log.samples.size(); ++i)
            fuzz::require(log.samples[i - 1].utc_min < log.samples[i].utc_min,
                          "samples stand in the order of time");
    });
    return 0;
}
