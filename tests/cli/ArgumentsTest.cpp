#include "cli/Arguments.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <stdexcept>

#include "SampleSpecs.h"
#include "base/Error.h"

namespace rackbook {
namespace {

using Words = std::vector<std::string>;

// The least that the verb of the tests asks for, then the words.
Arguments parsed(const Words& words) {
    Words all = {"heron", "--mix", "grey"};
    all.insert(all.end(), words.begin(), words.end());
    return parseArguments(pullSpec(), all);
}

template <typename Action>
std::string refusal(Action action) {
    try {
        action();
    } catch (const UsageError& error) {
        EXPECT_EQ(error.exitCode(), ExitCode::usage);
        return error.what();
    }
    return "nothing was refused";
}

std::string refused(const Words& words) {
    return refusal([&] { parseArguments(pullSpec(), words); });
}

std::string refusedAfterLeast(const Words& words) {
    return refusal([&] { parsed(words); });
}

TEST(Arguments, ReadsOptionsBeforeBetweenAndAfterPositionals) {
    const Arguments made =
        parseArguments(pullSpec(), {"--json", "heron", "--mix", "grey", "1-3", "--by=Ina", "5"});
    EXPECT_TRUE(made.has("json"));
    EXPECT_EQ(made.text("edition"), "heron");
    EXPECT_EQ(made.text("mix"), "grey");
    EXPECT_EQ(made.text("by"), "Ina");
    EXPECT_EQ(made.values("impressions"), Words({"1-3", "5"}));
}

TEST(Arguments, LeavesWhatWasNotGivenEmpty) {
    const Arguments made = parsed({});
    EXPECT_FALSE(made.has("json"));
    EXPECT_FALSE(made.has("impressions"));
    EXPECT_EQ(made.value("by"), std::nullopt);
    EXPECT_EQ(made.number("latitude"), std::nullopt);
    EXPECT_EQ(made.whole("copies"), std::nullopt);
    EXPECT_TRUE(made.values("note").empty());
}

TEST(Arguments, ReadsNegativeNumbersAsValues) {
    EXPECT_EQ(parsed({"--latitude", "-35.2"}).number("latitude"), -35.2);
    EXPECT_EQ(parsed({"--latitude=-35.2"}).number("latitude"), -35.2);
    EXPECT_EQ(parsed({"--copies", "-4"}).whole("copies"), -4);
}

TEST(Arguments, KeepsRepeatedValuesInOrder) {
    EXPECT_EQ(parsed({"--note", "b", "--note=a", "--note", "b"}).values("note"),
              Words({"b", "a", "b"}));
}

TEST(Arguments, KeepsEqualsSignsAndHyphensInsideValues) {
    EXPECT_EQ(parsed({"--note=a=b"}).text("note"), "a=b");
    EXPECT_EQ(parsed({"--note=--json"}).text("note"), "--json");
    EXPECT_FALSE(parsed({"--note=--json"}).has("json"));
    EXPECT_EQ(parsed({"--note", "-"}).text("note"), "-");
}

TEST(Arguments, TakesEverythingAfterTwoHyphensAsPositional) {
    const Arguments made =
        parseArguments(pullSpec(), {"--mix", "grey", "--", "-heron", "--json", "--help"});
    EXPECT_EQ(made.text("edition"), "-heron");
    EXPECT_EQ(made.values("impressions"), Words({"--json", "--help"}));
    EXPECT_FALSE(made.has("json"));
    EXPECT_FALSE(made.has("help"));
}

TEST(Arguments, TakesOneHyphenAsPositional) {
    EXPECT_EQ(parseArguments(pullSpec(), {"-", "--mix", "grey"}).text("edition"), "-");
}

TEST(Arguments, KeepsUnicodeAsWritten) {
    EXPECT_EQ(parsed({"--note", "d\u0308 版画 \U0001F5BC"}).text("note"),
              "d\u0308 版画 \U0001F5BC");
    EXPECT_EQ(parsed({"\uFEFFname"}).text("impressions"), "\uFEFFname");
}

TEST(Arguments, ShowsHelpWhateverElseIsWrong) {
    EXPECT_TRUE(parseArguments(pullSpec(), {"--help"}).has("help"));
    EXPECT_TRUE(parseArguments(pullSpec(), {"--bogus", "--help", "--mix"}).has("help"));
    EXPECT_FALSE(parsed({}).has("help"));
}

TEST(Arguments, AnswersForCommonOptionsTheVerbDoesNotOffer) {
    CommandSpec spec;
    spec.needsBook = false;
    const Arguments made = parseArguments(spec, {});
    for (const std::string& name : commonOptionNames())
        EXPECT_FALSE(made.has(name)) << name;
}

TEST(Arguments, TreatsNamesOutsideTheDescriptionAsFaultsOfTheProgram) {
    EXPECT_THROW(parsed({}).has("bogus"), std::out_of_range);
    EXPECT_THROW(parsed({}).value("bogus"), std::out_of_range);
}

TEST(Arguments, RefusesUnknownOptions) {
    EXPECT_EQ(refused({"heron", "--lattitude", "3"}),
              "pull: unknown option --lattitude. Did you mean --latitude?");
    EXPECT_EQ(refused({"heron", "--zzzzzzzz=3"}),
              "pull: unknown option --zzzzzzzz. See \"rackbook pull --help\".");
    EXPECT_EQ(refused({"--=x"}), "pull: unknown option --. See \"rackbook pull --help\".");
}

TEST(Arguments, RefusesCommonOptionsTheVerbDoesNotOffer) {
    CommandSpec spec;
    spec.name = "show";
    EXPECT_EQ(refusal([&] { parseArguments(spec, {"--json"}); }),
              "show: unknown option --json. See \"rackbook show --help\".");
}

TEST(Arguments, RefusesOptionsWithOneHyphen) {
    EXPECT_EQ(refused({"-mix", "grey"}), "pull: unknown option -mix. Did you mean --mix?");
    EXPECT_EQ(refused({"-mix=grey"}), "pull: unknown option -mix=grey. Did you mean --mix?");
    EXPECT_EQ(refused({"-x"}),
              "pull: unknown option -x. Options begin with two hyphens; write -- before an "
              "argument that begins with a hyphen.");
}

// They are for the verb to judge, wherever they stand.
TEST(Arguments, TakesNegativeNumbersAsArguments) {
    const Arguments made =
        parseArguments(pullSpec(), {"-1", "--mix", "grey", "-0,5", "--latitude", "-35.2", "-2g",
                                    "-.5", "--json", "--", "--by", "-x"});
    EXPECT_EQ(made.text("edition"), "-1");
    EXPECT_EQ(made.values("impressions"), Words({"-0,5", "-2g", "-.5", "--by", "-x"}));
    EXPECT_EQ(made.number("latitude"), -35.2);
    EXPECT_TRUE(made.has("json"));
    EXPECT_EQ(made.value("by"), std::nullopt);
    EXPECT_EQ(refused({"-.x"}),
              "pull: unknown option -.x. Options begin with two hyphens; write -- before an "
              "argument that begins with a hyphen.");
}

TEST(Arguments, RefusesMissingValues) {
    EXPECT_EQ(refused({"heron", "--mix"}), "pull: --mix needs a value. Write --mix MIX.");
    EXPECT_EQ(refused({"heron", "--mix", "--json"}),
              "pull: --mix needs a value, but --json follows. Write --mix=MIX where the value "
              "itself begins with two hyphens.");
    EXPECT_EQ(refused({"heron", "--mix", "--"}),
              "pull: --mix needs a value, but -- follows. Write --mix=MIX where the value itself "
              "begins with two hyphens.");
}

TEST(Arguments, RefusesValuesOfFlags) {
    EXPECT_EQ(refusedAfterLeast({"--json=yes"}),
              "pull: --json takes no value. Write --json alone.");
}

TEST(Arguments, RefusesEmptyValues) {
    const std::string message = "pull: --by is empty. Give NAME or leave the option out.";
    EXPECT_EQ(refusedAfterLeast({"--by", ""}), message);
    EXPECT_EQ(refusedAfterLeast({"--by="}), message);
    EXPECT_EQ(refused({"", "--mix", "grey"}),
              "pull: EDITION is empty. See \"rackbook pull --help\".");
    EXPECT_EQ(refusedAfterLeast({"1", ""}),
              "pull: IMPRESSIONS is empty. See \"rackbook pull --help\".");
}

TEST(Arguments, RefusesRepeatedOptions) {
    EXPECT_EQ(refusedAfterLeast({"--by", "a", "--by", "a"}),
              "pull: --by was given 2 times. Give it once.");
    EXPECT_EQ(refusedAfterLeast({"--json", "--json", "--json"}),
              "pull: --json was given 3 times. Give it once.");
}

TEST(Arguments, RefusesMissingRequiredOptions) {
    EXPECT_EQ(refused({"heron"}), "pull: --mix is missing. Add --mix MIX.");
}

TEST(Arguments, RefusesMissingAndSurplusPositionals) {
    EXPECT_EQ(refused({"--mix", "grey"}),
              "pull: EDITION is missing. See \"rackbook pull --help\".");
    CommandSpec spec;
    spec.name = "show";
    EXPECT_EQ(refusal([&] { parseArguments(spec, {"a\x1b[2J"}); }),
              "show: \"a\\u001B[2J\" is one argument too many. See \"rackbook show --help\".");
}

TEST(Arguments, RefusesValuesThatAreNoChoice) {
    EXPECT_EQ(refusedAfterLeast({"--packing", "hrad"}),
              "pull: --packing is \"hrad\". Give hard or soft.");
    EXPECT_EQ(refusedAfterLeast({"--packing", "sofd"}),
              "pull: --packing is \"sofd\". Did you mean soft?");
    EXPECT_EQ(parsed({"--packing", "soft"}).text("packing"), "soft");
}

TEST(Arguments, RefusesTextThatIsNotUtf8) {
    EXPECT_EQ(refusedAfterLeast({"--note", "a\xff"}),
              "pull: an argument is not UTF-8 text (a\\uFFFD). Write names and values in UTF-8.");
}

TEST(Arguments, RefusesWhatIsNotANumber) {
    for (const std::string text : {"abc", "1,5,0", "nan", "inf", "1e999", "0x10", "1 "})
        EXPECT_EQ(refusal([&] {
                      parsed({"--latitude", text}).number("latitude");
                  }),
                  "pull: --latitude is \"" + text +
                      "\", which is not a number. Write digits with a decimal point or comma, such "
                      "as 12.5.");
    EXPECT_EQ(parsed({"--latitude", "56,5"}).number("latitude"), 56.5);
    EXPECT_EQ(refusal([&] { parsed({"1.5"}).number("edition"); }),
              "pull: EDITION is \"heron\", which is not a number. Write digits with a decimal "
              "point or comma, such as 12.5.");
}

TEST(Arguments, RefusesWhatIsNotWhole) {
    for (const std::string text : {"1.5", "99999999999999999999", "1e3"})
        EXPECT_EQ(refusal([&] {
                      parsed({"--copies", text}).whole("copies");
                  }),
                  "pull: --copies is \"" + text +
                      "\", which is not a whole number. Write digits only, such as 12.");
}

TEST(Arguments, RefusesToInventMissingText) {
    EXPECT_EQ(refusal([&] { parsed({}).text("by"); }), "pull: --by is missing. Add --by NAME.");
    EXPECT_EQ(refusal([&] { parsed({}).text("impressions"); }),
              "pull: IMPRESSIONS is missing. Add IMPRESSIONS.");
}

class BookPath : public ::testing::Test {
protected:
    void TearDown() override { unsetenv("RACKBOOK_BOOK"); }
};

TEST_F(BookPath, PrefersTheOptionThenTheEnvironmentThenTheCurrentFolder) {
    setenv("RACKBOOK_BOOK", "/books/a.rackbook", 1);
    EXPECT_EQ(bookPath(parsed({"--book", "b.rackbook"})), "b.rackbook");
    EXPECT_EQ(bookPath(parsed({})), "/books/a.rackbook");
    setenv("RACKBOOK_BOOK", "", 1);
    EXPECT_EQ(bookPath(parsed({})), "studio.rackbook");
    unsetenv("RACKBOOK_BOOK");
    EXPECT_EQ(bookPath(parsed({})), "studio.rackbook");
}

TEST_F(BookPath, RefusesAnEnvironmentThatIsNotUtf8) {
    setenv("RACKBOOK_BOOK", "a\xff", 1);
    EXPECT_EQ(refusal([&] { bookPath(parsed({})); }),
              "RACKBOOK_BOOK: the path is not UTF-8 text (a\\uFFFD). Give the path in UTF-8.");
}

}  // namespace
}  // namespace rackbook
