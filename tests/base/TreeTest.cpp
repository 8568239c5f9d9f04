#include "base/Tree.h"

#include <gtest/gtest.h>

namespace rackbook {
namespace {

TEST(Tree, HoldsEachKindOfValue) {
    EXPECT_TRUE(Tree().isNull());
    EXPECT_TRUE(*Tree(true).asBool());
    EXPECT_EQ(*Tree(3).asWhole(), 3);
    EXPECT_EQ(*Tree(2.5).asReal(), 2.5);
    EXPECT_EQ(*Tree("text").asText(), "text");
    EXPECT_EQ(Tree("text").asBool(), nullptr);
    EXPECT_EQ(Tree(3).asReal(), nullptr);
    EXPECT_TRUE(Tree::array().asArray()->empty());
    EXPECT_TRUE(Tree::object().asObject()->empty());
}

TEST(Tree, KeepsTheOrderOfItsMembers) {
    Tree tree;
    tree.set("z", 1).set("a", 2).set("m", Tree().add("x").add(nullptr));
    std::string names;
    for (const auto& [name, value] : *tree.asObject())
        names += name;
    EXPECT_EQ(names, "zam");
    EXPECT_EQ(*tree.find("a")->asWhole(), 2);
    EXPECT_EQ(tree.find("m")->asArray()->size(), 2u);
    EXPECT_EQ(tree.find("missing"), nullptr);
    EXPECT_EQ(Tree("no object").find("a"), nullptr);
}

}  // namespace
}  // namespace rackbook
