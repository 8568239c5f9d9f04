#include "CodesOnPage.h"

#include <gtest/gtest.h>

#include <sstream>

#include "OutsideReader.h"

namespace rackbook {

std::vector<std::string> decodedCodesOf(const std::string& image) {
    constexpr int noneFound = 4;
    const ToolRun run = readWith("zbarimg --quiet --raw -Sdisable -Sqrcode.enable " + image);
    if (run.exitCode != 0 && run.exitCode != noneFound)
        ADD_FAILURE() << "zbarimg: " << run.output;
    std::vector<std::string> codes;
    std::istringstream lines(run.exitCode == 0 ? run.output : "");
    for (std::string line; std::getline(lines, line);)
        codes.push_back(line);
    return codes;
}

std::vector<std::string> decodedCodes(const std::string& pdf, int page) {
    const std::string path = fileWith(pdf, "codes.pdf");
    const std::string number = std::to_string(page);
    const ToolRun run = readWith("pdftoppm -r 150 -gray -singlefile -f " + number + " -l " +
                                 number + " " + path + " " + path);
    if (run.exitCode != 0)
        ADD_FAILURE() << "pdftoppm: " << run.output;
    return decodedCodesOf(path + ".pgm");
}

}  // namespace rackbook
