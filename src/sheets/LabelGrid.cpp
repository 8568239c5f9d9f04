#include "sheets/LabelGrid.h"

#include <algorithm>
#include <cmath>

#include "base/Error.h"
#include "base/Finding.h"
#include "base/Numbers.h"
#include "sheets/LabelText.h"
#include "sheets/QrSquares.h"
#include "sheets/TextRules.h"

namespace rackbook {

namespace {

constexpr double tolerance_mm = 1e-6;
constexpr double textPadding_mm = 3;
constexpr double codePadding_mm = 1.5;  // the code has its own white space around it besides
constexpr double mostCodeShare = 0.5;   // of the label's width
constexpr double cutMark_mm = 2;
constexpr double cutMarkWidth_mm = 0.1;
constexpr double baselineDrop = 0.95;  // from the top of a line, in type sizes

std::size_t howMany(double room_mm, double size_mm, double gap_mm) {
    const double fits = std::floor((room_mm + gap_mm + tolerance_mm) / (size_mm + gap_mm));
    return fits < 1 ? 0 : static_cast<std::size_t>(fits);
}

class LabelGrid {
public:
    LabelGrid(const LabelGridSetup& setup, const TextMeasurer& measurer)
        : m_setup(setup),
          m_measurer(measurer),
          m_where("sheet \"" + excerpt(setup.info.title) + "\"") {
        const Margins& margins = setup.margins;
        m_columns = howMany(setup.paper.width_mm - margins.left_mm - margins.right_mm,
                            setup.labelWidth_mm, setup.columnGap_mm);
        m_rows = howMany(setup.paper.height_mm - margins.top_mm - margins.bottom_mm,
                         setup.labelHeight_mm, setup.rowGap_mm);
        if (m_columns == 0 || m_rows == 0)
            throw RenderError(
                m_where,
                "a label of " + sizeWords() + " is larger than the page inside its margins",
                "Make labelWidth_mm, labelHeight_mm or the margins smaller in the "
                "template.");
        m_model.paper = setup.paper;
        m_model.info = setup.info;
    }

    void add(const Label& label) {
        const std::size_t place = m_count++ % (m_columns * m_rows);
        if (place == 0)
            m_model.pages.emplace_back();
        m_cell = {m_setup.margins.left_mm + static_cast<double>(place % m_columns) *
                                                (m_setup.labelWidth_mm + m_setup.columnGap_mm),
                  m_setup.margins.top_mm + static_cast<double>(place / m_columns) *
                                               (m_setup.labelHeight_mm + m_setup.rowGap_mm),
                  m_setup.labelWidth_mm, m_setup.labelHeight_mm};
        const int section = m_structure.add(ElementKind::section);
        addCutMarks();
        const std::string where = m_where + ", label \"" + excerpt(label.lines.front().text) + "\"";
        double textBegin_mm = textPadding_mm;
        if (!label.code.empty())
            textBegin_mm = addCode(label, section, where);
        addText(label, section, textBegin_mm, where);
    }

    PageModel finish() {
        m_model.structure = m_structure.take();
        return std::move(m_model);
    }

private:
    std::string sizeWords() const {
        return formatShortest(m_setup.labelWidth_mm) + " × " +
               formatShortest(m_setup.labelHeight_mm) + " mm";
    }

    Page& page() { return m_model.pages.back(); }

    // At each corner a stroke along either edge, inside the label.
    void addCutMarks() {
        const double left_mm = m_cell.x_mm;
        const double top_mm = m_cell.y_mm;
        const double right_mm = left_mm + m_cell.width_mm;
        const double bottom_mm = top_mm + m_cell.height_mm;
        for (const double x_mm : {left_mm, right_mm})
            for (const double y_mm : {top_mm, bottom_mm}) {
                const double inX_mm = x_mm + (x_mm == left_mm ? cutMark_mm : -cutMark_mm);
                const double inY_mm = y_mm + (y_mm == top_mm ? cutMark_mm : -cutMark_mm);
                page().rules.push_back(
                    {std::min(x_mm, inX_mm), y_mm, std::max(x_mm, inX_mm), y_mm, cutMarkWidth_mm});
                page().rules.push_back(
                    {x_mm, std::min(y_mm, inY_mm), x_mm, std::max(y_mm, inY_mm), cutMarkWidth_mm});
            }
    }

