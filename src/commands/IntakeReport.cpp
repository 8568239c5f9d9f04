#include "commands/IntakeReport.h"

#include <algorithm>

#include "cli/Table.h"

namespace rackbook {

void printTally(Console& console, const IntakeTally& tally, bool dryRun, const std::string& book) {
    const bool anyStruck =
        std::any_of(tally.lines.begin(), tally.lines.end(),
                    [](const IntakeTally::Line& line) { return line.struck > 0; });
    std::vector<Column> columns = {{"record"},
                                   {"new", Align::right},
                                   {"changed", Align::right},
                                   {"corrected", Align::right},
                                   {"unchanged", Align::right}};
    if (anyStruck)
        columns.push_back({"struck out", Align::right});
    Table table(columns);
    for (const IntakeTally::Line& line : tally.lines) {
        std::vector<std::string> row = {
            textOf(line.kind), std::to_string(line.recorded), std::to_string(line.updated),
            std::to_string(line.corrected), std::to_string(line.unchanged)};
        if (anyStruck)
            row.push_back(std::to_string(line.struck));
        table.addRow(row);
    }
    console.out() << table.text(console.width(), "No records were given.") << "\n";
    if (tally.lines.empty())
        return;
    if (tally.written() == 0)
        console.out() << "The book says all of this already; nothing was changed.\n";
    else if (dryRun)
        console.out() << "Tried only: nothing was recorded.\n";
    else
        console.out() << tally.written() << (tally.written() == 1 ? " record" : " records")
                      << " taken into " << book << ".\n";
}

}  // namespace rackbook
