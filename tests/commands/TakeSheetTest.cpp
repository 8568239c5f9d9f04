// Bench sheets filled in by programs of others and taken into a book.
#include <gtest/gtest.h>

#include "BenchForms.h"

namespace rackbook {
namespace {

using test::rackbook;
using test::says;

// mupdf fills in the form as a person would, and sets what it looks like.
TEST(TakeSheet, RecordsWhatAnotherProgramFilledIn) {
    const test::BenchForms forms;
    rackbook("weigh veil 60 --lot base");
    const std::string filled =
        filledByMupdf(forms.sheet(), {{"pull.day", "28/3/2026"},
                                      {"pull.start", "18:10"},
                                      {"pull.end", "18.50"},
                                      {"pull.temperature_C", "19,5"},
                                      {"pull.humidity_pct", "55"},
                                      {"pull.press", "hand, baren"},
                                      {"pull.packing", "two sheets"},
                                      {"pull.printer", "Maren"},
                                      {"portion.mix_g", "12,5"},
                                      {"portion.base_g", "2.25"},
                                      {"portion.drier_g", "0,3"},
                                      {"portion.drier_pct", "2"},
                                      {"portion.baseLot", "base"},
                                      {"portion.drierLot", "dry"},
                                      {"pull.inkBefore_g", "15"},
                                      {"pull.inkAfter_g", "9,75 g"},
                                      {"sheet.all.printed", "on"},
                                      {"sheet.TIDE-3.spoiled", "on"},
                                      {"sheet.TIDE-5.remark", "speck"},
                                      {"move.to", "line"},
                                      {"pull.note", "Wet paper, žluť.\\nSecond line."}});
    const std::string tried = forms.takenFile(filled, "--dry-run");
    EXPECT_TRUE(says(tried, "Tried only: nothing was recorded.")) << tried;
    const std::string taken = forms.takenFile(filled);
    for (const char* words :
         {"new mix portion-****** name TIDE, layer 1, portion of 2026-03-28, purpose portion, "
          "edition TIDE, made on 2026-03-28",
          "new weighing portion-******/1 mix portion-******, act add, at 2026-03-28T18:10, "
          "sequence 0, from mix veil, mass 12.5 g",
          "sequence 1, lot base, mass 2.25 g", "sequence 2, lot dry, mass 0.3 g",
          "layer TIDE/L1, start 2026-03-28T18:10, end 2026-03-28T18:50, portion portion-******, "
          "impressions TIDE:1-8, spoiled TIDE:3, printer maren, press hand, baren, packing two "
          "sheets, temperature 19.5 °C, humidity 55 %, ink before 15 g, ink after 9.75 g",
          "changed impression TIDE/03",
          "new move move-****** impressions TIDE:1,2,4-8, to line, at 2026-03-28T18:50, why hang",
          "Recorded in studio.rackbook."})
        EXPECT_TRUE(says(taken, words)) << words << "\n" << taken;
    EXPECT_TRUE(says(rackbook("write-out -"), "Wet paper, žluť.\\nSecond line.\\n5: speck"));
    const std::string again = forms.takenFile(filled);
    EXPECT_TRUE(says(again,
                     "it was taken already, on 2026-03-28 19:00 (Europe/Copenhagen) by a test: "
                     "pull-******"))
        << again;
    EXPECT_TRUE(says(again, "[3]"));
}

// What came in is what the verb would have recorded, but for ids.
TEST(TakeSheet, MakesTheRecordsOfThePullVerb) {
    std::string byVerb;
    {
        const test::BenchForms forms;
        byVerb = rackbook(
            "pull TIDE 1 1-8 --start 2026-03-28T18:10 --spoiled 3,5 --hang line "
            "--portion veil-a --ink-before 8 --ink-after 3.5 --printer maren "
            "--temperature -2");
    }
    const test::BenchForms forms;
    std::string bySheet = forms.taken({{"pull.day", "u:2026-03-28"},
                                       {"pull.start", "u:18:10"},
                                       {"sheet.all.printed", "/on"},
                                       {"sheet.TIDE-3.spoiled", "/on"},
                                       {"sheet.TIDE-5.spoiled", "/on"},
                                       {"move.to", "u:Drying line"},
                                       {"pull.portion", "u:veil-a"},
                                       {"pull.inkBefore_g", "u:8"},
                                       {"pull.inkAfter_g", "u:3,5"},
                                       {"pull.printer", "u:maren"},
                                       {"pull.temperature_C", "u:−2 °C"}});
    const auto normal = [](std::string text) {
        for (const char* id : {"2026-03-28-******", "******"})
            for (std::size_t at = text.find(id); at != std::string::npos; at = text.find(id))
                text.replace(at, std::string(id).size(), "ID");
        std::string words;
        for (const char c : text)
            if (c != ' ' && c != '\n' && c != '-')
                words += c;
        return words;
    };
    EXPECT_EQ(normal(bySheet), normal(byVerb)) << bySheet << byVerb;
}

// ISO 32000-1, 7.9.2.2: however the program writes its strings.
TEST(TakeSheet, ReadsAnyEncoding) {
    const test::BenchForms forms;
    const std::string taken =
        forms.taken({{"pull.day", "b:feff0032003000320036002d00300033002d00320038"},
                     {"pull.press", "b:fffe4d00fc006c006c006500"},
                     {"pull.packing", "b:efbbbfcea8"},
                     {"pull.temperature_C", "b:31392c35"},
                     {"sheet.TIDE-2.printed", "/on"}},
                    "--dry-run");
    EXPECT_TRUE(says(taken,
                     "start 2026-03-28, impressions TIDE:2, press Mülle, packing Ψ, "
                     "temperature 19.5 °C"))
        << taken;
}

TEST(TakeSheet, ReadsTheOrderOfTheSheetsLanguage) {
    const test::BenchForms forms;
    for (const auto& [language, day] :
         {std::pair("de", "28.3.2026"), std::pair("fr", "28/03/2026"), std::pair("es", "28-3-2026"),
          std::pair("ja", "2026年3月28日"), std::pair("en", "28/3/2026")}) {
        const std::string sheet = forms.sheet(std::string("--language ") + language);
        const std::string taken = forms.takenFile(
            filledByQpdf(sheet,
                         {{"pull.day", std::string("u:") + day}, {"sheet.TIDE-8.printed", "/on"}}),
            "--dry-run");
        EXPECT_TRUE(says(taken, "start 2026-03-28, impressions TIDE:8")) << language << taken;
    }
}

TEST(TakeSheet, TakesSeveralInOneGo) {
    const test::BenchForms forms;
    rackbook("layer TIDE 2 \"Second veil\" --mix veil");
    const std::string first = filledByQpdf(
        forms.sheet(), {{"pull.day", "u:2026-03-28"}, {"sheet.TIDE-1.printed", "/on"}});
    writeFileSafely("first.pdf", first);
    rackbook("sheet bench TIDE/L2 --out second-blank.pdf");
    const std::string second =
        filledByQpdf(readFile("second-blank.pdf", std::size_t{1} << 26),
                     {{"pull.day", "u:2026-03-28"}, {"sheet.TIDE-2.printed", "/on"}});
    writeFileSafely("second.pdf", second);
    EXPECT_TRUE(says(rackbook("take-sheet first.pdf first.pdf"),
                     "first.pdf is the same sheet as another of these files"));
    const std::string taken = rackbook("take-sheet first.pdf second.pdf");
    EXPECT_TRUE(says(taken, "layer TIDE/L1, start 2026-03-28, impressions TIDE:1")) << taken;
    EXPECT_TRUE(says(taken, "layer TIDE/L2, start 2026-03-28, impressions TIDE:2")) << taken;
}

// The next sheet knows what is usual by now, and that is no filling.
TEST(TakeSheet, LeavesWhatStoodThereAlone) {
    const test::BenchForms forms;
    rackbook("pull TIDE 1 1-4 --press \"hand, baren\" --printer maren --hang line");
    const PdfJson sheet(forms.sheet());
    const std::map<std::string, std::string> fields = fieldsIn(sheet);
    EXPECT_EQ(textOf(sheet.at(fields.at("pull.press"), "/V")), "hand, baren");
    EXPECT_EQ(textOf(sheet.at(fields.at("pull.printer"), "/V")), "Maren");
    EXPECT_EQ(textOf(sheet.at(fields.at("move.to"), "/V")), "Drying line");
    EXPECT_EQ(fields.count("sheet.TIDE-4.printed"), 0u);
    EXPECT_TRUE(says(forms.takenFile(sheet.bytes()), "filled.pdf: nothing was filled in."));
    EXPECT_TRUE(says(forms.taken({{"pull.day", "u:2026-03-29"}, {"sheet.TIDE-5.spoiled", "/on"}}),
                     "impressions TIDE:5, spoiled TIDE:5, printer maren, press hand, baren"))
        << "and nothing is left to hang";
}

TEST(TakeSheet, ReckonsDrierFromItsShareOnlyWhereItMust) {
    const test::BenchForms forms;
    test::Filling filling = test::leastFilling();
    filling["portion.mix_g"] = "u:20";
    filling["portion.drier_pct"] = "u:2";
    filling["portion.drierLot"] = "u:dry";
    const std::string taken = forms.taken(filling, "--dry-run");
    EXPECT_TRUE(says(taken, "lot dry, mass 0.4 g, note Reckoned from a share of 2 %")) << taken;
}

TEST(TakeSheet, PointsOutWhatIsOverdrawn) {
    const test::BenchForms forms;
    rackbook("weigh veil 10 --lot base");
    test::Filling filling = test::leastFilling();
    filling["portion.mix_g"] = "u:12";
    const std::string taken = forms.taken(filling);
    EXPECT_TRUE(says(taken, "By the book, 2.00 g more was taken from veil than was in it."))
        << taken;
}

}  // namespace
}  // namespace rackbook
