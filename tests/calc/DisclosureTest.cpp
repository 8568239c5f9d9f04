#include "calc/Disclosure.h"

#include <gtest/gtest.h>

#include <set>

namespace rackbook {
namespace {

TEST(Disclosure, ListsEachItemOnce) {
    std::set<std::string> seen;
    for (const DisclosureItem& item : disclosureItems())
        EXPECT_TRUE(seen.insert(item.item).second) << item.item;
    EXPECT_EQ(seen.size(), 15u);
}

TEST(Disclosure, LeavesUnansweredItemsOpen) {
    for (const DisclosureRow& row : disclosureOf(Edition{})) {
        EXPECT_FALSE(row.answer) << row.item;
        EXPECT_TRUE(row.isListed);
    }
}

TEST(Disclosure, KeepsAnswersAndItemsThatAreNotListed) {
    Edition edition;
    edition.disclosures = {{"framing", DisclosureAnswer::notApplicable, {}},
                           {"workshop", DisclosureAnswer::stated, "At the weir"}};
    const std::vector<DisclosureRow> rows = disclosureOf(edition);
    ASSERT_EQ(rows.size(), disclosureItems().size() + 1);
    EXPECT_EQ(rows.back().item, "framing");
    EXPECT_FALSE(rows.back().isListed);
    EXPECT_EQ(rows.back().answer, DisclosureAnswer::notApplicable);
    EXPECT_EQ(rows[rows.size() - 2].item, "workshop");
    EXPECT_EQ(rows[rows.size() - 2].answer, DisclosureAnswer::stated);
    EXPECT_EQ(rows[rows.size() - 2].text, "At the weir");
}

}  // namespace
}  // namespace rackbook
