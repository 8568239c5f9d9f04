// Texts that are trouble, through a whole book: in, out, in again, by a bag, and onto sheets.
#include <gtest/gtest.h>

#include <filesystem>
#include <set>

#include "Script.h"
#include "base/Files.h"
#include "base/Text.h"
#include "exchange/RecordCodec.h"
#include "exchange/RecordFiles.h"
#include "support/NaughtyFill.h"
#include "support/NaughtyTexts.h"
#include "support/RunShell.h"
#include "support/SampleRecords.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

std::string run(const std::string& command) {
    return transcriptOf(splitWords(command));
}

bool says(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

// What would be one thing twice.
struct TellApart {
    template <class R>
    void operator()(R&, int) const {}
    void operator()(Edition& r, int number) const { r.code = "code-" + std::to_string(number); }
    void operator()(Layer& r, int number) const { r.ordinal = 100 + number; }
    void operator()(Impression& r, int number) const { r.workingNumber = 5000 + number; }
};

// One record of every kind but the book's own for each text, with that text wherever one may be.
std::vector<Record> naughtyRecords() {
    std::vector<Record> records;
    std::set<RecordKind> kinds;
    for (const Record& full : test::fullRecords()) {
        if (kindOf(full) == RecordKind::book || !kinds.insert(kindOf(full)).second)
            continue;
        int number = 0;
        for (const test::NaughtyText& one : test::keptNaughtyTexts()) {
            Record record = full;
            test::visitFields(record, test::NaughtyFill(normalised(one.text)));
            std::visit(
                [&](auto& r) {
                    r.id += "-" + std::to_string(number);
                    TellApart{}(r, number++);
                },
                record);
            records.push_back(std::move(record));
        }
    }
    return records;
}

std::set<std::string> payloadsBelow(const std::string& folder) {
    RecordFileReader reader(std::string(RACKBOOK_SOURCE) + "/schema");
    for (const std::string& path : filesBelow(folder, ".json").paths)
        reader.read(path, test::bytesOf(path));
    EXPECT_TRUE(reader.findings().empty());
    std::set<std::string> payloads;
    for (const IncomingRecord& incoming : reader.records())
        payloads.insert(incoming.payload);
    return payloads;
}

std::string difference(const std::string& one, const std::string& other) {
    return test::runOn("", "diff -rq " + one + " " + other).output;
}

// Takes in by record files; `whole` is all of them.
std::set<std::string> takeNaughtyRecords() {
    std::vector<std::string> payloads;
    for (const Record& record : test::namedRecords())
        payloads.push_back(encodeRecord(record));
    for (const Record& record : naughtyRecords())
        payloads.push_back(encodeRecord(record));
    test::putFile("naughty.json", recordFileText(payloads));
    EXPECT_FALSE(says(run("rackbook begin --studio Shed --time-zone Europe/Copenhagen"), "\n["));
    const std::string taken = run("rackbook take-in naughty.json");
    EXPECT_TRUE(says(taken, "taken into")) << taken.substr(0, 3000);
    return {payloads.begin(), payloads.end()};
}

TEST(NaughtyBook, ComesBackEqualByFiles) {
    const FreshFolder folder;
    const std::set<std::string> given = takeNaughtyRecords();
    ASSERT_GT(given.size(), 2000u);
    run("rackbook write-out --with-contacts one");
    std::set<std::string> missing = given;
    for (const std::string& payload : payloadsBelow("one"))
        missing.erase(payload);
    EXPECT_TRUE(missing.empty()) << missing.size() << " of them, " << *missing.begin();

    EXPECT_FALSE(says(run("rackbook begin --book two.rackbook"), "\n["));
    EXPECT_TRUE(says(run("rackbook take-in one --book two.rackbook"), "taken into"));
    run("rackbook write-out --with-contacts two --book two.rackbook");
    EXPECT_EQ(difference("one", "two"), "");
}

// Where a text cannot be set on a sheet there is no bag; places stand on none that goes into one.
TEST(NaughtyBook, ComesBackEqualByBag) {
    const FreshFolder folder;
    runScript("studio");
    std::vector<std::string> payloads;
    for (const test::NaughtyText& one : test::keptNaughtyTexts()) {
        Place place;
        place.id = "p" + std::to_string(payloads.size());
        place.name = one.text.size() > 60 ? place.id : normalised(one.text);
        place.note = normalised(one.text);
        payloads.push_back(encodeRecord(place));
    }
    test::putFile("places.json", recordFileText(payloads));
    const std::string taken = run("rackbook take-in places.json");
    ASSERT_TRUE(says(taken, "taken into")) << taken.substr(0, 2000);
    const std::string packed = run("rackbook write-bag --with-contacts bag");
    ASSERT_TRUE(says(packed, "bag is a bag now")) << packed;
    EXPECT_TRUE(says(run("rackbook check-bag bag"), "is what was packed"));
    const std::string again = run("rackbook take-bag bag --book again.rackbook");
    EXPECT_TRUE(says(again, "every one with its hash as it was recorded")) << again;
    run("rackbook write-out --with-contacts one");
    run("rackbook write-out --with-contacts two --book again.rackbook");
    EXPECT_EQ(difference("one", "two"), "");
}

// Poppler reads the words; Python folds both by Unicode's compatible forms and drops what is not
// seen. Said are the files in which something is not as it should be.
constexpr const char* readSheets = R"(
import glob, re, subprocess, unicodedata as u
def seen(s):
    return ''.join(c for c in u.normalize('NFKC', s) if not c.isspace() and u.category(c) != 'Cf')
for f in sorted(glob.glob('s-*.pdf')):
    check = subprocess.run(['qpdf', '--check', f], capture_output=True, text=True)
    text = subprocess.run(['pdftotext', '-enc', 'UTF-8', f, '-'], capture_output=True).stdout.decode()
    odd = [hex(ord(c)) for c in text if u.category(c) == 'Cc' and c not in '\n\f']
    wanted = open(f[:-4] + '.txt', encoding='utf-8', newline='').read()
    if check.returncode != 0: print(f, check.stdout, check.stderr)
    if odd: print(f, odd)
    if seen(wanted) not in seen(text): print(f, ascii(wanted), 'is not in', ascii(text[:300]))
)";

