#include "sheets/TableLayout.h"

#include <algorithm>

#include "base/Error.h"
#include "sheets/ColumnWidths.h"
#include "sheets/DecimalPlace.h"
#include "sheets/LineBreaker.h"
#include "sheets/TextRules.h"

namespace rackbook {

namespace {

constexpr double tolerance_mm = 1e-6;
constexpr double swatchWidth_mm = 14;

// Where a column stands, and how far its figures reach right of the decimal place.
struct Column {
    double x_mm = 0;
    double width_mm = 0;
    Alignment alignment = Alignment::left;
    double afterPlace_mm = 0;
};

struct SetCell {
    std::size_t column = 0;
    FontRole role = FontRole::body;
    double x_mm = 0;  // of the text, right of a swatch
    double width_mm = 0;
    Alignment alignment = Alignment::left;
    std::vector<std::string> lines;
    std::optional<Swatch> swatch;  // x and width only
    int element = noElement;
};

FontRole roleOf(Alignment alignment, bool strong) {
    if (alignment == Alignment::left)
        return strong ? FontRole::bodyStrong : FontRole::body;
    return strong ? FontRole::figuresStrong : FontRole::figures;
}

class TableSetter {
public:
    TableSetter(const SheetTable& table, const TextMeasurer& measurer, const TypeScale& scale,
                StructureBuilder& structure, double width_mm, const std::string& where,
                const std::string& decimalSign)
        : m_table(table),
          m_measurer(measurer),
          m_scale(scale),
          m_structure(structure),
          m_element(structure.add(ElementKind::table)),
          m_width_mm(width_mm),
          m_where(where),
          m_decimalSign(decimalSign),
          m_padding_mm(scale.tableLine_mm * 0.3) {
        placeColumns();
        findDecimalPlaces();
    }

    StripGroup header() const {
        std::vector<SetCell> cells;
        std::size_t tallest = 1;
        const int row = m_structure.add(ElementKind::tableRow, m_element);
        for (std::size_t i = 0; i < m_columns.size(); ++i) {
            cells.push_back(setCell(i, m_table.columns[i].header, true,
                                    headerAlignment(m_columns[i].alignment)));
            cells.back().element = m_structure.add(ElementKind::headerCell, row);
            tallest = std::max(tallest, cells.back().lines.size());
        }
        // The words of a header stand on its rule, however many lines the others take.
        for (SetCell& cell : cells)
            cell.lines.insert(cell.lines.begin(), tallest - cell.lines.size(), "");
        StripGroup strips = stripsOf(cells, tallest);
        strips.back().content.rules.push_back(
            acrossAt(strips.back().height_mm, m_scale.rule_mm, 0));
        return strips;
    }

    StripGroup row(const TableRow& row) const {
        std::vector<SetCell> cells;
        std::size_t lines = 1;
        const int element = m_structure.add(ElementKind::tableRow, m_element);
        const int columns = row.heading ? static_cast<int>(m_columns.size()) : 1;
        for (std::size_t i = 0; i < row.cells.size(); ++i) {
            cells.push_back(row.heading ? setHeading(row.cells[i]) : setBodyCell(i, row));
            cells.back().element = m_structure.addCell(ElementKind::dataCell, element, columns);
            lines = std::max({lines, cells.back().lines.size(),
                              cells.back().swatch ? std::size_t{2} : std::size_t{1}});
        }
        StripGroup strips = stripsOf(cells, lines);
        for (const SetCell& cell : cells)
            if (cell.swatch)
                addSwatch(strips, *cell.swatch);
        strips.back().height_mm += std::max(0.0, row.least_mm - heightOf(strips));
        if (row.ruleAbove)
            strips.front().content.rules.push_back(acrossAt(0, m_scale.rule_mm, 0));
        strips.back().content.rules.push_back(
            acrossAt(strips.back().height_mm, m_scale.hairline_mm, m_scale.rowGrey));
        return strips;
    }

private:
    void placeColumns() {
        const double gaps_mm =
            m_scale.columnGap_mm * static_cast<double>(m_table.columns.size() - 1);
        double fixed_mm = gaps_mm;
        double shares = 0;
        for (const TableColumn& column : m_table.columns) {
            fixed_mm += column.fixed_mm;
            shares += column.fixed_mm > 0 ? 0 : column.share;
        }
        const double left_mm = m_width_mm - fixed_mm;
        if (left_mm < -tolerance_mm || (shares > 0 && left_mm < m_scale.grid_mm))
            throw RenderError(m_where, "the columns of a table are wider than the sheet",
                              "Use larger paper or smaller margins in the template.");
        std::vector<ColumnWidth> widths;
        for (const TableColumn& column : m_table.columns)
            widths.push_back(
                {column.fixed_mm > 0 ? column.fixed_mm : left_mm * column.share / shares,
                 leastWidth(roleOf(headerAlignment(column.alignment), true), column.header), 0});
        widen(widths);
        double x_mm = 0;
        for (std::size_t i = 0; i < widths.size(); ++i) {
            m_columns.push_back({x_mm, widths[i].width_mm, m_table.columns[i].alignment, 0});
            x_mm += widths[i].width_mm + m_scale.columnGap_mm;
        }
    }

