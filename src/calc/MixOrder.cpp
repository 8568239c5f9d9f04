#include "calc/MixOrder.h"

#include <algorithm>
#include <limits>

#include "calc/MixGroups.h"

namespace rackbook {

namespace {

// When an event is worked through: its time, and its rank among those of the same time.
struct Slot {
    CivilMinute time = 0;
    int sequence = 0;

    friend bool operator<(const Slot& a, const Slot& b) {
        return a.time != b.time ? a.time < b.time : a.sequence < b.sequence;
    }
};

struct SortableEvent {
    Slot slot;
    bool takes = false;
    int depth = 0;
    LedgerEvent event;

    friend bool operator<(const SortableEvent& a, const SortableEvent& b) {
        if (a.slot < b.slot || b.slot < a.slot)
            return a.slot < b.slot;
        if (a.takes != b.takes)
            return b.takes;
        if (a.depth != b.depth)
            return a.depth < b.depth;
        if (a.event.isPull != b.event.isPull)
            return b.event.isPull;
        return a.event.row < b.event.row;
    }
};

bool counts(const HistoryWeighing& weighing) {
    return weighing.mix >= 0;
}

bool isAddition(const HistoryWeighing& weighing) {
    return counts(weighing) && weighing.act == WeighingAct::add;
}

class Ordering {
public:
    Ordering(const std::vector<HistoryWeighing>& weighings, const std::vector<HistoryPull>& pulls,
             std::size_t mixCount)
        : m_weighings(weighings), m_pulls(pulls), m_mixCount(mixCount) {}

    MixOrder run(CivilMinute upTo) {
        listAdditions();
        findGroups();
        placeAdditions();
        sortEvents(upTo);
        return std::move(m_order);
    }

private:
    void listAdditions() {
        m_order.additionsBegin.assign(m_mixCount + 1, 0);
        for (const HistoryWeighing& weighing : m_weighings)
            if (isAddition(weighing))
                ++m_order.additionsBegin[static_cast<std::size_t>(weighing.mix) + 1];
        for (std::size_t mix = 0; mix < m_mixCount; ++mix)
            m_order.additionsBegin[mix + 1] += m_order.additionsBegin[mix];
        m_order.additions.resize(m_order.additionsBegin.back());
        std::vector<std::size_t> next(m_order.additionsBegin.begin(),
                                      m_order.additionsBegin.end() - 1);
        for (std::size_t row = 0; row < m_weighings.size(); ++row)
            if (isAddition(m_weighings[row]))
                m_order.additions[next[static_cast<std::size_t>(m_weighings[row].mix)]++] = row;
    }

    void findGroups() {
        MixParents parents;
        parents.offsets.assign(1, 0);
        for (std::size_t mix = 0; mix < m_mixCount; ++mix) {
            for (std::size_t i = m_order.additionsBegin[mix]; i < m_order.additionsBegin[mix + 1];
                 ++i)
                if (m_weighings[m_order.additions[i]].fromMix >= 0)
                    parents.items.push_back(m_weighings[m_order.additions[i]].fromMix);
            parents.offsets.push_back(parents.items.size());
        }
        m_order.group.assign(m_mixCount, 0);
        m_order.depth.assign(m_mixCount, 0);
        for (std::vector<int>& group : mixGroups(parents)) {
            numberGroup(group, parents);
            if (group.size() > 1 || takesFromItself(group.front(), parents))
                m_order.cycles.push_back(std::move(group));
        }
    }

    void numberGroup(const std::vector<int>& group, const MixParents& parents) {
        int depth = 0;
        ++m_groupCount;
        for (const int mix : group)
            m_order.group[static_cast<std::size_t>(mix)] = m_groupCount;
        for (const int mix : group) {
            m_order.parentsFirst.push_back(mix);
            const auto i = static_cast<std::size_t>(mix);
            for (std::size_t p = parents.offsets[i]; p < parents.offsets[i + 1]; ++p) {
                const auto parent = static_cast<std::size_t>(parents.items[p]);
                if (m_order.group[parent] != m_groupCount)
                    depth = std::max(depth, m_order.depth[parent] + 1);
            }
        }
        for (const int mix : group)
            m_order.depth[static_cast<std::size_t>(mix)] = depth;
    }

