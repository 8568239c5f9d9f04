// Tags (ISO 32000-1, 14.7 and 14.8), read by poppler and, object by object, by qpdf.
#include <gtest/gtest.h>

#include <sstream>

#include "OutsideReader.h"
#include "RichSheet.h"
#include "SampleSheet.h"
#include "base/Files.h"
#include "exchange/TreeJson.h"
#include "pdf/PdfWriter.h"

namespace rackbook {
namespace {

class Structure : public testing::Test {
protected:
    void SetUp() override {
        const PdfFonts fonts;
        m_path = fileWith(writePdf(richSheet(), fonts), "tagged.pdf");
        const ToolRun json = readWith("qpdf --json=1 --json-key=objects " + m_path);
        ASSERT_EQ(json.exitCode, 0) << json.output;
        m_all = treeFromJson(json.output, "qpdf");
        const ToolRun plain =
            readWith("qpdf --qdf --object-streams=disable " + m_path + " " + m_path + ".plain");
        ASSERT_EQ(plain.exitCode, 0) << plain.output;
        m_plain = readFile(m_path + ".plain", 1 << 26);
    }

    // A member, or what it refers to.
    const Tree& in(const Tree& parent, const std::string& name) const {
        static const Tree nothing;
        const Tree* member = parent.find(name);
        if (!member)
            return nothing;
        return followed(*member);
    }

    const Tree& followed(const Tree& value) const {
        const std::string* text = value.asText();
        const Tree* object = text ? m_all.find("objects")->find(*text) : nullptr;
        return object ? *object : value;
    }

    Tree catalog() const { return in(*m_all.find("objects")->find("trailer"), "/Root"); }

    static std::string nameIn(const Tree& parent, const std::string& key) {
        const Tree* member = parent.find(key);
        return member && member->asText() ? *member->asText() : std::string();
    }

    // "Document(H1 Sect(…))" without what has no children.
    std::string outline(const Tree& element) const {
        std::string text = nameIn(element, "/S").substr(1);
        std::string children;
        const Tree& kids = in(element, "/K");
        if (const Tree::Array* all = kids.asArray()) {
            for (const Tree& kid : *all)
                if (followed(kid).find("/S"))
                    children += (children.empty() ? "" : " ") + outline(followed(kid));
        } else if (kids.find("/S")) {
            children = outline(kids);
        }
        return children.empty() ? text : text + "(" + children + ")";
    }

