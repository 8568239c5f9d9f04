// Which records of one book name which: made once, whatever the sheet and the day.
#pragma once

#include <string>
#include <unordered_map>
#include <vector>

#include "records/RecordSet.h"

namespace rackbook {

struct SheetIndexes {
    // Positions of records of one kind, by the id of what they name.
    using ById = std::unordered_map<std::string, std::vector<std::size_t>>;

    // The records must outlive it.
    explicit SheetIndexes(const RecordSet& book);

    const RecordSet& records;
    ById impressionsOfEdition;
    ById blocksOfEdition;
    ById layersOfEdition;
    ById picturesOfEdition;
    ById picturesOfImpression;
    ById pullsOfImpression;
    ById pullsOfLayer;
    ById movesOfImpression;
    ById looksOfImpression;  // at it, or standing for it
    ById transfersOfImpression;
    ById mixesOfEdition;
    ById weighingsOfMix;
    ById weighingsOfLot;
    ById drawdownsOfMix;
    ById readingsOfDrawdown;
    ById placesWithin;
    ById movesTo;      // by place
    ById meteringsAt;  // by place
};

}  // namespace rackbook
