// Sheets as they lie in a folder, with the records that are inside them.
#include "commands/SheetFile.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <set>

#include "Script.h"
#include "base/Error.h"
#include "store/RecordReader.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

// A fresh folder with the small studio of the scripts.
class SheetFiles : public ::testing::Test {
protected:
    void SetUp() override {
        for (const ScriptStep& step : readScript(std::string(RACKBOOK_SCRIPTS) + "/studio.txt"))
            ASSERT_EQ(transcriptOf(step.words).find("\n["), std::string::npos);
    }

    // Runs rackbook with those words; whatever it answers by its exit code, but no refusal.
    static std::string run(const std::string& words) {
        const std::string transcript = transcriptOf(splitWords("rackbook " + words));
        EXPECT_EQ(transcript.find("\n[2]"), std::string::npos) << transcript;
        EXPECT_EQ(transcript.find("\n[3]"), std::string::npos) << transcript;
        return transcript;
    }

    static CarriedSheet inside(const std::string& sheet) {
        run("sheet " + sheet + " --out x.pdf --replace");
        const SheetFile file = readSheetFile("x.pdf");
        EXPECT_EQ(file.sheets.size(), 1u);
        return file.sheets.front();
    }

    static std::set<std::string> namesIn(const SheetFacts& facts) {
        std::set<std::string> names;
        for (const auto& [name, record] : facts.records)
            names.insert(name);
        return names;
    }

    static bool holds(const std::string& text, const std::string& part) {
        return text.find(part) != std::string::npos;
    }

private:
    FreshFolder m_folder;
};

// The gallery that had it on consignment has no business with whoever bought it since.
TEST_F(SheetFiles, OfATransferSayNotWhoHasTheSheetsToday) {
    run("enter party tides name=Tides roles=holder contact=desk@tides.invalid");
    run("enter party buyer name=Buyer roles=holder contact=home@buyer.invalid");
    run("hand-over consignment TIDE:1-3 --to tides --price 900 --currency EUR --on 2026-03-21 "
        "--id tides-1");
    run("hand-over sale TIDE:2 --to buyer --on 2026-03-25 --id sold-1");
    for (const char* options : {"", " --with-holders", " --with-holders --on 2026-03-22"}) {
        const CarriedSheet sheet = inside(std::string("transfer tides-1") + options);
        EXPECT_FALSE(sheet.facts.namesHolders);
        EXPECT_TRUE(holds(sheet.text, "\"receiver\":\"tides\""));
        EXPECT_TRUE(holds(sheet.text, "\"price\":900"));
        EXPECT_FALSE(holds(sheet.text, "uyer")) << sheet.text;
        EXPECT_FALSE(holds(sheet.text, "\"holder\":")) << sheet.text;
        EXPECT_FALSE(holds(sheet.text, "invalid")) << sheet.text;
        EXPECT_EQ(namesIn(sheet.facts).count("impression TIDE/02"), 1u);
        EXPECT_EQ(namesIn(sheet.facts).count("pull TIDE/L1"), 0u);
    }
}

TEST_F(SheetFiles, HoldWhatTheirKindSpeaksOf) {
    run("move TIDE:1-2 drawer --why store --at 2026-03-05");
    const std::set<std::string> drawer = namesIn(inside("drawer drawer").facts);
    for (const char* name : {"place drawer", "impression TIDE/01", "edition TIDE"})
        EXPECT_EQ(drawer.count(name), 1u) << name;
    EXPECT_EQ(drawer.count("impression TIDE/03"), 0u);
    const std::set<std::string> mixes = namesIn(inside("mixes").facts);
    const std::set<std::string> stock = namesIn(inside("stock").facts);
    for (const char* name : {"mix veil", "mix veil-a"}) {
        EXPECT_EQ(mixes.count(name), 1u) << name;
        EXPECT_EQ(stock.count(name), 0u) << name;
    }
    EXPECT_EQ(stock.count("lot dry"), 1u);
    EXPECT_EQ(mixes.count("lot dry"), 0u);
    EXPECT_EQ(stock.count("impression TIDE/01"), 0u);
}

