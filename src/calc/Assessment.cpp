#include "calc/Assessment.h"

#include <algorithm>
#include <utility>

namespace rackbook {

namespace {

// Short lists, mostly in order already; keeps the order of recording among equals.
template <class Before>
void insertInOrder(std::vector<std::uint32_t>& rows, std::uint32_t row, Before&& comesBefore) {
    rows.push_back(row);
    for (std::size_t i = rows.size() - 1; i > 0 && comesBefore(rows[i], rows[i - 1]); --i)
        std::swap(rows[i], rows[i - 1]);
}

}  // namespace

void Assessment::collectPulls(std::size_t impression) {
    m_pulls.clear();
    const std::uint32_t* last = m_history.pullsOf.end(impression);
    for (const std::uint32_t* row = m_history.pullsOf.begin(impression); row != last; ++row)
        if (startOf(*row).earliest <= m_asOf)
            insertInOrder(m_pulls, *row, [this](std::uint32_t a, std::uint32_t b) {
                return startOf(a).earliest != startOf(b).earliest
                           ? startOf(a).earliest < startOf(b).earliest
                           : ordinalOf(a) < ordinalOf(b);
            });
}

void Assessment::collectLooks(std::size_t impression) {
    m_looks.clear();
    const std::uint32_t* last = m_history.looksOf.end(impression);
    for (const std::uint32_t* row = m_history.looksOf.begin(impression); row != last; ++row)
        if (m_history.looks[*row].at.earliest <= m_asOf)
            insertInOrder(m_looks, *row, [this](std::uint32_t a, std::uint32_t b) {
                const TimeSpan& first = m_history.looks[a].at;
                const TimeSpan& second = m_history.looks[b].at;
                return first.earliest != second.earliest ? first.earliest < second.earliest
                                                         : first.latest < second.latest;
            });
}

ReadinessRow Assessment::startRow(std::size_t impression) const {
    ReadinessRow row;
    row.impression = static_cast<int>(impression);
    row.asOf = m_asOf;
    if (!m_stays.empty() && m_stays.back().to.earliest > m_asOf)
        row.place = m_stays.back().place;
    if (row.place >= 0) {
        const Stay& last = m_stays.back();
        if (!last.undecided)
            row.lightNow = lightIn(last, m_asOf);
        row.isInterleaved = last.interleaved && !last.undecided;
        row.mayComeLater = mayComeAfter(last.from, m_asOf);
        row.outOfHands = m_light.isOutOfHands(row.place);
    } else {
        row.outOfHands = m_history.impressions[impression].withHolder;
    }
    row.gaps.pulls = m_pulls.empty();
    if (m_pulls.empty())
        return row;
    row.lastPull = static_cast<int>(m_pulls.back());
    fillLooks(row, m_asOf);
    return row;
}

// From the last pull back to the last one that is certainly extender-rich. Where pulls in between
// may be, the verdict stands only if it comes out the same whichever of them is.
ReadinessRow Assessment::judge(const ReadinessRow& start) const {
    ReadinessRow doubtful;
    bool readyAnyway = true;
    for (auto pull = m_pulls.rbegin(); pull != m_pulls.rend(); ++pull) {
        const Richness richness = m_inks[*pull].richness;
        if (richness == Richness::notRich)
            continue;
        ReadinessRow row = judgeFrom(start, *pull);
        readyAnyway = readyAnyway && row.verdict == Verdict::ready;
        if (richness == Richness::maybe) {
            if (doubtful.doubtfulPull >= 0)
                continue;
            doubtful = row;
            doubtful.doubtfulPull = static_cast<int>(*pull);
        } else if (doubtful.doubtfulPull < 0) {
            return row;
        } else {
            return readyAnyway ? doubtful : settleDoubt(doubtful, row);
        }
    }
    if (doubtful.doubtfulPull >= 0) {
        if (!readyAnyway) {
            doubtful.verdict = Verdict::unknown;
            doubtful.gaps.extenderShare = true;
        }
        return doubtful;
    }
    ReadinessRow row = start;
    row.verdict = mustBeFelt(row) ? Verdict::lookDue : Verdict::notAffected;
    return row;
}

// Ink of which none can turn only has to dry. What was found wet or tacky is felt again; where
// nobody felt it, for as long as the studio wants light for ink without drier (our reading, no
// source).
bool Assessment::mustBeFelt(const ReadinessRow& row) const {
    if (row.touchDry || row.outOfHands)
        return false;
    if (row.touchLook >= 0)
        return true;
    const auto soon = static_cast<CivilMinute>(m_lightDaysCareful * minutesPerDay);
    return startOf(m_pulls.back()).latest > m_asOf - soon;
}

// What falls short since the certain pull falls short since the later, doubtful one too.
ReadinessRow Assessment::settleDoubt(ReadinessRow doubtful, const ReadinessRow& certain) const {
    const bool shortAnyway =
        certain.verdict == Verdict::moreLight || certain.verdict == Verdict::bringOut;
    ReadinessRow row = shortAnyway ? certain : doubtful;
    if (!shortAnyway)
        row.verdict = Verdict::unknown;
    row.doubtfulPull = doubtful.doubtfulPull;
    row.gaps.extenderShare = true;
    return row;
}

ReadinessRow Assessment::judgeFrom(const ReadinessRow& start, std::uint32_t pull) const {
    const PullInk& ink = m_inks[pull];
    ReadinessRow row = start;
    row.pull = static_cast<int>(pull);
    row.layer = m_history.pulls[pull].layer;
    row.pulled = lastRichStart(pull);
    row.extenderShare = ink.extenderShare;
    row.shareRemembered = ink.remembered;
    row.drierShare = ink.drierShare;
    fillLightRule(row);
    noteTurnedAgain(row);
    walkStays(row, start.outOfHands);
    fillLooks(row, m_asOf);
    fillDose(row, m_asOf);
    row.gates = judgeGates(factsOf(row));
    row.verdict = verdictOf(row);
    fillForecast(row);
    if (row.verdict != Verdict::unknown)
        row.gaps = {};
    return row;
}

// Badly dated pulls of earlier rich layers may have come after the last one.
TimeSpan Assessment::lastRichStart(std::uint32_t last) const {
    TimeSpan start = startOf(last);
    for (const std::uint32_t pull : m_pulls)
        if (pull != last && m_inks[pull].richness == Richness::rich &&
            startOf(pull).earliest <= start.earliest)
            start.latest = std::max(start.latest, startOf(pull).latest);
    return start;
}

void Assessment::fillLightRule(ReadinessRow& row) const {
    row.lightRule = lightRuleOf(row.drierShare, m_drierLeastShare);
    row.daysNeeded = row.lightRule == LightRule::withDrier ? m_lightDays : m_lightDaysCareful;
}

void Assessment::fillForecast(ReadinessRow& row) const {
    row.hasForecast = m_model && row.verdict == Verdict::moreLight && row.place >= 0 &&
                      row.lightNow == LightState::lit && row.dose.sunnyDays.isKnown();
    row.forecastModel = row.hasForecast ? m_model : nullptr;
}

GateFacts Assessment::factsOf(const ReadinessRow& row) const {
    GateFacts facts;
    facts.daysLow = row.daysLow;
    facts.daysHigh = row.daysHigh;
    facts.daysNeeded = row.daysNeeded;
    facts.asksDose = row.asksDose;
    facts.returnedChance = row.returnedChance;
    facts.lookChance = lookChanceFor(row.looks, m_lookChance);
    facts.enoughChance = m_returnedChance;
    facts.lightSinceTurned_sunnyDays = row.lightSinceTurned_sunnyDays;
    facts.hasTouch = row.touchLook >= 0;
    facts.colour = row.looks;
    if (facts.hasTouch)
        facts.touch = m_history.looks[static_cast<std::size_t>(row.touchLook)].touch;
    return facts;
}

Verdict Assessment::verdictOf(const ReadinessRow& row) {
    if (allPassed(row.gates))
        return Verdict::ready;
    const ReadinessGaps& gaps = row.gaps;
    const bool missing = gaps.whereabouts || gaps.lightAtPlace || gaps.lightAtHolder || gaps.dates;
    const GateResult& light = row.gates[static_cast<std::size_t>(GateKind::light)];
    if (light.state == GateState::open && missing)
        return Verdict::unknown;
    if (row.outOfHands && row.lightNow == LightState::unstated)
        return Verdict::unknown;
    const bool wasNotTrue = row.looks.any && row.looks.last != LookColour::trueColour;
    if ((row.putAwayEarly || wasNotTrue) && countsAsDark(row.lightNow) && !row.outOfHands)
        return Verdict::bringOut;
    for (const GateResult& result : row.gates)
        if (result.need == GateNeed::light)
            return Verdict::moreLight;
    return Verdict::lookDue;
}

LightState Assessment::lightIn(const Stay& stay, CivilMinute minute) const {
    return stay.interleaved ? LightState::dark : m_light.at(stay.place, minute);
}

}  // namespace rackbook
