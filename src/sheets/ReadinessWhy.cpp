#include "sheets/ReadinessWhy.h"

#include <cmath>

#include "calc/ToldChance.h"
#include "sheets/LabelKeys.h"
#include "sheets/ReadinessGroups.h"
#include "sheets/ReturnCurve.h"
#include "sheets/RuleSource.h"

namespace rackbook {

namespace {

class Why {
public:
    Why(const ReadinessRow& row, const ReadinessFacts& facts, const SheetWords& words)
        : m_row(row), m_history(facts.history), m_rules(facts.rules), m_words(words) {}

    std::vector<std::string> all() {
        if (m_row.pull >= 0)
            sayLight();
        else if (m_row.verdict == Verdict::notAffected)
            say("noRich");
        else if (m_row.verdict == Verdict::lookDue)
            say("onlyDry");
        sayLooks();
        sayPutAway();
        sayPlace();
        sayGaps();
        return std::move(m_sentences);
    }

private:
    using Filling = SheetWords::Filling;

    std::string filled(const std::string& key, Filling filling = {}) const {
        return m_words.filled("impressions.because." + key, filling);
    }
    void say(const std::string& key, Filling filling = {}) {
        m_sentences.push_back(filled(key, filling));
    }

    bool passed(GateKind kind) const {
        return m_row.gates[static_cast<std::size_t>(kind)].state == GateState::passed;
    }
    const HistoryLook& look(int i) const { return m_history.looks[static_cast<std::size_t>(i)]; }
    const std::string& placeName(int i) const {
        return m_history.places[static_cast<std::size_t>(i)].name;
    }
    const HistoryPull& pull(int i) const { return m_history.pulls[static_cast<std::size_t>(i)]; }

    std::string layerOf(int i) const {
        const int layer = pull(i).layer;
        return layer < 0
                   ? m_words("notKnown")
                   : std::to_string(m_history.layers[static_cast<std::size_t>(layer)].ordinal);
    }

    std::string when(const TimeSpan& span) const {
        return dayOf(span.earliest) == dayOf(span.latest)
                   ? m_words.when(EdtfDate::ofDay(span.earliest))
                   : m_words.span(span.earliest, span.latest);
    }

    // One decimal at most.
    std::string percent(const Estimate& share) const {
        const auto shown = [&](double one) {
            return m_words.shortFigure(std::round(one * 1000) / 10);
        };
        const std::string low = shown(share.low);
        const std::string high = shown(share.high);
        return m_words.withUnit("percent", low == high ? low : low + "–" + high);
    }

    std::string days(double count) const {
        return m_words.withUnit("days", m_words.shortFigure(count));
    }

    std::string drier() const {
        const Estimate& share = m_row.drierShare;
        if (share.high <= 0)
            return filled("drierNone");
        if (m_row.lightRule == LightRule::drierNotKnown && share.high >= 1)
            return filled("drierUnknown");
        return filled(m_row.lightRule == LightRule::withoutDrier ? "drierCountsAsNone" : "drier",
                      {{"share", percent(share)}});
    }

    std::string ink() const {
        const Estimate& base = m_row.extenderShare;
        if (m_row.shareRemembered)
            return filled("inkRemembered", {{"share", percent(base)}});
        if (base.low <= 0 && base.high >= 1)
            return filled("inkUnknown");
        return filled("ink", {{"share", percent(base)}, {"drier", drier()}});
    }

    void sayLight() {
        say("printed", {{"layer", layerOf(m_row.pull)},
                        {"ink", ink()},
                        {"when", when(pull(m_row.pull).start)}});
        // More than any studio has existed: the count has no upper end.
        constexpr double mostDays = 1e6;
        const std::string low = wholeDays(m_row.daysLow, m_row.daysLow, m_words);
        say("days", {{"days", m_row.daysHigh > mostDays
                                  ? m_words.filled("orMore", {{"value", low}})
                                  : wholeDays(m_row.daysLow, m_row.daysHigh, m_words)},
                     {"needed", m_words.shortFigure(m_row.daysNeeded)}});
        if (m_row.touchLook < 0 && m_row.colourLook < 0)
            say(m_row.unplacedLooks ? "noLookSurely" : "noLook");
        if (m_row.turnedAgain >= 0)
            say("turnedAgain",
                {{"when", when(look(m_row.turnedAgain).at)},
                 {"days", wholeDays(m_row.daysInAllLow, m_row.daysInAllHigh, m_words)}});
        const bool careful = m_row.lightRule != LightRule::withDrier;
        say(!careful                                     ? "wantedWithDrier"
            : m_row.lightRule == LightRule::withoutDrier ? "wantedWithoutDrier"
                                                         : "wantedDrierUnknown",
            {{"days", days(m_row.daysNeeded)},
             {"origin",
              sourceText(m_rules.rule(careful ? "lightDaysCareful" : "lightDays"), m_words)}});
        if (m_row.artificialLight)
            say("artificial");
        if (m_row.asksDose && !std::isnan(m_row.returnedChance))
            sayDose();
    }

