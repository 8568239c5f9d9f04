#include "store/AttachmentBytes.h"

#include <gtest/gtest.h>

#include <map>

#include "StoreBook.h"
#include "base/Sha256.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::entriesOf;
using test::termsOfTest;
using test::textOfProblems;

// With zeros and every other byte in it.
std::string everyByte() {
    std::string bytes;
    for (int i = 0; i < 1024; ++i)
        bytes += static_cast<char>(i);
    return bytes;
}

Attachment attachmentOf(const std::string& id, const std::string& bytes) {
    Attachment attachment;
    attachment.id = id;
    attachment.sha256 = sha256(bytes);
    attachment.mediaType = "image/png";
    return attachment;
}

class AttachmentBytesTest : public test::StoreBook {
protected:
    IntakeTerms terms() {
        IntakeTerms terms = termsOfTest();
        terms.bytesOf = [this](const std::string& hash) -> std::optional<std::string> {
            m_asked.push_back(hash);
            const auto found = m_files.find(hash);
            return found == m_files.end() ? std::nullopt : std::optional(found->second);
        };
        return terms;
    }
    void offer(const std::string& bytes) { m_files[sha256(bytes)] = bytes; }
    void offerWrongly(const std::string& hash, const std::string& bytes) { m_files[hash] = bytes; }
    std::string takeThem(const std::vector<Record>& records, const IntakeTerms& how) {
        m_asked.clear();
        return textOfProblems(take(book(), entriesOf(records), how));
    }
    std::string takeThem(const std::vector<Record>& records) { return takeThem(records, terms()); }
    const std::vector<std::string>& asked() const { return m_asked; }
    std::int64_t kept() { return numberFrom("SELECT count(*) FROM \"attachmentBytes\""); }
    std::string findings() {
        std::string text;
        for (const Finding& finding : verify(book(), decodeRecord).findings)
            text += describe(finding) + "\n";
        return text;
    }

private:
    std::map<std::string, std::string> m_files;
    std::vector<std::string> m_asked;
};

TEST_F(AttachmentBytesTest, ComeInWithTheirRecordAndComeBack) {
    offer(everyByte());
    EXPECT_EQ(takeThem({attachmentOf("a", everyByte())}), "");
    reopen();
    EXPECT_TRUE(attachmentBytes(book(), sha256(everyByte())) == everyByte());
    EXPECT_FALSE(attachmentBytes(book(), sha256("others")));
}

TEST_F(AttachmentBytesTest, AreAskedForOnce) {
    offer(everyByte());
    takeThem({attachmentOf("a", everyByte())});
    EXPECT_EQ(asked().size(), 1u);
    EXPECT_EQ(takeThem({attachmentOf("a", everyByte()), attachmentOf("b", everyByte())}), "");
    EXPECT_TRUE(asked().empty());
    EXPECT_EQ(kept(), 1);
}

TEST_F(AttachmentBytesTest, MayComeLaterThanTheirRecord) {
    EXPECT_EQ(takeThem({attachmentOf("a", everyByte())}), "");
    EXPECT_EQ(verify(book(), decodeRecord).withoutBytes, std::vector<std::string>{"a"});
    EXPECT_EQ(kept(), 0);
    offer(everyByte());
    EXPECT_EQ(takeThem({attachmentOf("a", everyByte())}), "");
    EXPECT_EQ(kept(), 1);
    EXPECT_EQ(verify(book(), decodeRecord).withoutBytes, std::vector<std::string>{});
    EXPECT_EQ(verify(book(), decodeRecord).bytesKept, 1);
}

TEST_F(AttachmentBytesTest, OfAnotherHashAreRefusedWithTheRecord) {
    const std::string hash = sha256(everyByte());
    offerWrongly(hash, "something else");
    EXPECT_EQ(takeThem({attachmentOf("a", everyByte())}),
              "0 /sha256: the file that was given has another hash (" + hash +
                  "). Give the file that was attached.");
    EXPECT_EQ(kept(), 0);
    EXPECT_EQ(numberFrom("SELECT count(*) FROM journal"), 0);
}

TEST_F(AttachmentBytesTest, StayOutWhereTheRecordsAreRefusedOrOnlyTried) {
    offer(everyByte());
    Attachment dangling = attachmentOf("b", "no");
    dangling.edition = Ref<Edition>{"none"};
    EXPECT_NE(takeThem({attachmentOf("a", everyByte()), dangling}), "");
    EXPECT_EQ(kept(), 0);
    IntakeTerms tried = terms();
    tried.dryRun = true;
    EXPECT_EQ(takeThem({attachmentOf("a", everyByte())}, tried), "");
    EXPECT_EQ(asked().size(), 1u);
    EXPECT_EQ(kept(), 0);
}

TEST_F(AttachmentBytesTest, GoWithTheLastRecordThatNamesThem) {
    offer(everyByte());
    takeThem({attachmentOf("a", everyByte()), attachmentOf("b", everyByte())});
    IntakeTerms struck = terms();
    struck.reason = "another print";
    for (const char* id : {"a", "b"}) {
        EXPECT_EQ(kept(), 1);
        std::vector<Entry> entries = entriesOf({attachmentOf(id, everyByte())});
        entries.front().strikes = true;
        EXPECT_EQ(textOfProblems(take(book(), entries, struck)), "");
    }
    EXPECT_EQ(kept(), 0);
    EXPECT_EQ(findings(), "");
}

TEST_F(AttachmentBytesTest, AreChangedForOthersByACorrection) {
    offer(everyByte());
    offer("sharper");
    takeThem({attachmentOf("a", everyByte())});
    IntakeTerms corrected = terms();
    corrected.reason = "the wrong file";
    EXPECT_EQ(takeThem({attachmentOf("a", "sharper")}, corrected), "");
    EXPECT_EQ(kept(), 1);
    EXPECT_EQ(attachmentBytes(book(), sha256("sharper")), "sharper");
}

TEST_F(AttachmentBytesTest, AreFoundDamagedAndMendedByTheSameFile) {
    offer(everyByte());
    takeThem({attachmentOf("a", everyByte())});
    tamper("UPDATE \"attachmentBytes\" SET \"bytes\" = X'00'");
    reopen();
    EXPECT_EQ(findings(),
              "attachment a: its bytes are not those that were recorded. Take in or attach the "
              "same file again, or restore the last backup.\n");
    EXPECT_EQ(test::messageOf<StoreError>([&] { attachmentBytes(book(), sha256(everyByte())); }),
              path() + ": the bytes of the attachment " + sha256(everyByte()) +
                  " are damaged. Take in or attach the same file again, or restore the last "
                  "backup.");
    EXPECT_EQ(takeThem({attachmentOf("a", everyByte())}), "");
    EXPECT_EQ(findings(), "");
}

TEST_F(AttachmentBytesTest, AreFoundWhereTheyBelongToNoRecord) {
    const std::string hash = sha256("stray");
    book();
    tamper("INSERT INTO \"attachmentBytes\" VALUES ('" + hash + "', CAST('stray' AS BLOB))");
    reopen();
    EXPECT_EQ(findings(), "file " + hash +
                              ": it is in the book and belongs to no record. Keep the file as it "
                              "is and restore the last backup.\n");
}

TEST_F(AttachmentBytesTest, StayWhereTheTablesAreMadeAgain) {
    offer(everyByte());
    takeThem({attachmentOf("a", everyByte())});
    rebuild(book(), decodeRecord);
    EXPECT_TRUE(attachmentBytes(book(), sha256(everyByte())) == everyByte());
    EXPECT_EQ(findings(), "");
}

}  // namespace
}  // namespace rackbook
