#include "sheets/FieldLayout.h"

#include <algorithm>

#include "base/Error.h"
#include "sheets/ColumnWidths.h"
#include "sheets/LineBreaker.h"
#include "sheets/TextRules.h"

namespace rackbook {

namespace {

constexpr double tickSide_mm = 5;

struct Across {
    double x_mm = 0;
    double width_mm = 0;
};

double leastWidthIn(const FieldRoom& room, FontRole role, const std::string& text) {
    return leastWidth_mm(room.measurer, role, room.scale.small_pt,
                         settable(room.measurer, role, text, room.where));
}

std::vector<Across> placesOf(const std::vector<FieldColumn>& columns, const FieldRoom& room) {
    const double gap_mm = room.scale.columnGap_mm / 2;
    double left_mm = room.width_mm + gap_mm;
    double shares = 0;
    for (const FieldColumn& column : columns) {
        left_mm -= gap_mm + column.before_mm + column.fixed_mm;
        shares += column.fixed_mm > 0 ? 0 : column.share;
    }
    if (left_mm < 0 || (shares > 0 && left_mm < tickSide_mm))
        throw RenderError(room.where, "the boxes of a row are wider than the sheet",
                          "Use larger paper or smaller margins in the template.");
    std::vector<ColumnWidth> widths;
    for (const FieldColumn& column : columns)
        widths.push_back({column.fixed_mm > 0 ? column.fixed_mm : left_mm * column.share / shares,
                          leastWidthIn(room, FontRole::bodyStrong, column.header), 0});
    makeRoomForWords(widths);
    std::vector<Across> places;
    double x_mm = 0;
    for (std::size_t i = 0; i < columns.size(); ++i) {
        x_mm += columns[i].before_mm;
        places.push_back({x_mm, widths[i].width_mm});
        x_mm += widths[i].width_mm + gap_mm;
    }
    return places;
}

std::vector<std::string> linesIn(const FieldRoom& room, FontRole role, const std::string& text,
                                 double width_mm) {
    return breakLines(room.measurer, role, room.scale.small_pt,
                      settable(room.measurer, role, text, room.where), width_mm);
}

void frame(Page& page, const Box& box, double line_mm, int element) {
    const double right_mm = box.x_mm + box.width_mm;
    const double bottom_mm = box.y_mm + box.height_mm;
    page.rules.push_back({box.x_mm, box.y_mm, right_mm, box.y_mm, line_mm, 0, element});
    page.rules.push_back({box.x_mm, bottom_mm, right_mm, bottom_mm, line_mm, 0, element});
    page.rules.push_back({box.x_mm, box.y_mm, box.x_mm, bottom_mm, line_mm, 0, element});
    page.rules.push_back({right_mm, box.y_mm, right_mm, bottom_mm, line_mm, 0, element});
}

// Sets the rows of one table of fields.
class FieldRows {
public:
    FieldRows(const FieldTable& table, const FieldRoom& room)
        : m_table(table),
          m_room(room),
          m_scale(room.scale),
          m_element(room.structure.add(ElementKind::table)),
          m_places(placesOf(table.columns, room)) {}

    Strip header() const {
        Strip strip;
        const int row = m_room.structure.add(ElementKind::tableRow, m_element);
        std::vector<std::vector<std::string>> words;
        std::size_t tallest = 1;
        for (std::size_t i = 0; i < m_places.size(); ++i) {
            words.push_back(linesOf(FontRole::bodyStrong, m_table.columns[i].header, i));
            tallest = std::max(tallest, words.back().size());
        }
        strip.height_mm = m_scale.tableLine_mm * (static_cast<double>(tallest) + 0.6);
        for (std::size_t i = 0; i < m_places.size(); ++i)
            addLines(strip, FontRole::bodyStrong, words[i], i,
                     static_cast<double>(tallest - words[i].size()) + 0.3,
                     m_room.structure.add(ElementKind::headerCell, row));
        strip.content.rules.push_back(
            {0, strip.height_mm, m_room.width_mm, strip.height_mm, m_scale.rule_mm, 0});
        strip.keepsWithNext = true;
        return strip;
    }

    Strip row(const std::vector<FieldCell>& cells) const {
        Strip strip;
        strip.height_mm = heightOf(cells);
        const int row = m_room.structure.add(ElementKind::tableRow, m_element);
        for (std::size_t i = 0; i < m_places.size(); ++i) {
            const int element = m_room.structure.add(ElementKind::dataCell, row);
            if (!cells[i])
                continue;
            if (m_table.columns[i].shape == FieldColumn::Shape::text)
                addText(strip, *cells[i], i, element);
            else
                addField(strip, *cells[i], i, element);
        }
        return strip;
    }

private:
    std::vector<std::string> linesOf(FontRole role, const std::string& text,
                                     std::size_t column) const {
        return linesIn(m_room, role, text, m_places[column].width_mm);
    }

