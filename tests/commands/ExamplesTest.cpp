#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

#include "FormTools.h"
#include "Script.h"
#include "Talk.h"
#include "base/Files.h"
#include "commands/CommandTable.h"

namespace rackbook {

namespace {

// A copy of the demonstration records in a book called studio.rackbook.
void takeInDemo() {
    std::filesystem::create_directory_symlink(std::string(RACKBOOK_SOURCE) + "/demo-edition",
                                              "demo-edition");
    ASSERT_EQ(transcriptOf({"rackbook", "begin"}).find("["), std::string::npos);
    ASSERT_EQ(transcriptOf({"rackbook", "take-in", "demo-edition"}).find("["), std::string::npos);
}

// Layers that are still to be printed, and their sheets.
void fillInBenchSheets() {
    for (const auto& [edition, layer] : {std::pair("EEL", "9"), std::pair("BRK", "3")}) {
        const std::string id = std::string(edition) + "/L" + layer;
        const std::string file = std::string(edition) + "-L" + layer + "-bench.pdf";
        transcriptOf({"rackbook", "layer", edition, layer, "One more veil"});
        transcriptOf({"rackbook", "sheet", "bench", id});
        writeFileSafely(file,
                        filledByQpdf(readFile(file, std::size_t{1} << 26),
                                     {{"pull.day", "u:2026-03-28"}, {"sheet.all.printed", "/on"}}));
    }
}

bool needsMoreThanTheDemo(const std::string& command) {
    return command.find_first_of("|<>") != std::string::npos ||
           command.find(".json") != std::string::npos;
}

// Usage errors and failures are [2] and [3]; a report may end with [1].
bool isRefused(const std::string& transcript) {
    return transcript.find("\n[2]\n") != std::string::npos ||
           transcript.find("\n[3]\n") != std::string::npos;
}

TEST(Examples, AreCommandsThatWorkOnTheDemonstrationBook) {
    for (const Command& command : commandTable()) {
        for (const Example& example : command.spec.examples) {
            if (needsMoreThanTheDemo(example.command))
                continue;
            const FreshFolder folder;
            if (command.spec.name != "begin")
                takeInDemo();
            if (example.command.find(" EEL-edition.pdf") != std::string::npos)
                transcriptOf({"rackbook", "sheet", "edition", "EEL"});
            if (example.command == "rackbook day") {
                EXPECT_EQ(talk({"rackbook", "day"}, {""}).exitCode, 0);
                continue;
            }
            if (example.command.find("evening.txt") != std::string::npos)
                std::ofstream("evening.txt") << "hang EEL:1 line\n";
            if (command.spec.group == "For the archive" && command.spec.name != "write-bag")
                transcriptOf({"rackbook", "write-bag", "--with-contacts", "whole-studio"});
            if (command.spec.name == "take-book")
                std::filesystem::copy_file("studio.rackbook", "laptop.rackbook");
            if (command.spec.name == "take-sheet")
                fillInBenchSheets();
            if (command.spec.name == "restore")
                transcriptOf({"rackbook", "back-up", "north-shed.rackbook"});
            const std::string transcript = transcriptOf(splitWords(example.command));
            EXPECT_FALSE(isRefused(transcript)) << example.command << "\n" << transcript;
        }
    }
}

TEST(Examples, StandBesideEveryVerbThatWrites) {
    for (const Command& command : commandTable())
        EXPECT_TRUE(!command.spec.writesBook || !command.spec.examples.empty())
            << command.spec.name;
}

TEST(Descriptions, HaveNoFaults) {
    for (const CommandSpec& spec : commandSpecs())
        for (const std::string& fault : faultsOf(spec))
            ADD_FAILURE() << fault;
}

// Whoever handles ink, drier or solvent reads the caution where the verb is explained.
TEST(Descriptions, CautionAboutDriersAndSolvents) {
    for (const char* verb : {"weigh", "pull", "slab", "stock-take", "enter"}) {
        const std::string& caution = commandNamed(verb).spec.caution;
        for (const char* word : {"Driers and solvents", "skin", "fresh air", "Rags", "lidded metal",
                                 "safety data sheet", "rules where you work"})
            EXPECT_NE(caution.find(word), std::string::npos) << verb << ": " << word;
    }
}

}  // namespace

}  // namespace rackbook
