// Running header and footer.
#pragma once

#include <string>
#include <vector>

#include "sheets/FlowSetup.h"
#include "sheets/Pagination.h"
#include "sheets/TypeScale.h"

namespace rackbook {

// Running matter wraps like other text; the area for text shrinks to leave room for it.
// The measurer, scale and setup must outlive it.
class PageFurniture {
public:
    // Throws RenderError, naming `where`, for text that cannot be set, and where less than a third
    // of the page or less than 60 mm of its width would be left for text.
    PageFurniture(const TextMeasurer& measurer, const TypeScale& scale, const FlowSetup& setup,
                  const std::string& where);

    const PageArea& area() const { return m_area; }
    double width_mm() const { return m_width_mm; }

    // Adds the running header to all pages but the first, and the footer to all of them.
    void addTo(std::vector<Page>& pages) const;

private:
    void addHeader(Page& page) const;
    void addFooter(Page& page, std::size_t number, std::size_t count) const;
    void addLines(Page& page, const std::vector<std::string>& lines, double firstBaseline_mm) const;

    const TextMeasurer& m_measurer;
    const TypeScale& m_scale;
    const FlowSetup& m_setup;
    PageArea m_area;
    double m_width_mm = 0;
    std::string m_pageOf;
    std::vector<std::string> m_header;
    std::vector<std::string> m_footer;
};

}  // namespace rackbook
