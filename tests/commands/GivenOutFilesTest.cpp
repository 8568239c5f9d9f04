#include "commands/GivenOutFiles.h"

#include <gtest/gtest.h>

#include "base/Files.h"
#include "base/Sha256.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

TEST(GivenOutFiles, FindsWhatIsNoLongerWhatWasGivenOut) {
    const test::TempFolder folder;
    Issue issue;
    issue.id = "issue-1";
    issue.issuedOn = EdtfDate::parse("2026-03-28");
    issue.fileName = "sheet.pdf";
    issue.fileSha256 = sha256("as it was");
    const std::string sheet = folder.file("sheet.pdf");
    const std::string renamed = folder.file("renamed.pdf");
    const std::string other = folder.file("other.pdf");
    test::putFile(sheet, "as it was");
    test::putFile(renamed, "as it was");
    test::putFile(other, "never given out");
    EXPECT_TRUE(givenOutFileFindings({issue}, {sheet, renamed, other}).empty());
    test::putFile(sheet, "as it is");
    const std::vector<Finding> found = givenOutFileFindings({issue}, {sheet, renamed, other});
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(describe(found[0]),
              sheet +
                  ": its bytes are not those that were given out under this name on 2026-03-28 "
                  "(issue issue-1). It was altered, or made anew: rackbook check-sheet tells what "
                  "it says.");
}

}  // namespace
}  // namespace rackbook
