// Annotations, forms, actions, embedded files and tags: good twins that have them, and twins of
// those broken in one place. Each must yield its finding and no other.
#include <gtest/gtest.h>

#include <QByteArray>
#include <QCryptographicHash>
#include <regex>

#include "SampleSheet.h"
#include "archival/Twin.h"
#include "pdf/PdfWriter.h"

namespace rackbook {
namespace {

using nlohmann::json;
using Change = std::function<void(json&)>;

const std::string& goodFile() {
    static const PdfFonts fonts;
    static const std::string bytes =
        writePdf(shortSheet(fonts, "Two layers on thin paper."), fonts);
    return bytes;
}

void annotate(Twin& twin, const Change& change) {
    const std::string look =
        twin.addStream({{"/Subtype", "/Form"}, {"/BBox", {0, 0, 9, 9}}}, "0 0 9 9 re f");
    json note = {{"/Type", "/Annot"},
                 {"/Subtype", "/Square"},
                 {"/Rect", {50, 50, 59, 59}},
                 {"/F", 4},
                 {"/AP", {{"/N", look}}}};
    change(note);
    twin.page()["/Annots"] = {twin.add(note)};
}

std::function<void(Twin&)> annotated(const Change& change) {
    return [=](Twin& twin) { annotate(twin, change); };
}

TEST(TwinsOfParts, BrokenAnnotationsAreFound) {
    Twin good(goodFile());
    annotate(good, [](json&) {});
    EXPECT_EQ(linesOf(archivalFindings(good.bytes())), "");
    expectEachFound(
        goodFile(),
        {{"no appearance", "6.3.3", annotated([](json& note) { note.erase("/AP"); })},
         {"second appearance", "6.3.3",
          annotated([](json& note) { note["/AP"]["/D"] = note["/AP"]["/N"]; })},
         {"not printed", "6.3.2", annotated([](json& note) { note["/F"] = 0; })},
         {"hidden", "6.3.2", annotated([](json& note) { note["/F"] = 6; })},
         {"kind", "6.3.1", annotated([](json& note) { note["/Subtype"] = "/Movie"; })}});
}

TEST(TwinsOfParts, BrokenActionsAreFound) {
    expectEachFound(
        goodFile(),
        {{"script", "6.5.1",
          [](Twin& t) {
              t.catalog()["/OpenAction"] = {{"/S", "/JavaScript"}, {"/JS", "u:1"}};
          }},
         {"launch", "6.5.1",
          [](Twin& t) {
              t.catalog()["/OpenAction"] = {{"/S", "/Launch"}};
          }},
         {"named scripts", "6.5.1",
          [](Twin& t) {
              t.catalog()["/Names"] = {{"/JavaScript", json::object()}};
          }},
         {"odd move", "6.5.1",
          [](Twin& t) {
              t.catalog()["/OpenAction"] = {{"/S", "/Named"}, {"/N", "/Print"}};
          }},
         {"by itself", "6.5.2", [](Twin& t) { t.page()["/AA"] = json::object(); }},
         {"wants appearances", "6.4.1",
          [](Twin& t) {
              t.catalog()["/AcroForm"] = {{"/Fields", json::array()}, {"/NeedAppearances", true}};
          }},
         {"form of XML", "6.4.2", [](Twin& t) {
              t.catalog()["/AcroForm"] = {{"/Fields", json::array()}, {"/XFA", "u:x"}};
          }}});
    Twin move(goodFile());
    move.catalog()["/OpenAction"] = {{"/S", "/Named"}, {"/N", "/LastPage"}};
    EXPECT_EQ(linesOf(archivalFindings(move.bytes())), "");
}

struct Attachment {
    json stream;
    json specification;
    bool isNamed = true;
    bool isAssociated = true;
};

void attach(Twin& twin, const std::function<void(Attachment&)>& change) {
    const std::string data = "{\"records\":[]}\n";
    const QByteArray sum =
        QCryptographicHash::hash(QByteArray::fromStdString(data), QCryptographicHash::Md5);
    Attachment made;
    made.stream = {{"/Type", "/EmbeddedFile"},
                   {"/Subtype", "/application/json"},
                   {"/Params",
                    {{"/Size", data.size()},
                     {"/ModDate", "u:D:20260304083000+00'00'"},
                     {"/CheckSum", "b:" + sum.toHex().toStdString()}}}};
    made.specification = {{"/Type", "/Filespec"},
                          {"/F", "u:records.json"},
                          {"/UF", "u:records.json"},
                          {"/AFRelationship", "/Source"}};
    change(made);
    const std::string stream = twin.addStream(made.stream, data);
    made.specification["/EF"] = {{"/F", stream}, {"/UF", stream}};
    const std::string specification = twin.add(made.specification);
    if (made.isAssociated)
        twin.catalog()["/AF"] = {specification};
    twin.catalog()["/Odd"] = specification;
    if (made.isNamed)
        twin.catalog()["/Names"] = {
            {"/EmbeddedFiles", {{"/Names", {"u:records.json", specification}}}}};
}

std::function<void(Twin&)> attached(const std::function<void(Attachment&)>& change) {
    return [=](Twin& twin) { attach(twin, change); };
}

TEST(TwinsOfParts, BrokenAttachmentsAreFound) {
    Twin good(goodFile());
    attach(good, [](Attachment&) {});
    EXPECT_EQ(linesOf(archivalFindings(good.bytes())), "");
    expectEachFound(
        goodFile(),
        {{"not associated", "6.8", attached([](Attachment& a) { a.isAssociated = false; })},
         {"not listed", "house", attached([](Attachment& a) { a.isNamed = false; })},
         {"no relation", "6.8",
          attached([](Attachment& a) { a.specification.erase("/AFRelationship"); })},
         {"odd relation", "6.8",
          attached([](Attachment& a) { a.specification["/AFRelationship"] = "/Odd"; })},
         {"no Unicode name", "6.8", attached([](Attachment& a) { a.specification.erase("/UF"); })},
         {"no media type", "6.8", attached([](Attachment& a) { a.stream.erase("/Subtype"); })},
         {"no date", "6.8", attached([](Attachment& a) { a.stream["/Params"].erase("/ModDate"); })},
         {"size", "32000-1, 7.11.4",
          attached([](Attachment& a) { a.stream["/Params"]["/Size"] = 3; })},
         {"checksum", "32000-1, 7.11.4", attached([](Attachment& a) {
              a.stream["/Params"]["/CheckSum"] = "b:" + std::string(32, '0');
          })}});
}

TEST(TwinsOfParts, AnAttachmentIsForbiddenByPartOne) {
    Twin twin(goodFile());
    attach(twin, [](Attachment&) {});
    EXPECT_NE(clausesOf(archivalFindings(twin.bytes(), PdfLevel::a1b)).find("19005-1, 6.1.11"),
              std::string::npos);
}

// The page's content without the writer's own marks.
std::string unmarked(const Twin& twin) {
    static const std::regex mark("/\\w+ (<<[^>]*>> BDC|BMC)\\s|\\bEMC\\b");
    return std::regex_replace(twin.content(), mark, "");
}

// All that the page draws as one paragraph.
void tag(Twin& twin, const std::function<void(Twin&, const std::string& element)>& change) {
    twin.setContent("/P <</MCID 0>> BDC\n" + unmarked(twin) + "\nEMC\n");
    const std::string root = twin.add({{"/Type", "/StructTreeRoot"}});
    const std::string element = twin.add({{"/Type", "/StructElem"},
                                          {"/S", "/P"},
                                          {"/P", root},
                                          {"/Pg", twin.pageReference()},
                                          {"/K", 0}});
    twin.object(root)["/K"] = {element};
    twin.object(root)["/ParentTree"] = {{"/Nums", {0, {element}}}};
    twin.page()["/StructParents"] = 0;
    twin.catalog()["/MarkInfo"] = {{"/Marked", true}};
    twin.catalog()["/StructTreeRoot"] = root;
    change(twin, element);
}

using TagChange = void (*)(Twin&, const std::string&);

std::function<void(Twin&)> tagged(TagChange change) {
    return [=](Twin& twin) { tag(twin, change); };
}

json& rootOf(Twin& twin) {
    return twin.object(twin.catalog()["/StructTreeRoot"]);
}

// For the tags' own rules only; one page is tagged, so a file of one page is good.
TEST(TwinsOfParts, BrokenTagsAreFound) {
    Twin good(goodFile());
    tag(good, [](Twin&, const std::string&) {});
    EXPECT_EQ(linesOf(archivalFindings(good.bytes())), "");
    expectEachFound(
        goodFile(),
        {{"not marked", "6.7.2",
          tagged([](Twin& t, const std::string&) { t.catalog().erase("/MarkInfo"); })},
         {"no tags", "6.7.3.3",
          tagged([](Twin& t, const std::string&) { t.catalog().erase("/StructTreeRoot"); })},
         {"unknown type", "6.7.3.4",
          tagged([](Twin& t, const std::string& e) { t.object(e)["/S"] = "/Odd"; })},
         {"figure without words", "6.7.5",
          tagged([](Twin& t, const std::string& e) { t.object(e)["/S"] = "/Figure"; })},
         {"another parent", "32000-1, 14.7.2",
          tagged([](Twin& t, const std::string& e) { t.object(e)["/P"] = e; })},
         {"not in the table", "32000-1, 14.7.4.4",
          tagged([](Twin& t, const std::string&) { t.page().erase("/StructParents"); })},
         {"another in the table", "32000-1, 14.7.4.4", tagged([](Twin& t, const std::string&) {
              rootOf(t)["/ParentTree"]["/Nums"][1][0] = t.pageReference();
          })},
         {"in no tag", "32000-1, 14.7.4.2",
          tagged([](Twin& t, const std::string& e) { t.object(e).erase("/K"); })},
         {"in two tags", "32000-1, 14.7.4.2", tagged([](Twin& t, const std::string& e) {
              t.object(e)["/K"] = {0, 0};
          })},
         {"content that is not there", "32000-1, 14.7.4.2",
          tagged([](Twin& t, const std::string& e) {
              t.object(e)["/K"] = {0, 7};
          })}});
}

TEST(TwinsOfParts, WhatIsDrawnOutsideOfTagsIsFound) {
    const auto drawn = [](const std::string& more) {
        Twin twin(goodFile());
        const std::string content = unmarked(twin);
        tag(twin, [&](Twin& t, const std::string&) {
            t.setContent("/P <</MCID 0>> BDC\n" + content + "\nEMC\n" + more);
        });
        return clausesOf(archivalFindings(twin.bytes()));
    };
    EXPECT_EQ(drawn("0 0 m 9 9 l S"), "6.7.3.2");
    EXPECT_EQ(drawn("/Artifact BMC 0 0 m 9 9 l S EMC"), "");
}

}  // namespace
}  // namespace rackbook
