// Everything that an edition's sheet is made from: records without what is private, and what is
// computed from them.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "base/CivilTime.h"
#include "calc/Estimate.h"
#include "calc/MixLedger.h"
#include "records/RecordSet.h"
#include "sheets/Photograph.h"

namespace rackbook {

struct InkPart {
    Lot lot;
    Estimate share;  // of the ink's mass, 0 … 1
};

// What an ink was made of, down to lots.
struct InkFacts {
    std::vector<InkPart> parts;  // the largest first
    Estimate unrecorded;         // share of contents that were never recorded
};

// Pre: the constituents of the contents are positions among the lots.
InkFacts inkFactsOf(const MixContents& contents, const std::vector<Lot>& lots);

struct PullFacts {
    std::string id;
    EdtfDate start = EdtfDate::ofMinute(0);
    std::optional<EdtfDate> end;
    std::string portion;  // its name; empty where none is recorded
    int sheets = 0;
    std::vector<int> workingNumbers;  // of those sheets that are recorded; sorted
    int spoiled = 0;
    Estimate extenderShare = Estimate::anyShare();
    Estimate drierShare = Estimate::anyShare();
    bool isRemembered = false;    // extenderShare is the layer's remembered one
    std::optional<InkFacts> ink;  // where a portion is recorded
};

struct LayerFacts {
    Layer layer;
    std::optional<Block> block;
    std::optional<Reading> reading;
    std::string mix;  // name of the layer's mix, empty where none is recorded
    std::optional<InkFacts>
        mixInk;                    // of that mix as it stood last; only where a pull has no portion
    std::vector<PullFacts> pulls;  // by time
    // Wet film, g/m²: the ink that was used over the sheets, the image and the share of it that is
    // inked. The bounds allow for what may stick to the knife. best is notKnown where a mass, the
    // image or its share is not recorded.
    Estimate filmLaid_gm2 = Estimate::anyMass();
};

struct EditionFacts {
    CivilMinute asOf = 0;
    std::string studio;
    LengthUnit lengthUnit = LengthUnit::mm;
    double knifeTolerance_g = 0;
    Edition edition;
    std::string maker;
    std::vector<std::string> printers;  // recorded with the edition, else those of its pulls
    std::string publisher;              // empty where none is recorded
    std::vector<Block> blocks;
    std::vector<LayerFacts> layers;        // by ordinal
    std::vector<Impression> impressions;   // by working number, without holders and notes
    std::set<std::string> firstLayer;      // ids of the impressions that the first layer was
                                           // printed on
    std::optional<Photograph> photograph;  // of the edition; the caller adds it
};

// What happened after asOf is left out.
// Pre: the edition is one of the records.
EditionFacts editionFactsOf(const RecordSet& records, const Edition& edition, CivilMinute asOf);

}  // namespace rackbook
