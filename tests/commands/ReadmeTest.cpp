// What README.md shows is what the program does: each command of its console blocks runs on the
// demonstration book, in order, and prints what stands there.

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "Script.h"
#include "commands/CommandTable.h"

namespace rackbook {

namespace {

std::string readme() {
    std::ifstream file(std::string(RACKBOOK_SOURCE) + "/README.md");
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

// The lines of all blocks fenced as "console".
std::string consoleBlocks(const std::string& text) {
    std::istringstream lines(text);
    std::string blocks;
    bool inside = false;
    for (std::string line; std::getline(lines, line);) {
        if (line.rfind("```", 0) == 0)
            inside = line == "```console";
        else if (inside)
            blocks += line + "\n";
    }
    return blocks;
}

TEST(Readme, ShowsWhatTheCommandsPrint) {
    const FreshFolder folder;
    std::filesystem::create_directory_symlink(std::string(RACKBOOK_SOURCE) + "/demo-edition",
                                              "demo-edition");
    transcriptOf({"rackbook", "begin"});
    transcriptOf({"rackbook", "take-in", "demo-edition"});
    std::ofstream("readme.txt") << consoleBlocks(readme());
    const std::vector<ScriptStep> steps = readScript("readme.txt");
    EXPECT_GE(steps.size(), 5u);
    for (const ScriptStep& step : steps)
        EXPECT_EQ(transcriptOf(step.words), step.expected) << "README.md, " << step.words[1];
}

TEST(Readme, NamesEveryVerb) {
    const std::string text = readme();
    for (const Command& command : commandTable())
        EXPECT_NE(text.find(command.spec.name), std::string::npos) << command.spec.name;
}

}  // namespace

}  // namespace rackbook
