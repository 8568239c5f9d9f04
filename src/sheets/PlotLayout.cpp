#include "sheets/PlotLayout.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "base/Error.h"
#include "sheets/TextRules.h"

namespace rackbook {

namespace {

constexpr double leastArea_mm = 12;
constexpr double bandGrey = 0.88;
constexpr double dash_mm = 0.9;
constexpr double tick_mm = 1;

class PlotSetter {
public:
    PlotSetter(const Plot& plot, const TextMeasurer& measurer, const TypeScale& scale,
               double width_mm, double height_mm, int element, const std::string& where)
        : m_plot(plot),
          m_measurer(measurer),
          m_scale(scale),
          m_element(element),
          m_where(where),
          m_line_mm(scale.tableLine_mm),
          m_gap_mm(scale.tableLine_mm * 0.4) {
        checkAxis(plot.x);
        checkAxis(plot.y);
        m_left_mm = widest(plot.y.ticks) + m_gap_mm + tick_mm;
        m_right_mm = width_mm - endRoom();
        m_top_mm =
            (plot.y.title.empty() ? 0.5 : 1.25) * m_line_mm + (plot.marks.empty() ? 0 : m_line_mm);
        m_bottom_mm = height_mm - tick_mm - m_line_mm * (plot.x.title.empty() ? 1.2 : 2.2);
        if (m_right_mm - m_left_mm < leastArea_mm || m_bottom_mm - m_top_mm < leastArea_mm ||
            !hasRoomForWords(width_mm))
            throw RenderError(where, "the words of a plot leave no room for it",
                              "Use larger paper or smaller margins in the template.");
    }

    Page set() {
        bands();
        lines();
        axes();
        marks();
        titles();
        lineLabels();
        return std::move(m_page);
    }

private:
    void checkAxis(const PlotAxis& axis) const {
        if (!std::isfinite(axis.from) || !std::isfinite(axis.to) || !(axis.to > axis.from))
            throw RenderError(m_where, "an axis of a plot has no length",
                              "Report this fault of the program.");
    }

    // Of the words whose room is not set aside by the axes.
    bool hasRoomForWords(double width_mm) const {
        const double right_mm = m_right_mm;
        bool fits = widthOf(m_plot.y.title) <= width_mm && widthOf(m_plot.x.title) <= right_mm;
        for (const PlotMark& mark : m_plot.marks)
            fits = fits && widthOf(mark.label) <= right_mm - m_left_mm;
        const auto labels = std::count_if(m_plot.lines.begin(), m_plot.lines.end(),
                                          [](const PlotLine& line) { return !line.label.empty(); });
        return fits && m_line_mm * static_cast<double>(labels - 1) <= m_bottom_mm - m_top_mm;
    }

    static bool isOn(const PlotAxis& axis, double at) { return at >= axis.from && at <= axis.to; }

    std::string checked(const std::string& text) const {
        return settable(m_measurer, FontRole::body, text, m_where);
    }

    double widthOf(const std::string& text) const {
        return m_measurer.width_mm(FontRole::body, m_scale.small_pt, checked(text));
    }

    double widest(const std::vector<PlotTick>& ticks) const {
        double width_mm = 0;
        for (const PlotTick& tick : ticks)
            width_mm = std::max(width_mm, widthOf(tick.text));
        return width_mm;
    }

    // For the labels of lines, and half of the last tick's word.
    double endRoom() const {
        double room_mm = m_plot.x.ticks.empty() ? 0 : widthOf(m_plot.x.ticks.back().text) / 2;
        for (const PlotLine& line : m_plot.lines)
            if (!line.label.empty())
                room_mm = std::max(room_mm, widthOf(line.label) + m_gap_mm);
        return room_mm;
    }

    double x_mm(double x) const {
        return m_left_mm +
               (x - m_plot.x.from) / (m_plot.x.to - m_plot.x.from) * (m_right_mm - m_left_mm);
    }

    double y_mm(double y) const {
        return m_bottom_mm -
               (y - m_plot.y.from) / (m_plot.y.to - m_plot.y.from) * (m_bottom_mm - m_top_mm);
    }

