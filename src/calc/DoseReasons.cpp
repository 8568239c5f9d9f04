#include "calc/DoseReasons.h"

#include <cmath>

#include "base/Numbers.h"
#include "calc/ToldChance.h"
#include "calc/Wording.h"

namespace rackbook {

namespace {

GateState stateOf(const ReadinessRow& row, GateKind kind) {
    return row.gates[static_cast<std::size_t>(kind)].state;
}

std::string looksWords(std::size_t looks) {
    return std::to_string(looks) + (looks == 1 ? " look" : " looks");
}

// Where the wanted light comes from.
std::string wantedWords(const LightWantedGroup& group, const HouseRules& rules) {
    const std::string half =
        "half of such prints have their colour back after " + roughly(group.half_sunnyDays);
    const std::size_t looks = group.count;
    if (group.isLearnt)
        return half + ", learnt from " + looksWords(looks) + " in this studio";
    const std::string byRule = originWords(rules.rule("lightDose_sunnyDays"));
    if (looks == 0)
        return half + " (" + byRule + ")";
    return half + " (the house rule's " + formatShortest(rules.value("lightDose_sunnyDays")) +
           ", " + byRule + ", moved by " + looksWords(looks) + ", too few to learn from)";
}

// What the chance allows for; see LightWanted::chanceBy.
std::string countedIn(const ReadinessRow& row) {
    return row.wanted->isLearnt && row.dose.sunnyDays.isKnown()
               ? "With what is not known of the light wanted counted in"
               : "With what is not known of either counted in";
}

std::string chanceWords(double chance) {
    if (chance < 0.01)
        return "next to nothing";
    if (chance > 0.99)
        return "next to certainty";
    return "about " + percentWords(Estimate::exactly(std::round(chance * 100) / 100));
}

std::string sinceLookWords(const ReadinessRow& row, const History& history) {
    if (!row.looks.any || row.looks.last == LookColour::trueColour)
        return "";
    return ", which it was not at the look " +
           dayWords(history.looks[static_cast<std::size_t>(row.colourLook)].at) + ",";
}

std::string tooLittleWords(const ReadinessRow& row, const HouseRules& rules) {
    const std::string wanted = roughly(LightWanted::doseFor_sunnyDays(
        *row.wanted, lookChanceFor(row.looks, rules.value("lookChance")), row.notYet_sunnyDays));
    if (wanted == roughly(row.dose.sunnyDays.best))
        return "That is a little too little for a look to tell.";
    return "That is too little for a look to tell: about " + wanted + " are wanted first.";
}

}  // namespace

std::string forecastWords(const LightForecast& forecast) {
    const auto day = [](std::int64_t days) { return formatDay(days * minutesPerDay); };
    if (!forecast.early)
        return "it does not get there within two years";
    std::string words = "a look is worth making from " + day(*forecast.early) + " on";
    if (forecast.likely)
        words += ", half of such prints are back by " + day(*forecast.likely);
    if (forecast.late)
        words += ", most by " + day(*forecast.late);
    return words;
}

std::vector<std::string> doseReasons(const ReadinessRow& row, const History& history,
                                     const HouseRules& rules) {
    std::vector<std::string> sentences;
    if (!row.asksDose || row.pull < 0 || std::isnan(row.returnedChance))
        return sentences;
    const std::string had = "By estimate its light since is worth " + roughly(row.dose.sunnyDays) +
                            " sunny days hung up out of doors";
    if (row.verdict != Verdict::ready && cameBackInTheDark(row))
        return {had + ".",
                "It was found true though next to no light had come to it since it had been found "
                "not true: look again, or correct the looks or the light of the place."};
    // Looks tell it, or the dates are too bad for it to be told.
    if (row.verdict == Verdict::ready || toldChanceOf(row) != ToldChance::told)
        return {had + "."};
    sentences.push_back(had + "; " + wantedWords(*row.wanted, rules) + ". " + countedIn(row) +
                        ", the chance that the colour of this one is back" +
                        sinceLookWords(row, history) + " is " + chanceWords(row.returnedChance) +
                        ".");
    if (stateOf(row, GateKind::dose) == GateState::failed)
        sentences.push_back(tooLittleWords(row, rules));
    if (row.hasForecast && row.place >= 0)
        sentences.push_back("Hanging on at " +
                            history.places[static_cast<std::size_t>(row.place)].name + ", " +
                            forecastWords(forecastOf(row, rules)) + ".");
    return sentences;
}

std::vector<std::string> colourLookReasons(const ReadinessRow& row, const History& history,
                                           const HouseRules& rules) {
    if (row.colourLook >= 0 && row.looks.last != LookColour::trueColour &&
        history.looks[static_cast<std::size_t>(row.colourLook)].colour == LookColour::trueColour)
        return {"Another look, which may have been the later one, found it not true."};
    if (row.colourLook >= 0 && row.looks.foundTrue > 1 &&
        stateOf(row, GateKind::colour) == GateState::passed)
        return {"It is one of " + looksWords(static_cast<std::size_t>(row.looks.foundTrue)) +
                " that found the colour true."};
    if (row.colourLook < 0 || stateOf(row, GateKind::colour) != GateState::open)
        return {};
    if (row.looks.foundTrue == 0)
        return {
            "That was too early to tell: fresh ink looks true before it turns. Look again "
            "after its days in light."};
    const double apart_days = rules.value("colourLooksApart_days");
    return {"The studio wants " + std::to_string(row.looks.wanted) + " looks that find it true, " +
            formatShortest(apart_days) + (apart_days == 1 ? " day" : " days") + " apart or more; " +
            std::to_string(row.looks.foundTrue) + " so far. The next may be made " +
            (nextLookFrom(row, rules) <= row.asOf
                 ? "now."
                 : "from " + formatDay(nextLookFrom(row, rules)) + " on.")};
}

}  // namespace rackbook
