#include "cli/Help.h"

#include <gtest/gtest.h>

#include <sstream>

#include "SampleSpecs.h"
#include "base/Text.h"

namespace rackbook {
namespace {

TEST(Help, ShowsEverythingAboutAVerb) {
    EXPECT_EQ(helpText(pullSpec(), 80),
              R"(Usage: rackbook pull EDITION [IMPRESSIONS...] --mix MIX [options]

Records one printing run of a layer.

The portion is taken as it is at the time of the pull.

Impressions are written as ranges:
  1-12,15

Run on a terminal, it asks for what is missing.

Arguments
  EDITION              The edition's code.
  [IMPRESSIONS...]     Working numbers. May be given more than once.

Options
  --mix MIX            The mix that was printed. Required.
  --latitude DEGREES   Where it was printed. Default: the studio's.
  --packing KIND       What lay behind the sheet. One of hard or soft.
  --note TEXT          Words to keep. May be given more than once.
  --copies COUNT       How many.
  --count-only         Show [only] it's count: no list.
  --book FILE          The book to work on. Default: the environment variable
                       RACKBOOK_BOOK, else studio.rackbook in the current
                       folder.
  --json               Report as JSON.
  --dry-run            Check everything and write nothing.
  --by NAME            Who records this.
  --wait SECONDS       How long to wait while another program is writing the
                       book. Default: 5.
  --help               Show this help.

Caution
  Rags with drying oil can catch fire by themselves.

Examples
  rackbook pull heron 1-12 --mix grey
      Twelve sheets with the grey mix.
)");
}

TEST(Help, ShowsEveryVerbByGroup) {
    EXPECT_EQ(programHelp(sampleSpecs(), "0.1.0", 80), R"(Usage: rackbook VERB [arguments] [options]

Rackbook 0.1.0 keeps a relief printmaker's records and makes sheets from them.

Printing
  pull         Records one printing run of a layer.

Ink
  mix          Shows what a mix holds.
  mix add      Adds to a mix.

Exchange
  import       Reads records from a file.

Program
  completion   Writes a completion script.

Exit status
  0   Success.
  1   The work was done and there are findings.
  2   The command line asks for something that cannot be.
  3   Input, storage or the making of a sheet failed.

"rackbook VERB --help" says more about a verb. The book is the one that --book
names, else the environment variable RACKBOOK_BOOK, else studio.rackbook in the
current folder.
)");
}

TEST(Help, LeavesOutEmptySections) {
    CommandSpec spec;
    spec.name = "version";
    spec.summary = "Says which version this is.";
    spec.needsBook = false;
    EXPECT_EQ(helpText(spec, 80),
              "Usage: rackbook version [options]\n"
              "\n"
              "Says which version this is.\n"
              "\n"
              "Options\n"
              "  --help   Show this help.\n");
}

TEST(Help, KeepsOptionsAndTheirValuesTogetherInTheUsage) {
    const std::string text = helpText(pullSpec(), 40);
    EXPECT_EQ(text.substr(0, text.find("\n\n")),
              "Usage: rackbook pull EDITION\n"
              "            [IMPRESSIONS...] --mix MIX\n"
              "            [options]");
}

TEST(Help, PutsTextBelowLabelsThatAreTooWide) {
    CommandSpec spec;
    spec.name = "x";
    spec.needsBook = false;
    spec.options = {{"a-name-that-goes-on-and-on", "VALUE", "Words.", false, false, "", {}}};
    const std::string text = helpText(spec, 80);
    EXPECT_NE(text.find("\n  --a-name-that-goes-on-and-on VALUE\n"
                        "           Words.\n"
                        "  --help   Show this help.\n"),
              std::string::npos)
        << text;
}

TEST(Help, StaysWithinTheWidthWithoutTrailingSpaces) {
    for (const int width : {50, 60, 80, 120}) {
        std::string all = programHelp(sampleSpecs(), "0.1.0", width);
        for (const CommandSpec& spec : sampleSpecs())
            all += helpText(spec, width);
        std::istringstream lines(all);
        for (std::string line; std::getline(lines, line);) {
            EXPECT_LE(displayWidth(line), width) << line;
            EXPECT_TRUE(line.empty() || line.back() != ' ') << line;
        }
    }
}

}  // namespace
}  // namespace rackbook
