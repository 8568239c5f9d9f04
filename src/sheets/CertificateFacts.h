// Everything that the certificates of an edition's impressions are made from.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "calc/Readiness.h"
#include "records/Move.h"
#include "sheets/EditionFacts.h"
#include "sheets/Photograph.h"

namespace rackbook {

// A printing run that this very impression went through.
struct OwnPull {
    int ordinal = 0;  // of its layer
    std::string colourWords;
    EdtfDate start = EdtfDate::ofMinute(0);
    std::string portion;  // its name; empty where none is recorded
    Estimate extenderShare = Estimate::anyShare();
    Estimate drierShare = Estimate::anyShare();
    bool isRemembered = false;  // extenderShare is the layer's remembered one
    // Its positions among the layers of the edition and the pulls of that layer; -1 where it has
    // none there.
    int layerAt = -1;
    int pullAt = -1;
};

struct OwnLook {
    EdtfDate at = EdtfDate::ofMinute(0);
    bool isAtIt = false;  // else at another that stands for it
    std::optional<Touch> touch;
    std::optional<LookColour> colour;
};

// Its light since the last extender-rich layer, and what was judged of it.
struct OwnLight {
    Verdict verdict = Verdict::unknown;
    int richLayer = 0;  // ordinal; 0 where there is none or it is not known
    std::optional<EdtfDate> richOn;
    double daysLow = 0;
    double daysHigh = 0;
    double daysNeeded = 0;
    std::optional<Estimate> dose_sunnyDays;  // where the studio's light can be estimated
};

// That it left the studio's hands, or came back.
struct ProvenanceStep {
    EdtfDate on = EdtfDate::ofMinute(0);
    MoveWhy why = MoveWhy::other;        // other: to a place out of the studio's hands
    std::string to;                      // who or where; empty unless holders are to be named
    std::optional<EdtfDate> dueOn = {};  // when what was agreed ends
};

struct CertificateImpression {
    Impression impression;  // as it stood then, without holder and note
    std::vector<std::string> printers;
    std::optional<Photograph> photograph;
    bool photographIsOfIt = false;           // else of the edition
    std::vector<OwnPull> pulls;              // by layer, then by time
    std::vector<int> notSeen;                // ordinals of printed layers without a pull of its own
    std::vector<OwnLook> looks;              // by time
    std::optional<OwnLight> light;           // nothing where it is spoiled or destroyed
    std::vector<ProvenanceStep> provenance;  // by time
    bool isWithHolder = false;               // nothing records how it came there
    std::optional<EdtfDate> placedOn;        // the last record of where it is

    // Signed and in existence: of others the sheet is a record, and nobody signs it.
    bool isCertified() const {
        return impression.designation && impression.fate == ImpressionFate::kept;
    }
};

struct CertificateFacts {
    EditionFacts edition;
    std::vector<CertificateImpression> impressions;  // in the order in which they were asked for
};

// What happened after asOf is left out. Histories are gone through, and readiness is judged, once
// for all impressions. Pre: all are of the edition, and all are among the records.
CertificateFacts certificateFactsOf(const RecordSet& records, const Edition& edition,
                                    const std::vector<Impression>& impressions, CivilMinute asOf,
                                    bool namesHolders, const PictureSource& pictureOf);

}  // namespace rackbook
