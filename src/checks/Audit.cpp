#include "checks/Audit.h"

#include <algorithm>
#include <iterator>

#include "checks/Rules.h"

namespace rackbook {

const std::vector<AuditRule>& auditRules() {
    static const std::vector<AuditRule> all = {
        {"designation-twice", "a designation is given only once in an edition",
         rules::designationTwice},
        {"bat-twice", "an edition has one bon à tirer", rules::bonATirerTwice},
        {"designation-beyond-declared", "designations keep within the size that is declared",
         rules::designationBeyondDeclared},
        {"signing-incomplete", "a signed impression has its designation, kind and date",
         rules::signingIncomplete},
        {"proofs-beyond-declared", "no more proofs of a kind are designated than declared",
         rules::proofsBeyondDeclared},
        {"totals-differ", "declared totals add up, and a closed edition matches them",
         rules::totalsDiffer},
        {"proofs-share", "artist's proofs keep within their usual share of an edition",
         rules::proofsShare},
        {"layer-order", "on each impression, layers are pulled in their order", rules::layerOrder},
        {"first-layer-missing", "the sheets printed at the first layer cap the edition",
         rules::firstLayerMissing},
        {"pulled-after-signing", "nothing is pulled on an impression once it is signed",
         rules::pulledAfterSigning},
        {"pulled-after-fate", "nothing is pulled on a spoiled or destroyed impression",
         rules::pulledAfterFate},
        {"pulled-after-leaving", "nothing is pulled on an impression that has left the studio",
         rules::pulledAfterLeaving},
        {"layer-twice", "an impression gets each layer once", rules::layerTwice},
        {"spoiled-differs", "pulls and impressions agree on what was spoiled",
         rules::spoiledDiffers},
        {"destroyed-differs", "what was moved to be destroyed is recorded as destroyed",
         rules::destroyedDiffers},
        {"block-states", "a block is printed while the state it is printed from exists",
         rules::blockStates},
        {"promised-fate", "a promised fate of the matrix is carried out and recorded",
         rules::promisedFate},
        {"mix-overdrawn", "no more is taken from a mix than was in it", rules::mixOverdrawn},
        {"mix-ring", "mixes do not take from one another in a ring", rules::mixRing},
        {"lot-overdrawn", "no more is taken from a lot than its net mass", rules::lotOverdrawn},
        {"drier-in-drier-free", "no drier gets into a mix that is declared free of it",
         rules::drierInDrierFree},
        {"drier-share", "a portion holds no more drier than usual", rules::drierShare},
        {"lot-dates", "a lot is used after it was bought and opened, before it was finished",
         rules::lotDates},
        {"mix-dates", "a mix is used after it was made, before it was finished", rules::mixDates},
        {"places-at-once", "an impression is at one place at a time", rules::placesAtOnce},
        {"whereabouts-gap", "each move begins where the one before it ended",
         rules::whereaboutsGap},
        {"place-ring", "no place lies within itself", rules::placeRing},
        {"holder-without-transfer", "an impression came to its holder by a transfer",
         rules::holderWithoutTransfer},
        {"transfer-without-holder", "an impression names the holder it was transferred to",
         rules::transferWithoutHolder},
        {"looks-contradict",
         "what was true turns again in the dark alone, and what was dry stays dry",
         rules::looksContradict},
        {"weather-twice", "the sky of a day is recorded once", rules::weatherTwice},
        {"metering-overlap", "light at a place is measured once at a time", rules::meteringOverlap},
        {"metering-in-dark", "no light is measured where a place is declared dark",
         rules::meteringInDark},
        {"metering-beyond-sun", "no more light is measured by day than sun and lamps can give",
         rules::meteringBeyondSun},
        {"metering-beyond-light", "near ultraviolet that is measured goes with the light it is in",
         rules::meteringBeyondItsLight},
        {"dates-out-of-order", "what must come first has the earlier date", rules::datesOutOfOrder},
        {"dates-ahead", "nothing recorded as done lies in the future", rules::datesAhead},
        {"edition-incomplete", "an edition has what its sheets print", rules::editionIncomplete},
        {"layer-without-pull", "every layer of a finished edition has a pull",
         rules::layerWithoutPull},
        {"pull-without-portion", "every pull names the portion it used", rules::pullWithoutPortion},
        {"mix-without-weighings", "what went into every mix was weighed",
         rules::mixWithoutWeighings},
        {"lot-incomplete", "inks state their pigments and driers their content",
         rules::lotIncomplete},
        {"contact-withheld", "contacts that exist are in this copy of the book",
         rules::contactWithheld},
    };
    return all;
}

std::vector<Finding> audit(const AuditContext& context, const std::vector<std::string>& names) {
    std::vector<Finding> all;
    for (const AuditRule& rule : auditRules()) {
        if (!names.empty() && std::find(names.begin(), names.end(), rule.name) == names.end())
            continue;
        std::vector<Finding> found = rule.run(context);
        for (Finding& finding : found)
            finding.rule = rule.name;
        all.insert(all.end(), std::make_move_iterator(found.begin()),
                   std::make_move_iterator(found.end()));
    }
    return all;
}

}  // namespace rackbook
