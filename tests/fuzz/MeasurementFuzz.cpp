// Files of measuring instruments.
#include "Fuzz.h"
#include "exchange/MeasurementFile.h"

using namespace rackbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    fuzz::tolerateRefusal([&] {
        const MeasurementFile file = measurementsIn(fuzz::textOf(data, size), "readings");
        fuzz::require(!file.samples.empty(), "what is read has samples");
    });
    return 0;
}
