// The small structures that every resource of Linked Art is put together from: names, identifiers,
// statements, lengths and spans of time. Private to exchange/.
#pragma once

#include <optional>
#include <string>

#include "base/Edtf.h"
#include "exchange/LinkedTerms.h"

namespace rackbook {

Tree linkedName(const std::string& content, const LinkedTerm& kind = linkedTerms::preferredName);

// `label` says what it is, for people: "working number". A local number: given by the studio.
Tree linkedIdentifier(const std::string& content, const std::string& label);
// One that holds everywhere.
Tree linkedHash(const std::string& content, const std::string& label);

Tree linkedStatement(const std::string& content, const LinkedTerm& kind, const std::string& label);

// In centimetres, with the millimetres of the book as its name. Pre: length_mm is finite.
Tree linkedLength(double length_mm, const LinkedTerm& kind);

// What happened at some time within the date's bounds. The bounds of the studio's wall clock are
// written with its shift then; an end that is open, unknown or outside the years 0 to 9999 (beyond
// which RFC 3339 writes nothing) is left out. The date as written is the span's name.
Tree linkedSpan(const EdtfDate& date, const std::string& timeZone);

// What began and ended as well as that is known; where the end is not, nothing is said of it.
Tree linkedSpan(const EdtfDate& begin, const std::optional<EdtfDate>& end,
                const std::string& timeZone);

// What began and ended somewhere between the first bound of the one and the last of the other.
Tree linkedSpanWithin(const EdtfDate& begin, const EdtfDate& end, const std::string& timeZone);

// Sets the list under that name, unless there is nothing in it.
void setUnlessEmpty(Tree& tree, const std::string& name, Tree list);

}  // namespace rackbook
