// A party that is forgotten: what goes, what stays, and what can no longer bring it back.
#include <gtest/gtest.h>

#include <filesystem>

#include "Script.h"
#include "Talk.h"
#include "commands/SoughtNames.h"
#include "support/RunShell.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

namespace fs = std::filesystem;

bool says(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

class ForgetTest : public ::testing::Test {
protected:
    ForgetTest() {
        runScript("studio");
        sound("enter party ane name=\"Ane Bøgholm\" roles=holder contact=\"ane@bogholm.invalid\"");
        sound("enter place anes name=\"Bøgholm, Sandvej 4\" placeKind=holderAddress holder=ane");
        sound("hand-over sale TIDE:4 --to ane --on 2026-03-22 --price 450 --id s1 --move-to anes");
        sound("enter party ane note=\"likes Bøgholm blue\" --reason \"left out\"");
    }

    static std::string run(const std::string& command) { return transcriptOf(splitWords(command)); }
    // Refused by nothing.
    static std::string sound(const std::string& words) {
        const std::string transcript = run("rackbook " + words);
        EXPECT_FALSE(says(transcript, "\n[")) << transcript;
        return transcript;
    }
    static void copy(const std::string& from, const std::string& to) {
        fs::copy_file(from + ".rackbook", to + ".rackbook", fs::copy_options::overwrite_existing);
    }
    static std::string in(const std::string& book) { return " --book " + book + ".rackbook"; }
    // The files of the folder, whichever, whose bytes say the name: by grep.
    static std::string filesThatSay(const std::string& words) {
        return test::runOn("", "grep -rlF -- '" + words + "' . | sort").output;
    }
    static std::string saidBy(const std::string& book) {
        fs::remove_all("said");
        run("rackbook write-out --with-contacts said" + in(book));
        return test::runOn("", "cat said/*.json; rm -r said").output;
    }

    const FreshFolder m_folder;
};

TEST_F(ForgetTest, TheNameIsGoneFromEveryFile) {
    EXPECT_EQ(filesThatSay("Bøgholm"), "./studio.rackbook\n");
    EXPECT_EQ(filesThatSay("Sandvej"), "./studio.rackbook\n");
    const std::string told = sound("forget ane --for-good");
    EXPECT_TRUE(says(told, "3 journal entries lost what they said")) << told;
    EXPECT_TRUE(says(told, "no legal advice")) << told;
    for (const char* words : {"Bøgholm", "Sandvej", "bogholm.invalid"})
        EXPECT_EQ(filesThatSay(words), "") << words;
    const std::string verified = sound("verify");
    EXPECT_TRUE(says(verified, "3 of them were forgotten")) << verified;
    EXPECT_EQ(sound("verify --rebuild"), verified);
    const std::string shown = sound("show transfer s1");
    EXPECT_TRUE(says(shown, "ane")) << shown;
    EXPECT_TRUE(says(sound("show party ane"), "name withheld"));
    EXPECT_TRUE(says(sound("show place anes"), "name withheld"));
    EXPECT_TRUE(says(sound("history party ane"), "had to be forgotten"));
    EXPECT_FALSE(says(run("rackbook find Sandvej"), "anes"));
}

TEST_F(ForgetTest, IsTriedAndAskedForFirst) {
    const std::string before = stateOfBook();
    EXPECT_TRUE(says(sound("forget ane --dry-run"), "Tried only: nothing was forgotten."));
    const std::string refused = run("rackbook forget ane");
    EXPECT_TRUE(says(refused, "Give --for-good") && says(refused, "[2]")) << refused;
    const Talk no = talk({"rackbook", "forget", "ane"}, {""});
    EXPECT_TRUE(says(no.text, "Left as it was.")) << no.text;
    EXPECT_EQ(stateOfBook(), before);
    // Who, and why, asked one by one; then whether it is meant.
    const Talk yes = talk({"rackbook", "forget"}, {"ane", "", "y", "y", "y"});
    EXPECT_EQ(yes.exitCode, 0) << yes.text;
    EXPECT_TRUE(says(yes.text, "3 journal entries lost what they said")) << yes.text;
    EXPECT_EQ(filesThatSay("Bøgholm"), "");
}

TEST_F(ForgetTest, RefusesWhatWouldKeepTheName) {
    const std::string before = stateOfBook();
    EXPECT_TRUE(says(run("rackbook forget ane --for-good --reason \"asked by ANE BOGHOLM\""),
                     "the reason says the name") ||
                says(run("rackbook forget ane --for-good --reason \"asked by ANE BØGHOLM\""),
                     "the reason says the name"));
    EXPECT_TRUE(says(run("rackbook forget nobody --for-good"), "[2]"));
    test::putFile("studio.rackbook.day", "an evening");
    const std::string refused = run("rackbook forget ane --for-good");
    EXPECT_TRUE(says(refused, "rackbook day, then forget") && says(refused, "[2]")) << refused;
    EXPECT_EQ(stateOfBook(), before);
}

TEST_F(ForgetTest, TellsWhereTheNameStillStands) {
    sound(
        "move TIDE:4 line --why other --note \"bøgholm brought it back\" --at 2026-03-25 --by "
        "\"Ane Bøgholm\"");
    sound("enter transfer s1 terms=\"Ane Bøgholm pays in May\" --reason \"Bøgholm wrote\"");
    const std::string told = sound("forget ane --for-good");
    for (const char* where :
         {", note", "transfer s1, terms", "(transfer s1), reason", ", recordedBy", "party ane, id"})
        EXPECT_TRUE(says(told, where)) << where << "\n" << told;
    // Corrected, and then taken out of the journal too.
    sound("enter transfer s1 terms=\"May\" --reason \"not for the book\"");
    const std::string again = sound("forget ane --for-good --look-for Bøgholm");
    EXPECT_TRUE(says(again, "(transfer s1), terms")) << again;
    const std::string gone =
        sound("forget ane --for-good --look-for Bøgholm --also \"transfer s1\"");
    EXPECT_FALSE(says(gone, "(transfer s1), terms")) << gone;
    EXPECT_EQ(filesThatSay("pays in May"), "");
    EXPECT_FALSE(says(sound("verify"), "[1]"));
    EXPECT_TRUE(says(sound("show transfer s1"), "May"));
    // A picture that was struck out, and its bytes.
    fs::copy_file(RACKBOOK_SOURCE_DIR "/tests/exchange/pictures/plain.jpg", "plain.jpg");
    sound("attach plain.jpg --edition TIDE --caption \"Bøgholm at the door\" --id TIDE/door");
    sound("strike attachment TIDE/door --reason \"shows people\"");
    EXPECT_EQ(filesThatSay("at the door"), "./studio.rackbook\n");
    sound("forget ane --for-good --also \"attachment TIDE/door\"");
    EXPECT_EQ(filesThatSay("at the door"), "");
    EXPECT_FALSE(says(sound("verify --rebuild"), "[1]"));
    EXPECT_TRUE(says(run("rackbook forget ane --for-good --also \"party maren\""), "[2]"));
    EXPECT_TRUE(says(run("rackbook forget ane --for-good --also \"transfer s9\""), "[2]"));
}

TEST_F(ForgetTest, CannotBeUndone) {
    sound("forget ane --for-good");
    const std::string refused = run("rackbook undo");
    EXPECT_TRUE(says(refused, "had to be forgotten") && says(refused, "[2]")) << refused;
    const std::string named = run("rackbook enter party ane name=\"Ane Bøgholm\" --reason back");
    EXPECT_TRUE(says(named, "it had to be forgotten, and stays so")) << named;
    EXPECT_EQ(filesThatSay("Bøgholm"), "");
}

TEST_F(ForgetTest, AnEarlierDayNamesNobody) {
    // The clock of the tests stands; the book of tomorrow is the same.
    const std::string before = sound("list transfer --said-on 2026-03-29");
    sound("forget ane --for-good");
    EXPECT_EQ(sound("list transfer --said-on 2026-03-29"), before);
    EXPECT_TRUE(says(sound("list party --said-on 2026-03-29"), "name withheld"));
}

TEST_F(ForgetTest, WhatIsMadeOfTheBookKnowsNoMore) {
    sound("forget ane --for-good");
    sound("back-up kept.rackbook");
    sound("restore kept.rackbook" + in("restored"));
    sound("write-bag --with-contacts bag");
    sound("take-bag bag" + in("unpacked"));
    sound("salvage kept.rackbook salvaged.rackbook");
    sound("verify --rebuild --into rebuilt.rackbook");
    const auto hashOf = [&](const std::string& book) {
        const std::string report = sound("verify --json" + in(book));
        return report.substr(report.find("lastHash"), 80);
    };
    for (const char* book : {"kept", "restored", "unpacked", "salvaged", "rebuilt"}) {
        EXPECT_EQ(saidBy(book), saidBy("studio")) << book;
        EXPECT_EQ(hashOf(book), hashOf("studio")) << book;
    }
    EXPECT_EQ(filesThatSay("Bøgholm"), "");
    // A book that is put back over it from before knows again: so says the help.
    EXPECT_TRUE(says(sound("forget --help"), "only a backup made before"));
}

TEST_F(ForgetTest, AnotherBookDoesNotBringItBack) {
    copy("studio", "laptop");
    sound("enter party ane note=\"Bøgholm moved\" --reason news" + in("laptop"));
    sound("enter lot spare lotKind=ink colourWords=Blue" + in("laptop"));
    sound("forget ane --for-good");
    for (int i = 0; i < 2; ++i) {
        const std::string taken = sound("take-book laptop.rackbook");
        EXPECT_TRUE(says(taken, "had to be forgotten here")) << taken;
    }
    EXPECT_TRUE(says(sound("show lot spare"), "Blue"));
    EXPECT_FALSE(says(saidBy("studio"), "Bøgholm"));
    EXPECT_EQ(filesThatSay("Bøgholm"), "./laptop.rackbook\n");
    // The other way round the laptop is told, and keeps what it knows until someone decides.
    for (int i = 0; i < 2; ++i) {
        const std::string told = sound("take-book studio.rackbook" + in("laptop"));
        EXPECT_TRUE(says(told, "The other book had to forget") && says(told, "party ane")) << told;
    }
    EXPECT_TRUE(says(saidBy("laptop"), "Bøgholm"));
    sound("forget ane --for-good" + in("laptop"));
    EXPECT_EQ(filesThatSay("Bøgholm"), "");
    for (int i = 0; i < 2; ++i) {
        EXPECT_TRUE(says(sound("take-book studio.rackbook" + in("laptop")),
                         "says nothing that this one does not"));
        EXPECT_TRUE(
            says(sound("take-book laptop.rackbook"), "says nothing that this one does not"));
    }
    EXPECT_FALSE(says(sound("verify"), "[1]"));
    EXPECT_FALSE(says(sound("verify" + in("laptop")), "[1]"));
}

// One that never knew it gets what is left, and a third that still knows cannot tell it.
TEST_F(ForgetTest, StaysForgottenOverThreeBooks) {
    copy("studio", "old");
    run("rackbook begin --studio \"North shed\" --time-zone Europe/Copenhagen" + in("new"));
    sound("forget ane --for-good");
    sound("take-book studio.rackbook --with-findings" + in("new"));
    EXPECT_TRUE(says(sound("show party ane" + in("new")), "name withheld"));
    const std::string taken = sound("take-book old.rackbook --with-findings" + in("new"));
    EXPECT_TRUE(says(taken, "had to be forgotten here")) << taken;
    EXPECT_EQ(filesThatSay("Bøgholm"), "./old.rackbook\n");
}

TEST_F(ForgetTest, APlaceOfTheirsThatComesInLaterIsTold) {
    copy("studio", "laptop");
    sound("enter place anes-shed name=\"Bøgholm's shed\" placeKind=holderAddress holder=ane" +
          in("laptop"));
    sound("forget ane --for-good");
    const std::string taken = sound("take-book laptop.rackbook");
    EXPECT_TRUE(says(taken, "takes that out too")) << taken;
    sound("forget ane --for-good");
    EXPECT_FALSE(says(saidBy("studio"), "Bøgholm"));
    EXPECT_EQ(filesThatSay("Bøgholm"), "./laptop.rackbook\n");
}

TEST_F(ForgetTest, ASheetThatWasGivenOutIsNotCalledFalse) {
    sound("sheet transfer s1 --out given.pdf");
    sound("give-out given.pdf --to ane");
    EXPECT_TRUE(says(sound("given-out"), "as the book"));
    sound("forget ane --for-good");
    const std::string checked = sound("check-sheet given.pdf");
    EXPECT_TRUE(says(checked, "It says a name that the book had to forget since.")) << checked;
    EXPECT_FALSE(says(checked, "no longer true")) << checked;
    const std::string listed = sound("given-out");
    EXPECT_TRUE(says(listed, "names someone") && says(listed, "neither false nor")) << listed;
    // What else is wrong is told as ever.
    sound("enter transfer s1 price=500 --reason \"a slip\"");
    const std::string changed = run("rackbook check-sheet given.pdf");
    EXPECT_TRUE(says(changed, "[1]") && says(changed, "450") && !says(changed, "party ane"))
        << changed;
}

TEST_F(ForgetTest, OnceMoreFinishesWhatAReaderHeldUp) {
    sound("forget ane --for-good");
    const std::string again = sound("forget ane");
    EXPECT_TRUE(says(again, "was forgotten before")) << again;
    EXPECT_TRUE(says(again, "0 journal entries")) << again;
}

TEST_F(ForgetTest, RecordsWithoutPeopleMakeABook) {
    sound("enter transfer s1 terms=\"Ane Bøgholm pays in May\" --reason more");
    fs::copy_file(RACKBOOK_SOURCE_DIR "/tests/exchange/pictures/plain.jpg", "plain.jpg");
    sound("attach plain.jpg --edition TIDE --caption \"Ane Bøgholm with it\"");
    const std::string packed = sound("write-bag --without-people bag");
    EXPECT_TRUE(says(packed, "attachment.caption 1") && says(packed, "transfer.terms 1")) << packed;
    EXPECT_TRUE(says(packed, "the journal, sheets and the files of attachments were left out"));
    sound("write-out --without-people out");
    for (const char* kind : {"party", "place", "transfer", "attachment", "book"})
        sound("write-table " + std::string(kind) + " --without-people --out " + kind + ".csv");
    for (const char* list : {"impression-list", "transfer-list", "edition-list"})
        sound("write-table " + std::string(list) + " --without-people --out " + list + ".csv");
    for (const char* words : {"Bøgholm", "Sandvej", "bogholm", "Maren", "North shed", "450"})
        EXPECT_EQ(filesThatSay(words), "./studio.rackbook\n") << words;
    EXPECT_FALSE(fs::exists("bag/data/journal.jsonl"));
    EXPECT_FALSE(fs::exists("bag/data/sheets"));
    EXPECT_FALSE(fs::exists("bag/data/records/attachments"));
    EXPECT_FALSE(fs::exists("out/attachments"));
    sound("check-bag bag");
    const std::string taken = sound("take-bag bag" + in("again"));
    EXPECT_TRUE(says(taken, "What is personal was left out")) << taken;
    sound("verify" + in("again"));
    // The same names everywhere.
    const test::ShellResult difference = test::runOn("", "diff -r out bag/data/records");
    EXPECT_EQ(difference.exitCode, 0) << difference.output;
    EXPECT_TRUE(says(test::bytesOf("transfer-list.csv"), "party-1,party-2"));
    EXPECT_TRUE(says(test::bytesOf("transfer.csv"), "party-2"));
    EXPECT_TRUE(says(run("rackbook write-out --without-people --with-contacts x"), "[2]"));
    EXPECT_TRUE(says(run("rackbook write-table party --without-people --with-contacts"), "[2]"));
    EXPECT_TRUE(says(run("rackbook write-bag --without-people --handed-out . x"), "[2]"));
}

TEST(SoughtNames, FindsANameHoweverItIsWritten) {
    SoughtNames names;
    names.addName("Åse  Møller-Krag");
    names.addWhole("12 Quay Street, Hamlet; ase@krag.invalid");
    EXPECT_EQ(names.foundIn("sold to ÅSE MØLLER KRAG today"), "Åse  Møller-Krag");
    EXPECT_EQ(names.foundIn("A\u030Ase Møller-Krag"), "Åse  Møller-Krag");
    EXPECT_EQ(names.foundIn("for Møller"), "møller");
    EXPECT_EQ(names.foundIn("mail: ase@krag.invalid"), "ase@krag.invalid");
    EXPECT_EQ(names.foundIn("krag-2"), "krag");
    EXPECT_EQ(names.foundIn("at 12, quay street"), "12 Quay Street");
    EXPECT_EQ(names.foundIn("the quay"), std::nullopt);
    EXPECT_EQ(names.foundIn("Møllers"), std::nullopt);
    EXPECT_EQ(names.foundIn(""), std::nullopt);
    EXPECT_TRUE(SoughtNames().isEmpty());
}

}  // namespace
}  // namespace rackbook
