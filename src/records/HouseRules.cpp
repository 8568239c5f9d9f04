#include "records/HouseRules.h"

#include <stdexcept>

namespace rackbook {

const std::vector<HouseRuleDefault>& houseRuleDefaults() {
    static const std::vector<HouseRuleDefault> rules = {
        {"extenderRichShare", 0.80, 0.0, 1.0, "share",
         "a layer whose ink holds at least this share of base counts as extender-rich",
         Origin::commonPractice, "our reading of common practice, no source"},
        {"lightDays", 14, 0, 3650, "days",
         "days in light after the last extender-rich layer, printed with drier",
         Origin::commonPractice, "common practice, no source"},
        {"lightDaysCareful", 21, 0, 3650, "days",
         "days in light where that ink held no drier, or none is known", Origin::commonPractice,
         "common practice, no source"},
        {"lightDose_sunnyDays", 1, 0.001, 1000, "sunny days",
         "dose of light after which half of the prints have their colour back, by near ultraviolet "
         "beside a sunny day of twelve hours hung up out of doors; as long as no looks teach it",
         Origin::commonPractice, "about one such day: common practice, no source"},
        {"lightDoseFactor", 5, 1.1, 100, "times",
         "that dose may be as many times less or more, in nine cases of ten",
         Origin::commonPractice, "our guess, no source: a wide spread"},
        {"lookChance", 0.10, 0.0, 0.99, "share",
         "a look is worth making from this chance on that the colour has returned; from 0.5 on, or "
         "this where it is more, after a look that did not find it true",
         Origin::commonPractice, "our guess, no source"},
        {"returnedChance", 0.80, 0.01, 0.999, "share",
         "from this chance on that the colour has returned, the dose counts as enough",
         Origin::commonPractice, "our guess, no source"},
        {"colourLooks", 2, 1, 10, "looks",
         "looks that must find the colour true, one after the other", Origin::commonPractice,
         "a second look some days later: common practice, no source"},
        {"colourLooksApart_days", 3, 0, 365, "days", "these looks lie at least so far apart",
         Origin::commonPractice, "some days: our reading of common practice, no source"},
        {"looksToLearn", 6, 1, 10000, "looks",
         "from so many looks on at different batches, a dose counts as learnt",
         Origin::commonPractice, "our guess, no source"},
        {"drierLeastShare", 0.005, 0.0, 0.2, "share",
         "ink with less drier than this counts as printed without", Origin::commonPractice,
         "our reading: handbooks advise about 1 to 3 per cent, from memory"},
        {"drierMostShare", 0.035, 0.0, 0.5, "share",
         "more drier than this in a portion is worth a second look: excess skins over soft ink",
         Origin::commonPractice,
         "our reading: handbooks advise about 1 to 3 per cent, from memory"},
        {"overdrawTolerance_g", 0.5, 0.0, 1000.0, "g",
         "a mix may be short by this much before it counts as overdrawn: what sticks to the knife",
         Origin::commonPractice, "common practice, no source"},
        {"proofsMostShare", 0.10, 0.0, 1.0, "share",
         "artist's proofs beyond this share of the numbered size are pointed out",
         Origin::publishedSource,
         "workshop definitions limit artist's proofs to 5 or 10 per cent of the edition"},
        {"colourMostUncertainty", 0.05, 0.001, 0.5, "share",
         "a mix is weighed so that each colour's share is known to this share of itself, at twice "
         "its standard uncertainty",
         Origin::commonPractice, "our guess, no source: set what the eye forgives"},
        {"spoilShare", 0.10, 0.0, 5.0, "share",
         "sheets printed beyond those wanted, because some are spoiled", Origin::commonPractice,
         "our guess, no source"},
        {"heapLifeWithDrier_h", 16, 0.1, 1000, "h",
         "how long a heap with drier can be printed from at 20 °C, after the drier went in",
         Origin::commonPractice, "overnight at most: common practice, no source"},
        {"heapLifeWithoutDrier_h", 336, 0.1, 10000, "h",
         "how long a covered heap without drier keeps at 20 °C", Origin::commonPractice,
         "a couple of weeks: common practice, no source"},
        {"heapLeftOut_days", 365, 1, 36500, "days",
         "a heap that has been past for longer is taken to be gone, though nobody recorded it",
         Origin::commonPractice, "our guess, no source"},
        {"colourTolerance_dE00", 2.0, 0.1, 20.0, "ΔE00",
         "two readings that differ by no more under D50 count as the same colour",
         Origin::commonPractice, "our guess, no source: set what the eye forgives"},
        {"filmWeightUncertainty", 0.10, 0.0, 1.0, "share",
         "standard uncertainty of a film weight that was aimed at, recorded or given, as a share "
         "of it",
         Origin::commonPractice, "our guess, no source: learn it from pulls that were weighed"},
        {"surfaceOuterReflection", 0.04, 0.0, 0.2, "share",
         "of light from outside, what the surface of ink or paper sends back at once (Saunderson's "
         "k1)",
         Origin::commonPractice, "usual for a refractive index of 1.5, from memory"},
        {"surfaceInnerReflection", 0.60, 0.0, 0.9, "share",
         "of diffuse light from inside, what the surface keeps in (Saunderson's k2)",
         Origin::commonPractice, "usual for a refractive index of 1.5, from memory"},
        {"skySunnyShare", 0.30, 0.0, 1.0, "share",
         "days that count as sunny where the weather is not recorded", Origin::commonPractice,
         "our guess, no source: take it from a station near the studio"},
        {"skyOvercastShare", 0.35, 0.0, 1.0, "share",
         "days that count as overcast; the rest of 1 is broken cloud", Origin::commonPractice,
         "our guess, no source: take it from a station near the studio"},
        {"openedLifeTin_days", 730, 1, 36500, "days",
         "how long a tin or a jar keeps once it is opened", Origin::commonPractice,
         "our guess, no source: set what the studio finds"},
        {"openedLifeTube_days", 1825, 1, 36500, "days",
         "how long a tube, a cartridge or a bottle keeps once it is opened", Origin::commonPractice,
         "our guess, no source: set what the studio finds"},
        {"airing_days", 30, 1, 3650, "days",
         "what is still at risk in a drawer is aired after so many days in the dark",
         Origin::commonPractice, "our guess, no source"},
        {"backUp_days", 7, 0.1, 3650, "days",
         "a reminder comes where the last backup of the book is so old", Origin::commonPractice,
         "our guess, no source: what may be told again from memory"},
    };
    return rules;
}

HouseRules::HouseRules(const std::vector<HouseRule>& ofTheStudio) {
    for (const HouseRuleDefault& rule : houseRuleDefaults())
        m_rules.push_back({rule.rule, rule.value, rule.unit, rule.words, rule.origin, rule.source});
    for (const HouseRule& own : ofTheStudio) {
        for (RuleInForce& rule : m_rules) {
            if (rule.rule != own.rule)
                continue;
            rule.value = own.value;
            rule.origin = own.origin;
            rule.source = own.source.value_or("");
        }
    }
}

const RuleInForce& HouseRules::rule(const std::string& name) const {
    for (const RuleInForce& inForce : m_rules)
        if (inForce.rule == name)
            return inForce;
    throw std::out_of_range("no house rule is named " + name);
}

}  // namespace rackbook
