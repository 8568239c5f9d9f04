#include "exchange/TreeJson.h"

#include <gtest/gtest.h>

#include <cmath>

#include "support/MessageOf.h"
#include "support/SampleRecords.h"

namespace rackbook {
namespace {

TEST(TreeJson, KeepsTheOrderOfWriting) {
    const std::string text = "{\n  \"z\": 1,\n  \"a\": [\n    true,\n    null,\n    2.5\n  ]\n}\n";
    EXPECT_EQ(jsonText(treeFromJson(text, "t.json")), text);
}

TEST(TreeJson, HoldsEachKindOfValue) {
    const Tree tree = treeFromJson(R"([true, -3, 2.5, "é", null, {}, []])", "t.json");
    const Tree::Array& items = *tree.asArray();
    EXPECT_TRUE(*items[0].asBool());
    EXPECT_EQ(*items[1].asWhole(), -3);
    EXPECT_EQ(*items[2].asReal(), 2.5);
    EXPECT_EQ(*items[3].asText(), "é");
    EXPECT_TRUE(items[4].isNull());
    EXPECT_TRUE(items[5].asObject()->empty());
    EXPECT_TRUE(items[6].asArray()->empty());
}

TEST(TreeJson, HoldsNumbersBeyondWholeOnesAsRealOnes) {
    EXPECT_EQ(*treeFromJson("9223372036854775807", "t.json").asWhole(), INT64_MAX);
    EXPECT_EQ(*treeFromJson("18446744073709551615", "t.json").asReal(), 18446744073709551615.0);
}

TEST(TreeJson, WritesNullForNumbersThatAreNotFinite) {
    EXPECT_EQ(jsonText(Tree(std::nan(""))), "null\n");
    EXPECT_EQ(jsonText(Tree(HUGE_VAL)), "null\n");
}

TEST(TreeJson, RefusesLikeEveryReaderOfJson) {
    EXPECT_EQ(test::messageOf<InputError>([] { treeFromJson("{\"a\":1,\n\"a\":2}", "t.json"); }),
              "t.json:2: the name \"a\" stands twice in one object. Keep one of the two.");
}

TEST(TreeJson, ShowsARecordAsInItsFile) {
    Mix mix;
    mix.id = "grey";
    mix.name = "Grey stock";
    mix.drierFree = true;
    EXPECT_EQ(jsonText(treeOf(mix)),
              "{\n  \"record\": \"mix\",\n  \"id\": \"grey\",\n  \"name\": \"Grey stock\",\n  "
              "\"purpose\": \"stock\",\n  \"drierFree\": true\n}\n");
}

}  // namespace
}  // namespace rackbook
