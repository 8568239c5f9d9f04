#include "records/Invariants.h"

#include <gtest/gtest.h>

#include "ComplaintText.h"

namespace rackbook {
namespace {

using test::complaints;
using test::textOfAll;

EdtfDate date(const char* text) {
    return EdtfDate::parse(text);
}

TEST(Invariants, HoldForTheSamples) {
    for (const Record& record : test::namedRecords())
        EXPECT_EQ(textOfAll(record), "") << idOf(record);
    for (const Record& record : test::fullRecords())
        EXPECT_EQ(textOfAll(record), "") << idOf(record);
}

TEST(Invariants, OfTheBook) {
    EXPECT_EQ(complaints<Book>([](Book& r) { r.timeZone = "Mars/Olympus"; }),
              "/timeZone: the system knows no time zone \"Mars/Olympus\". Use an IANA name such as "
              "Europe/Copenhagen.");
    EXPECT_EQ(complaints<Book>([](Book& r) { r.latitude_deg = 55; }),
              "/latitude_deg: latitude and longitude belong together. Give both or neither.");
    EXPECT_EQ(complaints<Book>([](Book& r) { r.longitude_deg = 12; }),
              "/longitude_deg: latitude and longitude belong together. Give both or neither.");
}

TEST(Invariants, OfHouseRules) {
    EXPECT_EQ(complaints<Book>([](Book& r) {
                  r.houseRules = {{"lightDay", 14, {}, {}}};
              }),
              "/houseRules/0/rule: no house rule is named \"lightDay\". Did you mean lightDays?");
    EXPECT_EQ(
        complaints<Book>([](Book& r) {
            r.houseRules = {{"weather", 1, {}, {}}};
        }),
        "/houseRules/0/rule: no house rule is named \"weather\". Use one of "
        "extenderRichShare, lightDays, lightDaysCareful, lightDose_sunnyDays, "
        "lightDoseFactor, lookChance, returnedChance, colourLooks, colourLooksApart_days, "
        "looksToLearn, drierLeastShare, drierMostShare, "
        "overdrawTolerance_g, proofsMostShare, colourMostUncertainty, spoilShare, "
        "heapLifeWithDrier_h, heapLifeWithoutDrier_h, heapLeftOut_days, colourTolerance_dE00, "
        "filmWeightUncertainty, surfaceOuterReflection, surfaceInnerReflection, "
        "skySunnyShare, skyOvercastShare, "
        "openedLifeTin_days, openedLifeTube_days, airing_days or backUp_days.");
    EXPECT_EQ(complaints<Book>([](Book& r) {
                  r.houseRules = {{"lightDays", 14, {}, {}}, {"lightDays", 21, {}, {}}};
              }),
              "/houseRules/1/rule: the rule stands twice. Keep one of the two.");
    const std::string outside =
        "/houseRules/0/value: it lies outside the range of lightDays. Give days within the range "
        "in schema/README.md.";
    EXPECT_EQ(complaints<Book>([](Book& r) {
                  r.houseRules = {{"lightDays", -1, {}, {}}};
              }),
              outside);
    EXPECT_EQ(complaints<Book>([](Book& r) {
                  r.houseRules = {{"lightDays", 3651, {}, {}}};
              }),
              outside);
    EXPECT_EQ(complaints<Book>([](Book& r) { r.houseRules = {{"lightDays", 0, {}, {}}}; }), "");
    EXPECT_EQ(complaints<Book>([](Book& r) { r.houseRules = {{"lightDays", 3650, {}, {}}}; }), "");
}

TEST(Invariants, OfParties) {
    EXPECT_EQ(complaints<Party>([](Party& r) {
                  r.contact = "somewhere";
                  r.contactWithheld = true;
              }),
              "/contactWithheld: a contact cannot be given and withheld at once. Leave one of the "
              "two out.");
    EXPECT_EQ(complaints<Party>([](Party& r) {
                  r.roles = {PartyRole::maker, PartyRole::holder, PartyRole::maker};
              }),
              "/roles/2: it stands twice. Keep one of the two.");
}

TEST(Invariants, OfPlaces) {
    EXPECT_EQ(complaints<Place>([](Place& r) { r.within = Ref<Place>{r.id}; }),
              "/within: a place cannot lie within itself. Name the place around it.");
}

TEST(Invariants, OfEditionsMeasures) {
    EXPECT_EQ(complaints<Edition>([](Edition& r) { r.imageHeight_mm = 300; }),
              "/imageHeight_mm: image height and width belong together. Give both or neither.");
    EXPECT_EQ(complaints<Edition>([](Edition& r) { r.sheetWidth_mm = 300; }),
              "/sheetHeight_mm: sheet height and width belong together. Give both or neither.");
}

TEST(Invariants, OfEditionsDeclarations) {
    EXPECT_EQ(complaints<Edition>([](Edition& r) {
                  r.declaredProofs = {{DesignationKind::numbered, 3}};
              }),
              "/declaredProofs/0/designationKind: the numbered impressions are no proofs. Give "
              "their number as declaredNumbered.");
    EXPECT_EQ(complaints<Edition>([](Edition& r) {
                  r.declaredProofs = {{DesignationKind::artistsProof, 3},
                                      {DesignationKind::artistsProof, 2}};
              }),
              "/declaredProofs/1/designationKind: this kind of proof stands twice. Add the two "
              "counts.");
    EXPECT_EQ(complaints<Edition>([](Edition& r) { r.promisedBy = date("2027"); }),
              "/promisedBy: a date is promised but no fate of the matrix. Add promisedMatrixFate.");
    EXPECT_EQ(complaints<Edition>([](Edition& r) {
                  r.disclosures = {{"workshop", DisclosureAnswer::notKnown, {}},
                                   {"workshop", DisclosureAnswer::notKnown, {}}};
              }),
              "/disclosures/1/item: item \"workshop\" stands twice. Keep one of the two.");
    EXPECT_EQ(complaints<Edition>([](Edition& r) {
                  r.disclosures = {{"workshop", DisclosureAnswer::stated, {}}};
              }),
              "/disclosures/0/text: an item that is stated needs its words. Add text, or answer "
              "notApplicable or notKnown.");
}

TEST(Invariants, OfBlocks) {
    EXPECT_EQ(complaints<Block>([](Block& r) {
                  r.states = {{1, "first cut", {}}, {3, "second cut", {}}};
              }),
              "/states/1/ordinal: states are numbered 1, 2, 3 in the order of cutting. Number this "
              "one 2.");
}

TEST(Invariants, OfLots) {
    EXPECT_EQ(complaints<Lot>([](Lot& r) {
                  r.lotKind = LotKind::ink;
                  r.drierMetals = {{"cobalt", 0.06}};
              }),
              "/drierMetals: only a drier states metals. Set lotKind to drier.");
    EXPECT_EQ(complaints<Lot>([](Lot& r) {
                  r.pigments = {"PB15:3", "PW6", "PW6"};
              }),
              "/pigments/2: it stands twice. Keep one of the two.");
    EXPECT_EQ(complaints<Lot>([](Lot& r) {
                  r.lotKind = LotKind::drier;
                  r.drierMetals = {{"cobalt", 0.6}, {"zirconium", 0.5}};
              }),
              "/drierMetals: the metals together are more than the whole drier. Give each as a "
              "share of the drier's mass, 0 to 1.");
    EXPECT_EQ(complaints<Lot>([](Lot& r) {
                  r.openedOn = date("2025-05");
                  r.finishedOn = date("2025-04");
              }),
              "/finishedOn: it was finished before it was opened. Correct one of the two dates.");
    EXPECT_EQ(complaints<Lot>([](Lot& r) {
                  r.boughtOn = date("2025");
                  r.openedOn = date("2024-12-31");
              }),
              "/openedOn: it was opened before it was bought. Correct one of the two dates.");
}

TEST(Invariants, LetDatesOverlapThatAreBadlyKnown) {
    EXPECT_EQ(complaints<Lot>([](Lot& r) {
                  r.boughtOn = date("2025~");
                  r.openedOn = date("2024-12-31");
              }),
              "");
}

TEST(Invariants, OfMixes) {
    EXPECT_EQ(complaints<Mix>([](Mix& r) {
                  r.madeOn = date("2025-05-02");
                  r.finishedOn = date("2025-05-01");
              }),
              "/finishedOn: it was finished before it was made. Correct one of the two dates.");
}

TEST(Invariants, OfTheSourceOfAWeighing) {
    const std::string oneSource =
        "/act: an addition comes from one lot or from one mix. Give exactly one of lot and "
        "fromMix.";
    EXPECT_EQ(complaints<Weighing>([](Weighing& r) { r.lot.reset(); }), oneSource);
    EXPECT_EQ(complaints<Weighing>([](Weighing& r) { r.fromMix = Ref<Mix>{"mix-b"}; }), oneSource);
    EXPECT_EQ(complaints<Weighing>([](Weighing& r) { r.act = WeighingAct::discard; }),
              "/lot: only an addition has a source. Leave it out, or set act to add.");
    EXPECT_EQ(complaints<Weighing>([](Weighing& r) {
                  r.act = WeighingAct::withdraw;
                  r.lot.reset();
                  r.fromMix = Ref<Mix>{"mix-b"};
              }),
              "/fromMix: only an addition has a source. Leave it out, or set act to add.");
    EXPECT_EQ(complaints<Weighing>([](Weighing& r) {
                  r.lot.reset();
                  r.fromMix = Ref<Mix>{r.mix.id};
              }),
              "/fromMix: a mix cannot be added to itself. Name the mix it came from.");
}

TEST(Invariants, OfTheMassOfAWeighing) {
    EXPECT_EQ(complaints<Weighing>([](Weighing& r) {
                  r.massLow_g = 3;
                  r.massHigh_g = 2;
              }),
              "/massLow_g: the low bound lies above the high bound. Exchange the two.");
    EXPECT_EQ(complaints<Weighing>([](Weighing& r) {
                  r.mass_g = 2;
                  r.massLow_g = 2.5;
              }),
              "/massLow_g: the low bound lies above the mass. Lower it.");
    EXPECT_EQ(complaints<Weighing>([](Weighing& r) {
                  r.mass_g = 2;
                  r.massHigh_g = 1.5;
              }),
              "/massHigh_g: the high bound lies below the mass. Raise it.");
    EXPECT_EQ(complaints<Weighing>([](Weighing& r) {
                  r.mass_g = 2;
                  r.massLow_g = 2;
                  r.massHigh_g = 2;
              }),
              "");
}

TEST(Invariants, OfLayers) {
    EXPECT_EQ(complaints<Layer>([](Layer& r) { r.blockState = 2; }),
              "/blockState: a state needs its block. Add block.");
}

TEST(Invariants, OfImpressions) {
    EXPECT_EQ(complaints<Impression>(
                  [](Impression& r) { r.designationKind = DesignationKind::numbered; }),
              "/designationKind: a kind of designation needs the designation as written. Add "
              "designation.");
    EXPECT_EQ(complaints<Impression>([](Impression& r) { r.designation = "SP"; }),
              "/designation: a designation needs its kind, because some are ambiguous. Add "
              "designationKind, one of numbered, artistsProof, bonATirer, printersProof, "
              "horsCommerce, trialProof, workingProof, stateProof, separationProof, colourProof, "
              "progressiveProof, cancellationProof, presentationProof or archive.");
    EXPECT_EQ(complaints<Impression>([](Impression& r) { r.signedOn = date("2026-03"); }),
              "/signedOn: what was signed carries a designation. Add designation.");
}

TEST(Invariants, OfTheSheetsOfAPull) {
    EXPECT_EQ(complaints<Pull>([](Pull& r) {
                  r.impressions = {{"i1"}, {"i2"}, {"i1"}};
              }),
              "/impressions/2: it stands twice. Keep one of the two.");
    EXPECT_EQ(complaints<Pull>([](Pull& r) {
                  r.impressions = {{"i1"}};
                  r.spoiled = {{"i1"}, {"i1"}};
              }),
              "/spoiled/1: it stands twice. Keep one of the two.");
    EXPECT_EQ(complaints<Pull>([](Pull& r) {
                  r.impressions = {{"i1"}};
                  r.spoiled = {{"i1"}, {"i2"}};
              }),
              "/spoiled/1: a spoiled sheet was printed too. Add i2 to impressions.");
}

TEST(Invariants, OfTheTimeAndInkOfAPull) {
    EXPECT_EQ(complaints<Pull>([](Pull& r) {
                  r.start = date("2026-03-04T11:00");
                  r.end = date("2026-03-04T10:00");
              }),
              "/end: it ends before it starts. Correct one of the two.");
    EXPECT_EQ(complaints<Pull>([](Pull& r) { r.inkAfter_g = 3; }),
              "/inkBefore_g: ink before and after belong together. Give both or neither.");
    EXPECT_EQ(complaints<Pull>([](Pull& r) {
                  r.inkBefore_g = 3;
                  r.inkAfter_g = 3.5;
              }),
              "/inkAfter_g: more ink is left than there was. Correct one of the two.");
}

TEST(Invariants, OfDrawdowns) {
    const std::string wanted =
        "/mix: exactly one of mix and lot is wanted. Give one, leave out the rest.";
    EXPECT_EQ(complaints<Drawdown>([](Drawdown& r) { r.mix.reset(); }), wanted);
    EXPECT_EQ(complaints<Drawdown>([](Drawdown& r) { r.lot = Ref<Lot>{"l"}; }), wanted);
}

TEST(Invariants, OfReadings) {
    const std::string subject =
        "/drawdown: exactly one of drawdown, impression and paper is wanted. Give one, leave out "
        "the rest.";
    EXPECT_EQ(complaints<Reading>([](Reading& r) { r.paper.reset(); }), subject);
    EXPECT_EQ(complaints<Reading>([](Reading& r) { r.drawdown = Ref<Drawdown>{"d"}; }), subject);
    EXPECT_EQ(complaints<Reading>([](Reading& r) { r.labB.reset(); }),
              "/labL: labL, labA and labB belong together. Give all three or none.");
    EXPECT_EQ(complaints<Reading>([](Reading& r) {
                  r.labL.reset();
                  r.labA.reset();
                  r.labB.reset();
              }),
              "/labL: a reading holds CIELAB values or a spectrum. Add one of them.");
    EXPECT_EQ(complaints<Reading>([](Reading& r) {
                  r.spectrum = {0.5};
                  r.spectrumStart_nm = 400;
              }),
              "/spectrum: a spectrum needs its wavelengths. Add spectrumStart_nm and "
              "spectrumStep_nm.");
    EXPECT_EQ(complaints<Reading>([](Reading& r) { r.spectrumStep_nm = 10; }),
              "/spectrum: wavelengths without a spectrum say nothing. Add spectrum.");
}

TEST(Invariants, OfIssues) {
    EXPECT_EQ(complaints<Issue>([](Issue& r) {
                  r.impressions = {{"i"}, {"i"}};
              }),
              "/impressions/1: it stands twice. Keep one of the two.");
    EXPECT_EQ(complaints<Issue>([](Issue& r) {
                  r.issuedOn = date("2026-03-04");
                  r.asOf = date("2026-03-05");
              }),
              "/asOf: it speaks of a day after it was handed out. Correct one of the two dates.");
    EXPECT_EQ(complaints<Issue>([](Issue& r) {
                  r.issuedOn = date("2026-03");
                  r.asOf = date("2026-03-31");
              }),
              "");
    EXPECT_EQ(complaints<Issue>([](Issue& r) { r.fileName = "sheets/edition.pdf"; }),
              "/fileName: it is the name of a file, without its folder. Leave the folder out.");
    EXPECT_EQ(complaints<Issue>([](Issue& r) { r.fileSha256 = "0x" + std::string(62, 'a'); }),
              "/fileSha256: it is not 64 lower-case hexadecimal digits. Give the SHA-256 of the "
              "file's bytes, as sha256sum prints it.");
}

// Tags from RFC 5646, appendix A, and some that its grammar does not have.
TEST(Invariants, OfTheLanguageOfAnIssue) {
    Issue issue = test::filled<Issue>(true);
    for (const char* sound : {"de", "zh-Hant", "sl-rozaj-biske", "de-CH-1996", "x-whatever",
                              "i-enochian", "en-a-myext-b-another"}) {
        issue.language = sound;
        EXPECT_EQ(textOfAll(issue), "") << sound;
    }
    for (const char* broken :
         {"", "-", "de-", "-de", "de--CH", "de_CH", "dansksprog", "4de", "d\xc3\xa5"}) {
        issue.language = broken;
        EXPECT_EQ(textOfAll(issue),
                  "/language: it is not a language tag. Use a BCP 47 tag, as en, da or de-CH.")
            << broken;
    }
}

TEST(Invariants, OfMoves) {
    EXPECT_EQ(complaints<Move>([](Move& r) {
                  r.impressions = {{"i"}, {"i"}};
              }),
              "/impressions/1: it stands twice. Keep one of the two.");
    EXPECT_EQ(complaints<Move>([](Move& r) { r.from = r.to; }),
              "/to: it ends where it began. Name another place.");
    EXPECT_EQ(complaints<Move>([](Move& r) {
                  r.at = date("2026-03-04");
                  r.until = date("2026-03-03");
              }),
              "/until: they left before they came. Correct one of the two dates.");
}

TEST(Invariants, OfLooks) {
    EXPECT_EQ(complaints<Look>([](Look& r) {
                  r.impressions = {{"i"}, {"i"}};
              }),
              "/impressions/1: it stands twice. Keep one of the two.");
    EXPECT_EQ(complaints<Look>([](Look& r) {
                  r.standsFor = {{"i"}, {"i"}};
              }),
              "/standsFor/1: it stands twice. Keep one of the two.");
    EXPECT_EQ(complaints<Look>([](Look& r) { r.touch.reset(); }),
              "/touch: a look says how it feels or how it looks. Add touch, colour or both.");
}

TEST(Invariants, OfTransfers) {
    EXPECT_EQ(complaints<Transfer>([](Transfer& r) {
                  r.impressions = {{"i"}, {"i"}};
              }),
              "/impressions/1: it stands twice. Keep one of the two.");
    EXPECT_EQ(complaints<Transfer>([](Transfer& r) { r.receiver = r.giver; }),
              "/receiver: giver and receiver are the same. Name the other party.");
    EXPECT_EQ(complaints<Transfer>([](Transfer& r) {
                  r.agreedOn = date("2026-03-04");
                  r.dueOn = date("2026-03-03");
              }),
              "/dueOn: it is due before it was agreed. Correct one of the two dates.");
    EXPECT_EQ(complaints<Transfer>([](Transfer& r) { r.currency = "DKK"; }),
              "/currency: a currency without a price says nothing. Add price.");
}

TEST(Invariants, OfAttachments) {
    const std::string hash =
        "/sha256: it is not 64 lower-case hexadecimal digits. Give the SHA-256 of the file's "
        "bytes, as sha256sum prints it.";
    EXPECT_EQ(complaints<Attachment>([](Attachment& r) { r.sha256.pop_back(); }), hash);
    EXPECT_EQ(complaints<Attachment>([](Attachment& r) { r.sha256[0] = 'A'; }), hash);
    EXPECT_EQ(complaints<Attachment>([](Attachment& r) {
                  r.edition = Ref<Edition>{"e"};
                  r.drawdown = Ref<Drawdown>{"d"};
              }),
              "/edition: it belongs to one thing. Keep one of edition, impression, drawdown.");
    EXPECT_EQ(complaints<Attachment>([](Attachment& r) { r.width_px = 40; }),
              "/width_px: width and height belong together. Give both or neither.");
    EXPECT_EQ(complaints<Attachment>([](Attachment& r) { r.orientation = 9; }),
              "/orientation: Exif numbers the ways to turn a picture from 1 to 8. Leave it out for "
              "a picture that stands upright.");
}

TEST(Invariants, AreAllToldAtOnce) {
    EXPECT_EQ(complaints<Move>([](Move& r) {
                  r.impressions = {{"i"}, {"i"}};
                  r.from = r.to;
              }),
              "/impressions/1: it stands twice. Keep one of the two.\n"
              "/to: it ends where it began. Name another place.");
}

}  // namespace
}  // namespace rackbook
