#include "calc/MixGroups.h"

#include <algorithm>

namespace rackbook {

namespace {

// Strongly connected components (Tarjan 1972), without recursion: chains of mixes may be long.
class GroupSearch {
public:
    explicit GroupSearch(const MixParents& parents)
        : m_parents(parents),
          m_found(parents.offsets.size() - 1, 0),
          m_lowest(m_found.size(), 0),
          m_isOpen(m_found.size(), 0) {}

    std::vector<std::vector<int>> run() {
        for (std::size_t mix = 0; mix < m_found.size(); ++mix)
            if (m_found[mix] == 0)
                searchFrom(static_cast<int>(mix));
        return std::move(m_groups);
    }

private:
    struct Visit {
        int mix;
        std::size_t next;
    };

    void enter(int mix) {
        const auto i = static_cast<std::size_t>(mix);
        m_found[i] = m_lowest[i] = ++m_count;
        m_open.push_back(mix);
        m_isOpen[i] = 1;
        m_path.push_back({mix, m_parents.offsets[i]});
    }

    void searchFrom(int start) {
        enter(start);
        while (!m_path.empty()) {
            const auto mix = static_cast<std::size_t>(m_path.back().mix);
            if (m_path.back().next < m_parents.offsets[mix + 1])
                follow(mix, m_parents.items[m_path.back().next++]);
            else
                leave(mix);
        }
    }

    void follow(std::size_t mix, int parent) {
        const auto p = static_cast<std::size_t>(parent);
        if (m_found[p] == 0)
            enter(parent);
        else if (m_isOpen[p])
            m_lowest[mix] = std::min(m_lowest[mix], m_found[p]);
    }

    void leave(std::size_t mix) {
        m_path.pop_back();
        if (!m_path.empty()) {
            const auto child = static_cast<std::size_t>(m_path.back().mix);
            m_lowest[child] = std::min(m_lowest[child], m_lowest[mix]);
        }
        if (m_lowest[mix] != m_found[mix])
            return;
        std::vector<int> group;
        do {
            group.push_back(m_open.back());
            m_isOpen[static_cast<std::size_t>(m_open.back())] = 0;
            m_open.pop_back();
        } while (group.back() != static_cast<int>(mix));
        std::sort(group.begin(), group.end());
        m_groups.push_back(std::move(group));
    }

    const MixParents& m_parents;
    std::vector<int> m_found;  // order of discovery from 1; 0: not yet
    std::vector<int> m_lowest;
    std::vector<char> m_isOpen;
    std::vector<int> m_open;
    std::vector<Visit> m_path;
    std::vector<std::vector<int>> m_groups;
    int m_count = 0;
};

}  // namespace

std::vector<std::vector<int>> mixGroups(const MixParents& parents) {
    return GroupSearch(parents).run();
}

}  // namespace rackbook
