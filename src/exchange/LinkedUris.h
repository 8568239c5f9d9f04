// The URIs of resources, and the files that stand for them. Private to exchange/.
#pragma once

#include <string>

#include "base/Tree.h"

namespace rackbook {

// Folders of files, and what is in them.
enum class LinkedKind {
    impression,   // HumanMadeObject
    block,        // HumanMadeObject
    edition,      // Set
    image,        // VisualItem
    inscription,  // LinguisticObject
    picture,      // DigitalObject
    person,       // Person
    group,        // Group
    place,        // Place
    process       // Type: the words of the book for how an edition was printed
};

// "impression" and "HumanMadeObject".
const char* folderOf(LinkedKind kind);
const char* classOf(LinkedKind kind);

class LinkedUris {
public:
    // With an empty base URIs are of the form urn:uuid, made of `bookMark`, the kind and the id.
    // Pre: the base is empty or isLinkedBase(), with a slash at its end.
    LinkedUris(std::string base, std::string bookMark);

    // "impression/EEL~07.json": no two ids of a kind have the same.
    std::string pathOf(LinkedKind kind, const std::string& id) const;

    std::string uriOf(LinkedKind kind, const std::string& id) const;

    // {"id": …, "type": …, "_label": …}
    Tree reference(LinkedKind kind, const std::string& id, const std::string& label) const;

private:
    std::string m_base;
    std::string m_bookMark;
};

}  // namespace rackbook
