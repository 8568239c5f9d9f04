// What a laid-out page must hold to, whatever stands on it.
#pragma once

#include <gtest/gtest.h>

#include "EvenMeasurer.h"
#include "sheets/FlowSetup.h"

namespace rackbook {

// Nothing outside the margins, and no two texts on top of one another.
inline void expectTidy(const PageModel& model, const Margins& margins) {
    const EvenMeasurer measurer;
    struct Extent {
        double left, top, right, bottom;
    };
    constexpr double slack_mm = 1e-3;
    for (const Page& page : model.pages) {
        std::vector<Extent> boxes;
        for (const TextRun& text : page.texts) {
            const Extent box = {
                text.x_mm, text.baselineY_mm - measurer.ascent_mm(text.role, text.size_pt) * 0.95,
                text.x_mm + measurer.width_mm(text.role, text.size_pt, text.text),
                text.baselineY_mm + measurer.descent_mm(text.role, text.size_pt)};
            EXPECT_GE(box.left, margins.left_mm - slack_mm) << text.text;
            EXPECT_LE(box.right, model.paper.width_mm - margins.right_mm + slack_mm) << text.text;
            EXPECT_GE(box.top, margins.top_mm - slack_mm) << text.text;
            EXPECT_LE(box.bottom, model.paper.height_mm - margins.bottom_mm + slack_mm)
                << text.text;
            for (const Extent& other : boxes)
                EXPECT_FALSE(box.left < other.right - slack_mm &&
                             other.left < box.right - slack_mm &&
                             box.top < other.bottom - slack_mm && other.top < box.bottom - slack_mm)
                    << text.text;
            boxes.push_back(box);
        }
    }
}

inline std::string textOf(const Page& page) {
    std::string all;
    for (const TextRun& text : page.texts)
        all += text.text + "\n";
    return all;
}

}  // namespace rackbook
