#include <gtest/gtest.h>

#include <set>

#include "Durability.h"
#include "FaultMatrix.h"
#include "commands/CommandTable.h"

namespace rackbook::faults {
namespace {

#ifdef RACKBOOK_SANITIZED
constexpr std::size_t faultsForEach = 1;
#else
constexpr std::size_t faultsForEach = 5;
#endif

TEST(FaultMatrix, HasEveryVerbThatWrites) {
    std::set<std::string> tried;
    for (const WritingCommand& command : writingCommands())
        tried.insert(command.verb);
    for (const Command& command : commandTable())
        EXPECT_TRUE(!writes(command.spec) || tried.count(command.spec.name) > 0)
            << command.spec.name;
}

class FaultMatrix : public testing::TestWithParam<std::size_t> {};

TEST_P(FaultMatrix, LeavesAllOrNothing) {
    const MatrixCounts counts = runMatrix(writingCommands()[GetParam()], faultsForEach);
    EXPECT_GT(counts.cases, 0u);
    for (const std::string& failure : counts.failures)
        ADD_FAILURE() << failure;
}

std::string nameOf(const testing::TestParamInfo<std::size_t>& command) {
    std::string name = writingCommands()[command.param].verb + "_" + std::to_string(command.param);
    for (char& c : name)
        c = c == '-' ? '_' : c;
    return name;
}

INSTANTIATE_TEST_SUITE_P(All, FaultMatrix, testing::Range(std::size_t{0}, writingCommands().size()),
                         nameOf);

using Calls = std::vector<std::string>;

TEST(Durability, WantsBytesOnTheDiskBeforeTheirName) {
    EXPECT_EQ(notDurable({"write /d/a.new", "sync /d/a.new", "rename /d/a.new\t/d/a", "sync /d"}),
              Calls());
    EXPECT_EQ(notDurable({"write /d/a.new", "rename /d/a.new\t/d/a", "sync /d"}),
              Calls({"/d/a.new gets its name before its bytes are on the disk"}));
    EXPECT_EQ(notDurable({"write /d/a.new", "sync /d/a.new", "rename /d/a.new\t/d/a"}),
              Calls({"/d is not synced after /d/a got its name"}));
    EXPECT_EQ(notDurable({"sync /d/a", "write /d/a"}),
              Calls({"/d/a is never synced after its last bytes"}));
}

}  // namespace
}  // namespace rackbook::faults
