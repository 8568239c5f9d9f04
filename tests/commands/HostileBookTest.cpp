// A book of other hands that holds what no record file could have brought in, files and arguments
// with such names: nothing that is shown may steer a terminal.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "Script.h"
#include "base/Files.h"
#include "base/Text.h"
#include "commands/CommandTable.h"
#include "commands/Run.h"
#include "exchange/RecordCodec.h"
#include "exchange/RecordFiles.h"
#include "store/Intake.h"
#include "support/NaughtyFill.h"
#include "support/RunShell.h"
#include "support/SampleRecords.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

// ECMA-48: bell, backspace, carriage return, CSI and OSC in both codings, DEL; Unicode: overrides,
// isolates, separators of lines.
const std::string hostile =
    " \x1b[31m\x1b]0;owned\x07\x08\r\x7F\u0085\u009b2J\u009dx\u009c\u202Eknil\u2067x\u2028\u2029";

struct Ran {
    int exitCode = 0;
    std::string out;
    std::string err;
};

Ran runOf(const std::vector<std::string>& words) {
    std::ostringstream out;
    std::ostringstream err;
    const int code = runProgram({words.begin() + 1, words.end()}, out, err);
    return {code, out.str(), err.str()};
}

void expectHarmless(const std::string& text, const std::string& of) {
    EXPECT_FALSE(invalidUtf8At(text)) << of;
    std::string odd;
    for (const char32_t c : codePoints(text))
        if ((c < 0x20 && c != '\n' && c != '\t') || (c >= 0x7F && c <= 0x9F) ||
            (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069) || c == 0x2028 ||
            c == 0x2029)
            odd += " " + std::to_string(static_cast<unsigned>(c));
    EXPECT_EQ(odd, "") << of << "\n" << printable(text.substr(0, 400));
}

Ran harmless(const std::vector<std::string>& words) {
    Ran run = runOf(words);
    const std::string of = printable(joined(words, " "));
    expectHarmless(run.out, of);
    expectHarmless(run.err, of);
    return run;
}

class HostileBookTest : public ::testing::Test {
protected:
    HostileBookTest() { makeBook(false); }

    // Ids like that are refused where a journal is read; `withIds` has some in the tables.
    static void makeBook(bool withIds) {
        std::filesystem::remove("studio.rackbook");
        runOf({"rackbook", "begin"});
        BookOptions options;
        options.path = "studio.rackbook";
        options.schemaFolder = std::string(RACKBOOK_SOURCE) + "/schema";
        RecordFileReader reader(options.schemaFolder);
        for (const std::string& path :
             filesBelow(std::string(RACKBOOK_SOURCE) + "/demo-edition", ".json").paths)
            reader.read(path, test::bytesOf(path));
        std::vector<Entry> entries;
        const auto add = [&](Record record) {
            test::visitFields(
                record, test::NaughtyFill([](const std::string& text) { return text + hostile; }));
            entries.push_back({record, encodeRecord(record), {}});
        };
        for (const IncomingRecord& incoming : reader.records())
            add(incoming.record);
        for (Record& record : test::namedRecords()) {
            if (withIds)
                test::visitFields(record, test::IdEnding(hostile));
            add(record);
        }
        BookFile book = BookFile::openToWrite(options);
        IntakeTerms terms;
        terms.recordedBy = "somebody" + hostile;
        terms.recordedAt = "2026-03-27T08:30:00Z";
        terms.reason = "because" + hostile;
        const IntakeResult taken = take(book, entries, terms);
        for (const IntakeProblem& problem : taken.problems)
            ADD_FAILURE() << idOf(entries[problem.index].record) << problem.pointer << problem.what;
    }

    const FreshFolder m_folder;
};

bool needsMore(const std::string& command) {
    return command.find_first_of("|<>") != std::string::npos ||
           command.find(".json") != std::string::npos;
}