    void widen(std::vector<ColumnWidth>& widths) const {
        for (const TableRow& row : m_table.rows)
            for (std::size_t i = 0; !row.heading && i < row.cells.size(); ++i) {
                const double swatch_mm = row.cells[i].swatch ? swatchWidth_mm : 0;
                widths[i].ofContent_mm = std::max(
                    widths[i].ofContent_mm,
                    swatch_mm + leastWidth(roleOf(m_table.columns[i].alignment, row.strong),
                                           row.cells[i].text));
            }
        makeRoomForWords(widths);
    }

    double leastWidth(FontRole role, const std::string& text) const {
        return leastWidth_mm(m_measurer, role, m_scale.small_pt,
                             settable(m_measurer, role, text, m_where));
    }

    static Alignment headerAlignment(Alignment alignment) {
        return alignment == Alignment::left ? Alignment::left : Alignment::right;
    }

    double width_mm(FontRole role, std::string_view text) const {
        return m_measurer.width_mm(role, m_scale.small_pt, text);
    }

    void findDecimalPlaces() {
        for (std::size_t i = 0; i < m_columns.size(); ++i)
            if (m_columns[i].alignment == Alignment::decimal)
                findDecimalPlace(i);
    }

    void findDecimalPlace(std::size_t index) {
        double before_mm = 0;
        double after_mm = 0;
        bool oneLine = true;
        for (const TableRow& row : m_table.rows) {
            if (row.heading || index >= row.cells.size())
                continue;
            const FontRole role = roleOf(Alignment::decimal, row.strong);
            const std::string text = settable(m_measurer, role, row.cells[index].text, m_where);
            const std::size_t place = decimalPlace(text, m_decimalSign);
            oneLine = oneLine && text.find('\n') == std::string::npos && !row.cells[index].swatch;
            before_mm = std::max(before_mm, width_mm(role, text.substr(0, place)));
            after_mm = std::max(after_mm, width_mm(role, text.substr(place)));
        }
        Column& column = m_columns[index];
        if (oneLine && before_mm + after_mm <= column.width_mm + tolerance_mm)
            column.afterPlace_mm = after_mm;
        else
            column.alignment = Alignment::right;
    }

    SetCell setCell(std::size_t column, const std::string& text, bool strong,
                    Alignment alignment) const {
        SetCell cell;
        cell.column = column;
        cell.alignment = alignment;
        cell.role = roleOf(alignment, strong);
        cell.x_mm = m_columns[column].x_mm;
        cell.width_mm = m_columns[column].width_mm;
        breakInto(cell, text);
        return cell;
    }

    void breakInto(SetCell& cell, const std::string& text) const {
        cell.lines = breakLines(m_measurer, cell.role, m_scale.small_pt,
                                settable(m_measurer, cell.role, text, m_where), cell.width_mm);
    }

    SetCell setBodyCell(std::size_t index, const TableRow& row) const {
        const TableCell& source = row.cells[index];
        SetCell cell = setCell(index, {}, row.strong, m_columns[index].alignment);
        if (source.swatch) {
            Swatch swatch;
            swatch.x_mm = cell.x_mm;
            swatch.width_mm =
                source.text.empty() ? cell.width_mm : std::min(swatchWidth_mm, cell.width_mm / 2);
            swatch.width_mm = std::min(swatch.width_mm, swatchWidth_mm);
            swatch.colour = *source.swatch;
            swatch.outline_mm = m_scale.hairline_mm;
            cell.swatch = swatch;
            const double taken_mm = swatch.width_mm + m_scale.columnGap_mm / 2;
            cell.x_mm += std::min(taken_mm, cell.width_mm / 2);
            cell.width_mm -= std::min(taken_mm, cell.width_mm / 2);
        }
        breakInto(cell, source.text);
        return cell;
    }

    SetCell setHeading(const TableCell& source) const {
        SetCell cell;
        cell.role = FontRole::bodyStrong;
        cell.width_mm = m_width_mm;
        breakInto(cell, source.text);
        return cell;
    }

