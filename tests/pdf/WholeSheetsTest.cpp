// The two sheets as PDF files, read back by tools from outside.
#include <gtest/gtest.h>

#include <map>

#include "OutsideReader.h"
#include "pdf/PdfWriter.h"
#include "sheets/EditionBook.h"
#include "sheets/EditionSheet.h"
#include "sheets/ReadinessSheet.h"
#include "sheets/SheetTools.h"

namespace rackbook {
namespace {

std::string editionPdf(const std::string& language = "en") {
    const build::Book book = test::editionBook();
    const SheetTemplate shipped = test::shippedTemplate("edition", editionSheetRules(), language);
    const PdfFonts fonts(shipped.fonts());
    const EditionFacts facts =
        editionFactsOf(book.records, book.records.of<Edition>().front(), test::onDay("2026-03-20"));
    return writePdf(editionSheet(facts, shipped, fonts, test::fixedClock), fonts);
}

std::string readinessPdf(const std::string& language = "en") {
    const build::Book book = test::editionBook();
    const SheetTemplate shipped =
        test::shippedTemplate("readiness", readinessSheetRules(), language);
    const PdfFonts fonts(shipped.fonts());
    const ReadinessQuestion question{test::onDay("2026-03-20"), "", false,
                                     shipped.label("atGallery"), shipped.label("atHolder")};
    return writePdf(
        readinessSheet(readinessFactsOf(book.records, question), shipped, fonts, test::fixedClock),
        fonts);
}

void expectSound(const std::string& bytes, const std::string& name) {
    const std::string path = fileWith(bytes, name);
    const ToolRun check = readWith("qpdf --check " + path);
    EXPECT_EQ(check.exitCode, 0) << check.output;
    const ToolRun fonts = readWith("pdffonts " + path);
    EXPECT_EQ(fonts.exitCode, 0) << fonts.output;
    EXPECT_GE(timesIn(fonts.output, "yes yes yes"), 2u) << fonts.output;
    EXPECT_EQ(timesIn(fonts.output, " no "), 0u) << fonts.output;
}

TEST(WholeSheets, AreSoundFilesWithTheirFontsInside) {
    expectSound(editionPdf(), "edition.pdf");
    expectSound(readinessPdf(), "readiness.pdf");
}

TEST(WholeSheets, GiveTheirTextBack) {
    const ToolRun edition = readWith("pdftotext -layout -enc UTF-8 " +
                                     fileWith(editionPdf(), "edition-text.pdf") + " -");
    for (const char* words :
         {"Harbour", "Record of an edition", "Bon à tirer", "300 × 300 mm", "−2", "75.000",
          "10 printed at layer 1 − 1 spoiled while printing − 1 destroyed since = 8 kept",
          "A checklist, not legal advice; the law differs and changes: follow the law of the "
          "place.",
          "Page 1 of "})
        EXPECT_GE(timesIn(edition.output, words), 1u) << words << "\n" << edition.output;
    const ToolRun readiness = readWith("pdftotext -layout -enc UTF-8 " +
                                       fileWith(readinessPdf(), "ready-text.pdf") + " -");
    EXPECT_GE(timesIn(readiness.output, "Find out what the record doesn't say"), 1u);
}

// A character that no font has is refused (RenderError), and one that falls to the first font's box
// would not come back.
TEST(WholeSheets, AreSetInEveryLanguage) {
    const std::map<std::string, std::pair<const char*, const char*>> words = {
        {"de", {"Druckstöcke", "Reif für die Schublade?"}},
        {"es", {"Qué se talló", "¿Lista para el cajón?"}},
        {"fr", {"Épreuve d’artiste", "Prêtes pour le tiroir"}},
        {"ja", {"作家保存版（A.P.）", "引き出しにしまえるか"}}};
    for (const auto& [language, expected] : words) {
        const ToolRun edition =
            readWith("pdftotext -layout -enc UTF-8 " +
                     fileWith(editionPdf(language), "edition-" + language + ".pdf") + " -");
        EXPECT_GE(timesIn(edition.output, expected.first), 1u) << edition.output;
        const ToolRun readiness =
            readWith("pdftotext -layout -enc UTF-8 " +
                     fileWith(readinessPdf(language), "ready-" + language + ".pdf") + " -");
        EXPECT_GE(timesIn(readiness.output, expected.second), 1u) << readiness.output;
    }
}

TEST(WholeSheets, AreTheSameBytesEachTime) {
    EXPECT_EQ(editionPdf(), editionPdf());
    EXPECT_EQ(readinessPdf(), readinessPdf());
}

TEST(WholeSheets, SayWhatTheyAre) {
    const ToolRun info = readWith("pdfinfo " + fileWith(editionPdf(), "edition-info.pdf"));
    EXPECT_GE(timesIn(info.output, "Harbour (HB)"), 1u) << info.output;
    EXPECT_GE(timesIn(info.output, "Studio at the Old Weir"), 1u) << info.output;
    EXPECT_GE(timesIn(info.output, "2026"), 1u) << info.output;
}

}  // namespace
}  // namespace rackbook
