// Files after PDF/A-1b before a validator of others: the preflight of Apache PDFBox 2.0.27, which
// Debian ships. It knows part 1 only. One run of Java for all files.
#include <gtest/gtest.h>

#include <QXmlStreamReader>
#include <map>

#include "CheckedSheets.h"
#include "OutsideReader.h"
#include "SampleSheet.h"
#include "archival/Twin.h"
#include "base/Files.h"
#include "pdf/PdfWriter.h"

namespace rackbook {
namespace {

// Errors by file name, one a line, empty for a good file.
using Verdicts = std::map<std::string, std::string>;

Verdicts verdictsIn(const std::string& report) {
    Verdicts verdicts;
    QXmlStreamReader reader(QByteArray::fromStdString(report));
    std::string file;
    while (!reader.atEnd()) {
        if (reader.readNext() != QXmlStreamReader::StartElement)
            continue;
        if (reader.name() == u"preflight")
            file = reader.attributes().value("name").toString().toStdString();
        else if (reader.name() == u"isValid")
            verdicts[file] += reader.readElementText() == "true" ? "" : "not valid\n";
        else if (reader.name() == u"code")
            verdicts[file] += reader.readElementText().toStdString() + " ";
        else if (reader.name() == u"details")
            verdicts[file] += reader.readElementText().toStdString() + "\n";
        else if (reader.name() == u"exceptionThrown")
            verdicts[file] += "an exception\n";
    }
    EXPECT_FALSE(reader.hasError()) << report;
    return verdicts;
}

Verdicts verdictsOn(const std::vector<std::string>& paths) {
    std::string list;
    for (const std::string& path : paths)
        list += path + "\n";
    std::string classes;
    for (const char* name : {"preflight", "pdfbox2", "xmpbox", "fontbox2", "javax.activation",
                             "jaxb-api", "commons-logging"})
        classes += std::string("/usr/share/java/") + name + ".jar:";
    const std::string listed = fileWith(list, "to-validate");
    const ToolRun run = readWith("java -cp " + classes +
                                 " org.apache.pdfbox.preflight.Validator_A1b xml group " + listed);
    EXPECT_EQ(run.exitCode, 0) << run.output;
    return verdictsIn(readFile(listed + ".preflight.xml", 1 << 24));
}

struct BadFile {
    const char* name;
    const char* code;  // of an error that it must get
    std::function<void(Twin&)> breakIt;
};

// Codes from PreflightConstants of PDFBox.
std::vector<BadFile> badFiles() {
    return {{"script.pdf", "6.2.5",
             [](Twin& t) {
                 t.catalog()["/OpenAction"] = {{"/S", "/JavaScript"}, {"/JS", "u:1"}};
             }},
            {"no-glyph-set.pdf", "3.1.11", [](Twin& t) { t.descriptor().erase("/CIDSet"); }},
            {"not-embedded.pdf", "3.1.3", [](Twin& t) { t.descriptor().erase("/FontFile2"); }},
            {"no-intent.pdf", "2.4.3", [](Twin& t) { t.catalog().erase("/OutputIntents"); }},
            {"other-title.pdf", "7.2", [](Twin& t) { t.info()["/Title"] = "u:Another"; }},
            {"transparent.pdf", "4.1.2", [](Twin& t) {
                 t.page()["/Resources"]["/ExtGState"]["/State"] = {{"/ca", 0.5}};
                 t.draw("/State gs");
             }}};
}

TEST(PartOneValidator, PassesEverySheetAndNoBadOne) {
    std::vector<std::string> paths;
    for (const CheckedSheet& sheet : checkedSheets())
        paths.push_back(fileOf(sheet, PdfLevel::a1b));
    const PdfFonts fonts;
    const std::string good = writePdf(shortSheet(fonts, "Two layers."), fonts, PdfLevel::a1b);
    paths.push_back(fileWith(Twin(good).bytes(), "unbroken.pdf"));
    for (const BadFile& bad : badFiles()) {
        Twin twin(good);
        bad.breakIt(twin);
        paths.push_back(fileWith(twin.bytes(), bad.name));
    }
    paths.push_back(fileOf(checkedSheets().front()));
    Verdicts verdicts = verdictsOn(paths);
    EXPECT_EQ(verdicts.size(), paths.size());
    for (const CheckedSheet& sheet : checkedSheets())
        EXPECT_EQ(verdicts.at(sheet.name + "-1b.pdf"), "") << sheet.name;
    EXPECT_EQ(verdicts.at("unbroken.pdf"), "");
    for (const BadFile& bad : badFiles())
        EXPECT_NE(verdicts.at(bad.name).find(bad.code + std::string(" ")), std::string::npos)
            << bad.name << "\n"
            << verdicts.at(bad.name);
    EXPECT_NE(verdicts.at(checkedSheets().front().name + ".pdf").find("7.11.2 "), std::string::npos)
        << "a file after part 3";
}

}  // namespace
}  // namespace rackbook
