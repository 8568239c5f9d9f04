#include "exchange/SheetLight.h"

#include <algorithm>

namespace rackbook {

namespace {

bool isClosed(const Place& place) {
    return place.placeKind == PlaceKind::drawer || place.placeKind == PlaceKind::box;
}

bool dependsOnSky(const Light& light) {
    return light.lightKind == LightKind::daylight || light.lightKind == LightKind::outdoors;
}

}  // namespace

void Times::join() {
    std::sort(m_spans.begin(), m_spans.end());
    std::size_t last = 0;
    for (std::size_t i = 1; i < m_spans.size(); ++i)
        if (m_spans[i].first <= m_spans[last].second)
            m_spans[last].second = std::max(m_spans[last].second, m_spans[i].second);
        else
            m_spans[++last] = m_spans[i];
    if (!m_spans.empty())
        m_spans.resize(last + 1);
}

bool Times::meet(CivilMinute from, CivilMinute to) const {
    const auto after = std::upper_bound(m_spans.begin(), m_spans.end(), std::pair(to, endOfTime));
    return after != m_spans.begin() && std::prev(after)->second >= from;
}

std::vector<SheetLight::Stay> SheetLight::staysOf(const Impression& impression) const {
    std::vector<Stay> stays;
    const auto moves = m_indexes.movesOfImpression.find(impression.id);
    if (moves == m_indexes.movesOfImpression.end())
        return stays;
    for (const std::size_t position : moves->second) {
        const Move& move = m_indexes.records.of<Move>()[position];
        if (m_then.holds(move))
            stays.push_back({&move, m_asOf});
    }
    std::stable_sort(stays.begin(), stays.end(), [](const Stay& a, const Stay& b) {
        return a.move->at.earliest() < b.move->at.earliest();
    });
    for (std::size_t i = 0; i + 1 < stays.size(); ++i)
        stays[i].to = stays[i + 1].move->at.latest();
    for (Stay& stay : stays)
        if (stay.move->until && !isAfter(stay.move->until, m_asOf))
            stay.to = std::min(stay.to, stay.move->until->latest());
    return stays;
}

void SheetLight::add(const Impression& impression) {
    for (const Stay& stay : staysOf(impression))
        if (!stay.move->interleaved)
            add(*stay.move, stay.to);
}

// A place without entries of its own has the light of the place around it, but a drawer is dark.
void SheetLight::add(const Move& move, CivilMinute to) {
    const CivilMinute from = move.at.earliest();
    const Place* place = m_indexes.records.find(move.to);
    for (std::size_t steps = 0; place && steps <= m_indexes.records.of<Place>().size(); ++steps) {
        m_at[place->id].add(from, to);
        if (std::any_of(place->light.begin(), place->light.end(), dependsOnSky))
            m_underSky.add(from, to);
        if (!place->light.empty() || isClosed(*place))
            return;
        place = m_indexes.records.find(place->within);
    }
}

std::vector<std::size_t> SheetLight::weather() {
    m_underSky.join();
    std::vector<std::size_t> positions;
    const std::vector<Weather>& all = m_indexes.records.of<Weather>();
    for (std::size_t i = 0; i < all.size(); ++i)
        if (m_then.holds(all[i]) && m_underSky.meet(all[i].on.earliest(), all[i].on.latest()))
            positions.push_back(i);
    return positions;
}

std::vector<std::size_t> SheetLight::meterings() {
    std::vector<std::size_t> positions;
    for (auto& [place, times] : m_at) {
        const auto found = m_indexes.meteringsAt.find(place);
        if (found == m_indexes.meteringsAt.end())
            continue;
        times.join();
        for (const std::size_t position : found->second) {
            const Metering& metering = m_indexes.records.of<Metering>()[position];
            if (m_then.holds(metering) &&
                times.meet(metering.from.earliest(), metering.to.latest()))
                positions.push_back(position);
        }
    }
    return positions;
}

}  // namespace rackbook
