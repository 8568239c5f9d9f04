#include "sheets/Pagination.h"

#include "base/Error.h"

namespace rackbook {

namespace {

constexpr double tolerance_mm = 1e-6;

Box shifted(Box box, double x_mm, double y_mm) {
    box.x_mm += x_mm;
    box.y_mm += y_mm;
    return box;
}

void addShifted(Page& page, const Page& content, double x_mm, double y_mm) {
    for (TextRun text : content.texts) {
        text.x_mm += x_mm;
        text.baselineY_mm += y_mm;
        page.texts.push_back(std::move(text));
    }
    for (Rule rule : content.rules) {
        rule.fromX_mm += x_mm;
        rule.toX_mm += x_mm;
        rule.fromY_mm += y_mm;
        rule.toY_mm += y_mm;
        page.rules.push_back(rule);
    }
    for (Swatch swatch : content.swatches) {
        swatch.x_mm += x_mm;
        swatch.y_mm += y_mm;
        page.swatches.push_back(swatch);
    }
    for (Curve curve : content.curves) {
        for (PagePoint& point : curve.points)
            point = {point.x_mm + x_mm, point.y_mm + y_mm};
        page.curves.push_back(std::move(curve));
    }
    for (Fill fill : content.fills) {
        for (Box& box : fill.boxes)
            box = shifted(box, x_mm, y_mm);
        page.fills.push_back(std::move(fill));
    }
    for (Picture picture : content.pictures) {
        picture.box = shifted(picture.box, x_mm, y_mm);
        page.pictures.push_back(picture);
    }
}

// A heading of columns that is set again on a later page is read once only.
Page readBefore(Page content) {
    for (TextRun& text : content.texts)
        text.element = noElement;
    return content;
}

class Dealer {
public:
    Dealer(const StripGroup& strips, const std::vector<StripGroup>& headers, const PageArea& area,
           const std::string& where, std::vector<FieldPlace>* fields)
        : m_strips(strips), m_headers(headers), m_area(area), m_where(where), m_fields(fields) {
        beginPage(m_area.firstTop_mm);
    }

    std::vector<Page> deal() {
        for (std::size_t from = 0; from < m_strips.size();) {
            std::size_t to = from + 1;
            while (to < m_strips.size() && m_strips[to - 1].keepsWithNext)
                ++to;
            dealTogether(from, to);
            from = to;
        }
        return std::move(m_pages);
    }

private:
    void beginPage(double top_mm) {
        m_pages.emplace_back();
        m_y_mm = top_mm;
        m_atTop = true;
    }

    const StripGroup* headerFor(const Strip& strip) const {
        return strip.repeatedHeader == noTable
                   ? nullptr
                   : &m_headers[static_cast<std::size_t>(strip.repeatedHeader)];
    }

    bool fits(std::size_t from, std::size_t to) const {
        double needed_mm = 0;
        for (std::size_t i = from; i < to; ++i) {
            const bool first = m_atTop && i == from;
            needed_mm += m_strips[i].height_mm + (first ? 0 : m_strips[i].before_mm);
            const StripGroup* header = first ? headerFor(m_strips[i]) : nullptr;
            needed_mm += header ? heightOf(*header) : 0;
        }
        return m_y_mm + needed_mm <= m_area.bottom_mm + tolerance_mm;
    }

    void dealTogether(std::size_t from, std::size_t to) {
        if (!fits(from, to) && !m_atTop)
            beginPage(m_area.laterTop_mm);
        if (fits(from, to)) {
            for (std::size_t i = from; i < to; ++i)
                set(m_strips[i]);
            return;
        }
        for (std::size_t i = from; i < to; ++i) {
            if (!fits(i, i + 1) && !m_atTop)
                beginPage(m_area.laterTop_mm);
            if (!fits(i, i + 1))
                throw RenderError(m_where, "a part of the sheet is taller than a page",
                                  "Use larger paper, smaller margins or a smaller type size in the "
                                  "template.");
            set(m_strips[i]);
        }
    }

    void set(const Strip& strip) {
        if (!m_atTop)
            drawAbove(strip);
        else if (const StripGroup* header = headerFor(strip))
            for (const Strip& part : *header)
                draw(readBefore(part.content), part.height_mm);
        notePlaces(strip);
        draw(strip.content, strip.height_mm);
        m_atTop = false;
    }

    void notePlaces(const Strip& strip) {
        if (!m_fields)
            return;
        for (const StripField& field : strip.fields)
            m_fields->push_back({field.name, m_pages.size() - 1,
                                 shifted(field.box, m_area.left_mm, m_y_mm), field.element});
    }

    void drawAbove(const Strip& strip) {
        m_y_mm += strip.before_mm;
        Page above;
        above.rules = strip.rulesAbove;
        addShifted(m_pages.back(), above, m_area.left_mm, m_y_mm);
    }

    void draw(const Page& content, double height_mm) {
        addShifted(m_pages.back(), content, m_area.left_mm, m_y_mm);
        m_y_mm += height_mm;
    }

    const StripGroup& m_strips;
    const std::vector<StripGroup>& m_headers;
    const PageArea& m_area;
    const std::string& m_where;
    std::vector<FieldPlace>* m_fields;
    std::vector<Page> m_pages;
    double m_y_mm = 0;
    bool m_atTop = true;
};

}  // namespace

std::vector<Page> paginate(const StripGroup& strips, const std::vector<StripGroup>& headers,
                           const PageArea& area, const std::string& where,
                           std::vector<FieldPlace>* fields) {
    return Dealer(strips, headers, area, where, fields).deal();
}

}  // namespace rackbook
