#include "sheets/PageFurniture.h"

#include "base/Error.h"
#include "sheets/LineBreaker.h"
#include "sheets/TextRules.h"

namespace rackbook {

namespace {

constexpr double leastText_mm = 60;

std::string replaced(std::string text, const std::string& name, std::size_t value) {
    const std::size_t at = text.find(name);
    return at == std::string::npos ? text : text.replace(at, name.size(), std::to_string(value));
}

}  // namespace

PageFurniture::PageFurniture(const TextMeasurer& measurer, const TypeScale& scale,
                             const FlowSetup& setup, const std::string& where)
    : m_measurer(measurer), m_scale(scale), m_setup(setup) {
    const Margins& margins = setup.margins;
    m_width_mm = setup.paper.width_mm - margins.left_mm - margins.right_mm;
    if (m_width_mm < leastText_mm)
        throw RenderError(where, "less than 60 mm of the page's width is left for text",
                          "Use larger paper or smaller margins in the template.");
    const auto lines = [&](const std::string& text, double share) {
        const std::string set = settable(measurer, FontRole::body, text, where);
        return set.empty()
                   ? std::vector<std::string>{}
                   : breakLines(measurer, FontRole::body, scale.small_pt, set, m_width_mm * share);
    };
    m_pageOf = settable(measurer, FontRole::body, setup.pageOf, where);
    m_header = lines(setup.runningTitle, 1);
    m_footer = lines(setup.footer, 0.7);
    const double line_mm = scale.tableLine_mm;
    const auto headerLines = static_cast<double>(m_header.size());
    const auto footerLines = static_cast<double>(std::max<std::size_t>(1, m_footer.size()));
    m_area.left_mm = margins.left_mm;
    m_area.firstTop_mm = margins.top_mm;
    m_area.laterTop_mm =
        margins.top_mm + (m_header.empty() ? 0 : headerLines * line_mm + scale.grid_mm * 1.25);
    m_area.bottom_mm =
        setup.paper.height_mm - margins.bottom_mm - footerLines * line_mm - scale.grid_mm;
    if (m_area.bottom_mm - m_area.laterTop_mm < setup.paper.height_mm / 3)
        throw RenderError(where, "less than a third of the page is left for text",
                          "Use smaller margins or a shorter running title or footer.");
}

void PageFurniture::addTo(std::vector<Page>& pages) const {
    for (std::size_t i = 0; i < pages.size(); ++i) {
        if (i > 0 && !m_header.empty())
            addHeader(pages[i]);
        addFooter(pages[i], i + 1, pages.size());
    }
}

void PageFurniture::addHeader(Page& page) const {
    const double top_mm = m_setup.margins.top_mm;
    addLines(page, m_header, top_mm + m_scale.tableLine_mm * 0.76);
    const double y_mm =
        top_mm + m_scale.tableLine_mm * (static_cast<double>(m_header.size()) + 0.25);
    page.rules.push_back(
        {m_area.left_mm, y_mm, m_area.left_mm + m_width_mm, y_mm, m_scale.hairline_mm, 0});
}

void PageFurniture::addFooter(Page& page, std::size_t number, std::size_t count) const {
    const double first_mm = m_area.bottom_mm + m_scale.grid_mm + m_scale.tableLine_mm * 0.76;
    addLines(page, m_footer, first_mm);
    const std::string text = replaced(replaced(m_pageOf, "{pages}", count), "{page}", number);
    const double width_mm = m_measurer.width_mm(FontRole::body, m_scale.small_pt, text);
    page.texts.push_back({FontRole::body, m_scale.small_pt, m_area.left_mm + m_width_mm - width_mm,
                          first_mm, text, 0});
}

void PageFurniture::addLines(Page& page, const std::vector<std::string>& lines,
                             double firstBaseline_mm) const {
    double y_mm = firstBaseline_mm;
    for (const std::string& line : lines) {
        page.texts.push_back({FontRole::body, m_scale.small_pt, m_area.left_mm, y_mm, line, 0});
        y_mm += m_scale.tableLine_mm;
    }
}

}  // namespace rackbook
