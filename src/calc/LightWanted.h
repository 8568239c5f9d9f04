// How much light prints of this studio want before their colour is back: learnt from its own looks,
// for inks alike where there are enough, else by the house rules.
#pragma once

#include <string>
#include <vector>

#include "calc/PullInk.h"
#include "calc/ReturnChance.h"
#include "calc/ReturnLooks.h"

namespace rackbook {

// What inks have in common that are taken for alike.
struct InkLikeness {
    int baseLot = -1;  // most of its base; -1: any, or not known
    bool byDrier = false;
    LightRule drier = LightRule::drierNotKnown;
    bool byShare = false;
    int shareBand = 0;  // 0: below 0.90 base, 1: below 0.95, 2: more
};

struct LightWantedGroup {
    InkLikeness alike;               // empty: all inks
    std::vector<std::size_t> looks;  // positions in LightWanted::looks(), of those taken
    std::size_t count = 0;           // of all of them
    LightThreshold threshold;
    ReturnChance chance;
    bool isLearnt = false;  // there are as many looks as looksToLearn wants
    // By which half of the prints have their colour back: the best value of the threshold's.
    double half_sunnyDays = 0;
};

// What the house rules say while nothing is learnt.
ThresholdPrior priorOf(const HouseRules& rules);

class LightWanted {
public:
    // From looks at all prints of the book; of each group the latest 100, by the time of the pull,
    // are taken. Prints that were never seen to turn teach nothing where the house rules
    // would not have had them looked at yet: they may not have turned yet. Throws what
    // LightThreshold throws.
    LightWanted(const History& history, const std::vector<PullInk>& inks, const HouseRules& rules,
                std::vector<ReturnLook> looks);

    // All inks first, then the groups with enough looks of their own.
    const std::vector<LightWantedGroup>& groups() const { return m_groups; }
    const std::vector<ReturnLook>& looks() const { return m_looks; }

    // The narrowest group that the ink belongs to.
    const LightWantedGroup& groupFor(const InkLikeness& full) const;
    InkLikeness likenessOf(std::uint32_t pull) const { return m_likeness[pull]; }

    // Chance that the colour has returned, of a print of which a look at the dose `notYet` said
    // that it had not (best 0 where there was none). Without a best value of the dose notKnown, as
    // ReturnChance has it. What is wrong
    // with the doses of a place was wrong in the looks too, so that of learnt groups only the best
    // value of the dose is taken.
    static double chanceBy(const LightWantedGroup& group, const Estimate& dose_sunnyDays,
                           const Estimate& notYet_sunnyDays = Estimate::exactly(0));

    // The dose by which that chance is reached, of a print with that look. Chance above 0, below 1.
    static double doseFor_sunnyDays(const LightWantedGroup& group, double chance,
                                    const Estimate& notYet_sunnyDays);

private:
    void addGroup(const InkLikeness& alike, const HouseRules& rules);

    std::vector<ReturnLook> m_looks;
    std::vector<InkLikeness> m_likeness;  // by pull
    std::vector<LightWantedGroup> m_groups;
};

}  // namespace rackbook
