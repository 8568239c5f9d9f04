// A day told in one go, by questions and from a file.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

#include "Script.h"
#include "Talk.h"
#include "commands/CommandLine.h"
#include "commands/DayDraft.h"

namespace rackbook {
namespace {

class DayTest : public ::testing::Test {
protected:
    DayTest() { runScript("studio"); }

    static bool says(const std::string& text, const std::string& part) {
        return text.find(part) != std::string::npos;
    }

    static void write(const std::string& name, const std::string& text) {
        std::ofstream(name) << text;
    }

    static std::vector<std::string> hangAnswers() {
        return {"hang", "TIDE:1-4", "line", "", "", "y"};
    }

    const FreshFolder m_folder;
};

TEST_F(DayTest, RecordsWhatWasToldTogether) {
    std::vector<std::string> answers = hangAnswers();
    for (const char* answer : {"look", "TIDE:1", "tacky", "", "", "", "", "y", "", "y"})
        answers.push_back(answer);
    const Talk told = talk({"rackbook", "day"}, answers);
    EXPECT_EQ(told.exitCode, 0) << told.text;
    EXPECT_TRUE(says(told.text, "Recorded 2 entries in studio.rackbook.")) << told.text;
    const std::string shown = transcriptOf({"rackbook", "show", "impression", "TIDE:1"});
    EXPECT_TRUE(says(shown, "tacky")) << shown;
    EXPECT_FALSE(std::filesystem::exists("studio.rackbook.day"));
}

// The window was closed after the first entry.
TEST_F(DayTest, OffersAgainWhatWasToldBefore) {
    const std::string before = stateOfBook();
    const Talk broken = talk({"rackbook", "day"}, hangAnswers());
    EXPECT_EQ(broken.exitCode, 2);
    EXPECT_EQ(stateOfBook(), before);
    EXPECT_TRUE(std::filesystem::exists("studio.rackbook.day"));
    const Talk again = talk({"rackbook", "day"}, {"y", "", "y"});
    EXPECT_TRUE(says(again.text, "Not recorded yet")) << again.text;
    EXPECT_TRUE(says(again.text, "Recorded 1 entry")) << again.text;
    EXPECT_FALSE(std::filesystem::exists("studio.rackbook.day"));
}

// The program was ended after everything was recorded and before the draft was gone.
TEST_F(DayTest, DoesNotOfferAgainWhatWasRecorded) {
    const BookOptions options{"studio.rackbook", std::string(RACKBOOK_SOURCE) + "/schema", 5};
    DayDraft draft("studio.rackbook");
    draft.add(
        {"hang", "TIDE:1-4", "line", "--note", "# Being recorded, to end at journal entry 1"});
    EXPECT_FALSE(DayDraft("studio.rackbook").wasRecorded(BookFile::openToRead(options)));
    JournalEnd end = journalEndOf(BookFile::openToRead(options));
    draft.willEndAt(end);
    EXPECT_TRUE(DayDraft("studio.rackbook").wasRecorded(BookFile::openToRead(options)));
    end.hash.back() = end.hash.back() == '0' ? '1' : '0';
    draft.willEndAt(end);
    EXPECT_FALSE(DayDraft("studio.rackbook").wasRecorded(BookFile::openToRead(options)));
    draft.willEndAt(journalEndOf(BookFile::openToRead(options)));
    const Talk again = talk({"rackbook", "day"}, {""});
    EXPECT_TRUE(says(again.text, "in an earlier conversation is in the book")) << again.text;
    EXPECT_FALSE(std::filesystem::exists("studio.rackbook.day"));
}

TEST_F(DayTest, ThrowsAwayWhatIsNotWanted) {
    talk({"rackbook", "day"}, hangAnswers());
    const Talk again = talk({"rackbook", "day"}, {"n", "y", ""});
    EXPECT_TRUE(says(again.text, "Nothing was recorded.")) << again.text;
    EXPECT_FALSE(std::filesystem::exists("studio.rackbook.day"));
}

TEST_F(DayTest, TakesTheLastEntryBack) {
    std::vector<std::string> answers = hangAnswers();
    answers.insert(answers.end(), {"drop", ""});
    const Talk told = talk({"rackbook", "day"}, answers);
    EXPECT_TRUE(says(told.text, "Taken back: hang")) << told.text;
    EXPECT_TRUE(says(told.text, "Nothing was recorded.")) << told.text;
}

// The portion is entered in the same conversation as the pull that uses it.
TEST_F(DayTest, MayUseWhatAnEntryBeforeItRecords) {
    write("evening.txt",
          "# An evening.\n"
          "enter mix p1 name=\"Portion, one\" purpose=portion edition=TIDE\n"
          "\n"
          "rackbook weigh p1 4.5 --lot rose --at 2026-03-20T18:00\n"
          "pull TIDE 1 1-4 --portion p1 --start 2026-03-20T18:30 --hang line\n");
    const std::string transcript = transcriptOf({"rackbook", "day", "evening.txt"});
    EXPECT_TRUE(says(transcript, "Recorded 3 entries in studio.rackbook.")) << transcript;
    EXPECT_TRUE(says(transcriptOf({"rackbook", "show", "mix", "p1"}), "Portion, one"));
}

TEST_F(DayTest, RecordsNothingWhereOneLineIsWrong) {
    const std::string before = stateOfBook();
    write("evening.txt",
          "hang TIDE:1-4 line\nhang TIDE:1-4 attic\nlook TIDE:1\nverify\nhang TIDE:1 line --book "
          "b\n");
    const std::string transcript = transcriptOf({"rackbook", "day", "evening.txt"});
    EXPECT_EQ(stateOfBook(), before);
    EXPECT_TRUE(says(transcript, "evening.txt:2")) << transcript;
    EXPECT_TRUE(says(transcript, "evening.txt:4")) << transcript;
    EXPECT_TRUE(says(transcript, "evening.txt:5")) << transcript;
    EXPECT_FALSE(says(transcript, "evening.txt:1:")) << transcript;
    EXPECT_TRUE(says(transcript, "[3]")) << transcript;
}

TEST_F(DayTest, TriesOnlyWhenAsked) {
    const std::string before = stateOfBook();
    write("evening.txt", "hang TIDE:1-4 line\n");
    const std::string transcript = transcriptOf({"rackbook", "day", "evening.txt", "--dry-run"});
    EXPECT_TRUE(says(transcript, "Tried only: nothing was recorded.")) << transcript;
    EXPECT_EQ(stateOfBook(), before);
}

TEST_F(DayTest, RefusesFilesThatAreNoDay) {
    write("empty.txt", "# nothing\n\n");
    write("bytes.txt", "\xff\xfe\n");
    EXPECT_TRUE(says(transcriptOf({"rackbook", "day", "empty.txt"}), "there is no entry in it"));
    EXPECT_TRUE(says(transcriptOf({"rackbook", "day", "bytes.txt"}), "it is not UTF-8 text"));
    EXPECT_TRUE(says(transcriptOf({"rackbook", "day"}), "this is no terminal"));
}

TEST(CommandLine, ReadsWhatItWrites) {
    for (const std::vector<std::string>& words :
         std::vector<std::vector<std::string>>{{"look", "TIDE:1", "--note", "two words"},
                                               {"look", "--note=says \"true\" now"},
                                               {"look", "--note=\"\""},
                                               {"enter", "party", "é", "name=Å b"}})
        EXPECT_EQ(wordsOfLine(lineOf(words)), words) << lineOf(words);
}

TEST(CommandLine, QuotesForAShell) {
    EXPECT_EQ(shellLine("look", {"TIDE:1-4,9", "--note=it's dry"}),
              "rackbook look TIDE:1-4,9 '--note=it'\\''s dry'");
}

}  // namespace
}  // namespace rackbook