    // As large as the label allows. Gives where the text begins.
    double addCode(const Label& label, int section, const std::string& where) {
        const double side_mm =
            std::min(m_cell.height_mm - 2 * codePadding_mm, m_cell.width_mm * mostCodeShare);
        const int figure = m_structure.add(ElementKind::figure, section, label.alternate);
        Fill fill = qrSquares(label.code, side_mm, figure, where);
        const double y_mm = m_cell.y_mm + (m_cell.height_mm - side_mm) / 2;
        for (Box& box : fill.boxes) {
            box.x_mm += m_cell.x_mm + codePadding_mm;
            box.y_mm += y_mm;
        }
        page().fills.push_back(std::move(fill));
        return codePadding_mm + side_mm;
    }

    void addText(const Label& label, int section, double begin_mm, const std::string& where) {
        const LabelRoom room = {m_cell.width_mm - begin_mm - textPadding_mm,
                                m_cell.height_mm - 2 * textPadding_mm};
        std::vector<LabelLine> lines = label.lines;
        for (LabelLine& line : lines) {
            line.text = settable(m_measurer, line.isStrong ? FontRole::bodyStrong : FontRole::body,
                                 line.text, where);
            std::replace(line.text.begin(), line.text.end(), '\n', ' ');
        }
        const std::optional<std::vector<SetLabelLine>> set =
            room.width_mm > 0 ? fittedLines(lines, room, m_measurer) : std::nullopt;
        if (!set)
            throw RenderError(where, "the text does not fit on a label of " + sizeWords(),
                              "Make labelWidth_mm or labelHeight_mm larger in the template, or "
                              "leave out some of its sections.");
        std::vector<int> elements;
        for (std::size_t i = 0; i < lines.size(); ++i)
            elements.push_back(m_structure.add(ElementKind::paragraph, section));
        double y_mm = m_cell.y_mm + (m_cell.height_mm - heightOf(*set)) / 2;
        for (const SetLabelLine& line : *set) {
            page().texts.push_back({line.role, line.size_pt, m_cell.x_mm + begin_mm,
                                    y_mm + line.size_pt * baselineDrop * mmPerPoint, line.text, 0,
                                    elements[line.of]});
            y_mm += labelStep_mm(line.size_pt);
        }
    }

    const LabelGridSetup& m_setup;
    const TextMeasurer& m_measurer;
    std::string m_where;
    std::size_t m_columns = 0;
    std::size_t m_rows = 0;
    std::size_t m_count = 0;
    Box m_cell;
    StructureBuilder m_structure;
    PageModel m_model;
};

}  // namespace

std::vector<NumberRule> labelGridNumbers() {
    return {{"labelWidth_mm", 25, 200},
            {"labelHeight_mm", 12, 280},
            {"columnGap_mm", 0, 50},
            {"rowGap_mm", 0, 50}};
}

LabelGridSetup labelGridSetupOf(const SheetTemplate& sheetTemplate, DocumentInfo info) {
    FlowSetup base = sheetTemplate.flowSetup();
    LabelGridSetup setup;
    setup.paper = base.paper;
    setup.margins = base.margins;
    setup.labelWidth_mm = sheetTemplate.number("labelWidth_mm");
    setup.labelHeight_mm = sheetTemplate.number("labelHeight_mm");
    setup.columnGap_mm = sheetTemplate.number("columnGap_mm");
    setup.rowGap_mm = sheetTemplate.number("rowGap_mm");
    info.language = base.info.language;
    setup.info = std::move(info);
    return setup;
}

PageModel labelPages(const std::vector<Label>& labels, const LabelGridSetup& setup,
                     const TextMeasurer& measurer) {
    LabelGrid grid(setup, measurer);
    for (const Label& label : labels)
        grid.add(label);
    return grid.finish();
}

}  // namespace rackbook
