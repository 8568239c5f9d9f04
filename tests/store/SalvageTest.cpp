// Books damaged at random places, always the same ones: nothing that comes out was not in them.
#include "store/Salvage.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <random>

#include "StoreBook.h"
#include "base/Sha256.h"
#include "store/JournalEnd.h"
#include "store/NewBook.h"
#include "store/RecordReader.h"

namespace rackbook {
namespace {

using test::correctionProblems;
using test::entriesOf;
using test::takeSound;
using test::termsOfTest;
using test::textOfProblems;

#ifdef RACKBOOK_SANITIZED
constexpr int seeds = 6;
#else
constexpr int seeds = 16;
#endif

class SalvageTest : public test::StoreBook {
protected:
    SalvageTest() {
        takeSound(book(), test::namedRecords());
        std::vector<Record> mixes;
        for (int i = 0; i < 120; ++i)
            mixes.push_back(mixNamed(i, std::string(static_cast<std::size_t>(i) * 9, 'n')));
        takeSound(book(), mixes);
        EXPECT_EQ(correctionProblems(book(), {mixNamed(7, "corrected"), mixNamed(9, "too")}), "");
        m_bytes = std::string(30000, 'p') + "icture";
        Attachment attachment;
        attachment.id = "picture";
        attachment.mediaType = "image/jpeg";
        attachment.sha256 = sha256(m_bytes);
        IntakeTerms terms = termsOfTest();
        terms.bytesOf = [&](const std::string&) { return std::optional(m_bytes); };
        EXPECT_EQ(textOfProblems(take(book(), entriesOf({attachment}), terms)), "");
        noteRecorded();
        m_entries = journalLength(book());
        m_lastHash = journalEndOf(book()).hash;
        close();
        m_whole = test::bytesOf(path());
    }

    void noteRecorded() {
        Statement rows = database().prepare("SELECT kind, id, payload FROM journal");
        while (rows.step())
            m_recorded.emplace(rows.text(0) + " " + rows.text(1), rows.text(2));
    }

    static Mix mixNamed(int number, const std::string& name) {
        Mix mix;
        mix.id = "mix-" + std::to_string(number);
        mix.name = name.empty() ? "n" : name;
        return mix;
    }

    // What comes out of these bytes, after what must always hold was looked at.
    Salvaged salvaged(const std::string& bytes) {
        test::putFile(path(), bytes);
        BookOptions target = options();
        target.path = folder().file("found.book");
        std::filesystem::remove(target.path);
        NewBook made(target);
        const Salvaged found = salvage(path(), made.book(), decodeRecord);
        EXPECT_EQ(test::bytesOf(path()), bytes) << "the damaged book was changed";
        EXPECT_EQ(findingsIn(made.book()), "");
        EXPECT_EQ(journalLength(made.book()), found.entries);
        EXPECT_EQ(found.isSameJournal && found.entries == m_entries,
                  journalEndOf(made.book()).hash == m_lastHash);
        Database& kept = *made.book().inner().database;
        Statement rows = kept.prepare("SELECT kind, id, payload FROM journal");
        while (rows.step()) {
            const std::string name = rows.text(0) + " " + rows.text(1);
            const auto [first, last] = m_recorded.equal_range(name);
            EXPECT_TRUE(std::any_of(first, last,
                                    [&](const auto& one) { return one.second == rows.text(2); }))
                << name << " was never recorded so";
        }
        Statement files = kept.prepare("SELECT bytes FROM attachmentBytes");
        while (files.step())
            EXPECT_EQ(files.text(0), m_bytes);
        // Whatever is not there is told.
        EXPECT_TRUE(found.entries == m_entries || !found.losses.empty());
        return found;
    }

    static std::string findingsIn(const BookFile& one) {
        std::string text;
        for (const Finding& finding : verify(one, decodeRecord).findings)
            text += describe(finding) + "\n";
        return text;
    }

