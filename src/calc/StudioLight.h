// The light of a studio: its sun, skies and places, and what its own looks taught.
#pragma once

#include <memory>
#include <vector>

#include "calc/LightModel.h"
#include "records/Book.h"
#include "records/Metering.h"
#include "records/Place.h"
#include "records/Weather.h"

namespace rackbook {

// The skies as they were noted, the means of months, and what is usual by the house rules.
Skies skiesOf(const Book& studio, const HouseRules& rules, const std::vector<Weather>& weather);

class StudioLight {
public:
    // As of the end of asOf: what was noted and metered of later days is left out, so that a
    // forecast of an earlier day is what it would have been then. Places in the order of
    // History::places. Without the studio's latitude and longitude nothing can be estimated, and
    // there is no model. Throws InputError where the time zone is not known to the system.
    StudioLight(const Book& studio, const HouseRules& rules, const std::vector<Place>& places,
                const std::vector<Weather>& weather, const std::vector<Metering>& meterings,
                CivilMinute asOf = endOfTime);

    bool isKnown() const { return m_ledger != nullptr; }

    // Takes the looks at all prints of the history, which should be all of the book. Nothing where
    // the light is not known.
    void learnFrom(const History& whole, const HouseRules& rules, CivilMinute asOf);

    // nullptr where the light is not known, or before learnFrom. Lives as long as this.
    const LightModel* model() const { return m_model.get(); }

    // Pre: isKnown().
    DoseLedger& ledger() { return *m_ledger; }

private:
    std::unique_ptr<PlaceUltraviolet> m_ultraviolet;
    std::unique_ptr<DoseLedger> m_ledger;
    std::unique_ptr<std::vector<PullInk>> m_inks;  // the model refers to it, also after a move
    std::unique_ptr<LightWanted> m_wanted;
    std::unique_ptr<LightModel> m_model;
};

}  // namespace rackbook
