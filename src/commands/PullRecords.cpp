#include "commands/PullRecords.h"

#include <set>

#include "base/Text.h"
#include "commands/GivenValues.h"
#include "commands/Moving.h"
#include "commands/SheetSelection.h"

namespace rackbook {

namespace {

std::vector<Impression> sheetsOfFate(const std::vector<Impression>& sheets, ImpressionFate fate,
                                     const EdtfDate& at) {
    std::vector<Impression> found;
    for (const Impression& sheet : sheets) {
        // A pull may be recorded late, after the sheet was spoiled in a later layer.
        const bool wasStillKept = sheet.fateOn && certainlyBefore(at, *sheet.fateOn);
        if (sheet.fate == fate && !wasStillKept)
            found.push_back(sheet);
    }
    return found;
}

void requirePrintable(const Edition& edition, const std::vector<Impression>& sheets,
                      const EdtfDate& at) {
    std::vector<std::string> parts;
    for (const ImpressionFate fate : {ImpressionFate::spoiled, ImpressionFate::destroyed}) {
        const std::vector<Impression> lost = sheetsOfFate(sheets, fate, at);
        if (!lost.empty())
            parts.push_back((lost.size() == 1 ? "sheet " : "sheets ") + numbersOf(lost) +
                            (lost.size() == 1 ? " is " : " are ") + textOf(fate) + " already");
    }
    if (!parts.empty())
        throw UsageError("edition " + edition.code + ": " + joined(parts),
                         "Leave out what cannot be printed; where the book is wrong, correct it "
                         "with rackbook enter "
                         "impression ID fate=kept fateOn= --reason TEXT.");
}

// The move of the good sheets.
MadeRecord hung(const BookFile& book, const PullTold& told, const std::vector<Impression>& good) {
    if (good.empty())
        throw UsageError("every sheet of this pull was spoiled, so none is left to hang",
                         "Leave out --hang.");
    const EdtfDate& at = told.pull.end ? *told.pull.end : told.pull.start;
    return {moveOf(book, good, *told.hungAt, at, MoveWhy::hang), std::nullopt};
}

}  // namespace

std::vector<Impression> without(const std::vector<Impression>& sheets,
                                const std::vector<Impression>& leftOut) {
    std::set<std::string> ids;
    for (const Impression& sheet : leftOut)
        ids.insert(sheet.id);
    std::vector<Impression> rest;
    for (const Impression& sheet : sheets)
        if (ids.count(sheet.id) == 0)
            rest.push_back(sheet);
    return rest;
}

std::vector<MadeRecord> recordsOfPull(const BookFile& book, const PullTold& told) {
    requirePrintable(told.edition, told.printed, told.pull.start);
    Pull pull = told.pull;
    pull.impressions = refsTo(told.printed);
    pull.spoiled = refsTo(told.spoiled);
    std::vector<MadeRecord> made = {{pull, std::nullopt}};
    for (MadeRecord& sheet : withFate(told.spoiled, ImpressionFate::spoiled, dayIn(pull.start)))
        made.push_back(std::move(sheet));
    if (told.hungAt)
        made.push_back(hung(book, told, without(told.printed, told.spoiled)));
    return made;
}

}  // namespace rackbook
