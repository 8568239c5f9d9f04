// What a piece of a page must hold to that was laid out into a rectangle of its own.
#pragma once

#include <gtest/gtest.h>

#include "EvenMeasurer.h"
#include "sheets/PageModel.h"

namespace rackbook::test {

constexpr double slack_mm = 1e-6;

inline Box extentOf(const TextRun& text) {
    const EvenMeasurer measurer;
    const double above_mm = measurer.ascent_mm(text.role, text.size_pt);
    return {text.x_mm, text.baselineY_mm - above_mm,
            measurer.width_mm(text.role, text.size_pt, text.text),
            above_mm + measurer.descent_mm(text.role, text.size_pt)};
}

inline void expectInside(const Box& box, double width_mm, double height_mm,
                         const std::string& what) {
    EXPECT_GE(box.x_mm, -slack_mm) << what;
    EXPECT_GE(box.y_mm, -slack_mm) << what;
    EXPECT_LE(box.x_mm + box.width_mm, width_mm + slack_mm) << what;
    EXPECT_LE(box.y_mm + box.height_mm, height_mm + slack_mm) << what;
}

// Everything between 0 and these.
inline void expectInside(const Page& page, double width_mm, double height_mm) {
    const auto expectPoint = [&](double x_mm, double y_mm, const char* what) {
        expectInside({x_mm, y_mm, 0, 0}, width_mm, height_mm, what);
    };
    for (const TextRun& text : page.texts)
        expectInside(extentOf(text), width_mm, height_mm, text.text);
    for (const Rule& rule : page.rules) {
        expectPoint(rule.fromX_mm, rule.fromY_mm, "a rule");
        expectPoint(rule.toX_mm, rule.toY_mm, "a rule");
    }
    for (const Curve& curve : page.curves)
        for (const PagePoint& point : curve.points)
            expectPoint(point.x_mm, point.y_mm, "a curve");
    for (const Fill& fill : page.fills)
        for (const Box& box : fill.boxes)
            expectInside(box, width_mm, height_mm, "a fill");
    for (const Swatch& swatch : page.swatches)
        expectInside({swatch.x_mm, swatch.y_mm, swatch.width_mm, swatch.height_mm}, width_mm,
                     height_mm, "a swatch");
    for (const Picture& picture : page.pictures)
        expectInside(picture.box, width_mm, height_mm, "a picture");
}

inline bool overlap(const Box& a, const Box& b) {
    return a.x_mm < b.x_mm + b.width_mm - slack_mm && b.x_mm < a.x_mm + a.width_mm - slack_mm &&
           a.y_mm < b.y_mm + b.height_mm - slack_mm && b.y_mm < a.y_mm + a.height_mm - slack_mm;
}

// No two texts on top of one another.
inline void expectApart(const Page& page) {
    for (std::size_t i = 0; i < page.texts.size(); ++i)
        for (std::size_t k = 0; k < i; ++k)
            EXPECT_FALSE(overlap(extentOf(page.texts[i]), extentOf(page.texts[k])))
                << page.texts[i].text << " and " << page.texts[k].text;
}

}  // namespace rackbook::test