TEST_F(HostileBookTest, IsShownHarmlesslyByEveryVerbThatReads) {
    int verbs = 0;
    int showing = 0;
    for (const Command& command : commandTable()) {
        if (command.spec.writesBook)
            continue;
        ++verbs;
        std::vector<std::vector<std::string>> runs;
        for (const Example& example : command.spec.examples)
            if (!needsMore(example.command))
                runs.push_back(splitWords(example.command));
        for (const std::vector<std::string>& words : runs) {
            const Ran run = harmless(words);
            showing += (run.out + run.err).find("\\u001B") != std::string::npos ? 1 : 0;
        }
        if (runs.empty() || !command.spec.reportsJson)
            continue;
        std::vector<std::string> words = runs.front();
        words.emplace_back("--json");
        const Ran run = harmless(words);
        if (run.exitCode > 1)
            continue;
        EXPECT_TRUE(nlohmann::json::accept(run.out)) << command.spec.name << run.out.substr(0, 300);
    }
    EXPECT_GT(verbs, 30);
    EXPECT_GT(showing, 15);
}

TEST_F(HostileBookTest, SaysTheSameInJsonAsInTheBook) {
    makeBook(true);
    const Ran run = harmless({"rackbook", "show", "mix", "mix-a" + hostile, "--json"});
    ASSERT_EQ(run.exitCode, 0) << run.err;
    EXPECT_NE(nlohmann::json::parse(run.out).dump().find(nlohmann::json("mix-a" + hostile).dump()),
              std::string::npos)
        << run.out;
    for (const RecordKind kind : {RecordKind::lot, RecordKind::place, RecordKind::move}) {
        const std::string word = textOf(kind);
        const Ran shown = harmless({"rackbook", "show", word, word + "-a" + hostile});
        EXPECT_NE(shown.out.find(word + "-a \\u001B[31m"), std::string::npos) << shown.err;
        const Ran history = harmless({"rackbook", "history", word, word + "-a" + hostile});
        EXPECT_NE(history.err.find("is not an id"), std::string::npos) << history.out;
        harmless({"rackbook", "list", word});
        harmless({"rackbook", "write-out", "--kind", word, "-"});
        harmless({"rackbook", "show", word, word + "-b" + hostile.substr(0, 8)});
    }
    harmless({"rackbook", "find", "owned"});
    harmless({"rackbook", "find", "knil" + hostile});
    harmless({"rackbook", "strike", "place", "place-b" + hostile, "--reason", "x", "--dry-run"});
    harmless({"rackbook", "undo", "--dry-run", "--reason", "x"});
}

TEST_F(HostileBookTest, QuotesArgumentsHarmlessly) {
    const std::vector<std::vector<std::string>> wrong = {
        {"frob" + hostile},
        {"help", "lis" + hostile},
        {"list", "lot" + hostile},
        {"list", "lot", "--book", "no" + hostile},
        {"list", "lot", "--boo" + hostile, "x"},
        {"list", "lot", "--wanted" + hostile + "=1"},
        {"-" + hostile},
        {"show", "lot", "nowhere" + hostile},
        {"history", "lot" + hostile, "x"},
        {"ready", "EEL:" + hostile},
        {"ready", "--on", "2026-03-20" + hostile},
        {"sheet", "edition" + hostile},
        {"sheet", "edition", "EEL", "--language", "d" + hostile},
        {"sheet", "edition", "EEL", "--template", "d" + hostile},
        {"completion", "bash" + hostile},
        {"hang", "EEL:1", "line" + hostile},
        {"enter", "lot", "x" + hostile, "lotKind=ink"},
        {"enter", "lot", "x", "lotKind=ink" + hostile},
        {"enter", "lot", "x", "lotKi" + hostile + "=ink"},
        {"enter", "lot", "x", "lotKind=ink", "colourWords=a" + hostile},
        {"take-in", "nowhere" + hostile},
        {"take-book", "nowhere" + hostile},
        {"check-bag", "nowhere" + hostile},
        {"check-sheet", "nowhere" + hostile},
        {"take-readings", "nowhere" + hostile},
        {"take-light-log", "nowhere" + hostile},
        {"take-table", "nowhere" + hostile},
        {"restore", "nowhere" + hostile},
        {"salvage", "nowhere" + hostile, "x"},
        {"attach", "nowhere" + hostile, "--edition", "EEL"},
        {"write-table", "lot", "--out", "nowhere" + hostile + "/x"},
        {"back-up", "nowhere" + hostile + "/x"},
        {"give-out", "nowhere" + hostile},
        {"day", "--from", "nowhere" + hostile},
    };
    for (std::vector<std::string> words : wrong) {
        words.insert(words.begin(), "rackbook");
        const Ran run = harmless(words);
        EXPECT_GE(run.exitCode, 2) << printable(joined(words, " "));
        EXPECT_EQ(run.err.substr(0, 10), "rackbook: ");
    }
}

