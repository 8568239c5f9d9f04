// Which marked parts of which pages belong to which element of the structure (ISO 32000-1, 14.7.4).
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "sheets/PageModel.h"

namespace rackbook {

// A sequence of marked content. Its number counts from 0 on each page.
struct ContentMark {
    std::size_t page = 0;
    std::size_t number = 0;
};

class ContentMarks {
public:
    explicit ContentMarks(std::size_t elements) : m_ofElement(elements), m_extents(elements) {}

    void startPage() { m_ofPage.emplace_back(); }

    // The number of a new sequence on the page that was started last. Pre: a page was started.
    std::size_t add(std::size_t element) {
        std::vector<std::size_t>& page = m_ofPage.back();
        m_ofElement[element].push_back({m_ofPage.size() - 1, page.size()});
        page.push_back(element);
        return page.size() - 1;
    }

    // Says that a thing drawn for the element takes that place on the page.
    void cover(std::size_t element, const Box& box);

    const std::vector<ContentMark>& of(std::size_t element) const { return m_ofElement[element]; }

    // Elements by page and number of the sequence.
    const std::vector<std::vector<std::size_t>>& pages() const { return m_ofPage; }

    // What the element covers, where all of it is on one page.
    std::optional<Box> extentOf(std::size_t element) const;

private:
    std::vector<std::vector<ContentMark>> m_ofElement;
    std::vector<std::vector<std::size_t>> m_ofPage;
    std::vector<std::optional<Box>> m_extents;
};

}  // namespace rackbook
