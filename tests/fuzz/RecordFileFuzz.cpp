// Record files.
#include <memory>

#include "Fuzz.h"
#include "exchange/RecordCodec.h"
#include "exchange/RecordFiles.h"

using namespace rackbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    // Reading the schemas takes longer than a record file; the reader keeps all that it read.
    constexpr int mostReads = 500;
    static std::unique_ptr<RecordFileReader> reader;
    static int reads = 0;
    if (reads++ % mostReads == 0)
        reader = std::make_unique<RecordFileReader>(RACKBOOK_SOURCE_DIR "/schema");
    const std::size_t before = reader->records().size();
    fuzz::tolerateRefusal([&] {
        reader->read("records.json", std::string(fuzz::textOf(data, size)));
        for (std::size_t i = before; i < reader->records().size(); ++i) {
            const std::string& payload = reader->records()[i].payload;
            fuzz::require(encodeRecord(decodeRecord(payload)) == payload,
                          "records come back equal");
        }
    });
    return 0;
}
