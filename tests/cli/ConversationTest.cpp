#include "cli/Conversation.h"

#include <gtest/gtest.h>

#include <sstream>

namespace rackbook {
namespace {

class ConversationTest : public ::testing::Test {
protected:
    std::optional<std::string> answered(const Question& question, const std::string& typed) {
        std::istringstream in(typed);
        Console console(m_out, m_out);
        Conversation conversation(in, console, true);
        return conversation.ask(question);
    }

    std::string said() const { return m_out.str(); }
    bool saysOnce(const std::string& text) const {
        const std::size_t at = said().find(text);
        return at != std::string::npos && said().find(text, at + 1) == std::string::npos;
    }

    std::ostringstream m_out;
};

Question colours() {
    Question question;
    question.text = "Which colour";
    question.help = "The colour as it looks.";
    question.choices = {{"straw", "light and warm"}, {"dusk", "dark and cold"}};
    return question;
}

TEST_F(ConversationTest, TakesAChoiceByItsWordOrItsNumber) {
    EXPECT_EQ(answered(colours(), "dusk\n"), "dusk");
    EXPECT_EQ(answered(colours(), "2\n"), "dusk");
    EXPECT_EQ(answered(colours(), "  1 \r\n"), "straw");
    EXPECT_EQ(answered(colours(), "Straw\n"), "straw");
    EXPECT_EQ(answered(colours(), "Dark and cold\n"), "dusk");
}

TEST_F(ConversationTest, OffersChoicesInColumns) {
    answered(colours(), "1\n");
    EXPECT_EQ(said(), "  1  straw  light and warm\n  2  dusk   dark and cold\nWhich colour: ");
}

// Where the answers are numbers themselves, a number means the answer and nothing else.
TEST_F(ConversationTest, DoesNotNumberNumbers) {
    Question question;
    question.text = "Which layer";
    question.choices = {{"3", "straw"}, {"4", "dusk"}};
    EXPECT_EQ(answered(question, "3\n"), "3");
    EXPECT_EQ(said(), "  3  straw\n  4  dusk\nWhich layer: ");
    EXPECT_EQ(answered(question, "1\n"), "1");  // what is wrong with it is for the check to say
}

TEST_F(ConversationTest, TakesWhatStandsInBracketsForEnter) {
    Question question = colours();
    question.preset = "straw";
    EXPECT_EQ(answered(question, "\n"), "straw");
    EXPECT_TRUE(saysOnce("Which colour [straw]: "));
}

TEST_F(ConversationTest, LeavesOutWhatMayBeLeftOut) {
    Question question = colours();
    question.isOptional = true;
    EXPECT_EQ(answered(question, "\n"), std::nullopt);
    EXPECT_TRUE(saysOnce("Which colour [none]: "));
    question.preset = "straw";
    EXPECT_EQ(answered(question, "-\n"), std::nullopt);
}

TEST_F(ConversationTest, TakesNoneForLeftOut) {
    Question question = colours();
    question.isOptional = true;
    question.preset = "straw";
    EXPECT_EQ(answered(question, "None\n"), std::nullopt);
    question.choices.push_back({"none", "no colour at all"});
    EXPECT_EQ(answered(question, "none\n"), "none");
    EXPECT_EQ(answered(colours(), "none\ndusk\n"), "none");  // needed: for the check to refuse
}

TEST_F(ConversationTest, ShowsHowAnAnswerWasRead) {
    Question question = colours();
    question.read = [](const std::string& typed) { return typed == "red" ? "rose" : typed; };
    EXPECT_EQ(answered(question, "red\n"), "rose");
    EXPECT_TRUE(saysOnce("  That is rose.\n"));
    EXPECT_EQ(answered(question, "blue\n"), "blue");
    EXPECT_EQ(said().find("That is blue"), std::string::npos);
}

TEST_F(ConversationTest, AsksWhetherAnUnlikelyAnswerStands) {
    Question question = colours();
    question.doubt = [](const std::string& answer) {
        return answer == "straw" ? std::string("That is pale.") : std::string();
    };
    EXPECT_EQ(answered(question, "straw\n\nstraw\ny\n"), "straw");
    EXPECT_NE(said().find("  That is pale. Enter it all the same [y/N]: "), std::string::npos);
    EXPECT_EQ(answered(question, "straw\nn\ndusk\n"), "dusk");
}

TEST_F(ConversationTest, AsksAgainForWhatIsNeeded) {
    EXPECT_EQ(answered(colours(), "\n\ndusk\n"), "dusk");
    EXPECT_NE(said().find("This needs an answer"), std::string::npos);
}

TEST_F(ConversationTest, SaysWhatIsWrongAndAsksAgain) {
    Question question = colours();
    question.check = [](const std::string& answer) {
        if (answer != "dusk")
            throw UsageError("it was not " + answer, "Look again.");
    };
    EXPECT_EQ(answered(question, "straw\ndusk\n"), "dusk");
    EXPECT_TRUE(saysOnce("  it was not straw. Look again.\n"));
}

TEST_F(ConversationTest, SaysMoreWhenAsked) {
    EXPECT_EQ(answered(colours(), "?\n2\n"), "dusk");
    EXPECT_TRUE(saysOnce("  The colour as it looks.\n"));
}

TEST_F(ConversationTest, ShowsAFewOfManyChoices) {
    Question question;
    question.text = "Which tin";
    for (char letter = 'a'; letter <= 'z'; ++letter)
        question.choices.push_back({std::string("tin-") + letter, "a tin"});
    EXPECT_EQ(answered(question, "26\n"), "tin-z");
    EXPECT_TRUE(saysOnce("… and 17 more"));
    EXPECT_EQ(said().find("tin-z"), std::string::npos);
    EXPECT_EQ(answered(question, "?\ntin-k\n"), "tin-k");
    EXPECT_TRUE(saysOnce("26  tin-z"));
}

TEST_F(ConversationTest, NamesTheUnit) {
    Question question;
    question.text = "How much";
    question.unit = "g";
    EXPECT_EQ(answered(question, "4,5\n"), "4,5");
    EXPECT_TRUE(saysOnce("How much, in g: "));
}

TEST_F(ConversationTest, GivesUpAtTheEndOfTheInput) {
    EXPECT_THROW(answered(colours(), ""), GaveUp);
    EXPECT_THROW(answered(colours(), "\n"), GaveUp);
}

TEST_F(ConversationTest, TakesNothingThatIsNoText) {
    EXPECT_EQ(answered(colours(), "\xff\xfe\ndusk\n"), "dusk");
    EXPECT_TRUE(saysOnce("That is not UTF-8 text."));
}

TEST_F(ConversationTest, CannotBeSteeredByWhatItOffers) {
    Question question = colours();
    question.choices.push_back({"x", "\x1b[2J"});
    answered(question, "1\n");
    EXPECT_EQ(said().find('\x1b'), std::string::npos);
}

TEST_F(ConversationTest, Confirms) {
    const auto confirmed = [&](const std::string& typed, bool preset) {
        std::istringstream in(typed);
        Console console(m_out, m_out);
        return Conversation(in, console, true).confirm("Record this", preset);
    };
    EXPECT_TRUE(confirmed("\n", true));
    EXPECT_FALSE(confirmed("\n", false));
    EXPECT_TRUE(confirmed("y\n", false));
    EXPECT_FALSE(confirmed("no\n", true));
    EXPECT_TRUE(confirmed("maybe\nyes\n", false));
    EXPECT_THROW(confirmed("", true), GaveUp);
}

TEST_F(ConversationTest, TalksOnlyToATerminal) {
    std::istringstream in;
    Console console(m_out, m_out);
    EXPECT_FALSE(Conversation(in, console).mayTalk());
}

}  // namespace
}  // namespace rackbook