    void sayDose() {
        const Estimate& dose = m_row.dose.sunnyDays;
        say("dose",
            {{"dose", std::isinf(dose.high)
                          ? m_words.filled("orMore", {{"value", doseFigure(dose.low, m_words)}})
                          : doseText(dose, m_words)}});
        if (m_row.verdict != Verdict::ready && cameBackInTheDark(m_row)) {
            say("cameBackInTheDark");
            return;
        }
        // Looks tell it, or the dates are too bad for it to be told.
        if (m_row.verdict == Verdict::ready || toldChanceOf(m_row) != ToldChance::told)
            return;
        sayHalf(*m_row.wanted);
        sayChance();
        if (m_row.gates[static_cast<std::size_t>(GateKind::dose)].state == GateState::failed)
            say("tooLittle",
                {{"dose", doseFigure(LightWanted::doseFor_sunnyDays(
                                         *m_row.wanted,
                                         lookChanceFor(m_row.looks, m_rules.value("lookChance")),
                                         m_row.notYet_sunnyDays),
                                     m_words)}});
        if (m_row.hasForecast && m_row.place >= 0)
            sayForecast(forecastOf(m_row, m_rules));
    }

    void sayHalf(const LightWantedGroup& group) {
        const std::string half = doseFigure(group.chance.doseFor_sunnyDays(0.5), m_words);
        const std::string looks = m_words.count(static_cast<std::int64_t>(group.count));
        const RuleInForce& rule = m_rules.rule("lightDose_sunnyDays");
        if (group.isLearnt)
            say("halfLearnt", {{"half", half}, {"looks", looks}});
        else if (group.count == 0)
            say("halfByRule", {{"half", half}, {"origin", sourceText(rule, m_words)}});
        else
            say("halfMoved", {{"half", half},
                              {"rule", m_words.shortFigure(rule.value)},
                              {"origin", sourceText(rule, m_words)},
                              {"looks", looks}});
    }

    void sayChance() {
        const double chance = m_row.returnedChance;
        constexpr double least = 0.01;
        const std::string words =
            chance < least ? filled("chanceLeast")
            : chance > 1 - least
                ? filled("chanceMost")
                : filled("chanceAbout",
                         {{"share", m_words.withUnit("percent", m_words.percent(chance, 0))}});
        if (m_row.looks.any && m_row.looks.last != LookColour::trueColour)
            say("chanceSince", {{"when", when(look(m_row.colourLook).at)}, {"chance", words}});
        else
            say("chance", {{"chance", words}});
    }

    void sayForecast(const LightForecast& forecast) {
        const auto day = [&](std::int64_t days) { return m_words.day(days * minutesPerDay); };
        const std::string& place = placeName(m_row.place);
        if (!forecast.early) {
            say("forecastNever", {{"place", place}});
            return;
        }
        say("forecast", {{"place", place}, {"date", day(*forecast.early)}});
        if (forecast.likely)
            say("forecastHalf", {{"date", day(*forecast.likely)}});
        if (forecast.late)
            say("forecastMost", {{"date", day(*forecast.late)}});
    }

    void sayLook(int at, bool tellsTouch, bool tellsColour, bool wasOther) {
        const HistoryLook& seen = look(at);
        std::vector<std::string> found;
        if (tellsTouch)
            found.push_back(m_words.of("touch", seen.touch));
        if (tellsColour)
            found.push_back(filled(std::string("colour.") + textOf(seen.colour)));
        say(wasOther ? "lookOther" : "look",
            {{"when", when(seen.at)}, {"found", m_words.inRow(found)}});
    }

    void sayLooks() {
        if (m_row.colourLook >= 0)
            sayLook(m_row.colourLook, m_row.colourLook == m_row.touchLook, true,
                    m_row.colourWasOther);
        if (m_row.touchLook >= 0 && m_row.touchLook != m_row.colourLook)
            sayLook(m_row.touchLook, true, false, m_row.touchWasOther);
        sayColourLooks();
        const bool neither = m_row.touchLook < 0 && m_row.colourLook < 0;
        if (m_row.lastPull < 0 || (m_row.pull >= 0 && neither))
            return;
        if (m_row.touchLook < 0)
            say("noTouch");
        if (m_row.pull >= 0 && m_row.colourLook < 0)
            say("noColour");
    }

