// The records behind a sheet, as the text that is carried inside its file.
#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/CivilTime.h"
#include "base/Tree.h"
#include "exchange/SheetIndexes.h"
#include "exchange/WithoutPrivate.h"

namespace rackbook {

// What a sheet is about: ids of records. Without any, the whole book.
struct SheetAbout {
    std::optional<std::string> edition;
    std::vector<std::string> impressions;
    std::optional<std::string> layer;
    std::optional<std::string> mix;
    std::optional<std::string> transfer;
    std::optional<std::string> place;
};

// Of a kind of record, the fields that a kind of sheet prints or reckons with.
struct PrintedFields {
    RecordKind kind;
    std::vector<std::string_view> fields;
};

// Which records a kind of sheet speaks of, beyond its subject and what that is made of.
struct SheetDepth {
    bool making = true;  // how its impressions were printed, from which blocks, with which ink
    bool light = false;  // moves, looks, weather, and what is known of the light at places
    bool verdictsOnly = false;  // of the light: no weather, no days, no doses
    bool stock = false;         // all lots and what was weighed and counted of them
    bool mixes = false;         // accounts of mixes, and not what was printed from them
    bool swatches = false;      // drawdowns of its mixes, and their readings
    bool transfers = false;     // of its impressions
    bool photographs = false;   // of its impressions; those of an edition belong to it always
    // All drawers, boxes and shelves; then a sheet about the whole book speaks of no edition.
    bool storage = false;
    std::vector<PrintedFields> printed;  // kinds not named here stand with all their fields
    PrivacyChoice privacy;
};

// Drawers, boxes and shelves.
bool isStorage(const Place& place);

// Whether a field is no part of what such a sheet says: where a tin or a jar stands is no part of
// what was printed; rules of the house and usual skies are no facts, and sheets that judge by them
// print them; of the studio's own record no sheet prints more than its name and unit of length.
bool isLeftAside(RecordKind kind, std::string_view field, const SheetDepth& depth);

// What the text says about itself.
struct SheetHeading {
    std::string sheet;     // its kind: edition, certificate …
    std::string asOf;      // "2026-03-20"
    std::string language;  // BCP 47
    SheetAbout about;
};

// The form of the text, which changes when something else begins to be meant by it.
constexpr std::int64_t sheetRecordForm = 1;

// What a sheet says of an impression that is reckoned and stands in no record; nothing where it
// says nothing of the kind.
using EstimatesOf = std::function<std::optional<Tree>(const std::string& impression)>;

// Gathers from one book for many sheets of a kind and a day.
class SheetRecords {
public:
    // What came after asOf is left out. The indexes, and the records in them, must outlive it.
    // Estimates are asked for where the depth has light.
    SheetRecords(const SheetIndexes& indexes, const SheetDepth& depth, CivilMinute asOf,
                 EstimatesOf estimatesOf = {});
    ~SheetRecords();
    SheetRecords(const SheetRecords&) = delete;
    SheetRecords& operator=(const SheetRecords&) = delete;

    // JSON, UTF-8, described in schema/README.md: the heading, whether holders are named, the
    // records, one a line in the order of their kinds, and the estimates. The same records give the
    // same bytes.
    std::string textFor(const SheetHeading& heading) const;

private:
    struct Inner;
    std::unique_ptr<Inner> m_inner;
};

}  // namespace rackbook
