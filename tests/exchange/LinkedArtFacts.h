// What the schemas of Linked Art 1.0 ask of a document, as a table of facts in our own form, and
// whether a document keeps to it.
//
// Source: linked.art, content/api/1.0/schema, core.json (commit d95da12b), object.json (7617f5df),
// set.json, image.json, digital.json, person.json, place.json (7d61dc5a), group.json (d39a644f) and
// text.json (7617f5df) of the
// repository linked-art/linked.art. Of persons, groups and
// places only the members that they share. Stricter
// than the schemas in two places: they close neither Production, Destruction and Creation nor an
// embedded VisualItem to other members, and they ask for no type there; here both hold (what the
// pages under content/api/1.0/endpoint call required).
#pragma once

#include <string>
#include <vector>

#include "exchange/JsonText.h"

namespace rackbook::test {

// Where a document breaks the rules of its class, each as "pointer: what"; empty where nowhere. The
// class of a whole document is one of HumanMadeObject, Set, VisualItem, LinguisticObject,
// DigitalObject, Person, Group, Place and Type.
std::vector<std::string> brokenLinkedArtRules(const Json& document);

}  // namespace rackbook::test
