// Good files broken in one place: fonts, colours, states, images, operators. Each must yield its
// finding and no other.
#include <gtest/gtest.h>

#include "SampleSheet.h"
#include "archival/Twin.h"
#include "pdf/PdfWriter.h"

namespace rackbook {
namespace {

using nlohmann::json;

std::string goodFile(PdfLevel level = PdfLevel::a3b) {
    const PdfFonts fonts;
    PageModel model = shortSheet(fonts, "Two layers on thin paper.");
    model.pages[0].swatches.push_back({30, 80, 10, 10, {50, 10, -60.5}, 0.1});
    return writePdf(model, fonts, level);
}

void changeWidth(Twin& twin) {
    for (json& run : twin.descendant()["/W"])
        if (run.is_array())
            run[0] = run[0].get<double>() + 5;
}

void drawImage(Twin& twin, const json& more) {
    json image = {{"/Type", "/XObject"}, {"/Subtype", "/Image"},   {"/Width", 1},
                  {"/Height", 1},        {"/BitsPerComponent", 8}, {"/ColorSpace", "/DeviceRGB"}};
    image.update(more);
    twin.page()["/Resources"]["/XObject"]["/Im1"] = twin.addStream(image, "abc");
    twin.draw("q 10 0 0 10 50 50 cm /Im1 Do Q");
}

void setState(Twin& twin, const json& state) {
    twin.page()["/Resources"]["/ExtGState"]["/State"] = twin.add(state);
    twin.draw("/State gs");
}

TEST(TwinsOfPages, BrokenFontsAreFound) {
    expectEachFound(
        goodFile(),
        {{"no Unicode", "6.2.11.7.2", [](Twin& t) { t.font().erase("/ToUnicode"); }},
         {"not embedded", "6.2.11.4.1", [](Twin& t) { t.descriptor().erase("/FontFile2"); }},
         {"no map of glyphs", "6.2.11.3.2", [](Twin& t) { t.descendant().erase("/CIDToGIDMap"); }},
         {"another encoding", "6.2.11.3.3", [](Twin& t) { t.font()["/Encoding"] = "/Identity-V"; }},
         {"another collection", "6.2.11.3.1",
          [](Twin& t) {
              t.descendant()["/CIDSystemInfo"] = {
                  {"/Registry", "u:Adobe"}, {"/Ordering", "u:Japan1"}, {"/Supplement", 0}};
          }},
         {"widths", "6.2.11.5", changeWidth},
         {"name without a tag", "32000-1, 9.6.4",
          [](Twin& t) {
              for (json* part : {&t.font(), &t.descendant()})
                  (*part)["/BaseFont"] = "/NotoSans";
              t.descriptor()["/FontName"] = "/NotoSans";
          }},
         {"two names", "32000-1, 9.7.6.2",
          [](Twin& t) { t.descriptor()["/FontName"] = "/AAAAAA+NotoSans"; }},
         {"glyph set", "6.2.11.4.2",
          [](Twin& t) { t.descriptor()["/CIDSet"] = t.addStream(json::object(), "\xFF"); }},
         {"a program that is none", "6.2.11.2",
          [](Twin& t) { t.descriptor()["/FontFile2"] = t.addStream(json::object(), "true"); }},
         {"another kind of font", "house",
          [](Twin& t) { t.descendant()["/Subtype"] = "/CIDFontType0"; }}});
}

TEST(TwinsOfPages, BrokenGlyphSetsAreFoundAfterPartOne) {
    const std::string good = goodFile(PdfLevel::a1b);
    EXPECT_EQ(linesOf(archivalFindings(Twin(good).bytes(), PdfLevel::a1b)), "");
    expectEachFound(
        good,
        {{"all glyphs", "6.2.11.4.2",
          [](Twin& t) {
              t.descriptor()["/CIDSet"] = t.addStream(json::object(), std::string(600, '\xFF'));
          }},
         {".notdef alone", "6.2.11.4.2",
          [](Twin& t) { t.descriptor()["/CIDSet"] = t.addStream(json::object(), "\x80"); }},
         {"none", "19005-1, 6.3.5", [](Twin& t) { t.descriptor().erase("/CIDSet"); }}},
        PdfLevel::a1b);
}

TEST(TwinsOfPages, CodesThatTheFontDoesNotHaveAreFound) {
    Twin twin(goodFile());
    const std::string font = twin.page()["/Resources"]["/Font"].begin().key();
    twin.draw("BT " + font + " 10 Tf 1 0 0 1 50 50 Tm <0000FFF0> Tj ET");
    EXPECT_EQ(clausesOf(archivalFindings(twin.bytes())),
              "6.2.11.4.1; 6.2.11.5; 6.2.11.7.2; 6.2.11.8");
}

TEST(TwinsOfPages, BrokenColoursAreFound) {
    expectEachFound(
        goodFile(),
        {{"no output intent", "6.2.4.3", [](Twin& t) { t.catalog().erase("/OutputIntents"); }},
         {"CMYK", "6.2.4.3", [](Twin& t) { t.draw("0 0 0 1 k"); }},
         {"CMYK by name", "6.2.4.3", [](Twin& t) { t.draw("/DeviceCMYK CS"); }},
         {"CMYK behind a separation", "6.2.4.3",
          [](Twin& t) {
              t.page()["/Resources"]["/ColorSpace"]["/Spot"] = {"/Separation", "/Spot",
                                                                "/DeviceCMYK", json::object()};
              t.draw("/Spot cs");
          }},
         {"profile", "6.2.3",
          [](Twin& t) {
              const std::string intent = t.catalog()["/OutputIntents"][0];
              t.object(t.object(intent)["/DestOutputProfile"])["/N"] = 4;
          }},
         {"no condition", "32000-1, 14.11.5",
          [](Twin& t) {
              const std::string intent = t.catalog()["/OutputIntents"][0];
              t.object(intent).erase("/OutputConditionIdentifier");
          }},
         {"CIELAB out of range", "32000-1, 8.6.5.4",
          [](Twin& t) { t.draw("/LabD50 cs 50 10 161 sc"); }},
         {"white point", "32000-1, 8.6.5.4",
          [](Twin& t) {
              t.page()["/Resources"]["/ColorSpace"]["/Lab2"] = {"/Lab",
                                                                {{"/WhitePoint", {0.9, 0.9, 0.9}}}};
              t.draw("/Lab2 cs 50 10 10 sc");
          }},
         {"ICC profile that is none", "6.2.4.2",
          [](Twin& t) {
              t.page()["/Resources"]["/ColorSpace"]["/Icc"] = {"/ICCBased",
                                                               t.addStream({{"/N", 3}}, "nothing")};
              t.draw("/Icc cs");
          }},
         {"intent", "6.2.6", [](Twin& t) { t.draw("/Photographic ri"); }}});
}

TEST(TwinsOfPages, BrokenStatesAreFound) {
    expectEachFound(goodFile(), {{"transparency", "house",
                                  [](Twin& t) {
                                      setState(t, {{"/ca", 0.5}});
                                  }},
                                 {"blend mode", "house",
                                  [](Twin& t) {
                                      setState(t, {{"/BM", "/Multiply"}});
                                  }},
                                 {"unknown blend mode", "6.2.10",
                                  [](Twin& t) {
                                      setState(t, {{"/BM", "/Glow"}});
                                  }},
                                 {"soft mask", "house",
                                  [](Twin& t) {
                                      setState(t, {{"/SMask", json::object()}});
                                  }},
                                 {"transfer function", "6.2.5",
                                  [](Twin& t) {
                                      setState(t, {{"/TR", "/Identity"}});
                                  }},
                                 {"another transfer function", "6.2.5",
                                  [](Twin& t) {
                                      setState(t, {{"/TR2", "/Identity"}});
                                  }},
                                 {"halftone", "6.2.5",
                                  [](Twin& t) {
                                      setState(t, {{"/HT", {{"/HalftoneType", 6}}}});
                                  }},
                                 {"group", "house", [](Twin& t) {
                                      t.page()["/Group"] = {{"/S", "/Transparency"}};
                                  }}});
    Twin opaque(goodFile());
    setState(opaque, {{"/ca", 1}, {"/CA", 1.0}, {"/BM", "/Normal"}, {"/SMask", "/None"}});
    EXPECT_EQ(linesOf(archivalFindings(opaque.bytes())), "");
}

TEST(TwinsOfPages, BrokenImagesAreFound) {
    Twin good(goodFile());
    drawImage(good, json::object());
    EXPECT_EQ(linesOf(archivalFindings(good.bytes())), "");
    expectEachFound(
        goodFile(),
        {{"interpolated", "6.2.8",
          [](Twin& t) {
              drawImage(t, {{"/Interpolate", true}});
          }},
         {"alternates", "6.2.8",
          [](Twin& t) {
              drawImage(t, {{"/Alternates", json::array()}});
          }},
         {"soft mask", "house",
          [](Twin& t) {
              drawImage(t, {{"/SMask", json::object()}});
          }},
         {"bits", "32000-1, 8.9.5",
          [](Twin& t) {
              drawImage(t, {{"/BitsPerComponent", 3}});
          }},
         {"CMYK", "6.2.4.3",
          [](Twin& t) {
              drawImage(t, {{"/ColorSpace", "/DeviceCMYK"}});
          }},
         {"inline, LZW", "6.1.10",
          [](Twin& t) { t.draw("BI /W 1 /H 1 /BPC 8 /CS /G /F /LZW ID abc\nEI"); }},
         {"inline, CMYK", "6.2.4.3",
          [](Twin& t) { t.draw("BI /W 1 /H 1 /BPC 8 /CS /CMYK ID abcd\nEI"); }},
         {"inline, interpolated", "6.2.8",
          [](Twin& t) { t.draw("BI /W 1 /H 1 /BPC 8 /CS /G /I true ID a\nEI"); }},
         {"PostScript", "6.2.9.3",
          [](Twin& t) {
              t.page()["/Resources"]["/XObject"]["/Ps"] =
                  t.addStream({{"/Subtype", "/PS"}}, "showpage");
          }},
         {"form of another file", "6.2.9.2", [](Twin& t) {
              t.page()["/Resources"]["/XObject"]["/Fo"] = t.addStream(
                  {{"/Subtype", "/Form"}, {"/BBox", {0, 0, 1, 1}}, {"/Ref", json::object()}}, "");
          }}});
}

TEST(TwinsOfPages, BrokenOperatorsAreFound) {
    expectEachFound(goodFile(),
                    {{"unknown operator", "6.2.2", [](Twin& t) { t.draw("BX 1 glow EX"); }},
                     {"missing resource", "6.2.2", [](Twin& t) { t.draw("/Nothing gs"); }},
                     {"q without end", "32000-1, 7.8.2", [](Twin& t) { t.draw("q"); }},
                     {"Q without beginning", "32000-1, 8.4.2", [](Twin& t) { t.draw("Q"); }},
                     {"text outside", "32000-1, 9.4.1", [](Twin& t) { t.draw("1 0 0 1 0 0 Tm"); }},
                     {"text inside text", "32000-1, 9.4.1", [](Twin& t) { t.draw("BT BT ET"); }},
                     {"deep", "6.1.13", [](Twin& t) {
                          std::string saves, restores;
                          for (int i = 0; i < 29; ++i) {
                              saves += "q ";
                              restores += "Q ";
                          }
                          t.draw(saves + restores);
                      }}});
}

}  // namespace
}  // namespace rackbook
