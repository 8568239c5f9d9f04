#include "sheets/Flow.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "ErrorText.h"
#include "SheetMeasures.h"

namespace rackbook {
namespace {

const EvenMeasurer measurer;

FlowSetup setup() {
    FlowSetup made;
    made.letterhead = {"Studio at the Old Weir", "Upper Mill Lane 4"};
    made.runningTitle = "Evening";
    made.footer = "Record made on 4 March 2026";
    made.info.title = "Evening";
    return made;
}

std::string words(int count) {
    std::string text;
    for (int i = 0; i < count; ++i)
        text += "word" + std::to_string(i) + " ";
    return text;
}

const TextRun* find(const Page& page, const std::string& text) {
    const auto found = std::find_if(page.texts.begin(), page.texts.end(),
                                    [&](const TextRun& run) { return run.text == text; });
    return found == page.texts.end() ? nullptr : &*found;
}

SheetTable longTable(int rows) {
    SheetTable table;
    table.columns = {{"Number", Alignment::right, 0, 20}, {"Note", Alignment::left, 1, 0}};
    for (int i = 1; i <= rows; ++i)
        table.rows.push_back({{std::to_string(i), words(i % 5 * 12)}});
    return table;
}

TEST(Flow, SetsEverythingInsideTheMarginsWithoutOverlap) {
    Flow flow(measurer, setup());
    flow.title(words(30), words(20));
    for (int level = 1; level <= 3; ++level)
        flow.heading(level, words(25));
    flow.paragraph(words(700));
    flow.paragraph(words(40), TextStyle::small);
    flow.paragraph(words(40), TextStyle::strong);
    flow.labelValues({{"Paper", words(80)}, {words(20), "short"}, {"Empty", ""}});
    flow.table(longTable(90));
    flow.note(NoteKind::caution, "Caution", words(60));
    flow.note(NoteKind::note, "", std::string(4000, 'x'));
    flow.space(3);
    flow.signatureLines({words(30), "Printer", "Witness"});
    const PageModel model = flow.finish();
    EXPECT_GT(model.pages.size(), 5u);
    expectTidy(model, Margins{});
}

TEST(Flow, GivesBackEveryWordInOrder) {
    Flow flow(measurer, setup());
    flow.paragraph(words(900));
    std::string read;
    for (const Page& page : flow.finish().pages)
        for (const TextRun& text : page.texts)
            if (text.text.rfind("word", 0) == 0)
                read += text.text + " ";
    EXPECT_EQ(read, words(900));
}

TEST(Flow, NumbersPagesAndRepeatsTheTitleFromTheSecondOn) {
    Flow flow(measurer, setup());
    flow.table(longTable(90));
    const PageModel model = flow.finish();
    ASSERT_GE(model.pages.size(), 3u);
    const std::string last = std::to_string(model.pages.size());
    EXPECT_FALSE(find(model.pages[0], "Evening"));
    EXPECT_TRUE(find(model.pages[0], "Studio at the Old Weir"));
    EXPECT_TRUE(find(model.pages[1], "Evening"));
    EXPECT_FALSE(find(model.pages[1], "Studio at the Old Weir"));
    EXPECT_TRUE(find(model.pages[0], "Page 1 of " + last));
    EXPECT_TRUE(find(model.pages.back(), "Page " + last + " of " + last));
    EXPECT_TRUE(find(model.pages.back(), "Record made on 4 March 2026"));
}

TEST(Flow, RepeatsTheTableHeaderOnEveryPageOfTheTable) {
    Flow flow(measurer, setup());
    flow.table(longTable(90));
    for (const Page& page : flow.finish().pages)
        EXPECT_TRUE(find(page, "Number"));
}

// A heading at every height of the page: never last on it.
TEST(Flow, NeverLeavesAHeadingAtTheFootOfAPage) {
    for (int lines = 1; lines <= 60; ++lines) {
        Flow flow(measurer, setup());
        flow.paragraph(std::string(static_cast<std::size_t>(lines), '\n'));
        flow.heading(1, "Impressions");
        flow.heading(2, "Press");
        flow.table(longTable(3));
        for (const Page& page : flow.finish().pages) {
            EXPECT_EQ(find(page, "Impressions") != nullptr, find(page, "1") != nullptr) << lines;
            EXPECT_EQ(find(page, "Press") != nullptr, find(page, "2") != nullptr) << lines;
        }
    }
}

TEST(Flow, LeavesNoLineOfAParagraphAlone) {
    for (int above = 1; above <= 60; ++above) {
        Flow flow(measurer, setup());
        flow.paragraph(std::string(static_cast<std::size_t>(above), '\n'));
        flow.paragraph("line1\nline2\nline3\nline4\nline5");
        for (const Page& page : flow.finish().pages) {
            const auto lines =
                std::count_if(page.texts.begin(), page.texts.end(),
                              [](const TextRun& run) { return run.text.rfind("line", 0) == 0; });
            EXPECT_NE(lines, 1) << above;
            EXPECT_NE(lines, 4) << above;
        }
    }
}

TEST(Flow, KeepsSignatureLinesWithTheTextBefore) {
    for (int above = 30; above <= 60; ++above) {
        Flow flow(measurer, setup());
        flow.paragraph(std::string(static_cast<std::size_t>(above), '\n'));
        flow.paragraph("statement");
        flow.signatureLines({"Artist, date"});
        for (const Page& page : flow.finish().pages)
            EXPECT_EQ(find(page, "statement") != nullptr, find(page, "Artist, date") != nullptr);
    }
}

TEST(Flow, SetsBaselinesOnOneGrid) {
    Flow flow(measurer, setup());
    flow.paragraph("a\nb\nc");
    const PageModel model = flow.finish();
    const double step_mm =
        find(model.pages[0], "b")->baselineY_mm - find(model.pages[0], "a")->baselineY_mm;
    EXPECT_NEAR(step_mm, 13.75 * mmPerPoint, 1e-9);
    EXPECT_NEAR(find(model.pages[0], "c")->baselineY_mm - find(model.pages[0], "b")->baselineY_mm,
                step_mm, 1e-9);
}

TEST(Flow, CarriesPaperAndInfoIntoTheModel) {
    FlowSetup letter = setup();
    letter.paper = {215.9, 279.4};
    letter.info.language = "pt-BR";
    const PageModel model = Flow(measurer, letter).finish();
    EXPECT_DOUBLE_EQ(model.paper.width_mm, 215.9);
    EXPECT_EQ(model.info.language, "pt-BR");
    EXPECT_EQ(model.pages.size(), 1u);
}

TEST(Flow, NamesSheetAndSectionOfTextThatCannotBeSet) {
    Flow flow(measurer, setup());
    flow.heading(1, "Paper");
    EXPECT_EQ(messageOf<RenderError>([&] {
                  flow.labelValues({{"Name", "\U0001F5FB"}});
              }),
              "sheet \"Evening\", section \"Paper\": no font of this sheet has U+1F5FB in "
              "\"\U0001F5FB\". Write the text without it, or add a font family that has it to the "
              "template.");
}

TEST(Flow, RefusesMarginsThatLeaveNoWidth) {
    FlowSetup narrow = setup();
    narrow.margins.left_mm = 140;
    EXPECT_EQ(messageOf<RenderError>([&] { Flow flow(measurer, narrow); }),
              "sheet \"Evening\": less than 60 mm of the page's width is left for text. Use "
              "larger paper or smaller margins in the template.");
}

TEST(Flow, RefusesRunningMatterThatLeavesNoHeight) {
    FlowSetup tall = setup();
    tall.runningTitle = words(900);
    EXPECT_EQ(messageOf<RenderError>([&] { Flow flow(measurer, tall); }),
              "sheet \"Evening\": less than a third of the page is left for text. Use smaller "
              "margins or a shorter running title or footer.");
}

// The running header has a hairline of its own.
TEST(Flow, LeavesTheHairlineOfASectionOutAtTheTopOfAPage) {
    const auto rulesWith = [](int rows) {
        Flow flow(measurer, setup());
        flow.table(longTable(rows));
        flow.heading(1, "Section");
        flow.paragraph("words");
        return flow.finish();
    };
    bool seenAtTop = false;
    for (int rows = 1; rows < 40; ++rows) {
        const PageModel model = rulesWith(rows);
        for (const Page& page : model.pages) {
            const TextRun* heading = find(page, "Section");
            if (!heading)
                continue;
            const auto above =
                std::count_if(page.rules.begin(), page.rules.end(), [&](const Rule& rule) {
                    return rule.grey == 0 && rule.fromY_mm < heading->baselineY_mm &&
                           rule.fromY_mm > heading->baselineY_mm - 8;
                });
            const bool isFirstText = page.texts.front().text == "Section";
            seenAtTop = seenAtTop || isFirstText;
            EXPECT_EQ(above, isFirstText ? 0 : 1) << rows;
        }
    }
    EXPECT_TRUE(seenAtTop);
}

TEST(Flow, KeepsSignaturesUnderAHeadingWithThePartBeforeIt) {
    for (int lines = 30; lines < 60; ++lines) {
        Flow flow(measurer, setup());
        for (int i = 0; i < lines; ++i)
            flow.paragraph("line");
        flow.heading(1, "Signed");
        flow.signatureLines({"Artist", "Printer"});
        const PageModel model = flow.finish();
        EXPECT_EQ(model.pages.back().texts.front().text, "line") << lines;
    }
}

// Pages on which the lines with these words stand first, from 1; 0 where they don't.
std::vector<std::size_t> pagesOf(const PageModel& model, const std::vector<std::string>& lines) {
    std::vector<std::size_t> pages;
    for (const std::string& line : lines) {
        pages.push_back(0);
        for (std::size_t page = 0; page < model.pages.size(); ++page)
            if (pages.back() == 0 && find(model.pages[page], line))
                pages.back() = page + 1;
    }
    return pages;
}

void expectTogether(const PageModel& model, const std::vector<std::string>& lines) {
    const std::vector<std::size_t> pages = pagesOf(model, lines);
    EXPECT_GT(pages.front(), 0u);
    for (const std::size_t page : pages)
        EXPECT_EQ(page, pages.front());
}

SheetTable shortTable(int rows) {
    SheetTable table;
    table.columns = {{"Word", Alignment::left, 1, 0}};
    for (int i = 1; i <= rows; ++i)
        table.rows.push_back({{"row " + std::to_string(i)}});
    return table;
}

// However far down the page the part before them ends.
TEST(Flow, KeepsAHeadingItsNoteAndTheFirstRowsTogether) {
    for (int lines = 20; lines < 50; ++lines) {
        Flow flow(measurer, setup());
        for (int i = 0; i < lines; ++i)
            flow.paragraph("line " + std::to_string(i));
        flow.heading(1, "What it is made of");
        flow.paragraph("By mass", TextStyle::small);
        flow.table(shortTable(9));
        expectTogether(flow.finish(), {"What it is made of", "By mass", "Word", "row 1", "row 2"});
    }
}

TEST(Flow, KeepsANoteWithTheEndOfWhatItIsAbout) {
    for (int lines = 0; lines < 40; ++lines) {
        Flow flow(measurer, setup());
        for (int i = 0; i < lines; ++i)
            flow.paragraph("line " + std::to_string(i));
        flow.table(shortTable(9));
        flow.paragraph("first note", TextStyle::small);
        flow.paragraph("second note", TextStyle::small);
        flow.panels({{LabColour{50, 0, 0}, "caption", "a field", 1}}, 45);
        flow.paragraph("the note of the field", TextStyle::small);
        const PageModel model = flow.finish();
        expectTogether(model, {"row 8", "row 9", "first note", "second note"});
        expectTogether(model, {"caption", "the note of the field"});
    }
}

TEST(Flow, KeepsAShortListOfLabelsOnOnePage) {
    for (int lines = 20; lines < 50; ++lines) {
        Flow flow(measurer, setup());
        for (int i = 0; i < lines; ++i)
            flow.paragraph("line " + std::to_string(i));
        flow.heading(1, "Paper and sizes");
        flow.labelValues({{"Paper", "cotton"}, {"Image", "small"}, {"Sheet", "large"}});
        expectTogether(flow.finish(), {"Paper and sizes", "cotton", "small", "large"});
    }
}

}  // namespace
}  // namespace rackbook