    void sayColourLooks() {
        if (m_row.colourLook < 0)
            return;
        const GateState state = m_row.gates[static_cast<std::size_t>(GateKind::colour)].state;
        const std::string foundTrue = m_words.count(m_row.looks.foundTrue);
        if (m_row.looks.last != LookColour::trueColour &&
            look(m_row.colourLook).colour == LookColour::trueColour)
            say("anotherLook");
        else if (m_row.looks.foundTrue > 1 && state == GateState::passed)
            say("looksTrue", {{"looks", foundTrue}});
        else if (state == GateState::open && m_row.looks.foundTrue == 0)
            say("tooEarly");
        else if (state == GateState::open)
            sayLooksWanted(foundTrue);
    }

    void sayLooksWanted(const std::string& foundTrue) {
        const CivilMinute next = nextLookFrom(m_row, m_rules);
        const std::string apart = days(m_rules.value("colourLooksApart_days"));
        const std::string wanted = m_words.count(m_row.looks.wanted);
        if (next <= m_row.asOf)
            say("looksWantedNow", {{"wanted", wanted}, {"apart", apart}, {"found", foundTrue}});
        else
            say("looksWanted", {{"wanted", wanted},
                                {"apart", apart},
                                {"found", foundTrue},
                                {"date", m_words.day(next)}});
    }

    void sayPutAway() {
        if (m_row.verdict == Verdict::bringOut && !m_row.putAwayEarly) {
            say("foundNotTrue");
            return;
        }
        if (!m_row.putAwayEarly)
            return;
        const char* key =
            m_row.verdict == Verdict::bringOut
                ? (passed(GateKind::light) ? "putAwayTooEarlyLook" : "putAwayTooEarly")
            : m_row.leftEarly ? "leftEarly"
                              : "putAwayEarly";
        say(key, {{"when", when(m_row.putAwayEarlyOn)}, {"place", placeName(m_row.putAwayTo)}});
    }

    void sayPlace() {
        if (m_row.place < 0)
            return;
        const std::string& place = placeName(m_row.place);
        const bool isArtificial = m_row.lightNow == LightState::artificial;
        if (m_row.mayComeLater)
            say("placePerhaps", {{"place", place}});
        else if (!countsAsDark(m_row.lightNow))
            say(m_row.lightNow == LightState::lit ? "placeLit" : "place", {{"place", place}});
        else if (m_row.pull < 0)
            say(isArtificial ? "placeArtificial" : "placeDark", {{"place", place}});
        else
            say(isArtificial ? "placeArtificialSince" : "placeDarkSince",
                {{"place", place},
                 {"date", m_words.span(m_row.darkSince.earliest, m_row.darkSince.latest)}});
    }

    void sayGaps() {
        const ReadinessGaps& gaps = m_row.gaps;
        if (gaps.pulls)
            say("noPrinting");
        if (gaps.extenderShare)
            say("shareUnknown",
                {{"layer", layerOf(m_row.doubtfulPull)},
                 {"share", percent(Estimate::exactly(m_rules.value("extenderRichShare")))}});
        if (gaps.lightAtHolder)
            say("lightAtHolder");
        else if (gaps.whereabouts)
            say("whereabouts");
        if (gaps.lightAtPlace)
            say("lightAtPlace", {{"place", placeName(m_row.unlitPlace)}});
        if (gaps.dates)
            say("dates");
    }

    const ReadinessRow& m_row;
    const History& m_history;
    const HouseRules& m_rules;
    const SheetWords& m_words;
    std::vector<std::string> m_sentences;
};

}  // namespace

std::vector<std::string> whySentences(const ReadinessRow& row, const ReadinessFacts& facts,
                                      const SheetWords& words) {
    return Why(row, facts, words).all();
}

void addWhyLabels(std::vector<std::string>& keys) {
    const auto add = [&](const char* words) { addLabelKeys(keys, "impressions.because", words); };
    add("noRich printed ink inkRemembered inkUnknown drier drierNone drierUnknown");
    add("onlyDry noLookSurely turnedAgain cameBackInTheDark lookOther looksWantedNow placePerhaps");
    add("drierCountsAsNone days noLook wantedWithDrier wantedWithoutDrier wantedDrierUnknown");
    add("artificial dose halfLearnt halfByRule halfMoved chance chanceSince chanceLeast");
    add("chanceMost chanceAbout tooLittle forecast forecastHalf forecastMost forecastNever");
    add("look noTouch noColour anotherLook looksTrue tooEarly looksWanted");
    add("foundNotTrue putAwayTooEarly putAwayTooEarlyLook leftEarly putAwayEarly");
    add("place placeLit placeDark placeArtificial placeDarkSince placeArtificialSince");
    add("noPrinting shareUnknown lightAtHolder whereabouts lightAtPlace dates");
    addLabelKeysOf<LookColour>(keys, "impressions.because.colour");
}

}  // namespace rackbook
