// Every sheet read by programs of others: they must find nothing wrong and give back what the model
// said.
#include <gtest/gtest.h>

#include <QString>
#include <QStringList>

#include <nlohmann/json.hpp>
#include <regex>
#include <sstream>

#include "CheckedSheets.h"
#include "OutsideReader.h"
#include "SampleSheet.h"
#include "pdf/PdfWriter.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

class OutsideReaders : public testing::TestWithParam<PdfLevel> {
protected:
    static std::string output(const std::string& command) {
        const ToolRun run = readWith(command);
        EXPECT_EQ(run.exitCode, 0) << command << "\n" << run.output;
        return run.output;
    }
};

INSTANTIATE_TEST_SUITE_P(Levels, OutsideReaders, testing::Values(PdfLevel::a3b, PdfLevel::a1b),
                         [](const auto& level) {
                             return level.param == PdfLevel::a3b ? "PartThree" : "PartOne";
                         });

TEST_P(OutsideReaders, QpdfFindsNoFault) {
    for (const CheckedSheet& sheet : checkedSheets()) {
        const std::string said = output("qpdf --check " + fileOf(sheet, GetParam()));
        EXPECT_EQ(timesIn(said, "WARNING"), 0u) << said;
        EXPECT_EQ(timesIn(said, "No syntax or stream encoding errors found"), 1u) << said;
    }
}

// poppler's table: name, type, encoding, emb, sub, uni, object.
TEST_P(OutsideReaders, AllFontsAreEmbeddedSubsetsWithUnicode) {
    static const std::regex row("[A-Z]{6}\\+\\S+ +CID TrueType +Identity-H +yes yes yes +\\d+ +0");
    for (const CheckedSheet& sheet : checkedSheets()) {
        std::istringstream table(output("pdffonts " + fileOf(sheet, GetParam())));
        std::string line;
        std::getline(table, line);
        std::getline(table, line);
        int fonts = 0;
        for (; std::getline(table, line); ++fonts)
            EXPECT_TRUE(std::regex_match(line, row)) << sheet.name << ": " << line;
        EXPECT_GE(fonts, 1) << sheet.name;
    }
}

// A table of some hundred cells, and with it some hundred objects, is what it takes to mislead
// poppler about strings at the beginning of the file.
TEST_P(OutsideReaders, PopplerReadsNamesOfEveryLength) {
    const PdfFonts fonts;
    const std::string odd = "Weir (the) \\ old ((č Ĩ ĩ Ŝ";  // č: a CR in its second byte
    for (const std::string& author :
         {std::string(60, 'a'), std::string(100, 'b'), std::string(250, 'c'), odd + odd + odd}) {
        PageModel model = sampleSheet(fonts);
        model.info.author = author;
        model.info.title = author;
        if (GetParam() == PdfLevel::a1b)
            model.files.clear();
        const std::string said =
            output("pdfinfo " + fileWith(writePdf(model, fonts, GetParam()), "named.pdf"));
        EXPECT_EQ(timesIn(said, "Syntax Error"), 0u) << said;
        EXPECT_EQ(timesIn(said, "Author:          " + author + "\n"), 1u) << said;
        EXPECT_EQ(timesIn(said, "Title:           " + author + "\n"), 1u) << said;
    }
}

// mupdf says nothing but the names of pages. Debian builds it without colour profiles, and it says
// so.
TEST_P(OutsideReaders, MupdfDrawsWithoutWarnings) {
    for (const CheckedSheet& sheet : checkedSheets()) {
        const std::string file = fileOf(sheet, GetParam());
        std::istringstream said(output("mutool draw -r 40 -F pgm -o /dev/null " + file));
        std::string line;
        std::size_t pages = 0;
        while (std::getline(said, line)) {
            if (line == "warning: ICC support is not available")
                continue;
            EXPECT_EQ(line, "page " + file + " " + std::to_string(++pages));
        }
        EXPECT_EQ(pages, sheet.model.pages.size()) << sheet.name;
        const std::string info = output("mutool info " + file);
        EXPECT_EQ(timesIn(info, "warning:") + timesIn(info, "error:"), 0u) << info;
        EXPECT_NE(info.find("\nPages: " + std::to_string(pages) + "\n"), std::string::npos) << info;
    }
}

TEST_P(OutsideReaders, GhostscriptRunsWithoutWarnings) {
    for (const CheckedSheet& sheet : checkedSheets())
        EXPECT_EQ(output("gs -q -dNOPAUSE -dBATCH -sDEVICE=nullpage -dPDFSTOPONERROR "
                         "-dPDFSTOPONWARNING " +
                         fileOf(sheet, GetParam())),
                  "")
            << sheet.name;
}

