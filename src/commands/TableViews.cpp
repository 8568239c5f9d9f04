#include "commands/TableViews.h"

#include <algorithm>
#include <map>

#include "base/Numbers.h"
#include "commands/BookAccess.h"
#include "commands/Whereabouts.h"
#include "exchange/CsvWriter.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

using Rows = std::vector<std::vector<std::string>>;

// Parties, places and editions by id.
struct Names {
    explicit Names(const BookFile& book) {
        for (const Party& party : allOf<Party>(book))
            parties[party.id] = party.name;
        for (const Edition& edition : allOf<Edition>(book))
            editions.emplace(edition.id, edition);
    }
    std::map<std::string, std::string> parties;
    std::map<std::string, Edition> editions;
};

template <class T>
std::string dateText(const std::optional<T>& date) {
    return date ? date->text() : std::string();
}

std::string numberText(const std::optional<double>& number, char decimal) {
    std::string text = number ? formatShortest(*number) : std::string();
    std::replace(text.begin(), text.end(), '.', decimal);
    return text;
}

std::string wholeText(const std::optional<int>& number) {
    return number ? std::to_string(*number) : std::string();
}

void add(Rows& rows, std::vector<std::string> cells) {
    std::transform(cells.begin(), cells.end(), cells.begin(), guarded);
    rows.push_back(std::move(cells));
}

Rows editionRows(const BookFile& book, const std::string& wanted, char decimal) {
    Rows rows = {{"code", "title", "year", "process", "paper", "image height mm", "image width mm",
                  "numbered", "sheets kept", "with others", "status"}};
    std::map<std::string, int> kept;
    std::map<std::string, int> away;
    for (const Impression& sheet : allOf<Impression>(book)) {
        if (sheet.fate != ImpressionFate::kept)
            continue;
        ++kept[sheet.edition.id];
        away[sheet.edition.id] += sheet.holder ? 1 : 0;
    }
    for (const Edition& edition : allOf<Edition>(book))
        if (wanted.empty() || edition.id == wanted)
            add(rows, {edition.code, edition.title, dateText(edition.year), edition.process,
                       edition.paper.value_or(""), numberText(edition.imageHeight_mm, decimal),
                       numberText(edition.imageWidth_mm, decimal),
                       wholeText(edition.declaredNumbered), std::to_string(kept[edition.id]),
                       std::to_string(away[edition.id]), textOf(edition.status)});
    return rows;
}

Rows impressionRows(const BookFile& book, const std::string& wanted, char) {
    Rows rows = {{"edition", "title", "working number", "designation", "kind", "signed", "fate",
                  "holder", "place now"}};
    const Names names(book);
    std::map<std::string, std::string> places =
        whereabouts(book, nowAt(bookRecordOf(book)).latest());
    for (const Impression& sheet : allOf<Impression>(book)) {
        if (!wanted.empty() && sheet.edition.id != wanted)
            continue;
        const Edition& edition = names.editions.at(sheet.edition.id);
        add(rows, {edition.code, edition.title, std::to_string(sheet.workingNumber),
                   sheet.designation.value_or(""),
                   sheet.designationKind ? textOf(*sheet.designationKind) : "",
                   dateText(sheet.signedOn), textOf(sheet.fate),
                   sheet.holder ? names.parties.at(sheet.holder->id) : "", places[sheet.id]});
    }
    return rows;
}

Rows transferRows(const BookFile& book, const std::string& wanted, char decimal) {
    Rows rows = {{"transfer", "kind", "date", "edition", "title", "designation", "from", "to",
                  "price of all", "currency"}};
    const Names names(book);
    for (const Transfer& transfer : allOf<Transfer>(book))
        for (const Ref<Impression>& ref : transfer.impressions) {
            const Impression sheet = *findIn<Impression>(book, ref.id);
            if (!wanted.empty() && sheet.edition.id != wanted)
                continue;
            const Edition& edition = names.editions.at(sheet.edition.id);
            add(rows,
                {transfer.id, textOf(transfer.transferKind), transfer.agreedOn.text(), edition.code,
                 edition.title, sheet.designation.value_or(std::to_string(sheet.workingNumber)),
                 names.parties.at(transfer.giver.id), names.parties.at(transfer.receiver.id),
                 numberText(transfer.price, decimal), transfer.currency.value_or("")});
        }
    return rows;
}

}  // namespace

const std::vector<TableView>& tableViews() {
    static const std::vector<TableView> views = {
        {"edition-list", "editions with the sheets that are kept and those with others",
         editionRows},
        {"impression-list", "every sheet with its title, holder and place", impressionRows},
        {"transfer-list", "a line for each sheet that was handed over", transferRows}};
    return views;
}

}  // namespace rackbook