    double startOf(const SetCell& cell, const std::string& line) const {
        const double right_mm = cell.x_mm + cell.width_mm;
        switch (cell.alignment) {
            case Alignment::left:
                break;
            case Alignment::right:
                return std::max(cell.x_mm, right_mm - width_mm(cell.role, line));
            case Alignment::decimal:
                return right_mm - m_columns[cell.column].afterPlace_mm -
                       width_mm(cell.role, line.substr(0, decimalPlace(line, m_decimalSign)));
        }
        return cell.x_mm;
    }

    // One strip a line.
    StripGroup stripsOf(const std::vector<SetCell>& cells, std::size_t lines) const {
        StripGroup strips(lines);
        for (std::size_t line = 0; line < lines; ++line) {
            Strip& strip = strips[line];
            const double above_mm = line == 0 ? m_padding_mm : 0;
            const double below_mm = line + 1 == lines ? m_padding_mm : 0;
            strip.height_mm = above_mm + m_scale.tableLine_mm + below_mm;
            for (const SetCell& cell : cells)
                if (line < cell.lines.size() && !cell.lines[line].empty())
                    strip.content.texts.push_back({cell.role, m_scale.small_pt,
                                                   startOf(cell, cell.lines[line]),
                                                   above_mm + m_scale.tableLine_mm * 0.76,
                                                   cell.lines[line], 0, cell.element});
        }
        return strips;
    }

    void addSwatch(StripGroup& strips, Swatch swatch) const {
        swatch.y_mm = m_padding_mm;
        swatch.height_mm = 2 * m_scale.tableLine_mm - m_padding_mm * 0.5;
        strips.front().content.swatches.push_back(swatch);
    }

    Rule acrossAt(double y_mm, double thickness_mm, double grey) const {
        return {0, y_mm, m_width_mm, y_mm, thickness_mm, grey};
    }

    const SheetTable& m_table;
    const TextMeasurer& m_measurer;
    const TypeScale& m_scale;
    StructureBuilder& m_structure;
    int m_element;
    double m_width_mm;
    const std::string& m_where;
    const std::string& m_decimalSign;
    double m_padding_mm;
    std::vector<Column> m_columns;
};

void checkShape(const SheetTable& table, const std::string& where) {
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
        const TableRow& row = table.rows[i];
        const std::size_t wanted = row.heading ? 1 : table.columns.size();
        if (row.cells.size() != wanted)
            throw RenderError(where,
                              "row " + std::to_string(i + 1) + " of a table has " +
                                  std::to_string(row.cells.size()) + " cells where it needs " +
                                  std::to_string(wanted),
                              "Report this fault of the program.");
    }
}

// A line at a time for tall rows, all together for others; swatches need their first two lines.
void keepLines(StripGroup& row, double body_mm) {
    const bool breaks = heightOf(row) > body_mm / 3 && row.size() >= 4;
    for (std::size_t line = 0; line + 1 < row.size(); ++line)
        row[line].keepsWithNext = !breaks || line == 0 || line + 2 == row.size();
}

// Which rows stand on the page of the row after them. Tall rows fill a page by themselves; a few
// low ones alone at the head of a page look lost below a table that filled the page before.
bool keepsWithNext(const SheetTable& table, std::size_t row, std::size_t lines) {
    constexpr std::size_t longTable = 12;
    constexpr std::size_t tallRow = 3;
    const std::size_t rows = table.rows.size();
    const std::size_t atEnd = rows >= longTable ? 4 : 2;
    if (row + 1 == rows)
        return false;
    const bool isAtAnEnd = row == 0 || row + atEnd >= rows;
    return table.rows[row].heading || table.rows[row].keepsWithNext ||
           (isAtAnEnd && lines < tallRow);
}

}  // namespace

TableStrips layOutTable(const SheetTable& table, const TextMeasurer& measurer,
                        const TypeScale& scale, StructureBuilder& structure, double width_mm,
                        double body_mm, int headerNumber, const std::string& where,
                        const std::string& decimalSign) {
    checkShape(table, where);
    const TableSetter setter(table, measurer, scale, structure, width_mm, where, decimalSign);
    TableStrips strips;
    strips.header = setter.header();
    if (heightOf(strips.header) > body_mm / 2)
        throw RenderError(where, "the header of a table takes more than half of a page",
                          "Shorten the headers of its columns in the template.");
    for (Strip& strip : strips.header)
        strip.keepsWithNext = !table.rows.empty();
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
        StripGroup row = setter.row(table.rows[i]);
        keepLines(row, body_mm);
        row.back().keepsWithNext = keepsWithNext(table, i, row.size());
        for (Strip& strip : row) {
            strip.repeatedHeader = headerNumber;
            strips.rows.push_back(std::move(strip));
        }
    }
    return strips;
}

}  // namespace rackbook
