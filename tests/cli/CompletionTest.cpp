#include <gtest/gtest.h>

#include "SampleSpecs.h"
#include "base/Error.h"
#include "cli/Help.h"
#include "support/RunShell.h"

namespace rackbook {
namespace {

std::string script(const std::string& shell) {
    return completionScript(shell, sampleSpecs());
}

// What bash offers for the last of the words, one candidate a line.
std::string offeredByBash(const std::string& words, int cursor) {
    const test::ShellResult result = test::runOn(
        script("bash"), "cat > \"$FILE.run\" <<'END'\ncompopt() { :; }\n. \"$1\"\nCOMP_WORDS=(" +
                            words + ")\nCOMP_CWORD=" + std::to_string(cursor) +
                            "\n_rackbook\nprintf '%s\\n' \"${COMPREPLY[@]}\"\nEND\n"
                            "bash \"$FILE.run\" \"$FILE\"; rm -f \"$FILE.run\"");
    return result.output;
}

TEST(Completion, RefusesShellsItDoesNotKnow) {
    try {
        script("csh");
        FAIL() << "a script was made";
    } catch (const UsageError& error) {
        EXPECT_STREQ(error.what(),
                     "there is no completion for the shell \"csh\". Choose bash, zsh or fish.");
    }
}

TEST(Completion, MakesScriptsForEveryShellItNames) {
    for (const std::string& shell : completionShells()) {
        const std::string text = script(shell);
        for (const CommandSpec& spec : sampleSpecs()) {
            EXPECT_NE(text.find(spec.name), std::string::npos) << shell << " " << spec.name;
            for (const OptionSpec& option : optionsOf(spec))
                EXPECT_NE(text.find(option.name), std::string::npos) << shell << option.name;
        }
    }
}

TEST(Completion, IsGoodBash) {
    if (!test::hasProgram("bash"))
        GTEST_SKIP() << "bash is not here";
    const test::ShellResult result = test::runOn(script("bash"), "bash -n \"$FILE\"");
    EXPECT_EQ(result.exitCode, 0) << result.output;
    EXPECT_EQ(result.output, "");
}

TEST(Completion, IsGoodZsh) {
    if (!test::hasProgram("zsh"))
        GTEST_SKIP() << "zsh is not here";
    const test::ShellResult result = test::runOn(script("zsh"), "zsh -n \"$FILE\"");
    EXPECT_EQ(result.exitCode, 0) << result.output;
    EXPECT_EQ(result.output, "");
}

TEST(Completion, IsGoodFish) {
    if (!test::hasProgram("fish"))
        GTEST_SKIP() << "fish is not here";
    const test::ShellResult result = test::runOn(script("fish"), "fish -n \"$FILE\"");
    EXPECT_EQ(result.exitCode, 0) << result.output;
    EXPECT_EQ(result.output, "");
}

class BashCompletion : public ::testing::Test {
protected:
    void SetUp() override {
        if (!test::hasProgram("bash"))
            GTEST_SKIP() << "bash is not here";
    }
};

TEST_F(BashCompletion, OffersVerbsFirst) {
    EXPECT_EQ(offeredByBash("rackbook ''", 1),
              "pull\nmix\nimport\ncompletion\n--help\n--version\n");
    EXPECT_EQ(offeredByBash("rackbook m", 1), "mix\n");
}

TEST_F(BashCompletion, OffersLaterWordsOfAVerbBesideTheOptionsOfItsFirst) {
    EXPECT_EQ(offeredByBash("rackbook mix ''", 2), "add\n--book\n--said-on\n--help\n");
    EXPECT_EQ(offeredByBash("rackbook mix add --d", 3), "--dry-run\n");
    EXPECT_EQ(offeredByBash("rackbook mix grey --d", 3), "\n");
}

TEST_F(BashCompletion, OffersOptionsOfTheVerbAfterOtherWords) {
    EXPECT_EQ(offeredByBash("rackbook pull heron 1-3 --l", 4), "--latitude\n");
    EXPECT_EQ(offeredByBash("rackbook completion --j", 2), "\n");
}

TEST_F(BashCompletion, OffersChoicesAfterTheOptionInBothForms) {
    EXPECT_EQ(offeredByBash("rackbook completion --shell ''", 3), "bash\nzsh\nfish\n");
    EXPECT_EQ(offeredByBash("rackbook completion --shell = f", 4), "fish\n");
    EXPECT_EQ(offeredByBash("rackbook completion --shell =", 3), "bash\nzsh\nfish\n");
}

TEST_F(BashCompletion, OffersPathsForFilesAndFoldersOnly) {
    EXPECT_EQ(offeredByBash("rackbook pull --book /et", 3), "/etc\n");
    EXPECT_EQ(offeredByBash("rackbook import /et", 2), "/etc\n");
    EXPECT_EQ(offeredByBash("rackbook import --pictures /etc/passw", 3), "\n");
    EXPECT_NE(offeredByBash("rackbook import /etc/passw", 2).find("/etc/passwd\n"),
              std::string::npos);
    EXPECT_EQ(offeredByBash("rackbook pull --note /et", 3), "\n");
}

}  // namespace
}  // namespace rackbook
