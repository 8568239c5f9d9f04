// What a sheet is about, by the word after its name.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "records/Edition.h"
#include "records/Impression.h"
#include "records/Layer.h"
#include "records/Mix.h"
#include "records/Place.h"
#include "records/Transfer.h"
#include "store/BookFile.h"

namespace rackbook {

enum class SubjectKind {
    book,         // no word
    edition,      // its code
    anyEdition,   // its code, or no word for all
    impressions,  // "EEL:7", "EEL:1-12", "EEL"
    layer,        // id
    ink,          // a mix, a layer or a pull by id
    transfer,     // id
    place         // id
};

// What the word names; the members that don't belong to its kind are empty.
struct SheetSubject {
    std::string words;  // as they were typed
    std::optional<Edition> edition;
    std::vector<Impression> impressions;
    std::optional<Layer> layer;
    std::optional<Mix> mix;
    std::optional<Transfer> transfer;
    std::optional<Place> place;
};

// "CODE", "SHEETS" …: what is written after the name of such a sheet; empty for the book.
const char* subjectForm(SubjectKind kind);

// `sheet` is named in messages. Throws UsageError where the word is missing or is one too many, or
// names nothing, with the nearest name; a layer, an impression's edition and the like are found
// with it. Impressions are of one edition.
SheetSubject subjectNamed(const BookFile& book, SubjectKind kind, const std::string& sheet,
                          const std::optional<std::string>& words);

}  // namespace rackbook
