#include "commands/SheetSelection.h"

#include <algorithm>
#include <set>
#include <unordered_map>

#include "base/Error.h"
#include "base/Ranges.h"
#include "base/Text.h"
#include "commands/BookAccess.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

constexpr const char* forms = "Write CODE, CODE:1-12,15 or ids of impressions with commas between.";

std::vector<std::string> splitAtCommas(const std::string& words) {
    std::vector<std::string> parts;
    for (std::size_t at = 0; at <= words.size();) {
        const std::size_t comma = std::min(words.find(',', at), words.size());
        parts.push_back(words.substr(at, comma - at));
        at = comma + 1;
    }
    return parts;
}

// What the part of an unknown id before its number may have meant.
std::string remedyFor(const BookFile& book, const std::string& unknownId) {
    const std::string beginning = unknownId.substr(0, unknownId.rfind('/'));
    std::vector<std::string> names;
    for (const Edition& edition : allOf<Edition>(book)) {
        if (edition.id == beginning || edition.code == beginning)
            return "Edition " + edition.code + " has " + numbersOf(sheetsOf(book, edition)) +
                   "; write " + edition.code + ":1-12 for working numbers.";
        names.push_back(edition.code);
    }
    const std::optional<std::string> nearest = nearestName(beginning, names);
    return nearest ? "Did you mean edition " + *nearest + "? " + forms : std::string(forms);
}

SheetSelection keptSheetsOf(const BookFile& book, const Edition& edition) {
    std::vector<Impression> all = sheetsOf(book, edition);
    if (all.empty())
        throw UsageError("edition " + edition.code + " has no sheets yet",
                         "Enter them with rackbook impressions " + edition.code + " 1-24.");
    all.erase(
        std::remove_if(all.begin(), all.end(),
                       [](const Impression& sheet) { return sheet.fate != ImpressionFate::kept; }),
        all.end());
    if (all.empty())
        throw UsageError("no sheet of edition " + edition.code + " is kept",
                         "Name spoiled or destroyed sheets by number: " + edition.code + ":1-12.");
    return {edition.id, std::move(all)};
}

bool isEdition(const BookFile& book, const std::string& words) {
    if (findIn<Edition>(book, words))
        return true;
    return !thoseOf<Edition>(book, "code", words).empty();
}

SheetSelection sheetsListed(const BookFile& book, const std::vector<std::string>& ids) {
    SheetSelection selection;
    std::vector<std::string> unknown;
    std::set<std::string> seen;
    for (const std::string& id : ids) {
        if (id.empty())
            throw UsageError("the list of sheets has an empty part", forms);
        if (!seen.insert(id).second)
            throw UsageError("the list of sheets names " + excerpt(id) + " twice", "Name it once.");
        if (std::optional<Impression> sheet = findIn<Impression>(book, id))
            selection.sheets.push_back(std::move(*sheet));
        else
            unknown.push_back("\"" + excerpt(id) + "\"");
    }
    if (!unknown.empty()) {
        const std::string first = unknown.front().substr(1, unknown.front().size() - 2);
        throw UsageError(std::string("the book has no ") +
                             (unknown.size() == 1 ? "sheet " : "sheets ") + joined(unknown),
                         remedyFor(book, first));
    }
    selection.editionId = selection.sheets.front().edition.id;
    for (const Impression& sheet : selection.sheets)
        if (sheet.edition.id != selection.editionId)
            selection.editionId.clear();
    return selection;
}

}  // namespace

std::vector<Impression> sheetsOf(const BookFile& book, const Edition& edition) {
    std::vector<Impression> sheets = thoseOf<Impression>(book, "edition", edition.id);
    std::sort(sheets.begin(), sheets.end(), [](const Impression& a, const Impression& b) {
        return a.workingNumber < b.workingNumber;
    });
    return sheets;
}

std::vector<Impression> sheetsNumbered(const std::vector<Impression>& sheets,
                                       const Edition& edition, const std::string& ranges) {
    std::unordered_map<int, const Impression*> byNumber;
    for (const Impression& sheet : sheets)
        byNumber.emplace(sheet.workingNumber, &sheet);
    std::vector<Impression> chosen;
    std::vector<int> unknown;
    for (const int number : parseRanges(ranges)) {
        const auto found = byNumber.find(number);
        if (found == byNumber.end())
            unknown.push_back(number);
        else
            chosen.push_back(*found->second);
    }
    if (unknown.empty())
        return chosen;
    throw UsageError("edition " + edition.code + " has no " +
                         (unknown.size() == 1 ? "sheet " : "sheets ") + formatRanges(unknown),
                     (sheets.empty() ? "" : "It has " + numbersOf(sheets) + ". ") +
                         "Add what is missing with rackbook impressions " + edition.code + " " +
                         formatRanges(unknown) + ".");
}

SheetSelection sheetsNamed(const BookFile& book, const std::string& words) {
    const std::size_t colon = words.rfind(':');
    if (colon != std::string::npos) {
        const Edition edition = editionNamed(book, words.substr(0, colon));
        return {edition.id,
                sheetsNumbered(sheetsOf(book, edition), edition, words.substr(colon + 1))};
    }
    const bool oneWord = words.find_first_of("/,") == std::string::npos;
    if (isEdition(book, words) || (oneWord && !findIn<Impression>(book, words)))
        return keptSheetsOf(book, editionNamed(book, words));
    return sheetsListed(book, splitAtCommas(words));
}

std::string numbersOf(const std::vector<Impression>& sheets) {
    std::vector<int> numbers;
    for (const Impression& sheet : sheets)
        numbers.push_back(sheet.workingNumber);
    std::sort(numbers.begin(), numbers.end());
    return formatRanges(numbers);
}

std::vector<Ref<Impression>> refsTo(const std::vector<Impression>& sheets) {
    std::vector<Ref<Impression>> refs;
    for (const Impression& sheet : sheets)
        refs.push_back({sheet.id});
    return refs;
}

HistoryFilter filterNamed(const BookFile& book, const std::string& words) {
    HistoryFilter filter;
    filter.impressions.emplace();
    for (const Impression& impression : sheetsNamed(book, words).sheets)
        filter.impressions->push_back(impression.id);
    return filter;
}

}  // namespace rackbook
