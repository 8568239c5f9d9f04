#include "commands/IntakeReport.h"

#include "cli/Table.h"

namespace rackbook {

void printTally(Console& console, const IntakeTally& tally, bool dryRun, const std::string& book) {
    Table table({{"record"},
                 {"new", Align::right},
                 {"changed", Align::right},
                 {"corrected", Align::right},
                 {"unchanged", Align::right}});
    for (const IntakeTally::Line& line : tally.lines)
        table.addRow({textOf(line.kind), std::to_string(line.recorded),
                      std::to_string(line.updated), std::to_string(line.corrected),
                      std::to_string(line.unchanged)});
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
