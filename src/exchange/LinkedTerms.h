// Terms of the Art & Architecture Thesaurus that descriptions as Linked Art use. Private to
// exchange/.
#pragma once

#include <string>

#include "base/Tree.h"

namespace rackbook {

struct LinkedTerm {
    const char* number;  // in the thesaurus
    const char* label;
};

// Each is one that the documentation of Linked Art 1.0 itself names, on the page beside it
// (linked.art, "vocabularies" stands for community/best-practices/vocabularies). Millimetres,
// relief printing, linocut and woodcut are on none of its pages, so they are not here.
namespace linkedTerms {
constexpr LinkedTerm print = {"300041273", "print"};                   // vocabularies, visual works
constexpr LinkedTerm workOfArt = {"300133025", "work of art"};         // vocabularies, visual works
constexpr LinkedTerm typeOfWork = {"300435443", "type of work"};       // api/1.0/shared/type
constexpr LinkedTerm preferredName = {"300404670", "preferred name"};  // schema/core.json, Name
constexpr LinkedTerm displayName = {"300404669", "display name"};      // api/1.0/shared/dimension
constexpr LinkedTerm localNumber = {"300404621", "local number"};      // model/vocab, identifiers
constexpr LinkedTerm height = {"300055644", "height"};                 // vocabularies, dimension
constexpr LinkedTerm width = {"300055647", "width"};                   // vocabularies, dimension
constexpr LinkedTerm centimetres = {"300379098", "centimetres"};       // vocabularies, unit
constexpr LinkedTerm paper = {"300014109", "paper"};                   // vocabularies, material
constexpr LinkedTerm ink = {"300015012", "ink"};                       // vocabularies, material
constexpr LinkedTerm dimensionStatement = {"300435430",
                                           "dimension statement"};  // model/object/physical
constexpr LinkedTerm materialStatement = {"300435429",
                                          "materials statement"};  // model/object/physical
constexpr LinkedTerm editionStatement = {"300121294",
                                         "edition statement"};    // vocabularies, linguistic object
constexpr LinkedTerm inscription = {"300028702", "inscription"};  // vocabularies, likewise
constexpr LinkedTerm description = {"300411780", "description"};  // vocabularies, likewise
constexpr LinkedTerm note = {"300418049", "note"};                // api/1.0/shared/identifier
}  // namespace linkedTerms

// A reference to the term as a Type, a Material or a MeasurementUnit.
Tree linkedTerm(const LinkedTerm& term, const char* type = "Type");

// A list of that one Type.
Tree classifiedAs(const LinkedTerm& term);

}  // namespace rackbook
