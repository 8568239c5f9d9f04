#include <cmath>

#include "base/Numbers.h"
#include "base/Translated.h"
#include "calc/DoseReasons.h"
#include "calc/Readiness.h"
#include "calc/Wording.h"

namespace rackbook {

namespace {

class Reasons {
public:
    Reasons(const ReadinessRow& row, const History& history, const HouseRules& rules)
        : m_row(row), m_history(history), m_rules(rules) {}

    std::vector<std::string> all() {
        if (m_row.pull >= 0)
            sayLight();
        else if (m_row.verdict == Verdict::notAffected)
            say("No layer of it is extender-rich, by what is recorded.");
        else if (m_row.verdict == Verdict::lookDue)
            say("No layer of it is extender-rich, by what is recorded: it only has to be dry.");
        sayLooks();
        sayPlace();
        sayGaps();
        return std::move(m_sentences);
    }

private:
    void say(std::string sentence) { m_sentences.push_back(std::move(sentence)); }

    const HistoryLook& look(int i) const { return m_history.looks[static_cast<std::size_t>(i)]; }
    const std::string& placeName(int i) const {
        return m_history.places[static_cast<std::size_t>(i)].name;
    }
    bool passed(GateKind kind) const {
        return m_row.gates[static_cast<std::size_t>(kind)].state == GateState::passed;
    }

    // "Layer 5", "A layer"
    std::string layerName(int pull) const {
        const int layer = m_history.pulls[static_cast<std::size_t>(pull)].layer;
        return layer < 0
                   ? "A layer"
                   : "Layer " +
                         std::to_string(m_history.layers[static_cast<std::size_t>(layer)].ordinal);
    }

    std::string inkWords() const {
        const Estimate& base = m_row.extenderShare;
        if (m_row.shareRemembered)
            return percentWords(base) + " extender as remembered, drier not known";
        if (base.low <= 0 && base.high >= 1)
            return "share of extender not known";
        return percentWords(base) + " extender, " + drierWords();
    }

    std::string drierWords() const {
        const Estimate& drier = m_row.drierShare;
        if (drier.high <= 0)
            return "no drier";
        if (m_row.lightRule == LightRule::drierNotKnown && drier.high >= 1)
            return "drier not known";
        const std::string share = percentWords(drier) + " drier";
        return m_row.lightRule == LightRule::withoutDrier ? share + ", which counts as none"
                                                          : share;
    }

    void sayLight() {
        const std::string wanted = formatShortest(m_row.daysNeeded);
        std::string text = layerName(m_row.pull) + " (" + inkWords() + ") was pulled " +
                           dayWords(m_history.pulls[static_cast<std::size_t>(m_row.pull)].start) +
                           "; it has ";
        const bool never = m_row.daysHigh <= 0;
        text += never ? "not hung in light since"
                      : "hung in light for " + daysWords(m_row.daysLow, m_row.daysHigh);
        if (never)
            text += ", and the studio wants " + wanted + (m_row.daysNeeded == 1 ? " day" : " days");
        else
            text += passed(GateKind::light) ? "; the studio wants " + wanted
                                            : " of the " + wanted + " that the studio wants";
        if (m_row.touchLook < 0 && m_row.colourLook < 0)
            text += m_row.unplacedLooks ? "; no look that certainly came since" : "; no look since";
        say(text + ".");
        sayTurnedAgain();
        sayLightRule(wanted);
        if (m_row.artificialLight)
            say("Time in artificial light counts as dark.");
        for (std::string& sentence : doseReasons(m_row, m_history, m_rules))
            say(std::move(sentence));
    }

    void sayTurnedAgain() {
        if (m_row.turnedAgain < 0)
            return;
        say("They are counted from the look " + dayWords(look(m_row.turnedAgain).at) +
            ", which found the colour turned after time in the dark; in all it had " +
            daysWords(m_row.daysInAllLow, m_row.daysInAllHigh) + ".");
    }

    void sayLightRule(const std::string& wanted) {
        const bool careful = m_row.lightRule != LightRule::withDrier;
        const char* why = "with drier in the ink";
        if (m_row.lightRule == LightRule::withoutDrier)
            why = "without drier in the ink";
        if (m_row.lightRule == LightRule::drierNotKnown)
            why = "where the ink is not known to hold drier";
        say(wanted + (m_row.daysNeeded == 1 ? " day is" : " days are") + " wanted " + why + ": " +
            originWords(m_rules.rule(careful ? "lightDaysCareful" : "lightDays")) + ".");
    }

    static std::string touchWords(const HistoryLook& felt) {
        return felt.touch == Touch::dry ? "dry to the touch"
                                        : std::string("still ") + textOf(felt.touch);
    }

    static std::string colourWords(const HistoryLook& seen) {
        static constexpr const char* found[] = {"turned", "returning", "true"};
        return std::string("the colour ") + found[static_cast<std::size_t>(seen.colour)];
    }

