// Everything that a readiness sheet is made from.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "base/CivilTime.h"
#include "calc/Readiness.h"
#include "calc/StudioLight.h"
#include "records/RecordSet.h"

namespace rackbook {

struct ReadinessImpression {
    std::size_t edition = 0;  // position in History::editions
    int workingNumber = 0;
    std::string designation;  // empty where none was given yet
};

struct ReadinessFacts {
    std::string studio;
    History history;                               // its impressions are those of the sheet
    std::vector<std::string> titles;               // by edition of the history
    std::vector<ReadinessImpression> impressions;  // by impression of the history
    HouseRules rules;
    std::vector<MonthlySky> skies;       // that the book holds as usual
    std::shared_ptr<StudioLight> light;  // what the readiness refers to
    Readiness readiness;
};

struct ReadinessQuestion {
    CivilMinute asOf = 0;
    std::string edition;        // id; empty for all editions
    bool namesHolders = false;  // else places out of the studio's hands lose their names
    std::string atGallery;      // what stands instead
    std::string atHolder;
};

ReadinessFacts readinessFactsOf(const RecordSet& records, const ReadinessQuestion& question);

}  // namespace rackbook
