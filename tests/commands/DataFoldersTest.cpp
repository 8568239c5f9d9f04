#include "commands/DataFolders.h"

#include <gtest/gtest.h>

#include <cstdlib>

#include "Script.h"
#include "base/Error.h"

namespace rackbook {

namespace {

TEST(DataFolders, AreWhereTheEnvironmentSays) {
    const FreshFolder folder;
    EXPECT_EQ(findDataFolders().schema, std::string(RACKBOOK_SOURCE) + "/schema");
    EXPECT_EQ(findDataFolders().templates, std::string(RACKBOOK_SOURCE) + "/templates");
}

TEST(DataFolders, RefuseANamedFolderThatHoldsNone) {
    const FreshFolder folder;
    setenv("RACKBOOK_DATA", "nowhere", 1);
    try {
        findDataFolders();
        FAIL() << "nothing was refused";
    } catch (const StoreError& error) {
        EXPECT_STREQ(error.what(),
                     "nowhere: the folder that RACKBOOK_DATA names holds no schema and templates. "
                     "Unset it, or name share/rackbook of an installed Rackbook.");
    }
}

}  // namespace

}  // namespace rackbook
