// A book in a folder of its own, and the words most tests of the store begin with.
#pragma once

#include <gtest/gtest.h>

#include <memory>
#include <string>
#include <vector>

#include "exchange/RecordCodec.h"
#include "store/BookInner.h"
#include "store/Intake.h"
#include "store/Sqlite.h"
#include "store/Verification.h"
#include "support/Paths.h"
#include "support/SampleRecords.h"
#include "support/TempFolder.h"

namespace rackbook::test {

inline IntakeTerms termsOfTest() {
    IntakeTerms terms;
    terms.recordedBy = "printer";
    terms.recordedAt = "2026-03-04T08:30:00Z";
    return terms;
}

inline Entry entryOf(const Record& record) {
    return {record, encodeRecord(record), {}};
}

inline std::vector<Entry> entriesOf(const std::vector<Record>& records) {
    std::vector<Entry> entries;
    for (const Record& record : records)
        entries.push_back(entryOf(record));
    return entries;
}

inline std::string textOfProblem(const IntakeProblem& problem) {
    return std::to_string(problem.index) + " " + problem.pointer + ": " + problem.what + " (" +
           problem.value + "). " + problem.remedy;
}

inline std::string textOfProblems(const IntakeResult& result) {
    std::string text;
    for (const IntakeProblem& problem : result.problems)
        text += (text.empty() ? "" : "\n") + textOfProblem(problem);
    return text;
}

// Takes records that must be taken.
inline IntakeResult takeSound(BookFile& book, const std::vector<Record>& records) {
    const IntakeResult result = take(book, entriesOf(records), termsOfTest());
    EXPECT_EQ(textOfProblems(result), "");
    return result;
}

// Tries records that must be refused, and gives the problems.
inline std::string problemsOf(BookFile& book, const std::vector<Record>& records,
                              IntakeTerms terms = termsOfTest()) {
    const IntakeResult result = take(book, entriesOf(records), terms);
    EXPECT_TRUE(result.outcomes.empty() || result.problems.empty());
    return textOfProblems(result);
}

// Takes corrections, and gives the problems.
inline std::string correctionProblems(BookFile& book, const std::vector<Record>& records) {
    IntakeTerms terms = termsOfTest();
    terms.reason = "it was wrong";
    return problemsOf(book, records, terms);
}

class StoreBook : public testing::Test {
protected:
    std::string path() const { return m_folder.file("studio.book"); }
    BookOptions options(int wait_s = 0) const { return {path(), schemaFolder(), wait_s}; }

    // Made anew, open to write.
    BookFile& book() {
        if (!m_book)
            m_book = std::make_unique<BookFile>(BookFile::create(options()));
        return *m_book;
    }
    void close() { m_book.reset(); }
    void reopen() {
        m_book.reset();
        m_book = std::make_unique<BookFile>(BookFile::openToWrite(options()));
    }

    // Changes the closed file behind the program's back.
    void tamper(const std::string& sql) {
        close();
        Database database(path(), OpenMode::write, 0);
        database.execute(sql);
    }

    std::int64_t numberFrom(const std::string& sql) { return database().wholeOf(sql); }
    std::string textFrom(const std::string& sql) { return database().textOf(sql); }
    Database& database() { return *book().inner().database; }

    const TempFolder& folder() const { return m_folder; }

private:
    TempFolder m_folder;
    std::unique_ptr<BookFile> m_book;
};

}  // namespace rackbook::test
