#include "cli/CommandSpec.h"

#include <gtest/gtest.h>

#include "SampleSpecs.h"

namespace rackbook {
namespace {

std::vector<std::string> namesOf(const CommandSpec& spec) {
    std::vector<std::string> names;
    for (const OptionSpec& option : optionsOf(spec))
        names.push_back(option.name);
    return names;
}

using Names = std::vector<std::string>;

TEST(CommandSpec, OffersOnlyHelpWhereTheVerbHasNoTraits) {
    CommandSpec spec;
    spec.needsBook = false;
    EXPECT_EQ(namesOf(spec), Names({"help"}));
}

TEST(CommandSpec, AddsCommonOptionsByTrait) {
    CommandSpec spec;
    EXPECT_EQ(namesOf(spec), Names({"book", "said-on", "help"}));
    spec.reportsJson = true;
    EXPECT_EQ(namesOf(spec), Names({"book", "said-on", "json", "help"}));
    spec.writesBook = true;
    EXPECT_EQ(namesOf(spec), Names({"book", "json", "dry-run", "by", "wait", "help"}));
}

TEST(CommandSpec, KeepsOwnOptionsFirst) {
    EXPECT_EQ(namesOf(pullSpec()).front(), "mix");
    EXPECT_EQ(namesOf(pullSpec()).back(), "help");
}

TEST(CommandSpec, SaysWhereTheBookComesFrom) {
    EXPECT_EQ(optionsOf(CommandSpec{}).front().defaultText,
              "the environment variable RACKBOOK_BOOK, else studio.rackbook in the current folder");
}

TEST(CommandSpec, FindsNoFaultInGoodDescriptions) {
    for (const CommandSpec& spec : sampleSpecs())
        EXPECT_EQ(faultsOf(spec), Names()) << spec.name;
}

TEST(CommandSpec, FindsEveryFaultOfADescription) {
    CommandSpec spec;
    spec.name = "x";
    spec.positionals = {{"a", "A.", false, true}, {"b", "B.", true, false}};
    spec.options = {{"book", "FILE", "Mine.", false, false, "", {}},
                    {"c", "", "", false, false, "", {}}};
    EXPECT_EQ(faultsOf(spec), Names({
                                  "x: c has no help.",
                                  "x: the name book stands twice.",
                                  "x: the argument a is repeatable, but not the last.",
                                  "x: the argument b is required, but follows an optional one.",
                                  "x: there is no summary.",
                                  "x: there is no group.",
                              }));
}

}  // namespace
}  // namespace rackbook