TEST_F(HostileBookTest, QuotesFilesHarmlessly) {
    const std::string name = "f\x1b[2J\u202E\r\x07";
    std::filesystem::create_directories(name + "/.hidden" + name);
    test::putFile(name + "/" + name + ".json",
                  "{\"record\":\"lot" + std::string("\\u001b[2J") + "\",\"a\\u202e\":1}");
    std::filesystem::create_symlink("/etc/passwd", name + "/link" + name + ".json");
    const Ran refused = harmless({"rackbook", "take-in", name});
    EXPECT_EQ(refused.exitCode, 3);
    EXPECT_NE(refused.err.find("f\\u001B[2J"), std::string::npos) << refused.err;
    test::putFile(name + "/" + name + ".json", "[]");
    const Ran passed = harmless({"rackbook", "take-in", name});
    EXPECT_NE(passed.out.find("link"), std::string::npos) << passed.out;
    test::putFile(name + ".csv", "a" + name + ";b\n1;2\n");
    harmless({"rackbook", "take-table", name + ".csv", "lot", "--propose"});
    harmless({"rackbook", "take-readings", name + ".csv"});
    harmless({"rackbook", "take-light-log", name + ".csv", "--place", "wall"});
    harmless({"rackbook", "write-table", "lot", "--out", name + "-out.csv"});
    harmless({"rackbook", "write-out", name + "-out"});
    harmless({"rackbook", "write-bag", name + "-bag"});
    harmless({"rackbook", "check-bag", name + "-bag"});
    std::filesystem::create_directories(name + "-bag/data/" + name);
    test::putFile(name + "-bag/data/" + name + "/" + name, "x");
    harmless({"rackbook", "check-bag", name + "-bag"});
    harmless({"rackbook", "back-up", name + ".rackbook"});
    harmless({"rackbook", "today"});
    harmless({"rackbook", "verify", "--book", name + ".rackbook"});
    harmless({"rackbook", "list", "lot", "--book", name + ".rackbook"});
    harmless({"rackbook", "sheet", "edition", "EEL", "--out", name + ".pdf"});
}

// Beside the book lie a lock and a note of the last backup, which anybody may have written.
TEST_F(HostileBookTest, QuotesTheFilesBesideTheBookHarmlessly) {
    runOf({"rackbook", "back-up", "copy.rackbook"});
    nlohmann::json note = nlohmann::json::parse(test::bytesOf("studio.rackbook.backed-up"));
    note["file"] = "copy" + hostile;
    note["madeAt_s"] = 0;
    test::putFile("studio.rackbook.backed-up", note.dump());
    const Ran today = harmless({"rackbook", "today"});
    EXPECT_LE(today.exitCode, 1) << today.err;
    harmless({"rackbook", "today", "--json"});
    // As QLockFile writes it: process, program, machine.
    test::putFile("studio.rackbook.lock",
                  std::to_string(getppid()) + "\nprog" + hostile + "\nhost" + hostile + "\n\n\n");
    const Ran locked = harmless({"rackbook", "hang", "EEL:1", "line", "--wait", "0"});
    EXPECT_NE(locked.exitCode, 0);
}

// RFC 5545: lines end with CR LF, and texts hold no other control characters.
TEST_F(HostileBookTest, GoesIntoNoCalendar) {
    const Ran run = harmless({"rackbook", "forecast", "--on", "2026-03-20", "--calendar", "c.ics"});
    if (!std::filesystem::exists("c.ics")) {
        EXPECT_NE(run.err.find("control character"), std::string::npos) << run.err << run.out;
        return;
    }
    std::string text = test::bytesOf("c.ics");
    for (std::size_t at = 0; (at = text.find("\r\n", at)) != std::string::npos;)
        text.replace(at, 2, "\n");
    expectHarmless(text, "calendar");
}

}  // namespace
}  // namespace rackbook
