// Good files broken in one place: bytes, objects, metadata. Each must yield its finding and no
// other.
#include <gtest/gtest.h>

#include <QByteArray>
#include "CheckedSheets.h"
#include "OutsideReader.h"
#include "SampleSheet.h"

#include "archival/Twin.h"
#include "base/Files.h"
#include "pdf/PdfWriter.h"

namespace rackbook {
namespace {

using nlohmann::json;

const std::string& goodFile() {
    static const PdfFonts fonts;
    static const std::string bytes =
        writePdf(shortSheet(fonts, "Two layers on thin paper."), fonts);
    return bytes;
}

std::string replaced(std::string text, const std::string& part, const std::string& by) {
    const std::size_t at = text.rfind(part);
    if (at == std::string::npos)
        throw std::runtime_error("there is no " + part);
    return text.replace(at, part.size(), by);
}

std::string rewritten(const std::string& options) {
    const std::string from = fileWith(goodFile(), "good.pdf");
    const std::string to = fileWith("", "rewritten.pdf");
    EXPECT_EQ(readWith("qpdf " + options + " " + from + " " + to).exitCode, 0);
    return readFile(to, 1 << 26);
}

// Codes of nine bits, each a byte, with a new table before ten bits are needed (ISO
// 32000-1, 7.4.4).
std::string lzwOf(const std::string& data) {
    constexpr unsigned clear = 256, end = 257;
    std::string bits;
    const auto put = [&](unsigned code) {
        for (int i = 8; i >= 0; --i)
            bits += (code >> i) & 1U ? '1' : '0';
    };
    for (std::size_t i = 0; i < data.size(); ++i) {
        if (i % 200 == 0)
            put(clear);
        put(static_cast<unsigned char>(data[i]));
    }
    put(end);
    bits.append((8 - bits.size() % 8) % 8, '0');
    std::string coded;
    for (std::size_t i = 0; i < bits.size(); i += 8)
        coded += static_cast<char>(std::stoi(bits.substr(i, 8), nullptr, 2));
    return coded;
}

TEST(TwinsOfFiles, AnUnbrokenTwinIsGood) {
    EXPECT_EQ(linesOf(archivalFindings(Twin(goodFile()).bytes())), "");
}

TEST(TwinsOfFiles, BrokenBytesAreFound) {
    const std::vector<std::tuple<const char*, const char*, std::string>> twins = {
        {"identifier", "6.1.3", replaced(goodFile(), "/ID", "/Id")},
        {"bytes after the end", "6.1.3", goodFile() + "% more\n"},
        // What encrypts also compresses the metadata.
        {"encrypted", "6.1.3; house",
         rewritten("--newline-before-endstream --encrypt '' '' 256 --")},
        {"version", "6.1.2", "%PDF-2.0" + goodFile().substr(8)},
        {"no binary comment", "6.1.2", goodFile().substr(0, 10) + "abcd" + goodFile().substr(14)},
        {"table", "6.1.4", replaced(goodFile(), "xref\n0 ", "xref\n 0")},
        {"length", "6.1.7.1", replaced(goodFile(), "\nendstream", " endstream")},
    };
    for (const auto& [name, clause, bytes] : twins) {
        const std::vector<ArchivalFinding> found = archivalFindings(bytes);
        EXPECT_EQ(clausesOf(found), clause) << name << "\n" << linesOf(found);
    }
}

TEST(TwinsOfFiles, BrokenObjectsAreFound) {
    const std::string longText(40000, 'a');
    expectEachFound(
        goodFile(),
        {{"LZW", "6.1.7.2",
          [](Twin& t) {
              t.setContent(lzwOf(t.content()), {{"/Filter", "/LZWDecode"}});
          }},
         {"data outside", "6.1.7.1",
          [](Twin& t) {
              t.setContent(t.content(), {{"/FFilter", "/FlateDecode"}});
          }},
         {"long string", "6.1.13",
          [&](Twin& t) { t.catalog()["/Odd"] = "b:" + longText + longText; }},
         {"long name", "6.1.13",
          [&](Twin& t) { t.catalog()["/Odd"] = "/" + longText.substr(0, 128); }},
         {"large number", "6.1.13", [](Twin& t) { t.catalog()["/Odd"] = 3000000000; }},
         {"large page", "6.1.13",
          [](Twin& t) {
              t.page()["/MediaBox"] = {0, 0, 14401, 500};
          }},
         {"permissions", "6.1.12",
          [](Twin& t) {
              t.catalog()["/Perms"] = {{"/Odd", 1}};
          }},
         {"requirements", "6.11",
          [](Twin& t) { t.catalog()["/Requirements"] = json::array({json::object()}); }},
         {"presentations", "6.10",
          [](Twin& t) {
              t.catalog()["/Names"] = {{"/AlternatePresentations", json::object()}};
          }},
         {"steps", "6.10", [](Twin& t) { t.page()["/PresSteps"] = json::object(); }},
         {"layers without a name", "6.9", [](Twin& t) {
              t.catalog()["/OCProperties"] = {{"/OCGs", json::array()}, {"/D", json::object()}};
          }}});
}

TEST(TwinsOfFiles, BrokenMetadataAreFound) {
    const json plain = {{"/Type", "/Metadata"}, {"/Subtype", "/XML"}};
    const auto changed = [&](const std::string& part, const std::string& by) {
        return [=](Twin& t) { t.setMetadata(replaced(t.metadata(), part, by), plain); };
    };
    expectEachFound(
        goodFile(),
        {{"part", "6.6.4", changed("<pdfaid:part>3", "<pdfaid:part>2")},
         {"conformance", "6.6.4", changed("conformance>B<", "conformance>C<")},
         {"level A without tags", "6.7.2",
          [&](Twin& t) {
              changed("conformance>B<", "conformance>A<")(t);
              t.catalog().erase("/MarkInfo");
              t.catalog().erase("/StructTreeRoot");
          }},
         {"unknown schema", "6.6.2.3",
          changed("pdfaid:part>\n", "pdfaid:part><o:a xmlns:o=\"urn:o\"/>")},
         {"attribute of the header", "6.6.2.1",
          changed("id=\"W5M0MpCehiHzreSzNTczkc9d\"", "id=\"W5M0\" encoding=\"UTF-8\"")},
         {"language", "house", changed("<rdf:li>en<", "<rdf:li>de<")},
         {"title", "6.1.5", [](Twin& t) { t.info()["/Title"] = "u:Another"; }},
         {"date", "6.1.5", [](Twin& t) { t.info()["/ModDate"] = "u:D:20260304083001+00'00'"; }},
         {"no author", "6.1.5", [](Twin& t) { t.info().erase("/Author"); }},
         {"no metadata", "6.6.2.1", [](Twin& t) { t.catalog().erase("/Metadata"); }},
         {"metadata not named", "32000-1, 14.3.2", [](Twin& t) {
              t.setMetadata(t.metadata(), {{"/Type", "/Metadata"}});
          }}});
}

TEST(TwinsOfFiles, WhatOnlyPartOneForbidsIsFound) {
    const PdfFonts fonts;
    const std::string good = writePdf(shortSheet(fonts, "Two layers."), fonts, PdfLevel::a1b);
    expectEachFound(
        good,
        {{"no glyph set", "19005-1, 6.3.5", [](Twin& t) { t.descriptor().erase("/CIDSet"); }},
         {"layers", "19005-1, 6.1.13",
          [](Twin& t) { t.catalog()["/OCProperties"] = json::object(); }},
         {"transparency", "19005-1, 6.4",
          [](Twin& t) {
              t.page()["/Group"] = {{"/S", "/Transparency"}};
          }}},
        PdfLevel::a1b);
    const std::string streams = rewritten("--object-streams=generate --min-version=1.5");
    EXPECT_EQ(linesOf(archivalFindings(streams)), "");
    EXPECT_NE(clausesOf(archivalFindings(streams, PdfLevel::a1b)).find("19005-1, 6.1.4"),
              std::string::npos);
}

}  // namespace
}  // namespace rackbook
