#include "commands/BackupFiles.h"

#include <gtest/gtest.h>

namespace rackbook {
namespace {

using Names = std::vector<std::string>;

TEST(BackupFiles, AreNamedAfterTheBookAndTheMoment) {
    EXPECT_EQ(backupName("shed/studio.rackbook", 1774720800), "studio-20260328T180000Z.rackbook");
    EXPECT_EQ(backupName("studio", 0), "studio-19700101T000000Z.rackbook");
}

const Names all = {
    "studio-20251230T090000Z.rackbook", "studio-20260110T090000Z.rackbook",
    "studio-20260131T090000Z.rackbook", "studio-20260201T080000Z.rackbook",
    "studio-20260202T080000Z.rackbook", "studio-20260202T200000Z.rackbook",
};

TEST(BackupFiles, KeepTheLastOfEachDay) {
    EXPECT_EQ(superseded("studio.rackbook", all, {2, 0}), Names({all[0], all[1], all[2], all[4]}));
}

TEST(BackupFiles, KeepTheLastOfEachMonth) {
    EXPECT_EQ(superseded("studio.rackbook", all, {0, 2}), Names({all[0], all[1], all[3], all[4]}));
}

TEST(BackupFiles, KeepWhatEitherAsksFor) {
    EXPECT_EQ(superseded("studio.rackbook", all, {3, 3}), Names({all[1], all[4]}));
    EXPECT_EQ(superseded("studio.rackbook", all, {100, 0}), Names({all[4]}));
}

TEST(BackupFiles, AlwaysKeepTheLatest) {
    EXPECT_EQ(superseded("studio.rackbook", all, {0, 0}),
              Names({all[0], all[1], all[2], all[3], all[4]}));
}

TEST(BackupFiles, LeaveWhatHasAnotherName) {
    EXPECT_EQ(superseded("studio.rackbook",
                         {"studio.rackbook", "studio-20260110T090000Z.rackbook.before",
                          "other-20260110T090000Z.rackbook", "studio-2026-01-10.rackbook",
                          "studio-20260110T0900000.rackbook", "studio-20260111T090000Z.rackbook"},
                         {0, 0}),
              Names());
}

}  // namespace
}  // namespace rackbook