    double heightOf(const std::vector<FieldCell>& cells) const {
        std::size_t lines = 0;
        for (std::size_t i = 0; i < m_places.size(); ++i)
            if (cells[i] && m_table.columns[i].shape == FieldColumn::Shape::text)
                lines = std::max(lines, linesOf(FontRole::body, *cells[i], i).size());
        return std::max(m_table.rowHeight_mm,
                        m_scale.tableLine_mm * (static_cast<double>(lines) + 0.6));
    }

    // `above` in lines, from the top of the strip.
    void addLines(Strip& strip, FontRole role, const std::vector<std::string>& lines,
                  std::size_t column, double above, int element) const {
        for (std::size_t i = 0; i < lines.size(); ++i)
            if (!lines[i].empty())
                strip.content.texts.push_back(
                    {role, m_scale.small_pt, m_places[column].x_mm,
                     m_scale.tableLine_mm * (above + static_cast<double>(i) + 0.76), lines[i], 0,
                     element});
    }

    void addText(Strip& strip, const std::string& text, std::size_t column, int element) const {
        const std::vector<std::string> lines = linesOf(FontRole::body, text, column);
        const double above =
            (strip.height_mm / m_scale.tableLine_mm - static_cast<double>(lines.size())) / 2;
        addLines(strip, FontRole::body, lines, column, above, element);
    }

    void addField(Strip& strip, const std::string& name, std::size_t column, int element) const {
        const Across& place = m_places[column];
        if (m_table.columns[column].shape == FieldColumn::Shape::tick) {
            const Box box = {place.x_mm, (strip.height_mm - tickSide_mm) / 2, tickSide_mm,
                             tickSide_mm};
            frame(strip.content, box, m_scale.hairline_mm, element);
            strip.fields.push_back({name, box, formOf(element)});
            return;
        }
        const double foot_mm = (strip.height_mm + tickSide_mm) / 2;
        strip.content.rules.push_back({place.x_mm, foot_mm, place.x_mm + place.width_mm, foot_mm,
                                       m_scale.hairline_mm, 0, element});
        strip.fields.push_back({name, {place.x_mm, 0, place.width_mm, foot_mm}, formOf(element)});
    }

    int formOf(int cell) const { return m_room.structure.add(ElementKind::form, cell); }

    const FieldTable& m_table;
    const FieldRoom& m_room;
    const TypeScale& m_scale;
    int m_element;
    std::vector<Across> m_places;
};

}  // namespace

Strip layOutFieldBoxes(const std::vector<FieldBox>& boxes, double height_mm,
                       const FieldRoom& room) {
    const TypeScale& scale = room.scale;
    std::vector<FieldColumn> columns;
    for (const FieldBox& box : boxes)
        columns.push_back({{}, FieldColumn::Shape::text, box.share, 0, 0});
    const std::vector<Across> places = placesOf(columns, room);
    std::vector<std::vector<std::string>> labels;
    std::size_t tallest = 0;
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        labels.push_back(linesIn(room, FontRole::body, boxes[i].label, places[i].width_mm));
        tallest = std::max(tallest, labels.back().size());
    }
    Strip strip;
    const double top_mm = scale.tableLine_mm * (static_cast<double>(tallest) + 0.1);
    strip.height_mm = top_mm + height_mm;
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        const int element = room.structure.add(ElementKind::paragraph);
        double y_mm = top_mm - scale.tableLine_mm * (static_cast<double>(labels[i].size()) - 0.66);
        for (const std::string& line : labels[i]) {
            strip.content.texts.push_back(
                {FontRole::body, scale.small_pt, places[i].x_mm, y_mm, line, 0, element});
            y_mm += scale.tableLine_mm;
        }
        const Box box = {places[i].x_mm, top_mm, places[i].width_mm, height_mm};
        frame(strip.content, box, scale.hairline_mm, element);
        strip.fields.push_back(
            {boxes[i].name, box, room.structure.add(ElementKind::form, element)});
    }
    return strip;
}

StripGroup layOutFieldRows(const FieldTable& table, const FieldRoom& room) {
    for (const std::vector<FieldCell>& row : table.rows)
        if (row.size() != table.columns.size())
            throw RenderError(room.where, "a row to be filled in has too few or too many cells",
                              "Report this fault of the program.");
    const FieldRows rows(table, room);
    StripGroup group = {rows.header()};
    for (const std::vector<FieldCell>& row : table.rows)
        group.push_back(rows.row(row));
    // No row stands alone at either end.
    for (std::size_t i = 1; i + 1 < group.size(); ++i)
        group[i].keepsWithNext = i == 1 || i + 2 == group.size();
    return group;
}

}  // namespace rackbook
