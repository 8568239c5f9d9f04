// What the code on a certificate promises, held against the file by programs of others: zbar reads
// the code, pdfdetach takes the record out, sha256sum hashes it.
#include <gtest/gtest.h>

#include <algorithm>
#include <stdexcept>
#include <string>

#include "CheckedSheets.h"
#include "CodesOnPage.h"
#include "OutsideReader.h"

namespace rackbook {
namespace {

const CheckedSheet& certificates() {
    const std::vector<CheckedSheet>& all = checkedSheets();
    const auto found = std::find_if(all.begin(), all.end(), [](const CheckedSheet& sheet) {
        return sheet.name == "EEL-certificate";
    });
    if (found == all.end())
        throw std::runtime_error("no certificates were made");
    return *found;
}

std::string hashOf(const std::string& pdf, std::size_t number) {
    const std::string out = pdf + "." + std::to_string(number) + ".json";
    const ToolRun taken =
        readWith("pdfdetach -save " + std::to_string(number) + " -o " + out + " " + pdf);
    EXPECT_EQ(taken.exitCode, 0) << taken.output;
    return readWith("sha256sum " + out).output.substr(0, 64);
}

TEST(CertificateCodes, HoldTheHashOfTheRecordInside) {
    const CheckedSheet& sheet = certificates();
    const std::string pdf = fileOf(sheet);
    std::vector<std::string> codes;
    for (std::size_t page = 1; page <= sheet.model.pages.size(); ++page)
        for (std::string& code : decodedCodes(sheet.bytes, static_cast<int>(page)))
            codes.push_back(std::move(code));
    ASSERT_EQ(codes.size(), sheet.model.files.size());
    ASSERT_GT(codes.size(), 20u);
    for (std::size_t i = 0; i < codes.size(); ++i) {
        EXPECT_EQ(codes[i].rfind("rackbook EEL ", 0), 0u) << codes[i];
        const std::string ending = " sha256:" + hashOf(pdf, i + 1);
        ASSERT_GT(codes[i].size(), ending.size());
        EXPECT_EQ(codes[i].substr(codes[i].size() - ending.size()), ending) << codes[i];
    }
}

}  // namespace
}  // namespace rackbook
