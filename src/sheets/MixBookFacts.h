// Every mix of an edition or of the book as an account: what went in, what was taken, what is left.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/CivilTime.h"
#include "calc/Estimate.h"
#include "records/RecordSet.h"

namespace rackbook {

// Additions of one lot or mix on one day.
struct MixInput {
    std::string name;  // of the mix, or the words on the lot's container; empty if not recorded
    std::string id;    // of the lot or mix
    bool isMix = false;
    EdtfDate at = EdtfDate::ofMinute(0);
    Estimate mass_g;
    Estimate share = Estimate::anyShare();  // of all that ever went in, 0 … 1
};

enum class MixOutputKind { intoMix, printed, withdrawn, discarded };
template <>
struct EnumText<MixOutputKind> {
    static constexpr const char* names[] = {"intoMix", "printed", "withdrawn", "discarded"};
};

struct MixOutput {
    MixOutputKind kind = MixOutputKind::withdrawn;
    std::string name;  // of the mix that it went into
    std::string code;  // of the edition that was printed …
    int layer = 0;     // … and its layer
    int sheets = 0;
    EdtfDate at = EdtfDate::ofMinute(0);
    Estimate mass_g;
};

enum class DrierIn {
    declaredFree,  // declared so, and none was weighed in
    broken,        // declared free of it, and some was weighed in
    none,
    some,
    unclear
};
template <>
struct EnumText<DrierIn> {
    static constexpr const char* names[] = {"declaredFree", "broken", "none", "some", "unclear"};
};

struct LayersOfEdition {
    std::string code;
    std::vector<int> layers;  // ascending
};

struct MixAccount {
    Mix mix;
    std::vector<MixInput> in;    // by time
    Estimate in_g;               // all of it
    std::vector<MixOutput> out;  // by time
    Estimate out_g;              // all of it
    DrierIn drier = DrierIn::unclear;
    Estimate drierShare = Estimate::anyShare();  // of what is in it now
    Estimate left_g;                             // nothing once it is finished
    std::vector<LayersOfEdition> usedIn;         // those printed from it, by way of other mixes too
};

struct MixesOfEdition {
    std::string code;  // empty for mixes of no edition
    std::string title;
    std::vector<MixAccount> mixes;  // by the day they were made
};

struct MixBookFacts {
    CivilMinute asOf = 0;
    std::string studio;
    std::string edition;                   // title, where it is about one
    std::vector<MixesOfEdition> editions;  // in the order of recording, mixes of none last
};

// What happened after asOf is left out. With an edition (its id) also mixes of others that it was
// printed from.
MixBookFacts mixBookFactsOf(const RecordSet& records, const std::optional<std::string>& edition,
                            CivilMinute asOf);

}  // namespace rackbook
