// Record files with one defect each, named for it, and beside each the exact words that it is
// refused with: files/<defect>.json and files/<defect>.expected. A file is read into a book that
// already holds files/sound-book.json.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <ostream>

#include "base/Files.h"
#include "exchange/RecordFiles.h"
#include "store/BookFile.h"
#include "store/Intake.h"
#include "store/RecordReader.h"
#include "support/Paths.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

const std::string& filesFolder() {
    static const std::string folder = test::sourcePath("tests/broken/files");
    return folder;
}

constexpr const char* soundBook = "sound-book";

std::vector<std::string> defects() {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(filesFolder()))
        if (entry.path().extension() == ".json" && entry.path().stem() != soundBook)
            names.push_back(entry.path().stem().string());
    std::sort(names.begin(), names.end());
    return names;
}

// Everything that is said against a text, a finding a line; what could be read is tried with the
// book too.
std::string refusalOf(BookFile& book, const std::string& file, const std::string& text) {
    RecordFileReader reader(test::schemaFolder());
    reader.read(file, text);
    std::vector<Finding> findings = reader.findings();
    std::vector<Entry> entries;
    for (const IncomingRecord& incoming : reader.records())
        entries.push_back({incoming.record, incoming.payload, {}});
    IntakeTerms terms;
    terms.recordedBy = "printer";
    terms.recordedAt = "2026-03-04T08:30:00Z";
    terms.dryRun = !findings.empty();
    const IntakeResult result = take(book, entries, terms);
    for (const IntakeProblem& problem : result.problems) {
        Finding finding;
        finding.where = reader.locate({{problem.index, problem.pointer}}).front();
        finding.what = problem.what;
        finding.value = problem.value;
        finding.remedy = problem.remedy;
        findings.push_back(std::move(finding));
    }
    std::string words;
    for (const Finding& finding : findings)
        words += describe(finding) + "\n";
    return words;
}

class BrokenFiles : public testing::TestWithParam<std::string> {
protected:
    BrokenFiles()
        : m_book(BookFile::create({m_folder.file("studio.book"), test::schemaFolder(), 0})) {
        const std::string sound = pathOf(filesFolder(), std::string(soundBook) + ".json");
        EXPECT_EQ(refusalOf(m_book, sound, test::bytesOf(sound)), "");
    }

    BookFile& book() { return m_book; }

private:
    test::TempFolder m_folder;
    BookFile m_book;
};

TEST_P(BrokenFiles, AreRefusedWithTheirExactWords) {
    const std::size_t before = everythingIn(book()).size();
    const std::string name = GetParam() + ".json";
    const std::string words = refusalOf(book(), name, test::bytesOf(pathOf(filesFolder(), name)));
    EXPECT_NE(words, "");
    EXPECT_EQ(words, test::bytesOf(pathOf(filesFolder(), GetParam() + ".expected")));
    EXPECT_EQ(everythingIn(book()).size(), before);
}

INSTANTIATE_TEST_SUITE_P(All, BrokenFiles, testing::ValuesIn(defects()), [](const auto& one) {
    std::string name = one.param;
    std::replace(name.begin(), name.end(), '-', '_');
    return name;
});

TEST_F(BrokenFiles, EachHasItsWords) {
    ASSERT_GT(defects().size(), 20u);
    for (const auto& entry : std::filesystem::directory_iterator(filesFolder()))
        if (entry.path().extension() == ".expected") {
            EXPECT_TRUE(std::filesystem::exists(entry.path().parent_path() /
                                                (entry.path().stem().string() + ".json")))
                << entry.path();
        }
}

// Too large to lie beside the others.
TEST_F(BrokenFiles, NestedDeeplyAreRefused) {
    std::string text = R"({"record":"mix","id":"m","name":)";
    for (int i = 0; i < 100000; ++i)
        text += "[";
    EXPECT_EQ(refusalOf(book(), "deep-nesting.json", text),
              "deep-nesting.json:1: it is nested deeper than 64 levels. No record is; check the "
              "file.\n");
}

TEST_F(BrokenFiles, WithAHugeTextAreRefused) {
    const std::string text = R"({"record":"mix","id":"m","purpose":"stock","name":")" +
                             std::string(10 << 20, 'x') + "\"}";
    EXPECT_EQ(refusalOf(book(), "huge-text.json", text),
              "huge-text.json:1 /name: the text is longer than 2000 characters (" +
                  std::string(60, 'x') + "…). It means: The name on the jar.\n");
}

}  // namespace
}  // namespace rackbook
