// Tables in CSV: bytes to text, text to rows, rows to text again.
#include "Fuzz.h"
#include "exchange/CsvText.h"
#include "exchange/CsvWriter.h"
#include "exchange/TableFile.h"

using namespace rackbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    fuzz::tolerateRefusal([&] {
        const TableFile table = tableFileFrom(fuzz::textOf(data, size), {}, "table.csv");
        if (!table.faults.empty())
            return;
        std::vector<std::vector<std::string>> rows;
        for (const CsvRow& row : table.rows)
            rows.push_back(row.fields);
        const std::vector<CsvRow> again = csvRows(csvText(rows, {}), ',', "again.csv");
        // An empty table and one empty field are one and the same text.
        fuzz::require(again.size() == rows.size() || rows.empty(), "as many rows come back");
        for (std::size_t i = 0; i < rows.size() && i < again.size(); ++i)
            fuzz::require(again[i].fields == rows[i], "rows come back equal");
    });
    return 0;
}
