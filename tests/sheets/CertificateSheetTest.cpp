#include "sheets/CertificateSheet.h"

#include <gtest/gtest.h>

#include "EditionBook.h"
#include "SheetMeasures.h"
#include "SheetTools.h"

namespace rackbook {
namespace {

using test::onDay;

const test::SheetMeasurer measurer;
// SHA-256 of "abc" (FIPS 180-4, example B.1 as NIST publishes it).
const RecordInside record = {"HB-1-certificate.json",
                             "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"};

std::optional<PictureFile> noPicture(const Attachment&) {
    return std::nullopt;
}

// Twice as wide as tall.
std::optional<PictureFile> anyPicture(const Attachment&) {
    return PictureFile{"image/jpeg", std::make_shared<const std::string>("bytes"), 200, 100, 1};
}

CertificateFacts factsOf(const RecordSet& records, const char* day = "2026-03-20",
                         bool namesHolders = false, const PictureSource& pictureOf = noPicture) {
    const Edition& edition = records.of<Edition>().front();
    std::vector<Impression> impressions;
    for (const Impression& impression : records.of<Impression>())
        if (impression.edition.id == edition.id)
            impressions.push_back(impression);
    return certificateFactsOf(records, edition, impressions, onDay(day), namesHolders, pictureOf);
}

PageModel sheetOf(const CertificateFacts& facts, std::size_t position) {
    return certificateSheet(facts, facts.impressions[position], record,
                            test::shippedTemplate("certificate", certificateSheetRules()), measurer,
                            test::fixedClock);
}

PageModel sheetOf(const RecordSet& records, std::size_t position, const char* day = "2026-03-20",
                  bool namesHolders = false) {
    return sheetOf(factsOf(records, day, namesHolders), position);
}

// The small edition, hung in a window, looked at, and handed on: 1 was consigned and came back, 2
// was sold.
build::Book handedBook() {
    build::Book book = test::editionBook();
    book.place("window", PlaceKind::rack, LightKind::daylight);
    book.place("drawer", PlaceKind::drawer, LightKind::dark);
    book.place("Secret Holder's home", PlaceKind::holderAddress,
               [](Place& r) { r.holder = Ref<Party>{"secret"}; });
    book.place("Secret Gallery", PlaceKind::gallery);
    const auto why = [](MoveWhy reason) { return [=](Move& r) { r.why = reason; }; };
    book.move("window", "2026-02-01", build::impressionIds("HB", 1, 4), why(MoveWhy::hang));
    book.look("2026-02-20", {"HB-1"}, Touch::dry, LookColour::turned);
    book.look("2026-03-10", {"HB-1"}, Touch::dry, LookColour::trueColour,
              [](Look& r) { r.standsFor = {{"HB-2"}}; });
    book.transfer(TransferKind::consignment, "maker", "secret", "2026-03-02", {"HB-1"});
    book.move("Secret Gallery", "2026-03-03", {"HB-1"}, why(MoveWhy::consign));
    book.move("drawer", "2026-03-09", {"HB-1"}, why(MoveWhy::store));
    book.transfer(TransferKind::sale, "maker", "secret", "2026-03-12", {"HB-2"});
    book.move("Secret Holder's home", "2026-03-14", {"HB-2"}, why(MoveWhy::sell));
    book.move("Secret Gallery", "2026-03-30", {"HB-3"}, why(MoveWhy::lend));
    return book;
}

TEST(CertificateSheet, SaysWhichImpressionItIs) {
    const PageModel model = sheetOf(test::editionBook().records, 0);
    for (const char* words :
         {"Harbour Certificate – 1/5", "Inscribed 1/5", "Kind Numbered", "Signed on 1 March 2026",
          "Working number 1", "Edition HB", "Artist maker", "Year 2026", "Process linocut",
          "Paper mulberry paper, 45 g/m²", "300 × 300 mm", "400 × 400 mm", "Printer Ole Printer",
          "Publisher not recorded",
          "Numbered: 5, Artist's proof: 2, Bon à tirer: 1; 8 in all; the edition is still open",
          "Statement Printed by hand."})
        EXPECT_TRUE(test::says(model, words)) << words << "\n" << test::wordsOf(model);
    EXPECT_EQ(model.info.title, "Harbour (HB 1/5)");
    EXPECT_EQ(model.info.created, test::fixedClock);
    EXPECT_TRUE(test::says(sheetOf(test::editionBook().records, 3), "Kind Artist's proof"));
}

// Sheet 6 is signed on 1 April only.
TEST(CertificateSheet, SaysThatASheetIsNotSignedYet) {
    const PageModel model = sheetOf(test::editionBook().records, 5);
    EXPECT_TRUE(test::says(model, "Record of a sheet – working number 6"));
    EXPECT_TRUE(test::says(model, "Inscribed not signed yet"));
    EXPECT_FALSE(test::says(model, "4/5"));
    EXPECT_TRUE(test::says(sheetOf(test::editionBook().records, 5, "2026-04-02"), "Inscribed 4/5"));
}

// 1 saw all three layers; 9 was spoiled in the second, 10 is not in the third.
TEST(CertificateSheet, ListsTheLayersThatThisSheetSaw) {
    const std::string lines = test::linesOf(sheetOf(test::editionBook().records, 0));
    EXPECT_NE(lines.find("1 | grey | 2026-01-02 | Portion a | 96.0 | 1.00"), std::string::npos)
        << lines;
    EXPECT_NE(lines.find("2 | grey | 2026-01-09 | Portion b | 25.0–50.0 | 0.00"), std::string::npos)
        << lines;
    EXPECT_NE(lines.find("as remembered"), std::string::npos) << lines;
    const PageModel tenth = sheetOf(test::editionBook().records, 9);
    EXPECT_TRUE(test::says(tenth, "No printing of these layers is recorded for this sheet: 3."));
    EXPECT_FALSE(test::says(sheetOf(test::editionBook().records, 0), "No printing of these"));
}

TEST(CertificateSheet, SaysThatASpoiledOneIsNotJudged) {
    const PageModel model = sheetOf(test::editionBook().records, 8);
    EXPECT_TRUE(test::says(model, "Fate spoiled, 9 January 2026"));
    EXPECT_TRUE(
        test::says(model, "Not judged: the impression is recorded as spoiled or destroyed."));
    const PageModel before = sheetOf(test::editionBook().records, 8, "2026-01-05");
    EXPECT_FALSE(test::says(before, "spoiled"));
}

// Layer 1 is rich for certain, on 2 January; layer 3, of about January, may be, up to the end of
// February. Nothing says where it was before the window on 1 February, what light the gallery has
// that it went to on 3 March, and from 9 March on it lay in the dark: 1 and 2 March at least, 2
// January to 9 March at most, which is 66 days.
TEST(CertificateSheet, TellsItsLightAndLooks) {
    const PageModel model = sheetOf(handedBook().records, 0);
    EXPECT_TRUE(
        test::says(model, "2–66 since layer 1, printed 2 January 2026; the studio asks for 14"))
        << test::wordsOf(model);
    EXPECT_TRUE(test::says(model, "2 at this sheet; last: 10 March 2026 (dry, true)"));
    EXPECT_FALSE(test::says(model, "stood for it"));
    // The studio has no coordinates.
    EXPECT_TRUE(test::says(model, "Light it had since not estimated"));
    EXPECT_TRUE(test::says(model, "as of 20 March 2026"));
    // A look at a sample that stands for it counts.
    EXPECT_TRUE(test::says(sheetOf(handedBook().records, 1),
                           "none at this sheet 1 at others that stood for it; last: 10 March 2026 "
                           "(dry, true)"));
    EXPECT_TRUE(test::says(sheetOf(handedBook().records, 2), "Looks at it none"));
}

// Figures with two digits that count; a bound that is open is called so.
TEST(CertificateSheet, GivesTheDoseWithItsSpread) {
    CertificateFacts facts = factsOf(handedBook().records);
    OwnLight& light = *facts.impressions[0].light;
    light.dose_sunnyDays = Estimate{1.14, 21.3, 254};
    EXPECT_TRUE(
        test::says(sheetOf(facts, 0), "21 (1.1–250) sunny days hung up out of doors, estimated"));
    light.dose_sunnyDays = Estimate{0.043, notKnown, 9.96};
    EXPECT_TRUE(test::says(sheetOf(facts, 0), "0.043–10 sunny days"));
    light.dose_sunnyDays->high = std::numeric_limits<double>::infinity();
    EXPECT_TRUE(test::says(sheetOf(facts, 0), "0.043 or more sunny days"));
}

TEST(CertificateSheet, SpeaksOfEveryVerdict) {
    CertificateFacts facts = factsOf(handedBook().records);
    const std::map<Verdict, const char*> words = {
        {Verdict::ready,
         "Ready, by the record as of 20 March 2026: it had had its light, felt dry, and its "
         "colour was true when last looked at, 10 March 2026."},
        {Verdict::lookDue, "A look is due, as of 20 March 2026"},
        {Verdict::moreLight, "More light, as of 20 March 2026"},
        {Verdict::bringOut, "Bring out, as of 20 March 2026"},
        {Verdict::notAffected, "Not affected, as of 20 March 2026"},
        {Verdict::unknown, "Not known, as of 20 March 2026"}};
    for (const auto& [verdict, sentence] : words) {
        facts.impressions[0].light->verdict = verdict;
        EXPECT_TRUE(test::says(sheetOf(facts, 0), sentence)) << sentence;
    }
    OwnLight unaffected;
    unaffected.verdict = Verdict::notAffected;
    facts.impressions[0].light = unaffected;
    EXPECT_TRUE(test::says(sheetOf(facts, 0), "No layer is rich in extender: none are asked for"));
}

// What a transfer agreed on and a move carried out is told once, and a move back into the studio
// is a return.
TEST(CertificateSheet, TellsItsProvenanceWithoutNames) {
    const RecordSet records = handedBook().records;
    EXPECT_TRUE(test::says(sheetOf(records, 0),
                           "By this record: consigned 2 March 2026; returned 9 March 2026."))
        << test::wordsOf(sheetOf(records, 0));
    EXPECT_TRUE(test::says(sheetOf(records, 1), "By this record: sold 12 March 2026."));
    EXPECT_TRUE(test::says(sheetOf(records, 2),
                           "This record names no way out of the studio. Last record of where it "
                           "is: 1 February 2026."));
    EXPECT_TRUE(test::says(sheetOf(records, 2, "2026-04-01"), "By this record: lent 30 March"));
    EXPECT_TRUE(
        test::says(sheetOf(records, 0, "2026-03-05"), "By this record: consigned 2 March 2026."));
    // It is with a holder, and nothing says since when.
    EXPECT_TRUE(test::says(sheetOf(test::editionBook().records, 0),
                           "how and when it came there is not recorded"));
}

TEST(CertificateSheet, NamesHoldersOnlyWhenAsked) {
    for (std::size_t position = 0; position < 10; ++position) {
        const std::string all = test::wordsOf(sheetOf(handedBook().records, position));
        for (const char* word : {"Secret", "secret", "private"})
            EXPECT_EQ(all.find(word), std::string::npos) << position << " " << word;
    }
    EXPECT_TRUE(test::says(sheetOf(handedBook().records, 1, "2026-03-20", true),
                           "sold 12 March 2026 (Secret Holder)"));
}

TEST(CertificateSheet, ShowsAPhotographOfItElseOfTheEdition) {
    build::Book book = test::editionBook();
    const auto taken = [&](const char* id, const char* on, const auto& edit) {
        book.add(Attachment{}, [&](Attachment& r) {
            r.id = id;
            r.mediaType = "image/jpeg";
            r.takenOn = build::on(on);
            r.caption = id;
            edit(r);
        });
    };
    const auto ofEdition = [](Attachment& r) { r.edition = Ref<Edition>{"HB"}; };
    taken("older", "2026-02-01", ofEdition);
    taken("newer", "2026-03-01", ofEdition);
    taken("later", "2026-03-25", ofEdition);
    taken("its own", "2026-01-20", [](Attachment& r) { r.impression = Ref<Impression>{"HB-2"}; });
    const CertificateFacts facts = factsOf(book.records, "2026-03-20", false, anyPicture);
    const PageModel first = sheetOf(facts, 0);
    EXPECT_TRUE(test::says(first, "newer – photographed 1 March 2026")) << test::wordsOf(first);
    EXPECT_TRUE(test::says(first, "It shows the edition; this very impression may differ"));
    ASSERT_EQ(first.pages[0].pictures.size(), 1u);
    EXPECT_DOUBLE_EQ(first.pages[0].pictures[0].box.width_mm, 120);
    EXPECT_DOUBLE_EQ(first.pages[0].pictures[0].box.height_mm, 60);
    const PageModel second = sheetOf(facts, 1);
    EXPECT_TRUE(test::says(second, "its own – photographed 20 January 2026"));
    EXPECT_TRUE(test::says(second, "It shows this very impression."));
    // One picture's bytes are held once for all.
    EXPECT_EQ(facts.impressions[0].photograph->file.bytes,
              facts.impressions[2].photograph->file.bytes);
    const PageModel without = sheetOf(factsOf(book.records), 0);
    EXPECT_FALSE(test::says(without, "Photograph"));
    EXPECT_TRUE(without.pages[0].pictures.empty());
    expectTidy(first, Margins{});
}

TEST(CertificateSheet, CarriesACodeWithTheHashOfItsRecord) {
    const PageModel model = sheetOf(test::editionBook().records, 0);
    const std::string code = "rackbook HB 1/5 sha256:" + record.sha256;
    EXPECT_TRUE(test::says(model, code));
    EXPECT_TRUE(test::says(model, "HB-1-certificate.json"));
    std::size_t figures = 0;
    for (const StructureElement& element : model.structure)
        figures += element.kind == ElementKind::figure &&
                   element.alternate.find(code) != std::string::npos;
    EXPECT_EQ(figures, 1u);
    Edition edition;
    edition.code = "HB";
    Impression unsignedOne;
    unsignedOne.workingNumber = 7;
    EXPECT_EQ(certificateCode(edition, unsignedOne, record),
              "rackbook HB working-7 sha256:" + record.sha256);
}

TEST(CertificateSheet, SaysWhatIsNotKnown) {
    build::Book book;
    Edition edition;
    edition.id = edition.code = "NK";
    edition.title = "Nothing Known";
    edition.maker = {"gone"};
    book.add(edition);
    book.impressions("NK", 1, 1);
    const PageModel model = sheetOf(book.records, 0);
    for (const char* words :
         {"Artist not recorded", "Year not recorded", "Printer not recorded", "Paper not recorded",
          "Edition size Numbered: not recorded", "Layers on this sheet not recorded",
          "Days in light not known", "Looks at it none", "Not known, as of 20 March 2026",
          "Statement not recorded",
          "This record names no way out of the studio. Where it is was never recorded."})
        EXPECT_TRUE(test::says(model, words)) << words << "\n" << test::wordsOf(model);
    expectTidy(model, Margins{});
}

TEST(CertificateSheet, IsTidyHoweverMuchStandsOnIt) {
    build::Book book = handedBook();
    for (int layer = 4; layer <= 40; ++layer) {
        book.layer("HB", layer, [](Layer& r) {
            r.colourWords = "a long name for a colour that has to be broken over lines";
        });
        book.pull("HB-layer" + std::to_string(layer), "2026-02-01", {"HB-1"});
    }
    CertificateFacts facts = factsOf(book.records);
    std::string title;
    while (title.size() < 2000)
        title += "Harbour ";
    facts.edition.edition.title = title;
    expectTidy(sheetOf(facts, 0), Margins{});
    for (std::size_t position = 0; position < facts.impressions.size(); ++position)
        expectTidy(sheetOf(handedBook().records, position), Margins{});
}

// The sheet that a move took to a holder on 30 March only is not with one by word of the record
// alone on 20 March: the move is known, though it had not come yet.
TEST(CertificateSheet, CountsLaterMovesAsTellingHowASheetLeft) {
    const RecordSet records = test::changed<Impression>(handedBook().records, [](Impression& r) {
        if (r.id == "HB-3")
            r.holder = Ref<Party>{"secret"};
    });
    const PageModel model = sheetOf(records, 2);
    EXPECT_FALSE(test::says(model, "how and when it came there is not recorded"));
    EXPECT_TRUE(test::says(model, "This record names no way out of the studio."));
}

// Only what is signed and exists is certified: the spoiled sheet 9 and the unsigned 7 are not, nor
// 3 once it was destroyed.
TEST(CertificateSheet, AsksForSignaturesOnlyWhereThereIsSomethingToCertify) {
    const RecordSet records = test::editionBook().records;
    const PageModel whole = sheetOf(records, 0);
    EXPECT_TRUE(test::says(whole, "Artist, date"));
    EXPECT_EQ(whole.info.subject, "Certificate of an impression");
    for (const std::size_t position : {2u, 6u, 8u}) {
        const PageModel model = sheetOf(records, position);
        EXPECT_TRUE(test::says(model, "Record of a sheet – ")) << position;
        EXPECT_FALSE(test::says(model, "Certificate")) << position;
        EXPECT_FALSE(test::says(model, "Artist, date")) << position;
        EXPECT_EQ(model.info.subject, "Record of a sheet");
    }
    EXPECT_TRUE(test::says(sheetOf(records, 2, "2026-03-05"), "Certificate – 3/5"));
}

TEST(CertificateSheet, PointsOutANumberThatCannotBe) {
    const RecordSet records =
        test::changed<Impression>(test::editionBook().records, [](Impression& r) {
            if (r.id == "HB-4")
                r.designation = "AP III/II";
        });
    EXPECT_TRUE(
        test::says(sheetOf(records, 3), "Beyond what is declared (Artist's proof: 2): AP III/II."));
    EXPECT_FALSE(test::says(sheetOf(records, 0), "Beyond what is declared"));
}

// The block was to be cut away by the end of February.
TEST(CertificateSheet, HoldsThePromiseAgainstTheRecord) {
    EXPECT_TRUE(test::says(sheetOf(test::editionBook().records, 0),
                           "The day that was promised has passed, and nothing records that it was "
                           "done: HB-block."));
    EXPECT_TRUE(test::says(sheetOf(test::editionBook().records, 0, "2026-02-10"),
                           "Planned and not yet done: HB-block."));
}

// Layer 1 came from portion a: ochre, clear and cobalt; layer 2 from clear and ochre; of layer 3
// nothing but the extender is remembered.
TEST(CertificateSheet, NamesWhatItsInksHold) {
    const PageModel model = sheetOf(test::editionBook().records, 0);
    for (const char* words :
         {"Inks Ochre, PY42 (ochre), layers 1, 2", "Extenders Clear base (clear), layers 1, 2",
          "Driers Drier, cobalt 6 % of the drier (cobalt), layer 1"})
        EXPECT_TRUE(test::says(model, words)) << words << "\n" << test::wordsOf(model);
    EXPECT_TRUE(test::says(model, "What the ink was made of is not recorded for these layers: 3."));
}

}  // namespace
}  // namespace rackbook
