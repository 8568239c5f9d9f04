#include "commands/SheetFile.h"

#include "base/Edtf.h"
#include "base/Error.h"
#include "base/Ranges.h"
#include "base/Sha256.h"
#include "base/Text.h"

namespace rackbook {

namespace {

CivilMinute endOf(const std::string& day) {
    return EdtfDate::parse(day, "the record of a sheet").latest();
}

const SheetKind& kindFor(const std::string& name) {
    for (const SheetKind& kind : sheetKinds())
        if (name == kind.name)
            return kind;
    throw InputError("the record of a sheet",
                     "this version knows no sheet \"" + excerpt(name) + "\"",
                     "Check it with the version of rackbook that made it.");
}

}  // namespace

SheetFile readSheetFile(const std::string& path, const CarriedFilesReader& read) {
    SheetFile file;
    file.path = path;
    file.sha256 = sha256OfFile(path);
    CarriedFiles inside = read(path);
    // A reader cannot hold the file still: what it found belongs to these bytes only where they
    // were there before and after.
    if (sha256OfFile(path) != file.sha256)
        throw InputError(path, "it was written to while it was read",
                         "Read it again once it is complete.");
    for (AssociatedFile& carried : inside.files) {
        SheetFacts facts = sheetFactsFrom(carried.bytes, path + ", " + carried.name);
        std::string hash = sha256(carried.bytes);
        file.sheets.push_back({std::move(carried.bytes), std::move(hash), std::move(facts)});
    }
    return file;
}

SheetFile readSheetFile(const std::string& path) {
    return readSheetFile(path, [](const std::string& name) { return readCarriedFiles(name); });
}

std::string BookSheets::textFor(const SheetHeading& heading, bool namesHolders) {
    const SheetKind& kind = kindFor(heading.sheet);
    const std::string wanted = heading.sheet + " " + heading.asOf + (namesHolders ? " named" : "");
    if (wanted != m_last)
        readyFor(kind, heading, namesHolders);
    m_last = wanted;
    return m_behind->textFor(heading);
}

SheetComparison BookSheets::compare(const CarriedSheet& sheet) {
    SheetComparison comparison;
    const std::string text = textFor(sheet.facts.heading, sheet.facts.namesHolders);
    if (text == sheet.text)
        return comparison;
    comparison.differences = differencesBetween(sheet.facts, sheetFactsFrom(text, "the book"));
    comparison.isRewritten = comparison.differences.empty();
    return comparison;
}

void BookSheets::readyFor(const SheetKind& kind, const SheetHeading& heading, bool namesHolders) {
    const CivilMinute asOf = endOf(heading.asOf);
    SheetEstimates& estimates =
        m_estimates.try_emplace(asOf, m_indexes.records, asOf).first->second;
    const SheetDepth depth = depthOf(kind, namesHolders);
    m_behind = std::make_unique<SheetRecords>(
        m_indexes, depth, asOf,
        [&estimates, verdictsOnly = depth.verdictsOnly](const std::string& impression) {
            return estimates.of(impression, verdictsOnly);
        });
}

std::string aboutWords(const RecordSet& records, const SheetAbout& about) {
    std::string words;
    if (about.edition) {
        const Edition* edition = records.find<Edition>(*about.edition);
        words = edition ? edition->code : *about.edition;
    }
    std::vector<int> numbers;
    for (const std::string& id : about.impressions)
        if (const Impression* impression = records.find<Impression>(id))
            numbers.push_back(impression->workingNumber);
    if (!numbers.empty())
        words += ":" + formatRanges(numbers);
    const auto add = [&](const std::optional<std::string>& id, const char* kind) {
        if (id)
            words = std::string(kind) + " " + *id;
    };
    add(about.layer, "layer");
    add(about.mix, "mix");
    add(about.transfer, "transfer");
    add(about.place, "place");
    return words.empty() ? "the whole book" : words;
}

}  // namespace rackbook