// The two registers must not contradict each other about rules of the house.
TEST_F(SheetFiles, StayTrueWhenARuleOfTheHouseChanges) {
    for (const std::string sheet : {"readiness", "ledger", "stock", "drawer drawer"}) {
        const std::string file = fitForFile(sheet) + ".pdf";
        run("sheet " + sheet + " --on 2026-03-20 --out " + file);
        run("give-out " + file + " --on 2026-03-21");
    }
    run("enter book book houseRules.1.rule=airing_days houseRules.1.value=10 "
        "houseRules.1.origin=studioRule --reason agreed");
    const std::string listed = run("given-out");
    EXPECT_FALSE(holds(listed, "no longer true")) << listed;
    for (const char* file : {"readiness.pdf", "ledger.pdf", "stock.pdf", "drawer-drawer.pdf"})
        EXPECT_TRUE(holds(run("check-sheet " + std::string(file)), "the sheet is still true"));
}

TEST_F(SheetFiles, SayWhereALaterWordOnAnEarlierDayMakesThemUntrue) {
    run("move TIDE:1 wall --why hang --at 2026-03-05");
    run("sheet certificate TIDE:1 --on 2026-03-20 --out c.pdf");
    run("sheet drawer drawer --on 2026-03-20 --out d.pdf");
    // A day on which it hung in the light, a print that lay in the drawer all along.
    run("sky 2026-03-10 sunny");
    run("move TIDE:7 drawer --why store --at 2026-03-06");
    EXPECT_TRUE(holds(run("check-sheet c.pdf"), "weather "));
    EXPECT_TRUE(holds(run("check-sheet d.pdf"), "impression TIDE/07"));
}

// How the prints were made is on none of these, and who had a hand in it is nobody's business.
TEST_F(SheetFiles, HoldNoMoreThanTheyPrint) {
    run("weigh veil 97 --lot base --at 2026-03-01T08:00");
    run("weigh veil-a 20 --from-mix veil --at 2026-03-02T08:00");
    run("pull TIDE 1 1-8 --portion veil-a --start 2026-03-03T10:00");
    run("move TIDE:1-2 drawer --why store --at 2026-03-05");
    const auto kindsIn = [](const std::string& sheet) {
        std::set<std::string> kinds;
        for (const std::string& name : namesIn(inside(sheet).facts))
            kinds.insert(name.substr(0, name.find(' ')));
        return kinds;
    };
    using Kinds = std::set<std::string>;
    EXPECT_EQ(kindsIn("sleeve-labels TIDE:1"), (Kinds{"book", "edition", "impression"}));
    EXPECT_EQ(kindsIn("drawer-labels"), (Kinds{"book", "place"}));
    EXPECT_EQ(kindsIn("drawer drawer"),
              (Kinds{"book", "edition", "estimate", "impression", "move", "place"}));
    EXPECT_EQ(kindsIn("ledger"),
              (Kinds{"book", "edition", "estimate", "impression", "move", "party", "place"}));
    EXPECT_EQ(kindsIn("stock"), (Kinds{"book", "lot", "weighing"}));
    EXPECT_EQ(kindsIn("mixes TIDE"),
              (Kinds{"book", "edition", "layer", "lot", "mix", "pull", "weighing"}));
    for (const char* sheet : {"mixes TIDE", "edition TIDE", "stock", "ledger"})
        for (const char* field : {"timeZone", "currency"})
            EXPECT_FALSE(holds(inside(sheet).text, field)) << sheet << " " << field;
}

TEST_F(SheetFiles, AreNoLongerTrueWhereCorrectedCoordinatesChangeADose) {
    run("enter book book latitude_deg=56 longitude_deg=10 --reason added");
    run("weigh veil 97 --lot base --at 2026-03-01T08:00");
    run("weigh veil 3 --lot rose --at 2026-03-01T08:05");
    run("weigh veil-a 20 --from-mix veil --at 2026-03-02T08:00");
    run("pull TIDE 1 1-8 --portion veil-a --start 2026-03-03T10:00");
    run("move TIDE:1 wall --why hang --at 2026-03-05");
    run("sheet certificate TIDE:1 --on 2026-03-20 --out c.pdf");
    EXPECT_TRUE(holds(run("check-sheet c.pdf"), "the sheet is still true"));
    const std::string text = readSheetFile("c.pdf").sheets.front().text;
    EXPECT_TRUE(holds(text, "\"doseHigh_sunnyDays\":")) << text;
    EXPECT_FALSE(holds(text, "tude_deg"));
    run("enter book book latitude_deg=35 --reason mistyped");
    EXPECT_TRUE(holds(run("check-sheet c.pdf"), "estimate TIDE/01  dose"));
}

