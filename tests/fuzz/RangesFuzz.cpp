// Ranges on the command line.
#include "Fuzz.h"
#include "base/Ranges.h"

using namespace rackbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size > 4096)
        return 0;
    fuzz::tolerateRefusal([&] {
        const std::vector<int> numbers = parseRanges(fuzz::textOf(data, size));
        fuzz::require(parseRanges(formatRanges(numbers)) == numbers, "ranges read back equal");
    });
    return 0;
}
