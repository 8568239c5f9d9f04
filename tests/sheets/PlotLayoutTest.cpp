#include "sheets/PlotLayout.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "ErrorText.h"
#include "EvenMeasurer.h"
#include "PanelMeasures.h"
#include "base/Error.h"

namespace rackbook {
namespace {

const EvenMeasurer measurer;
const TypeScale scale = TypeScale::of(9.5);

Page setIn(const Plot& plot, double width_mm, double height_mm) {
    return layOutPlot(plot, measurer, scale, width_mm, height_mm, 3, "here");
}

Plot tenByTen() {
    Plot plot;
    plot.x = {0, 10, {}, {}};
    plot.y = {0, 10, {}, {}};
    return plot;
}

// Reads places on the page in the plot's own units, by the two strokes of its axes.
class Axes {
public:
    Axes(const Plot& plot, const Page& page) : m_plot(plot) {
        for (const Rule& rule : page.rules) {
            if (rule.toX_mm - rule.fromX_mm > width_mm()) {
                left_mm = rule.fromX_mm;
                right_mm = rule.toX_mm;
            }
            if (rule.grey == 0 && rule.toY_mm - rule.fromY_mm > bottom_mm - top_mm) {
                top_mm = rule.fromY_mm;
                bottom_mm = rule.toY_mm;
            }
        }
    }

    double width_mm() const { return right_mm - left_mm; }
    double x(double x_mm) const {
        return m_plot.x.from + (x_mm - left_mm) / width_mm() * (m_plot.x.to - m_plot.x.from);
    }
    double y(double y_mm) const {
        return m_plot.y.from +
               (bottom_mm - y_mm) / (bottom_mm - top_mm) * (m_plot.y.to - m_plot.y.from);
    }

