#include <gtest/gtest.h>

#include "Together.h"

namespace rackbook::faults {
namespace {

#ifdef RACKBOOK_SANITIZED
constexpr int time_s = 15;
#else
constexpr int time_s = 3;
#endif

TEST(Together, WritersAndReadersLoseNothing) {
    const TogetherCounts counts = writeTogether(2, 2, time_s);
    for (const std::string& failure : counts.failures)
        ADD_FAILURE() << failure;
    // How many there are depends on the machine; each must have been at it.
    EXPECT_GT(counts.acknowledged, 1u);
    EXPECT_GT(counts.killed, 1u);
    EXPECT_GT(counts.reads, 1u);
    // Writers wait for one another, and nobody is passed over for good.
    EXPECT_LT(counts.longest_ms, 20000);
}

}  // namespace
}  // namespace rackbook::faults