    void say(const std::string& text, double left_mm, double baseline_mm) {
        if (!text.empty())
            m_page.texts.push_back({FontRole::body, m_scale.small_pt, left_mm, baseline_mm,
                                    checked(text), 0, m_element});
    }

    void stroke(double fromX, double fromY, double toX, double toY, double grey = 0) {
        m_page.rules.push_back({fromX, fromY, toX, toY, m_scale.hairline_mm, grey, m_element});
    }

    void bands() {
        Fill fill;
        fill.grey = bandGrey;
        fill.element = m_element;
        for (const PlotBand& band : m_plot.bands) {
            const double low = std::clamp(band.low, m_plot.y.from, m_plot.y.to);
            const double high = std::clamp(band.high, m_plot.y.from, m_plot.y.to);
            if (high > low)
                fill.boxes.push_back(
                    {m_left_mm, y_mm(high), m_right_mm - m_left_mm, y_mm(low) - y_mm(high)});
        }
        if (!fill.boxes.empty())
            m_page.fills.push_back(std::move(fill));
    }

    bool isInside(const PlotPoint& p) const { return isOn(m_plot.x, p.x) && isOn(m_plot.y, p.y); }

    // The part of a stroke inside the axes, after Liang and Barsky.
    std::optional<std::pair<PlotPoint, PlotPoint>> clipped(PlotPoint a, PlotPoint b) const {
        double begin = 0;
        double end = 1;
        const double dx = b.x - a.x;
        const double dy = b.y - a.y;
        const double towards[] = {-dx, dx, -dy, dy};
        const double room[] = {a.x - m_plot.x.from, m_plot.x.to - a.x, a.y - m_plot.y.from,
                               m_plot.y.to - a.y};
        for (int side = 0; side < 4; ++side) {
            if (towards[side] == 0) {
                if (room[side] < 0)
                    return std::nullopt;
                continue;
            }
            const double at = room[side] / towards[side];
            if (towards[side] < 0)
                begin = std::max(begin, at);
            else
                end = std::min(end, at);
        }
        if (begin > end)
            return std::nullopt;
        return std::pair(PlotPoint{a.x + begin * dx, a.y + begin * dy},
                         PlotPoint{a.x + end * dx, a.y + end * dy});
    }

    void lines() {
        for (const PlotLine& line : m_plot.lines) {
            Curve curve = emptyCurve(line);
            for (std::size_t i = 0; i + 1 < line.points.size(); ++i) {
                const auto part = clipped(line.points[i], line.points[i + 1]);
                if (!part) {
                    finish(curve, line);
                    continue;
                }
                if (curve.points.empty() || !isInside(line.points[i])) {
                    finish(curve, line);
                    curve.points.push_back({x_mm(part->first.x), y_mm(part->first.y)});
                }
                curve.points.push_back({x_mm(part->second.x), y_mm(part->second.y)});
            }
            finish(curve, line);
        }
    }

    Curve emptyCurve(const PlotLine& line) const {
        Curve curve;
        curve.width_mm = m_scale.rule_mm;
        curve.grey = line.grey;
        curve.dash_mm = line.dashed ? dash_mm : 0;
        curve.element = m_element;
        return curve;
    }

    void finish(Curve& curve, const PlotLine& line) {
        if (curve.points.size() >= 2)
            m_page.curves.push_back(std::move(curve));
        curve = emptyCurve(line);
    }

