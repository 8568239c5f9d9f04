#include "Studio.h"

#include <filesystem>
#include <stdexcept>

#include "FormTools.h"
#include "Script.h"
#include "support/TempFolder.h"

namespace rackbook::faults {

namespace {

void runLine(const std::string& line) {
    const std::string transcript = transcriptOf(splitWords("rackbook " + line));
    if (transcript.size() >= 2 && transcript.substr(transcript.size() - 2) == "]\n")
        throw std::runtime_error(line + "\n" + transcript);
}

}  // namespace

void prepareStudio(const WritingCommand& command) {
    const std::string source = RACKBOOK_SOURCE;
    for (const auto& [name, target] : {std::pair("measured", "/tests/commands/measured"),
                                       std::pair("pictures", "/tests/exchange/pictures"),
                                       std::pair("tables", "/tests/exchange/tables")})
        std::filesystem::create_directory_symlink(source + target, name);
    runScript("studio");
    for (const auto& [name, bytes] : command.files) {
        std::filesystem::create_directories(std::filesystem::absolute(name).parent_path());
        test::putFile(name, bytes);
    }
    for (const std::string& line : command.setUp)
        runLine(line);
    if (!command.wantsFilledSheet)
        return;
    runLine("sheet bench TIDE/L1");
    const std::string sheet = "TIDE-L1-bench.pdf";
    test::putFile(sheet, filledByQpdf(test::bytesOf(sheet), {{"pull.day", "u:2026-03-28"},
                                                             {"sheet.all.printed", "/on"}}));
}

}  // namespace rackbook::faults
