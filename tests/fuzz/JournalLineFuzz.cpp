// Journals as text, and the JSON below them.
#include "Fuzz.h"
#include "exchange/JournalLines.h"

using namespace rackbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    fuzz::tolerateRefusal([&] {
        const JournalRow row = journalRowFrom(fuzz::textOf(data, size), "journal.jsonl", 1);
        const std::string line = journalLine(row);
        fuzz::require(journalLine(journalRowFrom(line, "journal.jsonl", 1)) == line,
                      "entries come back equal");
    });
    return 0;
}
