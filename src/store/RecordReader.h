// Records as the book holds them now.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "records/RecordSet.h"
#include "store/BookFile.h"

namespace rackbook {

// All records of one kind, in the order in which they were first recorded. Defined for every
// record type. Throws StoreError.
template <class R>
std::vector<R> allOf(const BookFile& book);

// The record of that id, or nothing.
template <class R>
std::optional<R> findIn(const BookFile& book, const std::string& id);

// Those whose field is that text (of a date: as it is written), or names the record of that id, or
// has it in its list; in the order in which they were first recorded. Where schema/sql has an index
// of the field, this costs what it finds. Pre: the field is a text, a date, a reference or a list
// of references.
template <class R>
std::vector<R> thoseOf(const BookFile& book, const std::string& field, const std::string& value);

// The record of that kind whose date `field` is the latest, of several the one recorded last; or
// nothing. Pre: the field is a date that such records have.
template <class R>
std::optional<R> latestOf(const BookFile& book, const std::string& field);

RecordSet everythingIn(const BookFile& book);

// How many records there are of a kind.
std::int64_t countOf(const BookFile& book, RecordKind kind);

// The ids of such records that begin so. Pre: `beginning` ends in a character of ASCII.
std::vector<std::string> idsBeginning(const BookFile& book, RecordKind kind,
                                      const std::string& beginning);

// Whether a record of that id was struck out; its id is never given again.
bool wasStruck(const BookFile& book, RecordKind kind, const std::string& id);

// The book's own record. Throws StoreError where there is none yet.
Book bookRecordOf(const BookFile& book);

}  // namespace rackbook
