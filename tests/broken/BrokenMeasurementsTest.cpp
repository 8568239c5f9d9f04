// Files of measurements with one defect each, named for it, and beside each the exact words that it
// is refused with: files/measurements/<defect>.<form> and
// files/measurements/<defect>.<form>.expected.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>

#include "base/Error.h"
#include "exchange/MeasurementFile.h"
#include "support/MessageOf.h"
#include "support/Paths.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

std::string pathOfDefect(const std::string& name) {
    return test::sourcePath("tests/broken/files/measurements/" + name);
}

std::vector<std::string> defects() {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(pathOfDefect({})))
        if (entry.path().extension() != ".expected")
            names.push_back(entry.path().filename().string());
    std::sort(names.begin(), names.end());
    return names;
}

class BrokenMeasurements : public testing::TestWithParam<std::string> {};

TEST_P(BrokenMeasurements, AreRefusedWithTheirExactWords) {
    const std::string words = test::messageOf(
        [] { measurementsIn(test::bytesOf(pathOfDefect(GetParam())), GetParam()); });
    EXPECT_EQ(words + "\n", test::bytesOf(pathOfDefect(GetParam() + ".expected")));
}

INSTANTIATE_TEST_SUITE_P(All, BrokenMeasurements, testing::ValuesIn(defects()),
                         [](const auto& one) {
                             std::string name = one.param;
                             for (char& c : name)
                                 c = c == '-' || c == '.' ? '_' : c;
                             return name;
                         });

TEST(BrokenMeasurementFiles, EachHaveTheirWords) {
    ASSERT_GT(defects().size(), 30u);
    for (const auto& entry : std::filesystem::directory_iterator(pathOfDefect({})))
        if (entry.path().extension() == ".expected") {
            EXPECT_TRUE(std::filesystem::exists(entry.path().parent_path() / entry.path().stem()))
                << entry.path();
        }
}

TEST(BrokenMeasurementFiles, AreRefusedWhereTheyAreMissingOrTooLarge) {
    const test::TempFolder folder;
    EXPECT_THROW(readMeasurementFile(folder.file("none.txt")), InputError);
    test::putFile(folder.file("large.csv"), "sample,400\n" + std::string((16 << 20) + 1, '0'));
    EXPECT_EQ(test::messageOf([&] { readMeasurementFile(folder.file("large.csv")); }),
              folder.file("large.csv") + ": the file is larger than 16 MB. Split it.");
}

}  // namespace
}  // namespace rackbook