    static bool takesFromItself(int mix, const MixParents& parents) {
        const auto i = static_cast<std::size_t>(mix);
        for (std::size_t p = parents.offsets[i]; p < parents.offsets[i + 1]; ++p)
            if (parents.items[p] == mix)
                return true;
        return false;
    }

    // Parents first, so that an addition from a badly dated addition finds that one placed.
    void placeAdditions() {
        m_slots.resize(m_weighings.size());
        m_placed.resize(m_order.additions.size());
        m_isPlaced.assign(m_mixCount, 0);
        for (const int mix : m_order.parentsFirst) {
            const auto i = static_cast<std::size_t>(mix);
            for (std::size_t a = m_order.additionsBegin[i]; a < m_order.additionsBegin[i + 1];
                 ++a) {
                const HistoryWeighing& weighing = m_weighings[m_order.additions[a]];
                const Slot slot = placed(weighing.at, weighing.sequence, weighing.fromMix);
                m_slots[m_order.additions[a]] = slot;
                m_placed[a] = slot;
            }
            const auto first =
                m_placed.begin() + static_cast<std::ptrdiff_t>(m_order.additionsBegin[i]);
            std::sort(first, m_placed.begin() +
                                 static_cast<std::ptrdiff_t>(m_order.additionsBegin[i + 1]));
            m_isPlaced[i] = 1;
        }
    }

    Slot placed(const TimeSpan& at, int sequence, int takenFrom) const {
        const Slot own{at.earliest, sequence};
        if (takenFrom < 0 || at.latest <= at.earliest)
            return own;
        const auto mix = static_cast<std::size_t>(takenFrom);
        if (!m_isPlaced[mix])
            return own;
        const auto first =
            m_placed.begin() + static_cast<std::ptrdiff_t>(m_order.additionsBegin[mix]);
        const auto last =
            m_placed.begin() + static_cast<std::ptrdiff_t>(m_order.additionsBegin[mix + 1]);
        const Slot end{at.latest, std::numeric_limits<int>::max()};
        const auto after = std::upper_bound(first, last, end);
        if (after == first || (after - 1)->time <= at.earliest)
            return own;
        return *(after - 1);
    }

    void sortEvents(CivilMinute upTo) {
        std::vector<SortableEvent> events;
        events.reserve(m_weighings.size() + m_pulls.size());
        for (std::size_t row = 0; row < m_weighings.size(); ++row) {
            const HistoryWeighing& weighing = m_weighings[row];
            if (!counts(weighing))
                continue;
            const bool takes = weighing.act != WeighingAct::add;
            const Slot slot =
                takes ? placed(weighing.at, weighing.sequence, weighing.mix) : m_slots[row];
            const int depth = m_order.depth[static_cast<std::size_t>(weighing.mix)];
            events.push_back(
                {slot, takes, takes ? 0 : depth, {static_cast<std::uint32_t>(row), false}});
        }
        for (std::size_t row = 0; row < m_pulls.size(); ++row) {
            const HistoryPull& pull = m_pulls[row];
            if (pull.portion < 0)
                continue;
            Slot slot = placed(pull.start, 0, pull.portion);
            slot.sequence = std::numeric_limits<int>::max();
            events.push_back({slot, true, 0, {static_cast<std::uint32_t>(row), true}});
        }
        std::sort(events.begin(), events.end());
        m_order.events.reserve(events.size());
        for (const SortableEvent& event : events)
            if (event.slot.time <= upTo)
                m_order.events.push_back(event.event);
    }

    const std::vector<HistoryWeighing>& m_weighings;
    const std::vector<HistoryPull>& m_pulls;
    std::size_t m_mixCount;
    std::vector<Slot> m_placed;    // as MixOrder::additions, sorted within each mix
    std::vector<Slot> m_slots;     // by weighing; only additions
    std::vector<char> m_isPlaced;  // by mix
    int m_groupCount = 0;
    MixOrder m_order;
};

}  // namespace

MixOrder mixOrder(const std::vector<HistoryWeighing>& weighings,
                  const std::vector<HistoryPull>& pulls, std::size_t mixCount, CivilMinute upTo) {
    return Ordering(weighings, pulls, mixCount).run(upTo);
}

}  // namespace rackbook
