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

// The record of that kind whose date `field` is the latest, of several the one recorded last; or
// nothing. Pre: the field is a date that such records have.
template <class R>
std::optional<R> latestOf(const BookFile& book, const std::string& field);

RecordSet everythingIn(const BookFile& book);

// How many records there are of a kind.
std::int64_t countOf(const BookFile& book, RecordKind kind);

// Whether a record of that id was struck out; its id is never given again.
bool wasStruck(const BookFile& book, RecordKind kind, const std::string& id);

// The book's own record. Throws StoreError where there is none yet.
Book bookRecordOf(const BookFile& book);

}  // namespace rackbook
