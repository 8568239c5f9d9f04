// How records are named in the boxes of a sheet, and found again by what stands there.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "records/RecordSet.h"

namespace rackbook {

// Places and parties go by their names, what has none by its id.
inline const std::string& wordsFor(const Place& place) {
    return place.name;
}
inline const std::string& wordsFor(const Party& party) {
    return party.name;
}
inline const std::string& wordsFor(const Lot& lot) {
    return lot.id;
}
inline const std::string& wordsFor(const Mix& mix) {
    return mix.id;
}

// Those that a box may mean: of that id, else of that name. Both go as they are written.
template <class R>
std::vector<const R*> namedInBox(const RecordSet& records, const std::string& words) {
    if (const R* found = records.find<R>(words))
        return {found};
    std::vector<const R*> named;
    for (const R& record : records.of<R>())
        if (wordsFor(record) == words)
            named.push_back(&record);
    return named;
}

// Its name, or its id where the name would mean another as well.
template <class R>
std::string nameInBox(const RecordSet& records, const R& record) {
    const std::vector<const R*> named = namedInBox<R>(records, wordsFor(record));
    return named.size() == 1 && named.front()->id == record.id ? wordsFor(record) : record.id;
}

}  // namespace rackbook