    // A look at a sample is no look at the print itself.
    std::string lookWords(int which, bool wasOther) const {
        const std::string when = "The look " + dayWords(look(which).at);
        return wasOther ? when + ", at others that were taken to speak for it, found"
                        : when + " found";
    }

    void sayLooks() {
        const std::string it = m_row.touchWasOther ? " them " : " it ";
        if (m_row.colourLook >= 0 && m_row.colourLook == m_row.touchLook) {
            const HistoryLook& both = look(m_row.colourLook);
            say(lookWords(m_row.colourLook, m_row.colourWasOther) + it + touchWords(both) +
                " and " + colourWords(both) + ".");
        } else {
            if (m_row.colourLook >= 0)
                say(lookWords(m_row.colourLook, m_row.colourWasOther) + " " +
                    colourWords(look(m_row.colourLook)) + ".");
            if (m_row.touchLook >= 0)
                say(lookWords(m_row.touchLook, m_row.touchWasOther) + it +
                    touchWords(look(m_row.touchLook)) + ".");
        }
        for (std::string& sentence : colourLookReasons(m_row, m_history, m_rules))
            say(std::move(sentence));
        sayMissingLooks();
    }

    void sayMissingLooks() {
        const bool neither = m_row.touchLook < 0 && m_row.colourLook < 0;
        if (m_row.lastPull < 0 || (m_row.pull >= 0 && neither))
            return;
        if (m_row.touchLook < 0)
            say("No look since the last pull says how it feels.");
        if (m_row.pull >= 0 && m_row.colourLook < 0)
            say("No look since says whether the colour is true.");
    }

    void sayPlace() {
        const bool dark = countsAsDark(m_row.lightNow);
        if (m_row.verdict == Verdict::bringOut && !m_row.putAwayEarly) {
            say("The colour was found not true since it was put away; bring it out into light.");
        } else if (m_row.verdict == Verdict::bringOut) {
            say("It was put away too early, " + dayWords(m_row.putAwayEarlyOn) + " into " +
                placeName(m_row.putAwayTo) + "; bring it out into light" +
                (passed(GateKind::light) ? " and look at it." : "."));
        } else if (m_row.putAwayEarly) {
            say((m_row.leftEarly ? "It left the studio " : "It was put away ") +
                dayWords(m_row.putAwayEarlyOn) + " (" + placeName(m_row.putAwayTo) +
                ") before all that the studio wants was recorded.");
        }
        if (m_row.place < 0)
            return;
        const std::string where =
            (m_row.mayComeLater ? "It may be at " : "It is at ") + placeName(m_row.place);
        const char* light =
            m_row.lightNow == LightState::artificial ? ", in artificial light" : ", in the dark";
        if (dark && m_row.pull >= 0)
            say(where + light + " since " + sinceWords(m_row.darkSince) + ".");
        else if (dark)
            say(where + light + ".");
        else
            say(where + (m_row.lightNow == LightState::lit ? ", in light." : "."));
    }

    static std::string sinceWords(const TimeSpan& span) {
        const std::string words = dayWords(span);
        return words.compare(0, 3, "on ") == 0 ? words.substr(3) : "some time " + words;
    }

    void sayGaps() {
        const ReadinessGaps& gaps = m_row.gaps;
        if (gaps.pulls)
            say("No pull of it is recorded.");
        if (gaps.extenderShare)
            sayDoubtfulShare();
        if (gaps.lightAtHolder)
            say("It is out of the studio's hands, and its light there is not known.");
        else if (gaps.whereabouts)
            say("For some of the time since, nothing says where it was.");
        if (gaps.lightAtPlace)
            say("The light at " + placeName(m_row.unlitPlace) + " is not known.");
        if (gaps.dates)
            say("The dates are known too badly to count its days.");
    }

    void sayDoubtfulShare() {
        say(layerName(m_row.doubtfulPull) +
            " may be extender-rich: nothing recorded says whether its ink held " +
            percentWords(Estimate::exactly(m_rules.value("extenderRichShare"))) +
            " extender or more.");
    }

    const ReadinessRow& m_row;
    const History& m_history;
    const HouseRules& m_rules;
    std::vector<std::string> m_sentences;
};

}  // namespace

std::vector<std::string> reasonsFor(const ReadinessRow& row, const History& history,
                                    const HouseRules& rules) {
    return Reasons(row, history, rules).all();
}

const char* verdictWords(Verdict verdict) {
    static constexpr const char* words[] = {
        toTranslate("verdict", "ready"),        toTranslate("verdict", "a look is due"),
        toTranslate("verdict", "more light"),   toTranslate("verdict", "bring it out"),
        toTranslate("verdict", "not affected"), toTranslate("verdict", "not known")};
    return words[static_cast<std::size_t>(verdict)];
}

}  // namespace rackbook
