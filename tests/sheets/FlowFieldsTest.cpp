#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "ErrorText.h"
#include "PanelMeasures.h"
#include "SheetMeasures.h"
#include "sheets/Flow.h"

namespace rackbook {
namespace {

const EvenMeasurer measurer;

FlowSetup setup() {
    FlowSetup made;
    made.runningTitle = made.footer = made.info.title = "Evening";
    return made;
}

FieldTable table(int rows) {
    using Shape = FieldColumn::Shape;
    FieldTable made;
    made.columns = {{"Number", Shape::text, 0, 15, 0},
                    {"Printed", Shape::tick, 0, 15, 0},
                    {"A remark, if there is one", Shape::line, 1, 0, 0},
                    {"Number", Shape::text, 0, 15, 5},
                    {"Printed", Shape::tick, 0, 15, 0}};
    for (int i = 1; i <= rows; ++i) {
        const std::string number = std::to_string(i);
        made.rows.push_back(
            {number, "printed." + number, "remark." + number, "+" + number, "printed+" + number});
    }
    return made;
}

const FieldPlace* placeOf(const Flow& flow, const std::string& name) {
    const auto found = std::find_if(flow.fieldPlaces().begin(), flow.fieldPlaces().end(),
                                    [&](const FieldPlace& place) { return place.name == name; });
    return found == flow.fieldPlaces().end() ? nullptr : &*found;
}

// Whether a stroke of the page runs from corner to corner.
bool isDrawn(const Page& page, double fromX, double fromY, double toX, double toY) {
    return std::any_of(page.rules.begin(), page.rules.end(), [&](const Rule& rule) {
        return std::abs(rule.fromX_mm - fromX) < 1e-9 && std::abs(rule.fromY_mm - fromY) < 1e-9 &&
               std::abs(rule.toX_mm - toX) < 1e-9 && std::abs(rule.toY_mm - toY) < 1e-9;
    });
}

bool isFramed(const Page& page, const Box& box) {
    const double right = box.x_mm + box.width_mm;
    const double bottom = box.y_mm + box.height_mm;
    return isDrawn(page, box.x_mm, box.y_mm, right, box.y_mm) &&
           isDrawn(page, box.x_mm, bottom, right, bottom) &&
           isDrawn(page, box.x_mm, box.y_mm, box.x_mm, bottom) &&
           isDrawn(page, right, box.y_mm, right, bottom);
}

// Nothing that is to be filled in covers another such thing or a word, or leaves the margins.
void expectFree(const PageModel& model, const std::vector<FieldPlace>& places) {
    const Margins margins;
    for (std::size_t i = 0; i < places.size(); ++i) {
        const Box& box = places[i].box;
        EXPECT_GE(box.x_mm, margins.left_mm - 1e-6) << places[i].name;
        EXPECT_LE(box.x_mm + box.width_mm, model.paper.width_mm - margins.right_mm + 1e-6);
        EXPECT_GE(box.y_mm, margins.top_mm - 1e-6) << places[i].name;
        EXPECT_LE(box.y_mm + box.height_mm, model.paper.height_mm - margins.bottom_mm + 1e-6);
        for (std::size_t k = 0; k < i; ++k)
            EXPECT_FALSE(places[k].page == places[i].page && test::overlap(box, places[k].box))
                << places[i].name << " and " << places[k].name;
        for (const TextRun& text : model.pages.at(places[i].page).texts)
            EXPECT_FALSE(test::overlap(box, test::extentOf(text)))
                << places[i].name << " and " << text.text;
    }
}

TEST(FlowFields, FramesEachBoxBelowItsLabel) {
    Flow flow(measurer, setup());
    flow.paragraph("above");
    flow.fillIn({{"date", "Date", 2}, {"start", "A long label that needs lines", 1}}, 9);
    const PageModel model = flow.finish();
    const FieldPlace* date = placeOf(flow, "date");
    const FieldPlace* start = placeOf(flow, "start");
    ASSERT_TRUE(date && start);
    EXPECT_TRUE(isFramed(model.pages[0], date->box));
    EXPECT_TRUE(isFramed(model.pages[0], start->box));
    EXPECT_EQ(date->box.height_mm, 9);
    EXPECT_EQ(date->box.y_mm, start->box.y_mm);
    EXPECT_NEAR(date->box.width_mm, 2 * start->box.width_mm, 1e-9);
    EXPECT_NEAR(start->box.x_mm + start->box.width_mm, 210 - Margins{}.right_mm, 1e-9);
    for (const TextRun& text : model.pages[0].texts)
        if (text.text == "Date") {
            EXPECT_LT(text.baselineY_mm, date->box.y_mm);
        }
    expectFree(model, flow.fieldPlaces());
    expectTidy(model, Margins{});
}

TEST(FlowFields, KeepsTheLinesOfOneFieldTogether) {
    for (int above = 30; above < 55; ++above) {
        Flow flow(measurer, setup());
        flow.paragraph(std::string(static_cast<std::size_t>(above), '\n'));
        flow.fillInLines("notes", "Notes", 5, 9);
        const PageModel model = flow.finish();
        const FieldPlace* notes = placeOf(flow, "notes");
        ASSERT_TRUE(notes);
        EXPECT_EQ(notes->box.height_mm, 45);
        const Page& page = model.pages.at(notes->page);
        for (int line = 1; line <= 5; ++line) {
            const double y = notes->box.y_mm + 9 * line;
            EXPECT_TRUE(isDrawn(page, notes->box.x_mm, y, notes->box.x_mm + notes->box.width_mm, y))
                << above << ", line " << line;
        }
        EXPECT_TRUE(std::any_of(page.texts.begin(), page.texts.end(),
                                [](const TextRun& run) { return run.text == "Notes"; }));
        expectFree(model, flow.fieldPlaces());
    }
}

TEST(FlowFields, TellsWhereEachFieldOfALongTableStands) {
    constexpr int rows = 80;
    Flow flow(measurer, setup());
    flow.heading(1, "Impressions");
    flow.fillInRows(table(rows));
    const PageModel model = flow.finish();
    ASSERT_GE(model.pages.size(), 3u);
    ASSERT_EQ(flow.fieldPlaces().size(), static_cast<std::size_t>(rows) * 3);
    EXPECT_EQ(flow.fieldPlaces()[0].name, "printed.1");
    EXPECT_EQ(flow.fieldPlaces()[3].name, "printed.2");
    for (int i = 1; i <= rows; ++i) {
        const std::string number = std::to_string(i);
        const FieldPlace* tick = placeOf(flow, "printed." + number);
        ASSERT_TRUE(tick);
        const Page& page = model.pages.at(tick->page);
        EXPECT_TRUE(isFramed(page, tick->box)) << number;
        EXPECT_EQ(tick->box.width_mm, tick->box.height_mm);
        // Its number stands beside it.
        const auto text = std::find_if(page.texts.begin(), page.texts.end(),
                                       [&](const TextRun& run) { return run.text == number; });
        ASSERT_NE(text, page.texts.end());
        EXPECT_GT(text->baselineY_mm, tick->box.y_mm);
        EXPECT_LT(text->baselineY_mm, tick->box.y_mm + tick->box.height_mm);
    }
    expectFree(model, flow.fieldPlaces());
    expectTidy(model, Margins{});
    for (const Page& page : model.pages)
        EXPECT_EQ(std::count_if(page.texts.begin(), page.texts.end(),
                                [](const TextRun& run) { return run.text == "Printed"; }),
                  2);
}

TEST(FlowFields, LeavesNoRowAloneOnAPage) {
    for (int rows = 20; rows < 70; ++rows) {
        Flow flow(measurer, setup());
        flow.fillInRows(table(rows));
        const PageModel model = flow.finish();
        std::vector<int> counts(model.pages.size(), 0);
        for (const FieldPlace& place : flow.fieldPlaces())
            counts[place.page] += place.name.rfind("remark.", 0) == 0 ? 1 : 0;
        for (const int count : counts)
            EXPECT_GE(count, 2) << rows;
    }
}

TEST(FlowFields, LeavesCellsWithoutANameFree) {
    FieldTable half = table(2);
    half.rows[1][3].reset();
    half.rows[1][4].reset();
    Flow flow(measurer, setup());
    flow.fillInRows(half);
    const PageModel model = flow.finish();
    EXPECT_TRUE(placeOf(flow, "printed+1"));
    EXPECT_FALSE(placeOf(flow, "printed+2"));
    int cells = 0;
    for (const StructureElement& element : model.structure)
        cells += element.kind == ElementKind::dataCell ? 1 : 0;
    EXPECT_EQ(cells, 10);
}

TEST(FlowFields, GrowsRowsWithTheirText) {
    FieldTable tall = table(2);
    tall.rows[0][0] = "one two three four five six seven";
    Flow flow(measurer, setup());
    flow.fillInRows(tall);
    const PageModel model = flow.finish();
    expectFree(model, flow.fieldPlaces());
    expectTidy(model, Margins{});
    EXPECT_GT(placeOf(flow, "printed.2")->box.y_mm - placeOf(flow, "printed.1")->box.y_mm, 8.5);
}

TEST(FlowFields, RefusesWhatHasNoRoom) {
    Flow flow(measurer, setup());
    EXPECT_NE(messageOf<RenderError>([&] {
                  flow.fillIn(std::vector<FieldBox>(80, {"a", "", 1}), 9);
              }).find("wider than the sheet"),
              std::string::npos);
    FieldTable wide = table(1);
    wide.columns[0].fixed_mm = 140;
    EXPECT_NE(messageOf<RenderError>([&] { flow.fillInRows(wide); }).find("wider than the sheet"),
              std::string::npos);
    FieldTable odd = table(1);
    odd.rows[0].pop_back();
    EXPECT_NE(messageOf<RenderError>([&] { flow.fillInRows(odd); }).find("too few or too many"),
              std::string::npos);
}

}  // namespace
}  // namespace rackbook
