#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>

#include "Script.h"

namespace rackbook {

namespace {

std::vector<std::string> scriptFiles() {
    std::vector<std::string> names;
    for (const auto& file : std::filesystem::directory_iterator(RACKBOOK_SCRIPTS))
        names.push_back(file.path().stem().string());
    std::sort(names.begin(), names.end());
    return names;
}

bool failed(const std::string& transcript) {
    return transcript.size() >= 4 && transcript.substr(transcript.size() - 2) == "]\n";
}

class Scripts : public testing::TestWithParam<std::string> {};

TEST_P(Scripts, PrintWhatTheySay) {
    const FreshFolder folder;
    std::filesystem::create_directory_symlink(std::string(RACKBOOK_SCRIPTS) + "/../measured",
                                              "measured");
    std::filesystem::create_directory_symlink(
        std::string(RACKBOOK_SOURCE) + "/tests/exchange/pictures", "pictures");
    std::filesystem::create_directory_symlink(
        std::string(RACKBOOK_SOURCE) + "/tests/broken/files/pictures", "broken-pictures");
    std::filesystem::create_directory_symlink(
        std::string(RACKBOOK_SOURCE) + "/tests/exchange/tables", "tables");
    const std::string path = std::string(RACKBOOK_SCRIPTS) + "/" + GetParam() + ".txt";
    std::string before;
    for (const ScriptStep& step : readScript(path)) {
        const bool tries =
            std::find(step.words.begin(), step.words.end(), "--dry-run") != step.words.end();
        const std::string transcript = transcriptOf(step.words);
        EXPECT_EQ(transcript, step.expected) << path << ":" << step.line;
        const std::string after = stateOfBook();
        EXPECT_TRUE(after == before || (!failed(transcript) && !tries))
            << path << ":" << step.line << " changed the book";
        EXPECT_EQ(after.find("broken"), std::string::npos) << path << ":" << step.line;
        before = after;
    }
}

std::string nameOfScript(const testing::TestParamInfo<std::string>& script) {
    std::string name = script.param;
    std::replace(name.begin(), name.end(), '-', '_');
    return name;
}

INSTANTIATE_TEST_SUITE_P(All, Scripts, testing::ValuesIn(scriptFiles()), nameOfScript);

}  // namespace

}  // namespace rackbook
