// Dates as people and files write them.
#include "Fuzz.h"
#include "base/Edtf.h"

using namespace rackbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    fuzz::tolerateRefusal([&] {
        const EdtfDate date = EdtfDate::parse(fuzz::textOf(data, size));
        fuzz::require(date.earliest() <= date.latest(), "a date begins before it ends");
        const EdtfDate again = EdtfDate::parse(date.text());
        fuzz::require(
            again == date && again.earliest() == date.earliest() && again.latest() == date.latest(),
            "dates read back equal");
    });
    return 0;
}
