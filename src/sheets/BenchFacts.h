// What a bench sheet says before anything is filled in.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/CivilTime.h"
#include "records/RecordSet.h"
#include "sheets/BenchUsual.h"

namespace rackbook {

struct BenchImpression {
    int workingNumber = 0;
    std::string designation;  // empty where none was given
    std::string id;
};

struct BenchFacts {
    CivilMinute asOf = 0;
    std::string studio;
    std::string code;  // of the edition
    std::string title;
    Layer layer;
    std::size_t layers = 0;  // recorded of the edition
    std::string block;       // its name; empty where none is recorded
    std::string stateWords;  // what was cut for the layer's state
    std::string mix;         // its name; empty where none is recorded
    // Kept, not printed with this layer, and printed with the last layer before it that was
    // printed at all; by working number, like those below.
    std::vector<BenchImpression> impressions;
    std::vector<int> printed;  // kept, and printed with this layer already
    std::vector<int> missed;   // kept, but not printed with the layer before
    int layerBefore = 0;       // its ordinal; 0 where none before was printed
    BenchUsual usual;          // what stands in the boxes already
    BenchChoices choices;
};

// What happened after asOf is left out. Pre: the layer is one of the records.
BenchFacts benchFactsOf(const RecordSet& records, const Layer& layer, CivilMinute asOf);

}  // namespace rackbook