    void axes() {
        stroke(m_left_mm, m_bottom_mm, m_right_mm, m_bottom_mm);
        stroke(m_left_mm, m_top_mm, m_left_mm, m_bottom_mm);
        double free_mm = -1e9;
        for (const PlotTick& tick : m_plot.x.ticks) {
            if (!isOn(m_plot.x, tick.at))
                continue;
            const double at_mm = x_mm(tick.at);
            stroke(at_mm, m_bottom_mm, at_mm, m_bottom_mm + tick_mm);
            const double left_mm = std::max(0.0, at_mm - widthOf(tick.text) / 2);
            if (left_mm < free_mm)
                continue;
            say(tick.text, left_mm, m_bottom_mm + tick_mm + m_line_mm * 0.85);
            free_mm = left_mm + widthOf(tick.text) + m_gap_mm;
        }
        free_mm = 1e9;
        for (const PlotTick& tick : m_plot.y.ticks) {
            if (!isOn(m_plot.y, tick.at))
                continue;
            const double at_mm = y_mm(tick.at);
            stroke(m_left_mm - tick_mm, at_mm, m_left_mm, at_mm);
            if (at_mm > free_mm)
                continue;
            free_mm = at_mm - m_line_mm;
            say(tick.text, m_left_mm - tick_mm - m_gap_mm * 0.6 - widthOf(tick.text),
                at_mm + m_line_mm * 0.26);
        }
    }

    void marks() {
        std::vector<PlotMark> sorted = m_plot.marks;
        std::stable_sort(sorted.begin(), sorted.end(),
                         [](const PlotMark& a, const PlotMark& b) { return a.x < b.x; });
        double free_mm = -1e9;
        for (const PlotMark& mark : sorted) {
            if (!isOn(m_plot.x, mark.x))
                continue;
            const double at_mm = x_mm(mark.x);
            const double width_mm = widthOf(mark.label);
            stroke(at_mm, m_top_mm, at_mm, m_bottom_mm, m_scale.rowGrey);
            const double most_mm = std::max(m_left_mm, m_right_mm - width_mm);
            const double left_mm = std::clamp(at_mm - width_mm / 2, m_left_mm, most_mm);
            if (left_mm < free_mm)
                continue;
            say(mark.label, left_mm, m_top_mm - m_line_mm * 0.25);
            free_mm = left_mm + width_mm + m_gap_mm;
        }
    }

    void titles() {
        say(m_plot.y.title, 0, m_line_mm * 0.76);
        const double width_mm = widthOf(m_plot.x.title);
        say(m_plot.x.title, m_right_mm - width_mm, m_bottom_mm + tick_mm + m_line_mm * 1.9);
    }

    // From the top down, each at least a line below the one before.
    void lineLabels() {
        struct Label {
            double y_mm;
            const std::string* text;
        };
        std::vector<Label> labels;
        for (const PlotLine& line : m_plot.lines)
            if (!line.label.empty() && !line.points.empty())
                labels.push_back(
                    {y_mm(std::clamp(line.points.back().y, m_plot.y.from, m_plot.y.to)),
                     &line.label});
        std::stable_sort(labels.begin(), labels.end(),
                         [](const Label& a, const Label& b) { return a.y_mm < b.y_mm; });
        // Those that would slip below the foot push the ones above them up.
        for (std::size_t i = 1; i < labels.size(); ++i)
            labels[i].y_mm = std::max(labels[i].y_mm, labels[i - 1].y_mm + m_line_mm);
        double most_mm = m_bottom_mm;
        for (std::size_t i = labels.size(); i-- > 0;) {
            labels[i].y_mm = std::min(labels[i].y_mm, most_mm);
            most_mm = labels[i].y_mm - m_line_mm;
        }
        for (const Label& label : labels)
            say(*label.text, m_right_mm + m_gap_mm, label.y_mm + m_line_mm * 0.26);
    }

    const Plot& m_plot;
    const TextMeasurer& m_measurer;
    const TypeScale& m_scale;
    int m_element;
    const std::string& m_where;
    double m_line_mm;
    double m_gap_mm;
    double m_left_mm = 0;
    double m_right_mm = 0;
    double m_top_mm = 0;
    double m_bottom_mm = 0;
    Page m_page;
};

}  // namespace

Page layOutPlot(const Plot& plot, const TextMeasurer& measurer, const TypeScale& scale,
                double width_mm, double height_mm, int element, const std::string& where) {
    return PlotSetter(plot, measurer, scale, width_mm, height_mm, element, where).set();
}

}  // namespace rackbook