TEST(NaughtyBook, StandsOnSheetsOrIsRefusedByTheCharacter) {
    const FreshFolder folder;
    runScript("studio");
    int made = 0;
    int number = 0;
    int seen = 0;
    for (const test::NaughtyText& one : test::keptNaughtyTexts()) {
        // Each takes a fifth of a second with its sheet: every third will do.
        if (one.text.size() > 80 || ++seen % 3 != 0)
            continue;
        const std::string file = "s-" + std::to_string(number++);
        const std::string entered =
            transcriptOf({"rackbook", "enter", "edition", "TIDE", "title=" + std::string(one.text),
                          "--reason", "another"});
        EXPECT_TRUE(says(entered, "Recorded")) << one.name << entered;
        const std::string transcript = run("rackbook sheet edition TIDE --out " + file + ".pdf");
        test::putFile(file + ".txt", std::string(one.text));
        if (std::filesystem::exists(file + ".pdf")) {
            ++made;
            continue;
        }
        EXPECT_TRUE(says(transcript, "[3]")) << one.name << transcript;
        EXPECT_TRUE(says(transcript, "U+")) << one.name << transcript;
    }
    EXPECT_GT(made, 20);
    test::putFile("read.py", readSheets);
    const test::ShellResult read = test::runOn("", "python3 read.py");
    EXPECT_EQ(read.output, "");
    EXPECT_EQ(read.exitCode, 0);
}

// By the options of verbs, too: refused, or in the book as it was given.
TEST(NaughtyBook, TakesOptionsAsTheyAre) {
    const FreshFolder folder;
    runScript("studio");
    int number = 0;
    for (const test::NaughtyText& one : test::naughtyTexts) {
        if (one.text.find('\0') != std::string_view::npos)
            continue;  // no argument of a program holds one
        const std::string text(one.text);
        const std::string id = "p" + std::to_string(number++);
        const std::string before = stateOfBook();
        const std::string said =
            transcriptOf({"rackbook", "enter", "place", id, "placeKind=rack", "name=" + text});
        if (!says(said, "Recorded in")) {
            EXPECT_FALSE(one.isKept) << one.name << said;
            EXPECT_TRUE(says(said, "name")) << one.name << said;
            EXPECT_EQ(stateOfBook(), before) << one.name;
            continue;
        }
        EXPECT_TRUE(one.isKept) << one.name;
        if (one.isKept) {
            const std::string json = run("rackbook write-out --kind place -");
            RecordFileReader reader(std::string(RACKBOOK_SOURCE) + "/schema");
            reader.read("out", json);
            ASSERT_FALSE(reader.records().empty());
            EXPECT_EQ(std::get<Place>(reader.records().back().record).name, normalised(text))
                << one.name;
        }
        run("rackbook strike place " + id + " --reason again");
    }
}

}  // namespace
}  // namespace rackbook