TEST_F(SheetFiles, OfTransfersSayThatContactsAreNotChecked) {
    run("enter party tides name=Tides roles=holder contact=desk@tides.invalid");
    run("hand-over consignment TIDE:1 --to tides --on 2026-03-21 --id tides-1");
    run("sheet transfer tides-1 --with-holders --out t.pdf");
    EXPECT_TRUE(holds(run("check-sheet t.pdf"), "Contacts stand in no record"));
    run("sheet edition TIDE --out e.pdf");
    EXPECT_FALSE(holds(run("check-sheet e.pdf"), "Contacts"));
}

TEST_F(SheetFiles, AreToldFromOthersWithTheSameRecords) {
    run("enter party tides name=Tides roles=holder");
    run("sheet edition TIDE --on 2026-03-20 --out e.pdf");
    run("give-out e.pdf --on 2026-03-21");
    std::filesystem::copy_file("e.pdf", "altered.pdf");
    std::ofstream("altered.pdf", std::ios::app) << "%\n";
    const std::string given = run("give-out altered.pdf --to tides --on 2026-03-22");
    EXPECT_TRUE(holds(given,
                      "a file of other bytes with the same records was given out on "
                      "2026-03-21"))
        << given;
    const std::string altered = run("check-sheet altered.pdf");
    EXPECT_TRUE(holds(altered, "the later one was")) << altered;
    EXPECT_TRUE(holds(altered, "\n[1]")) << altered;
    EXPECT_FALSE(holds(run("check-sheet e.pdf"), "\n[1]"));
}

TEST_F(SheetFiles, ThatAnotherProgramRewroteAreNotTrue) {
    run("sheet edition TIDE --on 2026-03-20 --out e.pdf");
    const SheetFile file = readSheetFile("e.pdf", [](const std::string& path) {
        CarriedFiles inside = readCarriedFiles(path);
        inside.files.front().bytes += "\n\n";
        return inside;
    });
    BookOptions options;
    options.path = "studio.rackbook";
    options.schemaFolder = std::string(RACKBOOK_SOURCE) + "/schema";
    const BookFile book = BookFile::openToRead(options);
    const RecordSet records = everythingIn(book);
    const SheetComparison comparison = BookSheets(records).compare(file.sheets.front());
    EXPECT_TRUE(comparison.isRewritten);
    EXPECT_FALSE(comparison.isTrue());
}

// Nobody could check it.
TEST_F(SheetFiles, AreNotMadeWithMoreRecordsThanCanBeRead) {
    run("impressions TIDE 9-1001");
    const std::string refused =
        transcriptOf(splitWords("rackbook sheet certificate TIDE:1-1001 --out many.pdf"));
    EXPECT_TRUE(holds(refused, "many.pdf would carry 1001 records of ")) << refused;
    EXPECT_TRUE(holds(refused, "Make a file for each with --each")) << refused;
    EXPECT_TRUE(holds(refused, "\n[2]")) << refused;
}

TEST_F(SheetFiles, GoToStandardOutputWhereAsked) {
    const std::string written = run("sheet drawer-labels --out -");
    EXPECT_TRUE(holds(written, "%PDF-1.7"));
    EXPECT_FALSE(std::filesystem::exists("-"));
    EXPECT_TRUE(
        holds(transcriptOf(splitWords("rackbook sheet certificate TIDE:1-2 --each --out -")),
              "several files do not go to standard output"));
}

TEST_F(SheetFiles, AreRefusedWhereTheyChangeWhileTheyAreRead) {
    run("sheet edition TIDE --out t.pdf");
    const SheetFile file = readSheetFile("t.pdf");
    const auto thatWrites = [](const std::string& path) {
        CarriedFiles inside = readCarriedFiles(path);
        std::ofstream(path, std::ios::app) << "%\n";
        return inside;
    };
    EXPECT_EQ(test::messageOf([&] { readSheetFile("t.pdf", thatWrites); }),
              "t.pdf: it was written to while it was read. Read it again once it is complete.");
    EXPECT_NE(readSheetFile("t.pdf").sha256, file.sha256);
}

}  // namespace
}  // namespace rackbook