    double left_mm = 0;
    double right_mm = 0;
    double top_mm = 0;
    double bottom_mm = 0;

private:
    const Plot& m_plot;
};

// The curves in the plot's own units.
std::vector<std::vector<PlotPoint>> drawn(const Plot& plot) {
    const Page page = setIn(plot, 80, 45);
    const Axes axes(plot, page);
    std::vector<std::vector<PlotPoint>> curves;
    for (const Curve& curve : page.curves) {
        curves.emplace_back();
        for (const PagePoint& point : curve.points)
            curves.back().push_back({axes.x(point.x_mm), axes.y(point.y_mm)});
    }
    return curves;
}

void expectCurves(const std::vector<PlotPoint>& line,
                  const std::vector<std::vector<PlotPoint>>& wanted) {
    Plot plot = tenByTen();
    plot.lines.push_back({line, false, 0, {}});
    const std::vector<std::vector<PlotPoint>> found = drawn(plot);
    ASSERT_EQ(found.size(), wanted.size());
    for (std::size_t i = 0; i < wanted.size(); ++i) {
        ASSERT_EQ(found[i].size(), wanted[i].size());
        for (std::size_t k = 0; k < wanted[i].size(); ++k) {
            EXPECT_NEAR(found[i][k].x, wanted[i][k].x, 1e-9);
            EXPECT_NEAR(found[i][k].y, wanted[i][k].y, 1e-9);
        }
    }
}

// Where strokes cross the sides of a square of ten, worked out by hand.
TEST(PlotLayout, CutsLinesOffAtTheAxes) {
    expectCurves({{1, 1}, {9, 5}}, {{{1, 1}, {9, 5}}});
    // Rises by 1 over 2: at x = 0 it stands at 7.5, and it reaches 10 at x = 5.
    expectCurves({{-5, 5}, {15, 15}}, {{{0, 7.5}, {5, 10}}});
    expectCurves({{5, -10}, {5, 20}}, {{{5, 0}, {5, 10}}});
    expectCurves({{-4, 3}, {14, 3}}, {{{0, 3}, {10, 3}}});
    // Falls by 3 a step: 10 at x = 1, 0 at x = 13/3.
    expectCurves({{0, 13}, {6, -5}}, {{{1, 10}, {13.0 / 3, 0}}});
    expectCurves({{-5, -5}, {-1, 3}}, {});
    // Past the corner: at x = 0 it stands at 10.5 already.
    expectCurves({{-3, 9}, {3, 12}}, {});
}

TEST(PlotLayout, PartsALineThatLeavesAndComesBack) {
    // Out at x = 10, y = 2 + 8/10 · 5; back at x = 10, a quarter of the way from 7 to 9.
    expectCurves({{2, 2}, {12, 7}, {4, 9}}, {{{2, 2}, {10, 6}}, {{10, 7.5}, {4, 9}}});
    // Beyond the axes for two strokes on end.
    expectCurves({{8, 8}, {8, 12}, {6, 14}, {6, 4}}, {{{8, 8}, {8, 10}}, {{6, 10}, {6, 4}}});
    expectCurves({{0, 0}, {10, 10}, {10, 0}}, {{{0, 0}, {10, 10}, {10, 0}}});
}

TEST(PlotLayout, DrawsLinesAsTheyAreAskedFor) {
    Plot plot = tenByTen();
    plot.lines.push_back({{{0, 0}, {10, 10}}, true, 0.4, {}});
    plot.lines.push_back({{{0, 1}, {10, 9}}, false, 0, {}});
    const Page page = setIn(plot, 80, 45);
    ASSERT_EQ(page.curves.size(), 2u);
    EXPECT_GT(page.curves[0].dash_mm, 0);
    EXPECT_EQ(page.curves[0].grey, 0.4);
    EXPECT_EQ(page.curves[1].dash_mm, 0);
    for (const Curve& curve : page.curves)
        EXPECT_EQ(curve.element, 3);
}

TEST(PlotLayout, CutsBandsOffAtTheAxes) {
    Plot plot = tenByTen();
    plot.bands = {{2, 4}, {8, 15}, {-9, -1}, {12, 14}};
    const Page page = setIn(plot, 80, 45);
    ASSERT_EQ(page.fills.size(), 1u);
    const Axes axes(plot, page);
    const std::vector<Box>& boxes = page.fills[0].boxes;
    ASSERT_EQ(boxes.size(), 2u);
    EXPECT_NEAR(axes.y(boxes[0].y_mm), 4, 1e-9);
    EXPECT_NEAR(axes.y(boxes[0].y_mm + boxes[0].height_mm), 2, 1e-9);
    EXPECT_NEAR(axes.y(boxes[1].y_mm), 10, 1e-9);
    EXPECT_NEAR(axes.y(boxes[1].y_mm + boxes[1].height_mm), 8, 1e-9);
    for (const Box& box : boxes) {
        EXPECT_NEAR(box.x_mm, axes.left_mm, 1e-9);
        EXPECT_NEAR(box.width_mm, axes.width_mm(), 1e-9);
    }
}

TEST(PlotLayout, PutsTicksAndMarksAtTheirPlaces) {
    Plot plot = tenByTen();
    plot.x.ticks = {{0, "a"}, {5, "b"}, {10, "c"}, {11, "beyond"}};
    plot.y.ticks = {{0, "d"}, {10, "e"}, {-1, "below"}};
    plot.marks = {{2.5, "found"}, {10.5, "beyond"}};
    const Page page = setIn(plot, 80, 45);
    const Axes axes(plot, page);
    std::vector<double> tickXs;
    std::vector<double> tickYs;
    std::vector<double> markXs;
    for (const Rule& rule : page.rules) {
        if (rule.fromY_mm == axes.bottom_mm && rule.toY_mm > axes.bottom_mm)
            tickXs.push_back(axes.x(rule.fromX_mm));
        if (rule.toX_mm == axes.left_mm && rule.fromX_mm < axes.left_mm)
            tickYs.push_back(axes.y(rule.fromY_mm));
        if (rule.grey > 0)
            markXs.push_back(axes.x(rule.fromX_mm));
    }
    EXPECT_EQ(tickXs, (std::vector<double>{0, 5, 10}));
    EXPECT_EQ(tickYs, (std::vector<double>{0, 10}));
    ASSERT_EQ(markXs.size(), 1u);
    EXPECT_NEAR(markXs[0], 2.5, 1e-9);
    for (const TextRun& text : page.texts)
        EXPECT_NE(text.text, "beyond");
    test::expectInside(page, 80, 45);
    test::expectApart(page);
}

// Labels that all want the same place.
Plot crowded(int lines, double at) {
    Plot plot;
    plot.x = {0, 20, "an axis with a title", {}};
    plot.y = {0, 8, "another title", {}};
    for (int i = 0; i <= 40; ++i)
        plot.x.ticks.push_back({i * 0.5, "2026-03-" + std::to_string(10 + i % 20)});
    for (int i = 0; i <= 32; ++i)
        plot.y.ticks.push_back({i * 0.25, std::to_string(i * 25)});
    for (int i = 0; i < 12; ++i)
        plot.marks.push_back({i % 2 == 0 ? i * 0.7 : 20 - i * 0.3, "returning"});
    for (int i = 0; i < lines; ++i)
        plot.lines.push_back(
            {{{0, 0}, {20, at + i * 0.01}}, false, 0, "line " + std::to_string(i)});
    plot.bands = {{1, 3}};
    return plot;
}

TEST(PlotLayout, KeepsEverythingInsideAndNoTwoWordsOnTopOfOneAnother) {
    for (const double width_mm : {50.0, 81.0, 168.0})
        for (const double height_mm : {42.0, 60.0})
            for (const double at : {-30.0, 0.0, 4.0, 8.0, 30.0}) {
                const Page page = setIn(crowded(5, at), width_mm, height_mm);
                test::expectInside(page, width_mm, height_mm);
                test::expectApart(page);
                for (int line = 0; line < 5; ++line)
                    EXPECT_EQ(std::count_if(page.texts.begin(), page.texts.end(),
                                            [&](const TextRun& run) {
                                                return run.text == "line " + std::to_string(line);
                                            }),
                              1);
            }
}

// A later line that ends higher is named above.
TEST(PlotLayout, NamesLinesInTheOrderInWhichTheyEnd) {
    Plot plot = tenByTen();
    plot.lines = {{{{0, 0}, {10, 5.0}}, false, 0, "lower"},
                  {{{0, 0}, {10, 5.2}}, false, 0, "upper"},
                  {{{0, 0}, {10, 1.0}}, false, 0, "lowest"}};
    const Page page = setIn(plot, 80, 45);
    const auto baselineOf = [&](const std::string& text) {
        return std::find_if(page.texts.begin(), page.texts.end(),
                            [&](const TextRun& run) { return run.text == text; })
            ->baselineY_mm;
    };
    EXPECT_LT(baselineOf("upper"), baselineOf("lower"));
    EXPECT_LT(baselineOf("lower"), baselineOf("lowest"));
    test::expectApart(page);
}

TEST(PlotLayout, RefusesWhatCannotBeSet) {
    const auto says = [](const Plot& plot, double width_mm, double height_mm) {
        return messageOf<RenderError>([&] { setIn(plot, width_mm, height_mm); });
    };
    Plot backwards = tenByTen();
    backwards.x.to = -1;
    EXPECT_NE(says(backwards, 80, 45).find("here: an axis of a plot has no length"),
              std::string::npos);
    Plot unknown = tenByTen();
    unknown.y.to = std::nan("");
    EXPECT_NE(says(unknown, 80, 45).find("has no length"), std::string::npos);
    EXPECT_NE(says(tenByTen(), 14, 45).find("leave no room"), std::string::npos);
    EXPECT_NE(says(tenByTen(), 80, 16).find("leave no room"), std::string::npos);
    for (const bool isX : {true, false}) {
        Plot wordy = tenByTen();
        (isX ? wordy.x : wordy.y).title = std::string(60, 'w');
        EXPECT_NE(says(wordy, 80, 45).find("leave no room"), std::string::npos);
        EXPECT_EQ(says(wordy, 120, 45), "");
    }
    Plot marked = tenByTen();
    marked.marks = {{5, std::string(60, 'w')}};
    EXPECT_NE(says(marked, 80, 45).find("leave no room"), std::string::npos);
    EXPECT_NE(says(crowded(30, 4), 80, 45).find("leave no room"), std::string::npos);
    Plot hebrew = tenByTen();
    hebrew.x.ticks = {{1, "\u05D0"}};
    EXPECT_NE(says(hebrew, 80, 45).find("here"), std::string::npos);
}

}  // namespace
}  // namespace rackbook
