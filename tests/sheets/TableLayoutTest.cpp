#include "sheets/TableLayout.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "ErrorText.h"
#include "EvenMeasurer.h"
#include "sheets/ColumnWidths.h"

namespace rackbook {
namespace {

const EvenMeasurer measurer;
const TypeScale scale = TypeScale::of(10);
constexpr double body_mm = 200;

TableStrips laid(const SheetTable& table, double width_mm = 160) {
    StructureBuilder structure;
    return layOutTable(table, measurer, scale, structure, width_mm, body_mm, 3, "sheet \"A\"");
}

SheetTable twoColumns(Alignment second) {
    SheetTable table;
    table.columns = {{"Ink", Alignment::left, 1, 0}, {"Mass", second, 1, 0}};
    return table;
}

std::vector<TextRun> textsOf(const StripGroup& group) {
    std::vector<TextRun> texts;
    for (const Strip& strip : group)
        texts.insert(texts.end(), strip.content.texts.begin(), strip.content.texts.end());
    return texts;
}

double endOf(const TextRun& text) {
    return text.x_mm + measurer.width_mm(text.role, text.size_pt, text.text);
}

// Where the point of "12.5" or the end of "12" stands.
double placeOf(const TextRun& text, std::size_t before) {
    return text.x_mm + measurer.width_mm(text.role, text.size_pt, text.text.substr(0, before));
}

TEST(TableLayout, SharesTheWidthThatFixedColumnsLeave) {
    SheetTable table;
    table.columns = {
        {"a", Alignment::left, 1, 0}, {"b", Alignment::left, 0, 30}, {"c", Alignment::left, 3, 0}};
    const auto texts = textsOf(laid(table).header);
    ASSERT_EQ(texts.size(), 3u);
    const double shared_mm = 160 - 30 - 2 * scale.columnGap_mm;
    EXPECT_DOUBLE_EQ(texts[0].x_mm, 0);
    EXPECT_NEAR(texts[1].x_mm, shared_mm / 4 + scale.columnGap_mm, 1e-9);
    EXPECT_NEAR(texts[2].x_mm, shared_mm / 4 + 30 + 2 * scale.columnGap_mm, 1e-9);
}

TEST(TableLayout, AlignsFiguresOnTheDecimalPoint) {
    SheetTable table = twoColumns(Alignment::decimal);
    table.rows = {{{"a", "12.5"}}, {{"b", "3"}}, {{"c", "0.125"}}, {{"d", "–"}}, {{"e", "100 g"}}};
    const auto texts = textsOf(laid(table).rows);
    ASSERT_EQ(texts.size(), 10u);
    const double place_mm = placeOf(texts[1], 2);
    EXPECT_NEAR(placeOf(texts[3], 1), place_mm, 1e-9);
    EXPECT_NEAR(placeOf(texts[5], 1), place_mm, 1e-9);
    EXPECT_NEAR(endOf(texts[7]), place_mm, 1e-9);
    EXPECT_NEAR(placeOf(texts[9], 3), place_mm, 1e-9);
    EXPECT_NEAR(endOf(texts[5]), 160, 1e-9);
}

TEST(TableLayout, SetsFiguresThatDoNotFitFlushRightAndWrapsThem) {
    SheetTable table = twoColumns(Alignment::decimal);
    table.columns[1].share = 0;
    table.columns[1].fixed_mm = 8;
    // A word that leaves nothing of its own column to the other.
    table.rows = {{{std::string(200, 'm'), "12345.5"}}, {{"b", "3.12345"}}};
    for (const TextRun& text : textsOf(laid(table).rows)) {
        EXPECT_LE(endOf(text), 160 + 1e-6) << text.text;
        if (text.role == FontRole::figures) {
            EXPECT_GE(text.x_mm, 152 - 1e-6) << text.text;
            EXPECT_NEAR(endOf(text), 160, 1e-6) << text.text;
        }
    }
}

TEST(TableLayout, AlignsWordsAtTheRight) {
    SheetTable table = twoColumns(Alignment::right);
    table.rows = {{{"a", "12"}}, {{"b", "3"}}};
    const TableStrips strips = laid(table);
    EXPECT_NEAR(endOf(textsOf(strips.header)[1]), 160, 1e-9);
    EXPECT_NEAR(endOf(textsOf(strips.rows)[1]), 160, 1e-9);
    EXPECT_NEAR(endOf(textsOf(strips.rows)[3]), 160, 1e-9);
}

TEST(TableLayout, SetsTotalsStrongUnderARule) {
    SheetTable table = twoColumns(Alignment::right);
    table.rows = {{{"Sum", "12"}, true, true}};
    const StripGroup rows = laid(table).rows;
    EXPECT_EQ(textsOf(rows)[0].role, FontRole::bodyStrong);
    EXPECT_EQ(textsOf(rows)[1].role, FontRole::figuresStrong);
    EXPECT_DOUBLE_EQ(rows.front().content.rules.front().fromY_mm, 0);
    EXPECT_DOUBLE_EQ(rows.front().content.rules.front().width_mm, scale.rule_mm);
}

TEST(TableLayout, DrawsASwatchBesideItsWords) {
    SheetTable table = twoColumns(Alignment::left);
    table.rows = {{{"a", TableCell({50, 10, -20}, "L* 50")}}};
    const StripGroup rows = laid(table).rows;
    ASSERT_EQ(rows.front().content.swatches.size(), 1u);
    const Swatch& swatch = rows.front().content.swatches.front();
    EXPECT_DOUBLE_EQ(swatch.colour.b, -20);
    EXPECT_GT(textsOf(rows)[1].x_mm, swatch.x_mm + swatch.width_mm);
    EXPECT_LE(swatch.y_mm + swatch.height_mm, heightOf(rows));
    EXPECT_TRUE(rows.front().keepsWithNext) << "the swatch reaches into the second line";
}

TEST(TableLayout, KeepsTheFirstRowsWithTheHeaderAndTheLastTwoTogether) {
    SheetTable table = twoColumns(Alignment::left);
    table.rows.assign(5, {{"a", "b"}});
    const TableStrips strips = laid(table);
    EXPECT_TRUE(strips.header.back().keepsWithNext);
    std::string kept;
    for (const Strip& strip : strips.rows)
        kept += strip.keepsWithNext ? '+' : '-';
    EXPECT_EQ(kept, "+--+-");
    EXPECT_EQ(strips.rows.front().repeatedHeader, 3);
}

TEST(TableLayout, KeepsTheLastFourRowsOfALongTableTogether) {
    SheetTable table = twoColumns(Alignment::left);
    table.rows.assign(12, {{"a", "b"}});
    std::string kept;
    for (const Strip& strip : laid(table).rows)
        kept += strip.keepsWithNext ? '+' : '-';
    EXPECT_EQ(kept, "+-------+++-");
}

TEST(TableLayout, LetsATallFirstRowStandAloneBelowTheHeader) {
    SheetTable table = twoColumns(Alignment::left);
    table.rows = {{{"a", "1\n2\n3"}}, {{"b", "c"}}, {{"d", "e"}}};
    std::string kept;
    for (const Strip& strip : laid(table).rows)
        kept += strip.keepsWithNext ? '+' : '-';
    EXPECT_EQ(kept, "++-+-");
}

TEST(TableLayout, MakesRowsAsTallAsTheyAsk) {
    SheetTable table = twoColumns(Alignment::left);
    table.rows = {{{"a", "b"}}, {{"c", "1\n2\n3\n4\n5\n6"}}};
    table.rows[0].least_mm = 14;
    table.rows[1].least_mm = 14;
    const StripGroup rows = laid(table).rows;
    EXPECT_NEAR(rows.front().height_mm, 14, 1e-9);
    EXPECT_NEAR(rows.front().content.rules.back().fromY_mm, 14, 1e-9) << "the hairline at its foot";
    EXPECT_GT(heightOf(rows), 14 + 14);
}

// A header wider than its column takes room from the others, as far as these can spare it.
TEST(TableLayout, BreaksNoWordOfAHeader) {
    SheetTable table;
    table.columns = {{"Remark", Alignment::left, 0, 5},
                     {"Observation of it", Alignment::left, 0, 12},
                     {"Note", Alignment::left, 1, 0}};
    table.rows = {{{"a", "b", "c"}}};
    const TableStrips strips = laid(table, 80);
    std::vector<std::string> words;
    for (const TextRun& text : textsOf(strips.header))
        words.push_back(text.text);
    std::sort(words.begin(), words.end());
    EXPECT_EQ(words, (std::vector<std::string>{"Note", "Observation", "Remark", "of it"}));
    for (const TextRun& text : textsOf(strips.header))
        EXPECT_LE(endOf(text), 80 + 1e-6) << text.text;
}

TEST(TableLayout, TakesRoomForHeadersFromWhatIsNotNeeded) {
    std::vector<ColumnWidth> columns = {{10, 14, 0}, {30, 5, 28}, {20, 5, 10}};
    makeRoomForWords(columns);
    EXPECT_NEAR(columns[0].width_mm, 14, 1e-9);
    EXPECT_NEAR(columns[1].width_mm, 30 - 4 * 2 / 12.0, 1e-9);
    EXPECT_NEAR(columns[2].width_mm, 20 - 4 * 10 / 12.0, 1e-9);
    columns = {{10, 14, 0}, {30, 5, 29}, {20, 5, 20}};
    makeRoomForWords(columns);
    EXPECT_NEAR(columns[0].width_mm, 14, 1e-9) << "words of cells give way to those of headers";
    EXPECT_NEAR(columns[0].width_mm + columns[1].width_mm + columns[2].width_mm, 60, 1e-9);
    columns = {{10, 50, 0}, {10, 20, 0}};
    makeRoomForWords(columns);
    EXPECT_NEAR(columns[0].width_mm + columns[1].width_mm, 20, 1e-9);
}

TEST(TableLayout, TakesRoomForWordsOfCellsFromWhatIsNotNeeded) {
    std::vector<ColumnWidth> columns = {{10, 5, 14}, {30, 5, 28}, {20, 12, 10}};
    makeRoomForWords(columns);
    EXPECT_NEAR(columns[0].width_mm, 14, 1e-9);
    EXPECT_NEAR(columns[1].width_mm, 30 - 4 * 2 / 10.0, 1e-9);
    EXPECT_NEAR(columns[2].width_mm, 20 - 4 * 8 / 10.0, 1e-9);
}

TEST(TableLayout, BreaksNoDateWhereThereIsRoom) {
    SheetTable table;
    table.columns = {{"Printed on", Alignment::left, 0, 12}, {"Note", Alignment::left, 1, 0}};
    table.rows = {{{"2026-01-12", "a"}}};
    EXPECT_EQ(textsOf(laid(table, 80).rows).front().text, "2026-01-12");
}

TEST(TableLayout, KeepsARowHeadingWithItsRow) {
    SheetTable table = twoColumns(Alignment::left);
    table.rows.assign(6, {{"a", "b"}});
    table.rows[2] = {{"Layer 3"}, false, false, true};
    const TableStrips strips = laid(table);
    EXPECT_TRUE(strips.rows[2].keepsWithNext);
    EXPECT_EQ(strips.rows[2].content.texts.front().role, FontRole::bodyStrong);
}

TEST(TableLayout, KeepsShortRowsWholeAndLetsTallOnesBreakWithTwoLinesEitherSide) {
    SheetTable table = twoColumns(Alignment::left);
    std::string lines = "1";
    for (int i = 2; i <= 40; ++i)
        lines += "\n" + std::to_string(i);
    table.rows = {{{"a", "1\n2"}}, {{"b", "c"}}, {{"d", lines}}};
    std::string kept;
    for (const Strip& strip : laid(table).rows)
        kept += strip.keepsWithNext ? '+' : '-';
    EXPECT_EQ(kept,
              "+++"
              "+" +
                  std::string(37, '-') + "+-");
}

TEST(TableLayout, RefusesRowsOfTheWrongLength) {
    SheetTable table = twoColumns(Alignment::left);
    table.rows = {{{"a", "b"}}, {{"a"}}};
    EXPECT_EQ(messageOf<RenderError>([&] { laid(table); }),
              "sheet \"A\": row 2 of a table has 1 cells where it needs 2. Report this fault of "
              "the program.");
}

TEST(TableLayout, RefusesColumnsWiderThanTheSheet) {
    SheetTable table = twoColumns(Alignment::left);
    table.columns[0].fixed_mm = 170;
    EXPECT_EQ(messageOf<RenderError>([&] { laid(table); }),
              "sheet \"A\": the columns of a table are wider than the sheet. Use larger paper or "
              "smaller margins in the template.");
}

TEST(TableLayout, RefusesAHeaderTallerThanHalfAPage) {
    SheetTable table = twoColumns(Alignment::left);
    table.columns[0].header = std::string(8000, 'x');
    EXPECT_EQ(messageOf<RenderError>([&] { laid(table); }),
              "sheet \"A\": the header of a table takes more than half of a page. Shorten the "
              "headers of its columns in the template.");
}

TEST(TableLayout, KeepsARowWithTheNextWhereItAsks) {
    SheetTable table = twoColumns(Alignment::left);
    for (int i = 0; i < 6; ++i)
        table.rows.push_back({{"a", "b"}});
    table.rows[2].keepsWithNext = true;
    const StripGroup rows = laid(table).rows;
    ASSERT_EQ(rows.size(), 6u);
    EXPECT_FALSE(rows[1].keepsWithNext);
    EXPECT_TRUE(rows[2].keepsWithNext);
    EXPECT_FALSE(rows[3].keepsWithNext);
}

}  // namespace
}  // namespace rackbook