// ISO 19005-3, 6.1.5 by a reader of metadata.
TEST_P(OutsideReaders, MetadataSayWhatInfoAndModelSay) {
    for (const CheckedSheet& sheet : checkedSheets()) {
        const nlohmann::json read = nlohmann::json::parse(
            output("exiftool -json -G1 -d %s " + fileOf(sheet, GetParam())))[0];
        const DocumentInfo& info = sheet.model.info;
        const std::vector<std::tuple<const char*, const char*, std::string>> rows = {
            {"PDF:Title", "XMP-dc:Title", info.title},
            {"PDF:Author", "XMP-dc:Creator", info.author},
            {"PDF:Subject", "XMP-dc:Description", info.subject},
            {"PDF:Keywords", "XMP-pdf:Keywords", info.keywords},
            {"PDF:Creator", "XMP-xmp:CreatorTool", info.program},
            {"PDF:Producer", "XMP-pdf:Producer", info.program},
            {"PDF:Language", "XMP-dc:Language", info.language}};
        const auto member = [&](const char* key) {
            const nlohmann::json value = read.value(key, nlohmann::json(""));
            if (!value.is_array())
                return value.is_string() ? value.get<std::string>() : value.dump();
            std::string list;
            for (const auto& item : value)
                list += (list.empty() ? "" : ", ") + item.get<std::string>();
            return list;
        };
        for (const auto& [inInfo, inPacket, meant] : rows) {
            EXPECT_EQ(member(inInfo), meant) << sheet.name << " " << inInfo;
            EXPECT_EQ(member(inPacket), meant) << sheet.name << " " << inPacket;
        }
        for (const char* date : {"Create", "Modify"}) {
            const std::string named = std::string(date) + "Date";
            EXPECT_NE(member(("PDF:" + named).c_str()), "") << sheet.name;
            EXPECT_EQ(member(("PDF:" + named).c_str()), member(("XMP-xmp:" + named).c_str()));
        }
        EXPECT_EQ(member("XMP-pdfaid:Part"), GetParam() == PdfLevel::a3b ? "3" : "1");
    }
}

// In the normal form C, each kind of space a plain one.
QString normal(const std::string& text) {
    QString known = QString::fromStdString(text).normalized(QString::NormalizationForm_C);
    return known.replace(QChar(0xA0), ' ').simplified();
}

// poppler breaks lines and guesses spaces between runs: without spaces the page is the model's
// text, character for character; and each run stands there with its own spaces.
TEST_P(OutsideReaders, TheTextComesBackAsItWasSet) {
    for (const CheckedSheet& sheet : checkedSheets()) {
        const QString all = QString::fromStdString(
            output("pdftotext -raw -enc UTF-8 " + fileOf(sheet, GetParam()) + " -"));
        const QStringList pages = all.split('\f');
        ASSERT_EQ(static_cast<std::size_t>(pages.size()), sheet.model.pages.size() + 1);
        for (std::size_t i = 0; i < sheet.model.pages.size(); ++i) {
            const QString read = normal(pages[static_cast<int>(i)].toStdString());
            QString meant;
            for (const TextRun& run : sheet.model.pages[i].texts) {
                meant += normal(run.text);
                EXPECT_TRUE(read.contains(normal(run.text)))
                    << sheet.name << ", page " << i + 1 << ": " << run.text;
            }
            // What stands in a form is read after the page.
            for (const FormField& field : sheet.model.form)
                if (field.page == i)
                    meant += normal(field.value);
            EXPECT_EQ(QString(read).remove(' ').toStdString(), meant.remove(' ').toStdString())
                << sheet.name << ", page " << i + 1;
        }
    }
}

// ISO 19005-1, 6.1.11: part 1 has no files inside (from memory).
TEST_P(OutsideReaders, FilesInsideComeOutByteForByte) {
    for (const CheckedSheet& sheet : checkedSheets()) {
        const test::TempFolder folder;
        const std::string file = fileOf(sheet, GetParam());
        const std::size_t files = GetParam() == PdfLevel::a3b ? sheet.model.files.size() : 0;
        const std::string list = output("pdfdetach -enc UTF-8 -list " + file);
        EXPECT_EQ(list.substr(0, list.find('\n')), std::to_string(files) + " embedded files");
        if (files == 0)
            continue;
        output("pdfdetach -enc UTF-8 -saveall -o " + folder.path() + " " + file);
        for (const AssociatedFile& inside : sheet.model.files)
            EXPECT_EQ(test::bytesOf(folder.file(inside.name)), inside.bytes) << inside.name;
    }
}

}  // namespace
}  // namespace rackbook
