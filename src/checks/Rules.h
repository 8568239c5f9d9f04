// The audit rules. What each one looks for stands beside its name in Audit.cpp.
#pragma once

#include <vector>

#include "base/Finding.h"
#include "checks/AuditContext.h"

namespace rackbook::rules {

using Findings = std::vector<Finding>;

// Designations.cpp
Findings designationTwice(const AuditContext& context);
Findings bonATirerTwice(const AuditContext& context);
Findings designationBeyondDeclared(const AuditContext& context);
Findings signingIncomplete(const AuditContext& context);

// Totals.cpp
Findings proofsBeyondDeclared(const AuditContext& context);
Findings totalsDiffer(const AuditContext& context);
Findings proofsShare(const AuditContext& context);

// Layers.cpp
Findings layerOrder(const AuditContext& context);
Findings firstLayerMissing(const AuditContext& context);

// PulledTooLate.cpp
Findings pulledAfterSigning(const AuditContext& context);
Findings pulledAfterFate(const AuditContext& context);
Findings pulledAfterLeaving(const AuditContext& context);

// PulledTwice.cpp
Findings layerTwice(const AuditContext& context);

// Spoils.cpp
Findings spoiledDiffers(const AuditContext& context);
Findings destroyedDiffers(const AuditContext& context);

// Blocks.cpp
Findings blockStates(const AuditContext& context);
Findings promisedFate(const AuditContext& context);

// Mixes.cpp
Findings mixOverdrawn(const AuditContext& context);
Findings mixRing(const AuditContext& context);
Findings lotOverdrawn(const AuditContext& context);

// Drier.cpp
Findings drierInDrierFree(const AuditContext& context);
Findings drierShare(const AuditContext& context);

// InkDates.cpp
Findings lotDates(const AuditContext& context);
Findings mixDates(const AuditContext& context);

// Whereabouts.cpp
Findings placesAtOnce(const AuditContext& context);
Findings whereaboutsGap(const AuditContext& context);
Findings placeRing(const AuditContext& context);

// Holders.cpp
Findings holderWithoutTransfer(const AuditContext& context);
Findings transferWithoutHolder(const AuditContext& context);

// LooksContradict.cpp
Findings looksContradict(const AuditContext& context);

// SkyAndMeter.cpp
Findings weatherTwice(const AuditContext& context);
Findings meteringOverlap(const AuditContext& context);
Findings meteringInDark(const AuditContext& context);
Findings meteringBeyondSun(const AuditContext& context);
Findings meteringBeyondItsLight(const AuditContext& context);

// Dates.cpp
Findings datesOutOfOrder(const AuditContext& context);
Findings datesAhead(const AuditContext& context);

// Completeness.cpp
Findings editionIncomplete(const AuditContext& context);
Findings layerWithoutPull(const AuditContext& context);
Findings pullWithoutPortion(const AuditContext& context);
Findings mixWithoutWeighings(const AuditContext& context);
Findings lotIncomplete(const AuditContext& context);
Findings contactWithheld(const AuditContext& context);

}  // namespace rackbook::rules
