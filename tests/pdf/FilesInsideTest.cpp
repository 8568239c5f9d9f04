// Files inside, as outside readers find them, and read back by our own reader.
#include <gtest/gtest.h>

#include <filesystem>

#include "OutsideReader.h"
#include "RichSheet.h"
#include "base/Files.h"
#include "pdf/CarriedFiles.h"
#include "pdf/PdfWriter.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

std::string written(const PageModel& model) {
    static const PdfFonts fonts;
    return writePdf(model, fonts);
}

TEST(FilesInside, ComeOutByteForByte) {
    const test::TempFolder folder;
    const std::string path = fileWith(written(richSheet()), "carrying.pdf");
    const ToolRun list = readWith("pdfdetach -enc UTF-8 -list " + path);
    EXPECT_EQ(timesIn(list.output, "2 embedded files"), 1u) << list.output;
    EXPECT_EQ(timesIn(list.output, "harbour.json"), 1u) << list.output;
    EXPECT_EQ(timesIn(list.output, "Räume.txt"), 1u) << list.output;
    ASSERT_EQ(readWith("pdfdetach -enc UTF-8 -saveall -o " + folder.path() + " " + path).exitCode,
              0);
    for (const AssociatedFile& file : richSheet().files)
        EXPECT_EQ(readFile(folder.file(file.name), 1 << 20), file.bytes) << file.name;
}

// ISO 19005-3, 6.8, from memory: names of both kinds, the relation, the media type; the document
// names its files.
TEST(FilesInside, AreTheSourceOfTheDocument) {
    const std::string path = fileWith(written(richSheet()), "source.pdf");
    const ToolRun run = readWith("qpdf --qdf --object-streams=disable " + path + " -");
    EXPECT_EQ(timesIn(run.output, "/AFRelationship /Source"), 2u);
    EXPECT_EQ(timesIn(run.output, "/AF [\n"), 1u);
    EXPECT_EQ(timesIn(run.output, "/Type /Filespec"), 2u);
    EXPECT_EQ(timesIn(run.output, "/Type /EmbeddedFile\n"), 2u);
    EXPECT_EQ(timesIn(run.output, "/Subtype /application#2fjson") +
                  timesIn(run.output, "/Subtype /application#2Fjson"),
              1u);
    EXPECT_EQ(timesIn(run.output, "/F (harbour.json)"), 1u);
    EXPECT_EQ(timesIn(run.output, "/F (R_ume.txt)"), 1u);
    EXPECT_EQ(timesIn(run.output, "/Size 18\n"), 1u);
    EXPECT_EQ(timesIn(run.output, "/ModDate (D:20260304083000+00'00')"), 3u);
    EXPECT_EQ(readWith("qpdf --check " + path).exitCode, 0);
}

TEST(FilesInside, AreReadBackWithTitleAndDate) {
    PageModel model = richSheet();
    model.info.title = "Přístav & Ωs";
    model.info.created = "2026-03-04T08:30:05-03:30";
    const CarriedFiles carried = readCarriedFiles(fileWith(written(model), "back.pdf"));
    EXPECT_EQ(carried.title, model.info.title);
    EXPECT_EQ(carried.created, model.info.created);
    ASSERT_EQ(carried.files.size(), model.files.size());
    for (std::size_t i = 0; i < model.files.size(); ++i) {
        EXPECT_EQ(carried.files[i].name, model.files[i].name);
        EXPECT_EQ(carried.files[i].mediaType, model.files[i].mediaType);
        EXPECT_EQ(carried.files[i].description, model.files[i].description);
        EXPECT_EQ(carried.files[i].bytes, model.files[i].bytes);
    }
}

TEST(FilesInside, AreReadBackAfterAnotherProgramWroteTheFileAnew) {
    const std::string path = fileWith(written(richSheet()), "anew.pdf");
    ASSERT_EQ(readWith("qpdf --object-streams=generate --linearize " + path + " " + path + ".qpdf")
                  .exitCode,
              0);
    const CarriedFiles carried = readCarriedFiles(path + ".qpdf");
    EXPECT_EQ(carried.created, "2026-03-04T08:30:00Z");
    ASSERT_EQ(carried.files.size(), 2u);
    EXPECT_EQ(carried.files[1].bytes, richSheet().files[1].bytes);
}

// qpdf lists files by name only, and does not say that they are associated.
TEST(FilesInside, AreFoundByNameWhereTheyAreNotAssociated) {
    PageModel plain = emptySheet();
    plain.info.title = "Plain";
    const std::string path = fileWith(written(plain), "plain.pdf");
    const std::string record = fileWith("{}", "record.json");
    ASSERT_EQ(readWith("qpdf " + path + " --add-attachment " + record +
                       " --mimetype=application/json --description=Record -- " + path + ".more")
                  .exitCode,
              0);
    const CarriedFiles carried = readCarriedFiles(path + ".more");
    EXPECT_EQ(carried.title, "Plain");
    ASSERT_EQ(carried.files.size(), 1u);
    EXPECT_EQ(carried.files[0].name, "record.json");
    EXPECT_EQ(carried.files[0].mediaType, "application/json");
    EXPECT_EQ(carried.files[0].description, "Record");
    EXPECT_EQ(carried.files[0].bytes, "{}");
}

TEST(FilesInside, AndAllElseAreTheSameBytesEachTime) {
    PdfFonts others;
    EXPECT_EQ(written(richSheet()), writePdf(richSheet(), others));
}

}  // namespace
}  // namespace rackbook
