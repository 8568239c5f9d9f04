#include "checks/Audit.h"

#include <set>

#include "AuditFixture.h"

namespace rackbook {
namespace {

TEST(Audit, FindsNothingInASoundBook) {
    const build::Book book = soundBook();
    const AuditContext context(book.records, HouseRules(), build::on("2026-06-01").earliest());
    for (const Finding& finding : audit(context))
        ADD_FAILURE() << finding.rule << ": " << describe(finding);
}

TEST(Audit, FindsNothingInAnEmptyBook) {
    const RecordSet records;
    EXPECT_TRUE(audit(AuditContext(records, HouseRules(), 0)).empty());
}

TEST(Audit, RulesHaveNamesOfTheirOwnAndSummaries) {
    std::set<std::string> names;
    for (const AuditRule& rule : auditRules()) {
        EXPECT_TRUE(names.insert(rule.name).second) << rule.name;
        EXPECT_EQ(std::string(rule.name).find_first_not_of("abcdefghijklmnopqrstuvwxyz-"),
                  std::string::npos);
        const std::string summary = rule.summary;
        EXPECT_FALSE(summary.empty() || summary.back() == '.') << rule.name;
    }
}

TEST(Audit, RecordsWhoseReferencesAreMissingDoNoHarm) {
    build::Book book;
    book.layer("gone", 1).impressions("gone", 1, 2);
    book.pull("gone-layer1", "2026-03-04", {"gone-1", "lost-1"},
              [](Pull& r) { r.portion = Ref<Mix>{"lost"}; });
    book.pull("lost-layer", "2026-03-04", {"gone-1"});
    book.addLot("lost", "lost", 3, "2026-03-04").addMix("lost", "lost2", 3, "2026-03-04");
    book.move("lost", "2026-03-05", {"gone-1"}).move("lost2", "2026-03-06", {"gone-1"});
    book.look("2026-03-07", {"lost-1"}, Touch::dry, LookColour::trueColour);
    book.transfer(TransferKind::sale, "a", "b", "2026-03-08", {"lost-1", "gone-1"});
    const AuditContext context(book.records, HouseRules(), build::on("2026-06-01").earliest());
    EXPECT_NO_THROW(audit(context));
}

// An edition of thirty years ago, of which hardly anything is known, is no contradiction.
TEST(Audit, AnOldEditionKnownRoughlyGivesNotesOnly) {
    build::Book book;
    book.edition("old", [](Edition& r) {
        r.year = build::on("1996~");
        r.statement.reset();
        r.paper.reset();
        r.status = EditionStatus::closed;
        r.declaredNumbered = 30;
    });
    book.layer("old", 1).layer("old", 2, [](Layer& r) { r.extenderShare = 0.9; });
    book.impressions("old", 5, 12);
    book.place("drawer", PlaceKind::drawer);
    book.pull("old-layer1", "1995/1996", {})
        .pull("old-layer2", "1996", build::impressionIds("old", 5, 12));
    book.move("drawer", "1996~", build::impressionIds("old", 5, 10));
    const AuditContext context(book.records, HouseRules(), build::on("2026-06-01").earliest());
    Texts texts;
    for (const Finding& finding : audit(context))
        texts.push_back(textOf(finding));
    EXPECT_EQ(texts, (Texts{"note: edition old: no place is recorded for impressions 11,12. Record "
                            "a move that says where they are.",
                            "note: edition old: the paper and the statement are not recorded. "
                            "Record what is known; its sheets leave the rest out.",
                            "note: edition old: 2 pulls name no portion (pull1, pull2). Record the "
                            "portions; without them nothing is known of the ink but what the "
                            "layers remember."}));
}

}  // namespace
}  // namespace rackbook
