#include "commands/ReturnedSheet.h"

#include <algorithm>
#include <set>

#include "base/Error.h"
#include "base/Text.h"
#include "commands/JournalWords.h"
#include "commands/PlainFields.h"
#include "commands/SheetFile.h"
#include "commands/SheetSelection.h"
#include "store/EntryOf.h"

namespace rackbook {

namespace {

constexpr std::size_t identityDigits = 16;

InputError flattened(const std::string& path) {
    return InputError(path,
                      "no boxes are left in it: it was flattened, or printed to a PDF, when it was "
                      "saved",
                      "Fill in the sheet again and save it as it is, or record the run with "
                      "rackbook pull.");
}

// One bench sheet about a layer and impressions.
CarriedSheet benchSheetIn(const std::string& path, bool hasForm) {
    SheetFile file;
    try {
        file = readSheetFile(path);
    } catch (const InputError&) {
        if (!hasForm)
            throw flattened(path);
        throw;
    }
    CarriedSheet& sheet = file.sheets.front();
    const SheetHeading& heading = sheet.facts.heading;
    if (file.sheets.size() != 1 || heading.sheet != "bench")
        throw InputError(path,
                         "it is no bench sheet but a sheet \"" + excerpt(heading.sheet) + "\"",
                         "Name a bench sheet that was filled in.");
    if (!hasForm)
        throw flattened(path);
    if (!heading.about.layer || heading.about.impressions.empty())
        throw InputError(path, "it lists no impression to print", "There is nothing to take.");
    return std::move(sheet);
}

[[noreturn]] void refuseTakenAlready(const ReturnedSheet& sheet, const BookFile& book,
                                     const EntryNote& entry, const std::string& id) {
    const std::string timeZone = timeZoneOf(book);
    throw InputError(sheet.path,
                     "it was taken already, on " + recordedWords(entry.recordedAt, timeZone) +
                         " (" + timeZone + ") by " + recordedByWords(entry.recordedBy) + ": " + id,
                     "Look at it with rackbook show pull " + id +
                         "; rackbook undo takes it back; another run wants a new sheet, from "
                         "rackbook sheet bench.");
}

// Where its run was struck out and the rest was not, that would be recorded a second time.
void requireAllStruck(const ReturnedSheet& sheet, const BookFile& book) {
    for (const RecordKind kind : {RecordKind::mix, RecordKind::move}) {
        const std::optional<EntryNote> entry = firstEntryOf(book, kind, sheet.idOf(kind));
        if (entry && !entry->isStruck)
            throw InputError(sheet.path,
                             "it was taken already, and its run was struck out, but not its " +
                                 plainWord(textOf(kind)) + " " + sheet.idOf(kind),
                             "Strike that out too, with rackbook strike, or record the run with "
                             "rackbook pull.");
    }
}

// What was struck out keeps its id, so that each taking after an undo has ids of its own.
void findTaking(ReturnedSheet& sheet, const BookFile& book) {
    for (sheet.taking = 1;; ++sheet.taking) {
        const std::string id = sheet.idOf(RecordKind::pull);
        const std::optional<EntryNote> entry = firstEntryOf(book, RecordKind::pull, id);
        if (!entry)
            return;
        if (!entry->isStruck)
            refuseTakenAlready(sheet, book, *entry, id);
        requireAllStruck(sheet, book);
    }
}

// Of what a sheet says, the layer and the impressions that it lists.
SheetFacts factsThatMatter(SheetFacts facts, const SheetAbout& about) {
    std::set<std::string> wanted = {"layer " + *about.layer};
    for (const std::string& id : about.impressions)
        wanted.insert("impression " + id);
    auto& records = facts.records;
    records.erase(std::remove_if(records.begin(), records.end(),
                                 [&](const auto& one) { return wanted.count(one.first) == 0; }),
                  records.end());
    return facts;
}

// What happened at any time counts, not only until the day of the sheet.
std::vector<FactsDifference> differencesOf(const CarriedSheet& sheet, const RecordSet& records) {
    const SheetAbout& about = sheet.facts.heading.about;
    SheetHeading today = sheet.facts.heading;
    today.asOf = "9999-12-31";
    BookSheets book(records);
    const SheetFacts inBook =
        sheetFactsFrom(book.textFor(today, sheet.facts.namesHolders), "the book");
    return differencesBetween(factsThatMatter(sheet.facts, about), factsThatMatter(inBook, about));
}

std::string differenceWords(const FactsDifference& difference) {
    if (difference.field.empty())
        return difference.record +
               (difference.inBook.empty() ? " is not in the book" : " is not on the sheet");
    const auto said = [](const std::string& text) {
        return text.empty() ? std::string("nothing") : excerpt(text);
    };
    return difference.record + ": " + plainField(difference.field) + " was " +
           said(difference.onSheet) + ", and is " + said(difference.inBook);
}

[[noreturn]] void refuseState(const std::string& path, const std::string& about,
                              const std::vector<std::string>& parts) {
    constexpr std::size_t mostShown = 5;
    std::vector<std::string> shown(
        parts.begin(),
        parts.begin() + static_cast<std::ptrdiff_t>(std::min(parts.size(), mostShown)));
    if (parts.size() > mostShown)
        shown.push_back(std::to_string(parts.size() - mostShown) + " more");
    throw InputError(path,
                     "the book says something else now than when the sheet was made (" +
                         joined(shown, "; ") + ")",
                     "Make the sheet anew with rackbook sheet bench " + about +
                         " and fill that in, or record the run with rackbook pull.");
}

void requireSameState(const ReturnedSheet& sheet, const CarriedSheet& carried,
                      const RecordSet& records) {
    const std::string& layer = *carried.facts.heading.about.layer;
    std::vector<std::string> parts;
    for (const FactsDifference& difference : differencesOf(carried, records))
        parts.push_back(printable(differenceWords(difference)));
    std::set<std::string> listed(carried.facts.heading.about.impressions.begin(),
                                 carried.facts.heading.about.impressions.end());
    for (const Pull& pull : records.of<Pull>()) {
        const bool isSecond =
            pull.layer.id == layer &&
            std::any_of(pull.impressions.begin(), pull.impressions.end(),
                        [&](const Ref<Impression>& one) { return listed.count(one.id) > 0; });
        if (isSecond)
            parts.push_back("pull " + pull.id + " has printed some of them since");
    }
    if (!parts.empty())
        refuseState(sheet.path, printable(excerpt(layer)), parts);
}

// What the file says it is about may be made up.
template <class R>
const R& inBook(const ReturnedSheet& sheet, const RecordSet& records, const std::string& id) {
    if (const R* record = records.find<R>(id))
        return *record;
    throw InputError(
        sheet.path,
        "the book has no " + std::string(textOf(R::kind)) + " " + printable(excerpt(id)),
        "Name another book, or make the sheet anew with rackbook sheet bench.");
}

void addRecords(ReturnedSheet& sheet, const SheetAbout& about, const RecordSet& records) {
    sheet.layer = inBook<Layer>(sheet, records, *about.layer);
    sheet.edition = inBook<Edition>(sheet, records, sheet.layer.edition.id);
    const std::set<std::string> ids(about.impressions.begin(), about.impressions.end());
    for (const std::string& id : ids)
        sheet.listed.push_back(inBook<Impression>(sheet, records, id));
    std::sort(
        sheet.listed.begin(), sheet.listed.end(),
        [](const Impression& a, const Impression& b) { return a.workingNumber < b.workingNumber; });
    for (const Impression& impression : sheet.listed)
        if (impression.edition.id != sheet.edition.id)
            throw InputError(sheet.path, "it lists impressions of another edition",
                             "Make the sheet anew with rackbook sheet bench.");
}

}  // namespace

std::string ReturnedSheet::idOf(RecordKind kind) const {
    const std::string word = kind == RecordKind::mix ? "portion" : textOf(kind);
    return word + "-" + identity + (taking == 1 ? "" : "-" + std::to_string(taking));
}

ReturnedSheet returnedSheet(const std::string& path, const BookFile& book,
                            const RecordSet& records) {
    ReturnedSheet sheet;
    sheet.path = path;
    sheet.values = readFormValues(path);
    const CarriedSheet carried = benchSheetIn(path, !sheet.values.empty());
    sheet.identity = carried.sha256.substr(0, identityDigits);
    sheet.language = carried.facts.heading.language;
    findTaking(sheet, book);
    requireSameState(sheet, carried, records);
    addRecords(sheet, carried.facts.heading.about, records);
    return sheet;
}

}  // namespace rackbook
