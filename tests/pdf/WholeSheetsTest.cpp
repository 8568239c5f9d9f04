// The two sheets as PDF files, read back by tools from outside.
#include <gtest/gtest.h>

#include <map>
#include <set>
#include <utility>

#include "CheckedSheets.h"
#include "OutsideReader.h"
#include "pdf/PdfWriter.h"
#include "sheets/CommonLabels.h"
#include "sheets/EditionBook.h"
#include "sheets/EditionSheet.h"
#include "sheets/ReadinessSheet.h"
#include "sheets/SheetTools.h"

namespace rackbook {
namespace {

PageModel editionModel(const std::string& language) {
    const build::Book book = test::editionBook();
    const SheetTemplate shipped = test::shippedTemplate("edition", editionSheetRules(), language);
    const PdfFonts fonts(shipped.fonts());
    const EditionFacts facts =
        editionFactsOf(book.records, book.records.of<Edition>().front(), test::onDay("2026-03-20"));
    return editionSheet(facts, shipped, fonts, test::fixedClock);
}

std::string editionPdf(const std::string& language = "en") {
    const SheetTemplate shipped = test::shippedTemplate("edition", editionSheetRules(), language);
    return writePdf(editionModel(language), PdfFonts(shipped.fonts()));
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
          "10 printed at layer 1 − 1 spoiled while printing − 1 destroyed since = 8",
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

// Runs of letters; all else parts them.
void addWords(std::string text, std::set<std::string>& words) {
    for (const char* space : {"\u00A0", "\u202F"})
        for (std::size_t at; (at = text.find(space)) != std::string::npos;)
            text.replace(at, std::string(space).size(), " ");
    std::string word;
    for (const char c : text + " ") {
        const bool isLetter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c < 0;
        if (isLetter)
            word += c;
        else if (!word.empty())
            words.insert(std::exchange(word, {}));
    }
}

// A word that is wider than its column is cut anywhere: its halves are words of neither the labels
// nor the records. The records are the same in English, whose words fit.
TEST(WholeSheets, CutNoWordInANarrowColumn) {
    const TemplateRules rules = editionSheetRules();
    for (const char* language : {"de", "es", "fr"}) {
        const SheetTemplate shipped = test::shippedTemplate("edition", rules, language);
        std::set<std::string> known;
        addWords(test::wordsOf(editionModel("en")), known);
        for (const std::vector<std::string>* keys :
             {&rules.labels, &rules.sections, &commonLabels()})
            for (const std::string& key : *keys)
                addWords(shipped.label(key), known);
        for (int month = 1; month <= 12; ++month)
            addWords(shipped.locale().monthInDate(month), known);
        std::set<std::string> printed;
        addWords(test::wordsOf(editionModel(language)), printed);
        EXPECT_GT(printed.size(), 300u);
        for (const std::string& word : printed)
            EXPECT_EQ(known.count(word), 1u) << language << " " << word;
    }
}

TEST(WholeSheets, BreakNoWordOfAHeading) {
    for (const char* language : {"en", "de", "fr", "es", "ja"})
        forEachDemoSheet(language, test::expectWholeHeadings);
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
