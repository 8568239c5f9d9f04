#include "commands/ShareGiven.h"

#include <gtest/gtest.h>

#include "base/Error.h"

namespace rackbook {

namespace {

template <class Reader>
std::string refusal(Reader reader) {
    try {
        reader();
    } catch (const UsageError& error) {
        return error.what();
    }
    return "nothing was refused";
}

std::string shareRefusal(const std::string& text) {
    return refusal([&] { shareGiven(text, "--to"); });
}

TEST(ShareGiven, ReadsPerCentAndSharesBelowOne) {
    EXPECT_DOUBLE_EQ(shareGiven("95%", "--to"), 0.95);
    EXPECT_DOUBLE_EQ(shareGiven("2,5 %", "--to"), 0.025);
    EXPECT_DOUBLE_EQ(shareGiven("0.95", "--to"), 0.95);
    EXPECT_EQ(shareGiven("100%", "--to"), 1);
    EXPECT_EQ(shareGiven("0", "--to"), 0);
}

TEST(ShareGiven, RefusesWhatMayBeEither) {
    EXPECT_EQ(shareRefusal("1"),
              "--to is \"1\", which may be a share or per cent. Write per cent with the sign, such "
              "as 95%.");
}

TEST(ShareGiven, RefusesWhatIsNone) {
    for (const char* text : {"", "%", "half", "nan", "inf%", "9 5%", "1,2,3%"})
        EXPECT_EQ(shareRefusal(text), "--to is \"" + std::string(text) +
                                          "\", which is no share. Write per cent, such as 95%.");
    EXPECT_EQ(shareRefusal("101%"), "--to is \"101%\". Give a share between 0% and 100%.");
    EXPECT_EQ(shareRefusal("-0.1"), "--to is \"-0.1\". Give a share between 0% and 100%.");
}

TEST(MarkupGiven, MayBeMoreThanTheWhole) {
    EXPECT_DOUBLE_EQ(markupGiven("150%", "--spoil"), 1.5);
    EXPECT_DOUBLE_EQ(markupGiven("0.1", "--spoil"), 0.1);
    EXPECT_EQ(refusal([] { markupGiven("-5%", "--spoil"); }),
              "--spoil is \"-5%\". Give a share of 0% or more.");
}

TEST(PositiveGiven, ReadsAboveNothing) {
    EXPECT_EQ(positiveGiven("6,5", "--film-weight", "Give one."), 6.5);
    for (const char* text : {"0", "-1", "nan", "inf", "thin", "6.5g"})
        EXPECT_EQ(refusal([&] { positiveGiven(text, "--film-weight", "Give one."); }),
                  "--film-weight is \"" + std::string(text) + "\". Give one.");
}

}  // namespace

}  // namespace rackbook
