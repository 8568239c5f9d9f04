#include "exchange/TableProposal.h"

#include <gtest/gtest.h>

#include "exchange/TreeJson.h"
#include "support/Paths.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

TableProposal proposalFor(const std::string& text, RecordKind kind,
                          const std::vector<std::string>& needed = {}) {
    return proposedMapping(
        tableFileFrom(text, {std::nullopt, std::nullopt, EncodingGuess::windows1252}, "t.csv"),
        kind, needed);
}

std::string proposed(const TableProposal& proposal, const std::string& field) {
    const Tree* records = proposal.mapping.find("records");
    for (const Tree& record : *records->asArray())
        if (const Tree* found = record.find("fields")->find(field))
            return jsonText(*found);
    return "none";
}

std::string oneLine(std::string text) {
    std::string line;
    for (const char c : text)
        if (c != '\n' && !(c == ' ' && (line.empty() || line.back() == ' ' || line.back() == '{')))
            line += c;
    return line;
}

TEST(TableProposal, KnowsHeadingsInGermanAndEnglish) {
    const std::string fixture =
        test::bytesOf(test::sourcePath("tests/exchange/tables/tins-semicolons-windows-1252.csv"));
    const TableProposal proposal =
        proposalFor(fixture, RecordKind::lot, {"lotKind", "colourWords"});
    const std::vector<std::pair<std::string, std::string>> matched = {
        {"Art", "lotKind"},         {"Farbe", "colourWords"},   {"Pigment", "pigments"},
        {"Gebinde", "container"},   {"Inhalt g", "netMass_g"},  {"Preis €", "price"},
        {"Gekauft am", "boughtOn"}, {"Angebrochen", "openedOn"}};
    EXPECT_EQ(proposal.matched, matched);
    EXPECT_EQ(proposal.passedOver, std::vector<std::string>{"Nr"});
    EXPECT_EQ(*proposal.mapping.find("encoding")->asText(), "windows-1252");
    EXPECT_EQ(*proposal.mapping.find("separator")->asText(), ";");
    EXPECT_EQ(*proposal.mapping.find("decimal")->asText(), "comma");
    EXPECT_EQ(*proposal.mapping.find("dates")->asText(), "dmy");
    EXPECT_EQ(oneLine(proposed(proposal, "lotKind")),
              R"({"column": "Art", "words": {"Farbe": "ink", "Firnis": "?", )"
              R"("Transparentweiß": "base", "Trockner": "drier" }})");
    EXPECT_EQ(proposal.toFillIn,
              std::vector<std::string>{"/records/0/fields/lotKind/words/Firnis"});
}

std::string formOf(const std::string& cells) {
    const TableProposal proposal = proposalFor("Inhalt g\tFarbe\n" + cells, RecordKind::lot);
    std::string form;
    for (const char* name : {"decimal", "thousands"})
        if (const Tree* found = proposal.mapping.find(name))
            form += std::string(form.empty() ? "" : " ") + *found->asText();
    return form;
}

TEST(TableProposal, TellsDecimalMarksFromThoseBetweenThousands) {
    EXPECT_EQ(formOf("1.000\tx\n62,5\tx\n"), "comma .");
    EXPECT_EQ(formOf("1,000\tx\n62.5\tx\n"), ",");
    EXPECT_EQ(formOf("1.234,50\tx\n"), "comma .");
    EXPECT_EQ(formOf("1,234,567\tx\n"), ",");
    EXPECT_EQ(formOf("12,5\tx\n"), "comma");
    EXPECT_EQ(formOf("12.5\tx\n12\tx\n"), "");
}

TEST(TableProposal, LeavesOpenWhatItCannotKnow) {
    const TableProposal proposal = proposalFor("Titel,Datum\nA,3.4.2019\nB,5.6.2019\n",
                                               RecordKind::edition, {"code", "title", "maker"});
    EXPECT_EQ(proposal.mapping.find("dates"), nullptr);
    EXPECT_EQ(oneLine(proposed(proposal, "maker")), R"({"fixed": "?"})");
    EXPECT_EQ(proposal.toFillIn, std::vector<std::string>{"/records/0/fields/maker/fixed"});
}

// The letter O for a zero.
TEST(TableProposal, TakesNoSlipOfTheHandForAUnit) {
    const TableProposal slip =
        proposalFor("Titel,Auflage,Breite\nA,20,30 cm\nB,2O,25\nC,15,21\n", RecordKind::edition);
    EXPECT_EQ(oneLine(proposed(slip, "declaredNumbered")), R"({"column": "Auflage"})");
    EXPECT_NE(oneLine(proposed(slip, "imageWidth_mm")).find(R"("units": [ "cm" ])"),
              std::string::npos);
    const TableProposal unit =
        proposalFor("Titel,Auflage\nA,20 Ex.\nB,20 Ex.\nC,15\n", RecordKind::edition);
    EXPECT_NE(oneLine(proposed(unit, "declaredNumbered")).find(R"("units": [ "Ex." ])"),
              std::string::npos);
}

TEST(TableProposal, OfAnEditionListAlsoMakesSheetsAndParties) {
    const TableProposal proposal =
        proposalFor("Code,Title,Artist,Edition size,Size cm\nA,Ah,Tilda,5,30 x 20\n",
                    RecordKind::edition, {"process"});
    const Tree::Array& records = *proposal.mapping.find("records")->asArray();
    ASSERT_EQ(records.size(), 3u);
    EXPECT_EQ(*records[0].find("record")->asText(), "party");
    EXPECT_EQ(*records[2].find("id")->asText(), "{Code}/{#2}");
    EXPECT_EQ(oneLine(proposed(proposal, "imageHeight_mm")),
              R"({"column": "Size cm", "part": 1, "times": 10.0})");
}

}  // namespace
}  // namespace rackbook
