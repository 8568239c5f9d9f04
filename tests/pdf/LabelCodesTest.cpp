// Every code on every page of labels, read by a program of others at 150 dots an inch.
#include <gtest/gtest.h>

#include <algorithm>

#include "CheckedSheets.h"
#include "CodesOnPage.h"

namespace rackbook {
namespace {

// What the figures of a page are said to show, without the words before it.
std::vector<std::string> codesMeantOn(const PageModel& model, const Page& page) {
    const std::string before = "QR code: ";
    std::vector<std::string> codes;
    for (const Fill& fill : page.fills) {
        const std::string& alternate =
            model.structure[static_cast<std::size_t>(fill.element)].alternate;
        EXPECT_EQ(alternate.rfind(before, 0), 0u) << alternate;
        codes.push_back(alternate.substr(before.size()));
    }
    return codes;
}

TEST(LabelCodes, AreReadAtOneHundredAndFiftyDotsAnInch) {
    std::size_t sheets = 0;
    for (const CheckedSheet& sheet : checkedSheets()) {
        if (sheet.name.find("-labels") == std::string::npos)
            continue;
        ++sheets;
        for (std::size_t i = 0; i < sheet.model.pages.size(); ++i) {
            std::vector<std::string> meant = codesMeantOn(sheet.model, sheet.model.pages[i]);
            std::vector<std::string> read = decodedCodes(sheet.bytes, static_cast<int>(i) + 1);
            EXPECT_FALSE(meant.empty());
            std::sort(meant.begin(), meant.end());
            std::sort(read.begin(), read.end());
            EXPECT_EQ(read, meant) << sheet.name << ", page " << i + 1;
        }
    }
    EXPECT_EQ(sheets, 2u);
}

}  // namespace
}  // namespace rackbook