    std::string m_bytes;
    std::multimap<std::string, std::string> m_recorded;  // kind and id: payloads
    std::int64_t m_entries = 0;
    std::string m_lastHash;
    std::string m_whole;
};

TEST_F(SalvageTest, KeepsAllOfAWholeBook) {
    const Salvaged found = salvaged(m_whole);
    EXPECT_EQ(found.entries, m_entries);
    EXPECT_EQ(found.files, 1);
    EXPECT_TRUE(found.isSameJournal);
    EXPECT_TRUE(found.losses.empty());
}

TEST_F(SalvageTest, KeepsAllWhereOnlyTheBeginningIsGone) {
    std::string bytes = m_whole;
    std::fill_n(bytes.begin(), 4096, '\0');
    EXPECT_EQ(salvaged(bytes).entries, m_entries);
}

TEST_F(SalvageTest, InventsNothingWhereBytesAreChanged) {
    std::int64_t kept = 0;
    for (int seed = 0; seed < seeds; ++seed) {
        SCOPED_TRACE(seed);
        std::mt19937 random(static_cast<unsigned>(seed));
        std::string bytes = m_whole;
        const int changes = 1 << (seed % 10);
        for (int i = 0; i < changes; ++i)
            bytes[random() % bytes.size()] = static_cast<char>(random());
        kept += salvaged(bytes).entries;
    }
    EXPECT_GT(kept, seeds * m_entries / 2);
    EXPECT_LT(kept, seeds * m_entries);
}

TEST_F(SalvageTest, InventsNothingWherePagesAreGone) {
    std::int64_t kept = 0;
    for (int seed = 0; seed < seeds; ++seed) {
        SCOPED_TRACE(seed);
        std::mt19937 random(static_cast<unsigned>(seed));
        std::string bytes = m_whole;
        const std::size_t pages = bytes.size() / 4096;
        for (int i = 0; i < 1 + seed % 7; ++i) {
            const std::size_t from = random() % pages * 4096;
            const std::string other = m_whole.substr(random() % pages * 4096, 4096);
            // Emptied, or overwritten with another page, as a failing disk does.
            bytes.replace(from, 4096, i % 2 == 0 ? std::string(4096, '\0') : other);
        }
        kept += salvaged(bytes).entries;
    }
    EXPECT_GT(kept, seeds * m_entries / 2);
    EXPECT_LT(kept, seeds * m_entries);
}

TEST_F(SalvageTest, ReadsWhatIsLeftOfACutFile) {
    for (int seed = 0; seed < seeds; ++seed) {
        SCOPED_TRACE(seed);
        std::mt19937 random(static_cast<unsigned>(seed));
        const Salvaged found = salvaged(m_whole.substr(0, random() % m_whole.size()));
        EXPECT_FALSE(found.losses.empty() && found.entries < m_entries);
    }
}

TEST_F(SalvageTest, TellsWhatIsLostByEntryAndRecord) {
    std::string bytes = m_whole;
    // The record of a mix, in the journal alone.
    const std::size_t at = bytes.find("\"id\":\"mix-100\"");
    ASSERT_NE(at, std::string::npos);
    bytes[at + 8] = 'M';
    const Salvaged found = salvaged(bytes);
    EXPECT_EQ(found.entries, m_entries - 1);
    ASSERT_EQ(found.losses.size(), 1u);
    EXPECT_EQ(found.losses[0].what.substr(found.losses[0].what.find(", ")), ", mix mix-100");
    EXPECT_EQ(found.losses[0].cause, "its record is damaged");
}

// Records that name a lost one have no place, and are handed over as they are.
TEST_F(SalvageTest, LeavesOutWhatNamesTheLost) {
    std::string bytes = m_whole;
    const std::string lost = "{\"record\":\"edition\"";
    std::size_t at = bytes.find(lost);
    ASSERT_NE(at, std::string::npos);
    for (; at != std::string::npos; at = bytes.find(lost, at))
        bytes[at + 2] = 'R';
    const Salvaged found = salvaged(bytes);
    EXPECT_LT(found.entries, m_entries);
    ASSERT_FALSE(found.notPlaced.empty());
    for (const std::string& payload : found.notPlaced)
        EXPECT_TRUE(std::any_of(m_recorded.begin(), m_recorded.end(),
                                [&](const auto& one) { return one.second == payload; }));
}

TEST_F(SalvageTest, FindsNothingInOtherFiles) {
    test::putFile(path(), "");
    BookOptions target = options();
    target.path = folder().file("found.book");
    NewBook made(target);
    EXPECT_EQ(salvage(path(), made.book(), decodeRecord).entries, 0);
    test::putFile(path(), std::string(100000, '\x02'));
    EXPECT_EQ(salvage(path(), made.book(), decodeRecord).entries, 0);
}

}  // namespace
}  // namespace rackbook
