#include <algorithm>

#include "calc/Assessment.h"

namespace rackbook {

// Counts all stays and the gaps between them; visit(stay, followed) comes before each stay is
// counted, and knows whether it follows on the one before.
template <class Visit>
void Assessment::passStays(LightDays& days, Visit&& visit) const {
    const TimeSpan always{beginningOfTime, beginningOfTime};
    const TimeSpan never{endOfTime, endOfTime};
    days.passUnknown(always, m_stays.empty() ? never : m_stays.front().from);
    bool followed = false;
    for (std::size_t i = 0; i < m_stays.size(); ++i) {
        const Stay& stay = m_stays[i];
        visit(stay, followed);
        days.passStay(stay);
        followed = stay.followed;
        if (!followed && stay.to.earliest < endOfTime)
            days.passUnknown(stay.to, i + 1 < m_stays.size() ? m_stays[i + 1].from : never);
    }
}

double Assessment::daysHighAt(const TimeSpan& pulled, CivilMinute minute) const {
    LightDays days(m_light, pulled, minute);
    passStays(days, [](const Stay&, bool) {});
    return days.high();
}

// A colour that turns in the dark had not finished: the days in light begin anew.
void Assessment::noteTurnedAgain(ReadinessRow& row) const {
    for (const std::uint32_t i : m_looks) {
        const HistoryLook& look = m_history.looks[i];
        if (look.hasColour && look.colour == LookColour::turned &&
            look.at.earliest > row.pulled.latest && followsTheDark(row, look))
            row.turnedAgain = static_cast<int>(i);
    }
}

// Whether it was made in the dark, or as long after as it takes to hang a print up and look at it,
// and the dark had lasted a day.
bool Assessment::followsTheDark(const ReadinessRow& row, const HistoryLook& look) const {
    return std::any_of(m_stays.begin(), m_stays.end(), [&](const Stay& stay) {
        const CivilMinute from = std::max(stay.from.latest, row.pulled.latest);
        const CivilMinute until = std::min(stay.to.latest, look.at.latest);
        return stay.place >= 0 && until - from >= minutesPerDay &&
               until >= look.at.earliest - minutesPerDay && countsAsDark(lightIn(stay, until));
    });
}

void Assessment::walkStays(ReadinessRow& row, bool outOfHands) const {
    row.gaps.dates = isBadlyKnown(row.pulled);
    const HistoryLook* again =
        row.turnedAgain < 0 ? nullptr : &m_history.looks[static_cast<std::size_t>(row.turnedAgain)];
    countDays(row, row.pulled, again ? again->at.latest : endOfTime);
    row.daysInAllLow = row.daysLow;
    row.daysInAllHigh = row.daysHigh;
    if (again)
        countDays(row, {again->at.latest, again->at.latest}, endOfTime);
    const bool unlitOut = row.unlitPlace >= 0 && m_light.isOutOfHands(row.unlitPlace);
    row.gaps.lightAtHolder =
        (row.gaps.lightAtPlace && unlitOut) || (outOfHands && row.lightNow == LightState::unstated);
    row.gaps.lightAtPlace = row.gaps.lightAtPlace && !unlitOut;
}

// Stays that begin later than `until` are counted, and nothing is told of them.
void Assessment::countDays(ReadinessRow& row, const TimeSpan& from, CivilMinute until) const {
    LightDays days(m_light, from, m_asOf);
    passStays(days, [&](const Stay& stay, bool followed) {
        if (stay.from.latest > until)
            return;
        if (stay.from.latest >= from.earliest) {
            notePutAway(row, stay, days);
            row.gaps.dates = row.gaps.dates || isBadlyKnown(stay.from);
        }
        noteDark(row, stay, followed);
    });
    row.daysLow = days.low();
    row.daysHigh = days.high();
    row.artificialLight = days.sawArtificial();
    row.gaps.whereabouts = days.lostWhereabouts();
    row.unlitPlace = days.unlitPlace();
    row.gaps.lightAtPlace = days.unlit();
}

// Keeps the beginning of the dark time that lasts until the stay's end.
void Assessment::noteDark(ReadinessRow& row, const Stay& stay, bool continues) const {
    const CivilMinute end = std::min(stay.to.latest, m_asOf);
    if (stay.place < 0 || !countsAsDark(lightIn(stay, end))) {
        row.darkSince = {endOfTime, endOfTime};
        return;
    }
    const bool darkBefore = continues && row.darkSince.earliest < endOfTime;
    TimeSpan since = darkBefore ? row.darkSince : stay.from;
    if (!stay.interleaved)
        for (const LightSegment* s = m_light.begin(stay.place); s != m_light.end(stay.place); ++s) {
            const bool begins = s != m_light.begin(stay.place) && !countsAsDark((s - 1)->state);
            if (begins && s->from > stay.from.latest && s->from <= end && countsAsDark(s->state))
                since = {s->from, s->from};
        }
    row.darkSince = {std::max(since.earliest, row.pulled.earliest),
                     std::max(since.latest, row.pulled.latest)};
}

void Assessment::notePutAway(ReadinessRow& row, const Stay& stay, const LightDays& days) const {
    if (row.putAwayEarly || stay.place < 0 || stay.undecided || mayComeAfter(stay.from, m_asOf))
        return;
    const bool dark = countsAsDark(lightIn(stay, stay.from.latest));
    const bool out = m_light.isOutOfHands(stay.place);
    if (!dark && !out)
        return;
    ReadinessRow then = row;
    then.daysLow = days.low();
    then.daysHigh = days.high();
    fillLooks(then, stay.from.latest);
    if (wasReadyBy(then, stay.from.latest))
        return;
    row.putAwayEarly = true;
    row.leftEarly = out;
    row.putAwayEarlyOn = stay.from;
    row.putAwayTo = stay.place;
}

// The dose is asked for only where all else is passed.
bool Assessment::wasReadyBy(const ReadinessRow& then, CivilMinute minute) const {
    ReadinessRow row = then;
    row.asksDose = false;
    if (!allPassed(judgeGates(factsOf(row))))
        return false;
    fillDose(row, std::min(minute, m_asOf));
    return allPassed(judgeGates(factsOf(row)));
}

void Assessment::fillDose(ReadinessRow& row, CivilMinute until) const {
    if (!m_model)
        return;
    row.asksDose = true;
    row.dose = m_model->ledger.sumSince(m_stays, row.pulled, until);
    row.wanted =
        &m_model->wanted.groupFor(m_model->wanted.likenessOf(static_cast<std::uint32_t>(row.pull)));
    if (row.looks.any && row.looks.last != LookColour::trueColour)
        row.notYet_sunnyDays =
            m_model->ledger.sumSince(m_stays, row.pulled, std::min(row.turnedUntil, until))
                .sunnyDays;
    row.returnedChance =
        LightWanted::chanceBy(*row.wanted, row.dose.sunnyDays, row.notYet_sunnyDays);
    // Asked for only where there was so little light that it may have been none.
    if (row.looks.sawTurned && row.looks.last == LookColour::trueColour &&
        row.returnedChance < lookChanceFor(row.looks, m_lookChance))
        row.lightSinceTurned_sunnyDays =
            m_model->ledger.sumSince(m_stays, {row.turnedUntil, row.turnedUntil}, until)
                .sunnyDays.high;
}

// Only looks that were certainly made after the pull speak for it.
void Assessment::fillLooks(ReadinessRow& row, CivilMinute until) const {
    CivilMinute lastPull = beginningOfTime;
    for (const std::uint32_t pull : m_pulls)
        if (startOf(pull).earliest <= until)
            lastPull = std::max(lastPull, startOf(pull).latest);
    row.touchLook = -1;
    row.colourLook = -1;
    row.looks = {};
    row.unplacedLooks = false;
    row.looks.wanted = m_colourLooks;
    row.turnedUntil = row.lastTrueLook = beginningOfTime;
    for (const std::uint32_t i : m_looks) {
        const HistoryLook& look = m_history.looks[i];
        if (look.at.earliest > until)
            break;
        // What speaks against a print counts as soon as it may have been seen.
        const bool isFavourable = (!look.hasTouch || look.touch == Touch::dry) &&
                                  (!look.hasColour || look.colour == LookColour::trueColour);
        const bool mayBeLater = isFavourable && mayComeAfter(look.at, until);
        row.unplacedLooks = row.unplacedLooks || mayBeLater ||
                            (look.at.earliest <= lastPull && look.at.latest > lastPull);
        if (mayBeLater)
            continue;
        if (look.hasTouch && look.at.earliest > lastPull)
            row.touchLook = static_cast<int>(i);
        if (look.hasColour && row.pull >= 0 && look.at.earliest > row.pulled.latest) {
            row.colourLook = static_cast<int>(i);
            countTrueLook(row, look);
        }
    }
    row.touchDry = row.touchLook >= 0 &&
                   m_history.looks[static_cast<std::size_t>(row.touchLook)].touch == Touch::dry;
    row.touchWasOther = row.touchLook >= 0 && !isOwn(row, row.touchLook);
    row.colourWasOther = row.colourLook >= 0 && !isOwn(row, row.colourLook);
}

bool Assessment::isOwn(const ReadinessRow& row, int look) const {
    const auto impression = static_cast<std::size_t>(row.impression);
    const std::uint32_t* end = m_history.ownLooksOf.end(impression);
    return std::find(m_history.ownLooksOf.begin(impression), end,
                     static_cast<std::uint32_t>(look)) != end;
}

// Fresh ink looks true before it turns: a look counts after the days in light, or where the colour
// had been seen to turn. Looks are often dated to the day, so one made on the last day counts.
void Assessment::countTrueLook(ReadinessRow& row, const HistoryLook& look) const {
    constexpr double leeway_days = 1;
    ColourLooks& looks = row.looks;
    looks.any = true;
    if (look.colour != LookColour::trueColour) {
        looks.last = look.colour;
        looks.readingAgrees = false;
        looks.foundTrue = 0;
        looks.sawTurned = true;
        row.turnedUntil = std::max(row.turnedUntil, look.at.latest);
        return;
    }
    // One that did not find it true may have been the later of the two.
    if (look.at.earliest <= row.turnedUntil)
        return;
    looks.last = look.colour;
    looks.readingAgrees = look.readingAgrees;
    if (!looks.sawTurned && daysHighAt(row.pulled, look.at.latest) + leeway_days < row.daysNeeded)
        return;
    const auto since_days = static_cast<double>(dayOf(look.at.earliest) - dayOf(row.lastTrueLook));
    if (looks.foundTrue > 0 && since_days < m_looksApart_days)
        return;
    ++looks.foundTrue;
    row.lastTrueLook = look.at.latest;
}

}  // namespace rackbook
