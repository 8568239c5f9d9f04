#include <gtest/gtest.h>

#include "Together.h"

namespace rackbook::faults {
namespace {

TEST(Together, WritersAndReadersLoseNothing) {
    const TogetherCounts counts = writeTogether(2, 2, 3);
    for (const std::string& failure : counts.failures)
        ADD_FAILURE() << failure;
    EXPECT_GT(counts.acknowledged, 4u);
    EXPECT_GT(counts.killed, 4u);
    EXPECT_GT(counts.reads, 4u);
    // Writers wait for one another, and nobody is passed over for good.
    EXPECT_LT(counts.longest_ms, 20000);
}

}  // namespace
}  // namespace rackbook::faults
