// Logs of light with one defect each, named for it, and beside each the exact words that it is
// refused with: files/light-logs/<defect>.csv and files/light-logs/<defect>.expected. They are read
// as lux on a wall clock in Denmark, with no column named.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>

#include "exchange/LightLog.h"
#include "support/MessageOf.h"
#include "support/Paths.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

std::string pathOfLog(const std::string& name) {
    return test::sourcePath("tests/broken/files/light-logs/" + name);
}

std::vector<std::string> defects() {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(pathOfLog({})))
        if (entry.path().extension() == ".csv")
            names.push_back(entry.path().stem().string());
    std::sort(names.begin(), names.end());
    return names;
}

class BrokenLightLogs : public testing::TestWithParam<std::string> {};

TEST_P(BrokenLightLogs, AreRefusedWithTheirExactWords) {
    LightLogTerms terms;
    terms.clock = LogClock::onWall("Europe/Copenhagen");
    const std::string name = GetParam() + ".csv";
    const std::string words =
        test::messageOf([&] { lightLogIn(test::bytesOf(pathOfLog(name)), name, terms); });
    EXPECT_EQ(words + "\n", test::bytesOf(pathOfLog(GetParam() + ".expected")));
}

INSTANTIATE_TEST_SUITE_P(All, BrokenLightLogs, testing::ValuesIn(defects()), [](const auto& one) {
    std::string name = one.param;
    std::replace(name.begin(), name.end(), '-', '_');
    return name;
});

TEST(BrokenLightLogFiles, EachHaveTheirWords) {
    ASSERT_GT(defects().size(), 20u);
    for (const auto& entry : std::filesystem::directory_iterator(pathOfLog({})))
        if (entry.path().extension() == ".expected") {
            EXPECT_TRUE(std::filesystem::exists(pathOfLog(entry.path().stem().string() + ".csv")))
                << entry.path();
        }
}

}  // namespace
}  // namespace rackbook
