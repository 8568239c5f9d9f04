#include "sheets/PanelLayout.h"

#include <algorithm>

#include "base/Error.h"
#include "sheets/LineBreaker.h"
#include "sheets/PlotLayout.h"
#include "sheets/QrSquares.h"
#include "sheets/TextRules.h"

namespace rackbook {

namespace {

constexpr double leastPanel_mm = 12;

class PanelSetter {
public:
    PanelSetter(const PanelRoom& room, const std::vector<PictureFile>& pictures,
                const TextMeasurer& measurer, const TypeScale& scale, StructureBuilder& structure,
                const std::string& where)
        : m_room(room),
          m_pictures(pictures),
          m_measurer(measurer),
          m_scale(scale),
          m_structure(structure),
          m_where(where) {
        m_strip.height_mm = room.height_mm;
    }

    void set(const Panel& panel, double x_mm, double width_mm) {
        if (std::holds_alternative<Gap>(panel.content))
            return;
        m_x_mm = x_mm;
        m_width_mm = width_mm;
        m_element = m_structure.add(ElementKind::figure, noElement, panel.alternate);
        std::visit([this](const auto& content) { draw(content); }, panel.content);
        caption(panel.caption);
    }

    Strip take() { return std::move(m_strip); }

private:
    void draw(const Gap&) {}

    void draw(const EmptyFrame&) {
        const double right_mm = m_x_mm + m_width_mm;
        const double bottom_mm = m_room.height_mm;
        stroke(m_x_mm, 0, right_mm, 0);
        stroke(m_x_mm, bottom_mm, right_mm, bottom_mm);
        stroke(m_x_mm, 0, m_x_mm, bottom_mm);
        stroke(right_mm, 0, right_mm, bottom_mm);
    }

    void draw(const LabColour& colour) {
        m_strip.content.swatches.push_back(
            {m_x_mm, 0, m_width_mm, m_room.height_mm, colour, m_scale.hairline_mm, m_element});
    }

    void draw(const PictureNumber& number) {
        const double proportions = proportionsOf(m_pictures.at(number.index));
        Picture picture;
        picture.file = number.index;
        picture.element = m_element;
        picture.box = {m_x_mm, 0, std::min(m_width_mm, m_room.height_mm * proportions),
                       std::min(m_room.height_mm, m_width_mm / proportions)};
        m_strip.content.pictures.push_back(picture);
    }

    void draw(const QrText& code) {
        Fill fill =
            qrSquares(code.text, std::min(m_width_mm, m_room.height_mm), m_element, m_where);
        for (Box& box : fill.boxes)
            box.x_mm += m_x_mm;
        m_strip.content.fills.push_back(std::move(fill));
    }

    void draw(const Plot& plot) {
        Page page =
            layOutPlot(plot, m_measurer, m_scale, m_width_mm, m_room.height_mm, m_element, m_where);
        for (TextRun& text : page.texts) {
            text.x_mm += m_x_mm;
            m_strip.content.texts.push_back(std::move(text));
        }
        for (Rule& rule : page.rules) {
            rule.fromX_mm += m_x_mm;
            rule.toX_mm += m_x_mm;
            m_strip.content.rules.push_back(rule);
        }
        for (Curve& curve : page.curves) {
            for (PagePoint& point : curve.points)
                point.x_mm += m_x_mm;
            m_strip.content.curves.push_back(std::move(curve));
        }
        for (Fill& fill : page.fills) {
            for (Box& box : fill.boxes)
                box.x_mm += m_x_mm;
            m_strip.content.fills.push_back(std::move(fill));
        }
    }

    void stroke(double fromX, double fromY, double toX, double toY) {
        m_strip.content.rules.push_back(
            {fromX, fromY, toX, toY, m_scale.hairline_mm, 0, m_element});
    }

    void caption(const std::string& words) {
        if (words.empty())
            return;
        const int element = m_structure.add(ElementKind::caption);
        double baseline_mm = m_room.height_mm + m_scale.tableLine_mm;
        for (const std::string& line :
             breakLines(m_measurer, FontRole::body, m_scale.small_pt,
                        settable(m_measurer, FontRole::body, words, m_where), m_width_mm)) {
            m_strip.content.texts.push_back(
                {FontRole::body, m_scale.small_pt, m_x_mm, baseline_mm, line, 0, element});
            m_strip.height_mm =
                std::max(m_strip.height_mm, baseline_mm + m_scale.tableLine_mm * 0.3);
            baseline_mm += m_scale.tableLine_mm;
        }
    }

    PanelRoom m_room;
    const std::vector<PictureFile>& m_pictures;
    const TextMeasurer& m_measurer;
    const TypeScale& m_scale;
    StructureBuilder& m_structure;
    const std::string& m_where;
    Strip m_strip;
    double m_x_mm = 0;
    double m_width_mm = 0;
    int m_element = noElement;
};

bool isCode(const Panel& panel) {
    return std::holds_alternative<QrText>(panel.content);
}

}  // namespace

Strip layOutPanels(const std::vector<Panel>& panels, const PanelRoom& room,
                   const std::vector<PictureFile>& pictures, const TextMeasurer& measurer,
                   const TypeScale& scale, StructureBuilder& structure, const std::string& where) {
    const double gap_mm = scale.columnGap_mm;
    double left_mm = room.width_mm - gap_mm * static_cast<double>(panels.size() - 1);
    double shares = 0;
    for (const Panel& panel : panels) {
        left_mm -= isCode(panel) ? room.height_mm : 0;
        shares += isCode(panel) ? 0 : panel.share;
    }
    PanelSetter setter(room, pictures, measurer, scale, structure, where);
    double x_mm = 0;
    for (const Panel& panel : panels) {
        const double width_mm = isCode(panel) ? room.height_mm : left_mm * panel.share / shares;
        if (width_mm < leastPanel_mm || left_mm < 0)
            throw RenderError(where, "the pictures and plots of a row have too little room",
                              "Use larger paper or smaller margins in the template.");
        setter.set(panel, x_mm, width_mm);
        x_mm += width_mm + gap_mm;
    }
    return setter.take();
}

}  // namespace rackbook
