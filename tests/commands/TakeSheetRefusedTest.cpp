// Bench sheets that are not taken, and what is said of them; the book stays as it was.
#include <gtest/gtest.h>

#include <QByteArray>
#include <functional>

#include "BenchForms.h"
#include "OutsideReader.h"
#include "base/Sha256.h"

namespace rackbook {
namespace {

using test::rackbook;
using test::says;

class TakeSheetRefused : public testing::Test {
protected:
    void SetUp() override { m_before = stateOfBook(); }

    void expectRefused(const std::string& transcript, const std::vector<std::string>& words,
                       const char* code = "[3]") {
        for (const std::string& part : words)
            EXPECT_TRUE(says(transcript, part)) << part << "\n" << transcript;
        EXPECT_TRUE(says(transcript, code)) << transcript;
        EXPECT_EQ(stateOfBook(), m_before);
    }

    test::BenchForms m_forms;
    std::string m_before;
};

TEST_F(TakeSheetRefused, EveryWrongBoxAtOnce) {
    const std::string taken = m_forms.taken({{"pull.day", "u:the 28th"},
                                             {"pull.start", "u:25:00"},
                                             {"pull.temperature_C", "u:warm"},
                                             {"pull.humidity_pct", "u:1,234.5"},
                                             {"pull.printer", "u:Nobody"},
                                             {"portion.base_g", "u:-2"},
                                             {"pull.inkBefore_g", "u:8"},
                                             {"move.to", "u:nowhere"}});
    expectRefused(taken,
                  {"filled.pdf Date (pull.day): it is no day (the 28th). Write it as 2026-03-28 or "
                   "28/3/2026, with all of the year.",
                   "Start (pull.start): it is no time of a day (25:00).",
                   "Temperature, °C (pull.temperature_C): it is no number (warm).",
                   "Humidity, % (pull.humidity_pct): it is no number (1,234.5).",
                   "Printer (pull.printer): the book has no party of that id or name (Nobody).",
                   "Extender added, g (portion.base_g): it is less than nothing (-2).",
                   "Ink after, g (pull.inkAfter_g): it is not filled in",
                   "Hung at (move.to): the book has no place of that id or name (nowhere).",
                   "Printed (sheet.all.printed): no impression is ticked as printed."});
}

TEST_F(TakeSheetRefused, WhatTheRecordsRefuseIsToldByItsBox) {
    test::Filling filling = test::leastFilling();
    filling["pull.temperature_C"] = "u:200";
    filling["pull.humidity_pct"] = "u:101";
    filling["pull.press"] = "u:" + std::string(2100, 'x');
    expectRefused(m_forms.taken(filling), {"Temperature, °C (pull.temperature_C):",
                                           "Humidity, % (pull.humidity_pct):", "(pull.press):"});
    filling = test::leastFilling();
    filling["pull.start"] = "u:18:30";
    filling["pull.end"] = "u:18:00";
    expectRefused(m_forms.taken(filling), {"End (pull.end):"});
}

TEST_F(TakeSheetRefused, BoxesThatAreMissing) {
    expectRefused(m_forms.taken({{"sheet.TIDE-1.printed", "/on"}}),
                  {"Date (pull.day): it is not filled in, and a run wants its day."});
    expectRefused(m_forms.taken({{"pull.day", "u:2026-03-28"}}),
                  {"(sheet.all.printed): no impression is ticked as printed. Tick those that were, "
                   "or all."});
    test::Filling filling = test::leastFilling();
    filling["portion.base_g"] = "u:2";
    filling["portion.drier_g"] = "u:0.2";
    expectRefused(m_forms.taken(filling), {"Mix taken, g (portion.mix_g): it is not filled in",
                                           "Extender from (portion.baseLot): it is not filled in",
                                           "Drier from (portion.drierLot): it is not filled in"});
    filling["portion.mix_g"] = "u:20";
    filling["portion.baseLot"] = "u:dry";
    filling["portion.drierLot"] = "u:dry";
    filling["portion.drier_pct"] = "u:5";
    expectRefused(m_forms.taken(filling),
                  {"(portion.baseLot): that lot is of the kind drier, not base",
                   "(portion.drier_pct): it contradicts the masses, by which the drier is 0.9 % of "
                   "the ink"});
    filling = test::leastFilling();
    filling["portion.mix_g"] = "u:20";
    filling["pull.portion"] = "u:veil-a";
    expectRefused(m_forms.taken(filling),
                  {"(pull.portion): a portion of the book is named, and masses for a new one too"});
}

TEST_F(TakeSheetRefused, LabelsAreThoseOfTheSheet) {
    const std::string sheet = m_forms.sheet("--language de");
    expectRefused(m_forms.takenFile(filledByQpdf(
                      sheet, {{"pull.day", "u:3/28/2026"}, {"portion.mix_g", "u:viel"}})),
                  {"Datum (pull.day): it is no day", "Mischung entnommen, g (portion.mix_g)"});
}

TEST_F(TakeSheetRefused, WhatWasNotFilledIn) {
    expectRefused(m_forms.takenFile(m_forms.sheet()),
                  {"filled.pdf: nothing was filled in. Fill it in, save it, and name it again."});
}

TEST_F(TakeSheetRefused, FlattenedSheets) {
    const std::string flat = "no boxes are left in it: it was flattened, or printed to a PDF";
    m_forms.sheet();
    ASSERT_EQ(readWith("qpdf --flatten-annotations=all blank.pdf flat.pdf").exitCode, 0);
    ASSERT_EQ(readWith("pdftocairo -pdf blank.pdf printed.pdf").exitCode, 0);
    nlohmann::json tree = editableJson(readFile("flat.pdf", std::size_t{1} << 26));
    for (auto& [name, object] : tree.at("qpdf").at(1).items())
        if (object.contains("value") && object.at("value").is_object())
            object.at("value").erase("/AcroForm");
    expectRefused(m_forms.takenFile(pdfFromJson(tree)), {flat});
    expectRefused(rackbook("take-sheet printed.pdf"), {flat, "rackbook pull"});
}

TEST_F(TakeSheetRefused, SheetsThatAreNoBenchSheets) {
    rackbook("sheet edition TIDE --out edition.pdf");
    expectRefused(rackbook("take-sheet edition.pdf"),
                  {"edition.pdf: it is no bench sheet but a sheet \"edition\""});
    expectRefused(rackbook("take-sheet missing.pdf"), {"missing.pdf: it cannot be read"});
    writeFileSafely("words.pdf", "words");
    expectRefused(rackbook("take-sheet words.pdf"), {"words.pdf: it is no PDF"});
}

TEST_F(TakeSheetRefused, SheetsCutShortOrLocked) {
    const std::string filled = filledByQpdf(m_forms.sheet(), test::leastFilling());
    expectRefused(m_forms.takenFile(filled.substr(0, filled.size() / 2)),
                  {"filled.pdf: the PDF is damaged."});
    m_forms.takenFile(filled, "--dry-run");
    ASSERT_EQ(readWith("qpdf --encrypt '' owner 256 -- filled.pdf locked.pdf").exitCode, 0);
    expectRefused(rackbook("take-sheet locked.pdf"), {"locked.pdf: it is encrypted."});
}

// The kid of a node that a form was grown by, and one that was taken out.
TEST_F(TakeSheetRefused, FormsThatWereChanged) {
    const std::string blank = m_forms.sheet();
    const std::map<std::string, std::string> fields = fieldsIn(PdfJson(blank));
    nlohmann::json tree = editableJson(blank);
    const auto field = [&](const char* name) -> nlohmann::json& {
        return tree.at("qpdf").at(1).at("obj:" + fields.at(name)).at("value");
    };
    field("pull.start")["/T"] = "u:day";
    expectRefused(m_forms.takenFile(pdfFromJson(tree)),
                  {"Date (pull.day): the box stands twice in the file",
                   "these boxes are gone from the file: Start (pull.start)."});
    field("pull.start")["/T"] = "u:start";
    const std::string node = field("sheet.TIDE-8.printed")["/Parent"];
    tree.at("qpdf").at(1).at("obj:" + node).at("value")["/T"] = "u:OTHER-99";
    expectRefused(m_forms.takenFile(pdfFromJson(tree)),
                  {"(sheet.OTHER-99.printed): the sheet was made without this box",
                   "Printed 8 (sheet.TIDE-8.printed)", "are gone from the file"});
}

// The file with another record inside.
std::string forged(const std::string& pdf, const std::function<void(nlohmann::json&)>& change) {
    const PdfJson file(pdf);
    nlohmann::json tree = editableJson(pdf);
    for (const auto& [reference, object] : file.objects()) {
        if (!object.isStream || !object.value.contains("/Params"))
            continue;
        nlohmann::json record = nlohmann::json::parse(object.data);
        change(record);
        nlohmann::json& stream = tree.at("qpdf").at(1).at("obj:" + reference).at("stream");
        stream["data"] = QByteArray::fromStdString(record.dump()).toBase64().toStdString();
        stream["dict"].erase("/Filter");
        return pdfFromJson(tree);
    }
    throw std::runtime_error("there is no file inside");
}

TEST_F(TakeSheetRefused, RecordsThatWereMadeUp) {
    using nlohmann::json;
    const std::string filled = filledByQpdf(m_forms.sheet(), test::leastFilling());
    const auto said = [&](const std::function<void(json&)>& change) {
        return m_forms.takenFile(forged(filled, change));
    };
    expectRefused(said([](json& r) { r["about"]["impressions"].push_back("TIDE/99"); }),
                  {"the book has no impression TIDE/99"});
    expectRefused(said([](json& r) { r["about"]["layer"] = "TIDE/L9"; }),
                  {"the book has no layer TIDE/L9"});
    expectRefused(said([](json& r) { r["about"].erase("layer"); }),
                  {"it lists no impression to print"});
    expectRefused(said([](json& r) { r["about"]["impressions"] = json::array(); }),
                  {"it lists no impression to print"});
    expectRefused(said([](json& r) { r["records"] = json::array(); }),
                  {"layer TIDE/L1 is not on the sheet"});
    expectRefused(said([](json& r) { r["sheet"] = "poster"; }),
                  {"it is no bench sheet but a sheet \"poster\""});
    expectRefused(said([](json& r) { r["rackbookSheet"] = 7; }), {"it is of form 7"});
    for (const char* language : {"../../../etc", "xx", ""})
        EXPECT_TRUE(
            says(m_forms.takenFile(forged(filled, [&](json& r) { r["language"] = language; }),
                                   "--dry-run"),
                 "Tried only"));
}

TEST(TakeSheetState, RefusesAnotherStateOfTheBook) {
    const auto refusalAfter = [](const std::string& change) {
        const test::BenchForms forms;
        const std::string filled = filledByQpdf(forms.sheet(), test::leastFilling());
        EXPECT_FALSE(says(rackbook(change), "[")) << change;
        return forms.takenFile(filled);
    };
    const std::string state = "the book says something else now than when the sheet was made";
    const std::vector<std::pair<const char*, const char*>> rows = {
        {"pull TIDE 1 4", "has printed some of them since"},
        {"enter layer TIDE/L1 colourWords=Other --reason wrong", "colour was Rose veil, and is"},
        {"enter impression TIDE/02 fate=spoiled fateOn=2026-03-28 --changed-on 2026-03-28",
         "impression TIDE/02: fate was kept, and is spoiled"},
        {"strike impression TIDE/08 --reason never", "impression TIDE/08 is not in the book"}};
    for (const auto& [change, words] : rows) {
        const std::string taken = refusalAfter(change);
        EXPECT_TRUE(says(taken, state)) << change << "\n" << taken;
        EXPECT_TRUE(says(taken, words)) << change << "\n" << taken;
        EXPECT_TRUE(says(taken, "[3]"));
    }
    // What it was not made from does not matter.
    EXPECT_TRUE(says(refusalAfter("enter lot blue lotKind=ink colourWords=Blue"), "Recorded in"));
    EXPECT_TRUE(says(refusalAfter("weigh veil 20 --lot base"), "Recorded in"));
}

// What undo took back may be taken in again, under ids of its own, and more than once.
TEST(TakeSheetState, TakesASheetAgainAfterUndo) {
    const test::BenchForms forms;
    rackbook("weigh veil 60 --lot base");
    test::Filling filling = test::leastFilling();
    filling["portion.mix_g"] = "u:12";
    filling["sheet.TIDE-3.spoiled"] = "/on";
    filling["move.to"] = "u:line";
    const std::string filled = filledByQpdf(forms.sheet(), filling);
    for (int time = 0; time < 3; ++time) {
        const std::string taken = forms.takenFile(filled);
        EXPECT_TRUE(says(taken, "Recorded in")) << taken;
        EXPECT_TRUE(says(forms.takenFile(filled), "it was taken already")) << time;
        EXPECT_TRUE(says(rackbook("show impression TIDE:3"), "spoiled"));
        const std::string undone = rackbook("undo");
        EXPECT_TRUE(says(undone, "Recorded in")) << undone;
        EXPECT_FALSE(says(rackbook("show impression TIDE:3"), "spoiled"));
    }
    EXPECT_TRUE(says(rackbook("list pull"), "The book holds no records of kind pull here."));
    EXPECT_FALSE(says(rackbook("verify"), "["));
}

TEST(TakeSheetState, RefusesWhereOnlyItsRunWasStruckOut) {
    const test::BenchForms forms;
    test::Filling filling = test::leastFilling();
    filling["move.to"] = "u:line";
    const std::string filled = filledByQpdf(forms.sheet(), filling);
    EXPECT_TRUE(says(forms.takenFile(filled), "Recorded in"));
    ASSERT_EQ(readWith("pdfdetach -saveall filled.pdf").exitCode, 0);
    const std::string id = sha256(readFile("bench.json", 1 << 20)).substr(0, 16);
    EXPECT_TRUE(says(rackbook("strike pull pull-" + id + " --reason mistaken"), "Recorded in"));
    EXPECT_TRUE(says(forms.takenFile(filled), "its run was struck out, but not its move"));
    EXPECT_TRUE(says(rackbook("strike move move-" + id + " --reason mistaken"), "Recorded in"));
    EXPECT_TRUE(says(forms.takenFile(filled), "Recorded in"));
}

}  // namespace
}  // namespace rackbook
