#include "commands/PulledBefore.h"

#include <algorithm>

#include "base/Text.h"
#include "commands/SheetSelection.h"
#include "records/RefsTo.h"
#include "store/RecordReader.h"

namespace rackbook {

std::string pulledBeforeWords(const BookFile& book, const Pull& pull, const Edition& edition,
                              const std::vector<Impression>& printed) {
    std::vector<Impression> again;
    std::vector<std::string> runs;
    for (const Pull& earlier : thoseOf<Pull>(book, "layer", pull.layer.id)) {
        const std::size_t before = again.size();
        std::copy_if(
            printed.begin(), printed.end(), std::back_inserter(again),
            [&](const Impression& sheet) { return isAmong(earlier.impressions, sheet.id); });
        if (again.size() > before)
            runs.push_back(earlier.start.text() + " (" + earlier.id + ")");
    }
    if (again.empty())
        return {};
    std::sort(again.begin(), again.end(), [](const Impression& a, const Impression& b) {
        return a.workingNumber < b.workingNumber;
    });
    again.erase(std::unique(again.begin(), again.end(),
                            [](const Impression& a, const Impression& b) { return a.id == b.id; }),
                again.end());
    return edition.code + ":" + numbersOf(again) + " had this layer before: " + joined(runs) +
           ". Where that was this same run, told twice, rackbook undo takes the last one back.";
}

}  // namespace rackbook
