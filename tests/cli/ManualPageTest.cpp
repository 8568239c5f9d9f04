#include <gtest/gtest.h>

#include "SampleSpecs.h"
#include "cli/Help.h"
#include "support/RunShell.h"

namespace rackbook {
namespace {

std::vector<CommandSpec> awkwardSpecs() {
    std::vector<CommandSpec> specs = sampleSpecs();
    specs[0].details +=
        "\n\n.SH is no heading here\n'nor this\na\\fBb C:\\dir ~ ^ ` \"quoted\" \u00FC \u7248\n"
        "  .kept line\n  second";
    return specs;
}

std::string page() {
    return manualPage(awkwardSpecs(), "0.1.0", "2026-03-04");
}

TEST(ManualPage, NamesProgramDateAndVersion) {
    EXPECT_EQ(
        page().rfind(".TH RACKBOOK 1 \"2026\\-03\\-04\" \"Rackbook 0.1.0\" \"Rackbook\"\n", 0), 0u);
}

TEST(ManualPage, HoldsNothingButAscii) {
    for (const char c : page())
        EXPECT_TRUE(c == '\n' || (c >= ' ' && c <= '~')) << static_cast<int>(c);
}

TEST(ManualPage, DescribesEveryVerbAndOption) {
    const std::string text = page();
    EXPECT_NE(text.find(".SS \"mix add\"\n.B \"rackbook mix add [options]\"\n"), std::string::npos);
    EXPECT_NE(text.find(".TP\n.B \"\\-\\-packing KIND\"\nWhat lay behind the sheet. One of hard or "
                        "soft.\n"),
              std::string::npos);
    EXPECT_NE(text.find(".B \"Caution\"\n.RS 4\nRags with drying oil can catch fire"),
              std::string::npos);
    EXPECT_NE(text.find("rackbook pull heron 1\\-12 \\-\\-mix grey\n.EE\n"), std::string::npos);
}

TEST(ManualPage, DescribesSharedOptionsOnce) {
    const std::string text = page();
    EXPECT_NE(text.find("Takes \\-\\-book, \\-\\-dry\\-run, \\-\\-by, \\-\\-wait and \\-\\-help as "
                        "described below.\n"),
              std::string::npos);
    for (const std::string label : {"\\-\\-book FILE", "\\-\\-json", "\\-\\-dry\\-run",
                                    "\\-\\-by NAME", "\\-\\-wait SECONDS", "\\-\\-help"}) {
        const std::string tag = ".TP\n.B \"" + label + "\"\n";
        const std::size_t first = text.find(tag);
        ASSERT_NE(first, std::string::npos) << label;
        EXPECT_EQ(text.find(tag, first + 1), std::string::npos) << label;
    }
}

TEST(ManualPage, LetsNoTextActAsARequest) {
    const std::string text = page();
    EXPECT_NE(text.find("\n\\&.SH is no heading here\n\\(aqnor this\n"
                        "a\\(rsfBb C:\\(rsdir \\(ti \\(ha \\(ga \\(dqquoted\\(dq \\[u00FC] "
                        "\\[u7248]\n"),
              std::string::npos);
}

TEST(ManualPage, FormatsWithoutAWarning) {
    if (!test::hasProgram("groff"))
        GTEST_SKIP() << "groff is not here";
    const test::ShellResult result = test::runOn(page(), "groff -man -z -ww -Tutf8 \"$FILE\"");
    EXPECT_EQ(result.exitCode, 0);
    EXPECT_EQ(result.output, "");
}

TEST(ManualPage, BreaksNoWords) {
    if (!test::hasProgram("groff"))
        GTEST_SKIP() << "groff is not here";
    for (const std::string columns : {"60", "70", "78", "80"}) {
        const std::string text =
            test::runOn(page(), "groff -man -Tutf8 -P-c -rLL=" + columns + "n \"$FILE\"").output;
        EXPECT_EQ(text.find("\u2010\n"), std::string::npos) << text;
    }
}

TEST(ManualPage, ReadsAsWritten) {
    if (!test::hasProgram("groff"))
        GTEST_SKIP() << "groff is not here";
    const std::string text =
        test::runOn(page(), "groff -man -Tutf8 -rLL=200n -P-c -P-b -P-u -P-o \"$FILE\"").output;
    EXPECT_NE(text.find(".SH is no heading here 'nor this a\\fBb C:\\dir ~ ^ ` \"quoted\" \u00FC "
                        "\u7248\n"),
              std::string::npos)
        << text;
    EXPECT_NE(text.find("  .kept line\n"), std::string::npos);
    EXPECT_NE(text.find("--latitude DEGREES\n"), std::string::npos);
}

}  // namespace
}  // namespace rackbook
