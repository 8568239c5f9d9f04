// Where the rows of a table stand in the flat history. Private to store/.
#pragma once

#include <cstdint>
#include <string>
#include <unordered_map>
#include <vector>

#include "base/Error.h"
#include "store/Sqlite.h"

namespace rackbook {

inline StoreError damagedBook(const std::string& what) {
    return StoreError("the book", what, "Restore the last backup, or run rackbook verify.");
}

// Positions by key. Those of a whole book are small and dense; of a part they are few.
class KeyPositions {
public:
    explicit KeyPositions(bool areFew) : m_areFew(areFew) {}

    void note(std::int64_t key, int position) {
        constexpr std::int64_t highestKey = 1'000'000'000;
        if (key < 0 || key > highestKey)
            throw damagedBook("a row has the number " + std::to_string(key));
        if (m_areFew) {
            m_few[key] = position;
            return;
        }
        if (key >= static_cast<std::int64_t>(m_positions.size()))
            m_positions.resize(static_cast<std::size_t>(key) + 1, -1);
        m_positions[static_cast<std::size_t>(key)] = position;
    }
    int of(std::int64_t key) const {
        if (m_areFew) {
            const auto found = m_few.find(key);
            return found == m_few.end() ? -1 : found->second;
        }
        return key >= 0 && key < static_cast<std::int64_t>(m_positions.size())
                   ? m_positions[static_cast<std::size_t>(key)]
                   : -1;
    }
    // Pre for a sound book: the row is there.
    std::uint32_t mustHave(std::int64_t key) const {
        const int position = of(key);
        if (position < 0)
            throw damagedBook("a row names another that is not there");
        return static_cast<std::uint32_t>(position);
    }
    int of(const Statement& row, int column) const {
        return row.isNull(column) ? -1 : of(row.whole(column));
    }

private:
    bool m_areFew;
    std::vector<int> m_positions;
    std::unordered_map<std::int64_t, int> m_few;
};

}  // namespace rackbook
