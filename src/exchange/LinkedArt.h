// Editions as museums exchange descriptions: Linked Art 1.0 (linked.art), a profile of CIDOC CRM
// (ISO 21127) in JSON-LD.
#pragma once

#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "base/Tree.h"
#include "records/RecordSet.h"

namespace rackbook {

struct LinkedArtChoice {
    std::string base;      // what all URIs begin with; empty: urn:uuid
    std::string bookMark;  // what no other book has; counts only where there is no base
    std::string program;   // what wrote it: "rackbook 0.1.0"
    std::string day;       // when: "2026-03-20"
    std::string saidOn;    // the day whose book it was made from; empty: as it is now
    // By id. The standard knows persons and groups only, the book neither: a party in none of the
    // two is named in a statement, and no activity is laid to it.
    std::set<std::string> persons;
    std::set<std::string> groups;
    bool namesHolders = false;  // who has each impression, and where it is
};

// Whether resources can have URIs that begin so: http or https, a host, and a path perhaps; no
// query, no fragment, only characters that RFC 3986 lets stand in a path.
bool isLinkedBase(std::string_view base);

struct LinkedArtFile {
    std::string path;  // below the folder: "impression/EEL~07.json"
    Tree content;
};

struct LinkedArt {
    std::vector<LinkedArtFile> files;
    std::set<std::string> onlyInWords;  // parties, by id, that no activity could be laid to
};

// A file for each of the impressions, and for each edition, block, inscription, photograph and
// named party that they need; what is private (WithoutPrivate.h) is in none. In the order
// editions, images, processes, inscriptions, blocks, impressions, photographs, persons, groups,
// places.
// schema/README.md says which field goes where. Pre: the ids are those of impressions in the set.
// Throws InputError where the system does not know the studio's time zone.
LinkedArt linkedArtOf(const RecordSet& records, const std::vector<std::string>& impressions,
                      const LinkedArtChoice& choice);

}  // namespace rackbook
