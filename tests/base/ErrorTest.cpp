#include "base/Error.h"

#include <gtest/gtest.h>

namespace rackbook {
namespace {

TEST(Error, ReadsWhereWhatAndWhatToDo) {
    EXPECT_STREQ(InputError("mix.json:3", "the mass is missing", "Add mass_g.").what(),
                 "mix.json:3: the mass is missing. Add mass_g.");
    EXPECT_STREQ(StoreError("", "the disk is full", "Make room.").what(),
                 "the disk is full. Make room.");
    EXPECT_STREQ(RenderError("a.pdf", "it ends with a stop.", "").what(),
                 "a.pdf: it ends with a stop.");
    EXPECT_STREQ(UsageError("no such command", "See --help.").what(),
                 "no such command. See --help.");
}

TEST(Error, HasOneExitCodeForEachKind) {
    EXPECT_EQ(UsageError("a", "b").exitCode(), ExitCode::usage);
    EXPECT_EQ(InputError("a", "b", "c").exitCode(), ExitCode::failure);
    EXPECT_EQ(StoreError("a", "b", "c").exitCode(), ExitCode::failure);
    EXPECT_EQ(RenderError("a", "b", "c").exitCode(), ExitCode::failure);
    EXPECT_EQ(static_cast<int>(ExitCode::success), 0);
    EXPECT_EQ(static_cast<int>(ExitCode::findings), 1);
    EXPECT_EQ(static_cast<int>(ExitCode::usage), 2);
    EXPECT_EQ(static_cast<int>(ExitCode::failure), 3);
}

Finding findingOf(const std::string& what, const std::string& value, const std::string& remedy) {
    Finding finding;
    finding.what = what;
    finding.value = value;
    finding.remedy = remedy;
    return finding;
}

TEST(Error, HoldsEverythingThatWasRefused) {
    const RefusedInput refused(
        {findingOf("one is wrong", "1", "Mend it."), findingOf("two is wrong", "", "")});
    EXPECT_STREQ(refused.what(), "one is wrong (1). Mend it.\ntwo is wrong.");
    EXPECT_EQ(refused.findings().size(), 2u);
    EXPECT_EQ(refused.exitCode(), ExitCode::failure);
}

TEST(Finding, NamesItsSeverity) {
    EXPECT_STREQ(severityName(Severity::note), "note");
    EXPECT_STREQ(severityName(Severity::warning), "warning");
    EXPECT_STREQ(severityName(Severity::error), "error");
}

TEST(Finding, SaysWhereItStandsAsFarAsItIsKnown) {
    EXPECT_EQ(describe(Location{}), "");
    EXPECT_EQ(describe(Location{"mix.json", 0, "", ""}), "mix.json");
    EXPECT_EQ(describe(Location{"mix.json", 12, "", ""}), "mix.json:12");
    EXPECT_EQ(describe(Location{"mix.json", 12, "/records/3/mass_g", "weighing w1"}),
              "mix.json:12 /records/3/mass_g weighing w1");
    EXPECT_EQ(describe(Location{"", 0, "", "mix grey"}), "mix grey");
}

TEST(Finding, ReadsLikeAnError) {
    Finding finding = findingOf("the mass is negative", "-3", "Give 0 or more.");
    finding.where = {"w.json", 2, "/mass_g", ""};
    EXPECT_EQ(describe(finding), "w.json:2 /mass_g: the mass is negative (-3). Give 0 or more.");
}

TEST(Finding, DoesNotRepeatAValueThatItsWordsName) {
    EXPECT_EQ(describe(findingOf("\"2026-13\" is not a date", "2026-13", "Correct it.")),
              "\"2026-13\" is not a date. Correct it.");
}

TEST(Finding, EndsWithOneFullStop) {
    EXPECT_EQ(describe(findingOf("a.json:1: it is not JSON. Mend the file.", "", "")),
              "a.json:1: it is not JSON. Mend the file.");
}

TEST(Finding, ShortensLongValues) {
    EXPECT_EQ(excerpt("short"), "short");
    EXPECT_EQ(excerpt(std::string(60, 'x')), std::string(60, 'x'));
    EXPECT_EQ(excerpt(std::string(61, 'x')), std::string(60, 'x') + "…");
    std::string letters;
    for (int i = 0; i < 61; ++i)
        letters += "é";
    EXPECT_EQ(excerpt(letters).size(), 120u + std::string("…").size());
    EXPECT_EQ(excerpt("a\x1B"), "a\\u001B");
}

}  // namespace
}  // namespace rackbook