    std::string m_path;
    Tree m_all;
    std::string m_plain;
};

// How many things a page paints, each of them in one marked sequence.
std::size_t paintedInMarks(const std::string& content) {
    std::istringstream lines(content);
    int depth = 0;
    std::size_t painted = 0;
    for (std::string line; std::getline(lines, line);) {
        const std::string end = line.substr(line.find_last_of(' ') + 1);
        depth += end == "BDC" ? 1 : end == "EMC" ? -1 : 0;
        EXPECT_TRUE(depth == 0 || depth == 1) << line;
        const bool paints = end == "f" || end == "S" || end == "Tj" || line == "S Q" ||
                            line.find(" Do Q") != std::string::npos;
        EXPECT_TRUE(depth == 1 || !paints) << line;
        painted += paints ? 1 : 0;
    }
    EXPECT_EQ(depth, 0);
    return painted;
}

TEST_F(Structure, SaysThatTheFileIsTagged) {
    const ToolRun info = readWith("pdfinfo " + m_path);
    EXPECT_EQ(timesIn(info.output, "Tagged:          yes"), 1u) << info.output;
    EXPECT_EQ(readWith("qpdf --check " + m_path).exitCode, 0);
    EXPECT_EQ(nameIn(catalog(), "/Lang"), "en");
}

TEST_F(Structure, IsTheTreeOfTheModel) {
    const Tree root = in(catalog(), "/StructTreeRoot");
    EXPECT_EQ(nameIn(root, "/Type"), "/StructTreeRoot");
    EXPECT_EQ(outline(in(root, "/K")),
              "Document(H1 Sect(H2 P) Table(TR(TH TH) TR(TD TD) TR(TD)) L(LI(Lbl LBody)) "
              "Figure(Caption))");
}

TEST_F(Structure, IsReadInOrderAndWithoutRunningMatter) {
    const ToolRun read = readWith("pdfinfo -enc UTF-8 -struct-text " + m_path);
    std::string words;
    std::istringstream lines(read.output);
    for (std::string line; std::getline(lines, line);) {
        const std::size_t quote = line.find('"');
        const std::string text =
            quote == std::string::npos ? "" : line.substr(quote + 1, line.rfind('"') - quote - 1);
        words += text.empty() ? "" : text + "|";
    }
    EXPECT_EQ(words,
              "Harbour|Layers|Thin films, many of them,| one a week.|Ink|Colour|Base|pale|Nothing "
              "else|1.|Hang|As printed|")
        << read.output;
    EXPECT_EQ(timesIn(read.output, "Page 1"), 0u);
}

TEST_F(Structure, TellsScopesSpansAndWhatFiguresShow) {
    const ToolRun read = readWith("pdfinfo -enc UTF-8 -struct " + m_path);
    EXPECT_EQ(timesIn(read.output, "/Scope /Column"), 2u) << read.output;
    EXPECT_EQ(timesIn(read.output, "/ColSpan 2"), 1u) << read.output;
    const Tree whole = in(in(catalog(), "/StructTreeRoot"), "/K");
    EXPECT_EQ(nameIn(followed(in(whole, "/K").asArray()->back()), "/Alt"),
              "Four fields, ρed to white");
    EXPECT_EQ(timesIn(read.output, "/BBox"), 1u) << read.output;
    const Tree whole = in(in(catalog(), "/StructTreeRoot"), "/K");
    EXPECT_EQ(nameIn(followed(in(whole, "/K").asArray()->back()), "/Alt"),
              "Four fields, ρed to white");
    EXPECT_EQ(timesIn(read.output, "/BBox"), 1u) << read.output;
    // 10 … 40 mm from the left, 100 - 80 … 100 - 60 mm from below, in points.
    EXPECT_NE(m_plain.find("/BBox [\n        28.346456\n        56.692913\n        113.385826\n"
                           "        113.385826\n"),
              std::string::npos);
    // 10 … 40 mm from the left, 100 - 80 … 100 - 60 mm from below, in points.
    const Tree box = in(in(followed(in(whole, "/K").asArray()->back()), "/A"), "/BBox");
    ASSERT_EQ(box.asArray()->size(), 4u);
    for (const auto& [side, expected_mm] : {std::pair(0, 10), {1, 20}, {2, 40}, {3, 40}})
        EXPECT_NEAR(*box.asArray()->at(static_cast<std::size_t>(side)).asReal(),
                    expected_mm * 72 / 25.4, 1e-3);
}

// Each page's key leads to the elements of its sequences, and those name the page and the sequence.
TEST_F(Structure, LeadsBackFromPagesToElements) {
    const Tree numbers = in(in(in(catalog(), "/StructTreeRoot"), "/ParentTree"), "/Nums");
    ASSERT_NE(numbers.asArray(), nullptr);
    ASSERT_EQ(numbers.asArray()->size(), 4u);
    const Tree pages = in(in(catalog(), "/Pages"), "/Kids");
    std::size_t found = 0;
    for (std::size_t page = 0; page < 2; ++page) {
        const Tree& reference = pages.asArray()->at(page);
        EXPECT_EQ(*in(followed(reference), "/StructParents").asWhole(),
                  static_cast<std::int64_t>(page));
        EXPECT_EQ(nameIn(followed(reference), "/Tabs"), "/S");
        const Tree elements = followed(numbers.asArray()->at(2 * page + 1));
        for (std::size_t mark = 0; mark < elements.asArray()->size(); ++mark) {
            const Tree element = followed(elements.asArray()->at(mark));
            bool named = false;
            const Tree kids = in(element, "/K");
            for (const Tree& kid : *kids.asArray()) {
                const bool here = kid.asWhole() && nameIn(element, "/Pg") == *reference.asText() &&
                                  *kid.asWhole() == static_cast<std::int64_t>(mark);
                const bool elsewhere =
                    kid.find("/MCID") && nameIn(kid, "/Pg") == *reference.asText() &&
                    *kid.find("/MCID")->asWhole() == static_cast<std::int64_t>(mark);
                named = named || here || elsewhere;
            }
            EXPECT_TRUE(named) << page << " " << mark;
            ++found;
        }
    }
    EXPECT_EQ(found, timesIn(m_plain, "/MCID ") - 1) << "one more in the tree, to the next page";
}

// Everything painted stands in one sequence, either an element's or an artifact's.
TEST_F(Structure, LeavesNothingUnmarked) {
    std::size_t painted = 0;
    std::size_t at = 0;
    for (int page = 0; page < 2; ++page) {
        at = m_plain.find("%% Contents for page", at + 1);
        ASSERT_NE(at, std::string::npos);
        painted += paintedInMarks(m_plain.substr(at, m_plain.find("endstream", at) - at));
    }
    EXPECT_EQ(painted, 17u + 3u + 1u + 1u + 2u + 1u)
        << "texts and spaces between lines, pictures, curve, fill, swatch with its outline, rule";
    EXPECT_EQ(timesIn(m_plain, "/Artifact <</Type /Pagination>> BDC"), 2u);
    EXPECT_EQ(timesIn(m_plain, "/Artifact <</Type /Layout>> BDC"), 2u);
}

TEST_F(Structure, IsLeftOutWhereTheModelHasNone) {
    const PdfFonts fonts;
    PageModel model = emptySheet();
    model.pages[0].texts.push_back(textAt(10, 10, "Plain"));
    const std::string path = fileWith(writePdf(model, fonts), "untagged.pdf");
    EXPECT_EQ(timesIn(readWith("pdfinfo " + path).output, "Tagged:          no"), 1u);
    const ToolRun plain = readWith("qpdf --qdf --object-streams=disable " + path + " -");
    for (const char* word : {"BDC", "EMC", "/StructParents", "/MarkInfo", "/Tabs"})
        EXPECT_EQ(timesIn(plain.output, word), 0u) << word;
}

}  // namespace
}  // namespace rackbook
