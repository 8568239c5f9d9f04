#include "exchange/SheetRecords.h"

#include <gtest/gtest.h>

#include "SheetBook.h"
#include "exchange/SheetFacts.h"
#include "support/Build.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using build::on;

constexpr const char* asOf = "2026-03-20";

// Sheets 1 and 2 of one edition, printed once from a portion; 1 has gone to a gallery.
build::Book studio() {
    build::Book book;
    book.edition("TIDE")
        .party("tides", [](Party& r) { r.contact = "12 Quay Street"; })
        .place("line", PlaceKind::rack)
        .place("tides-wall", PlaceKind::gallery,
               [](Place& r) {
                   r.name = "The Tides Room";
                   r.holder = Ref<Party>{"tides"};
               })
        .lot("rose", LotKind::ink,
             [](Lot& r) {
                 r.price = 18;
                 r.note = "bought cheaply";
             })
        .mix("veil-a", MixPurpose::portion)
        .layer("TIDE", 1)
        .impressions("TIDE", 1, 2, [](Impression& r) {
            if (r.workingNumber == 1)
                r.holder = Ref<Party>{"tides"};
        });
    Weighing weighing;
    weighing.id = "veil-a/1";
    weighing.mix = {"veil-a"};
    weighing.lot = Ref<Lot>{"rose"};
    weighing.mass_g = 20;
    weighing.at = on("2026-03-01T08:00");
    book.records.add(weighing);
    Pull pull;
    pull.id = "pull-1";
    pull.layer = {"TIDE-layer1"};
    pull.start = on("2026-03-01T10:00");
    pull.portion = Ref<Mix>{"veil-a"};
    pull.impressions = {{"TIDE-1"}, {"TIDE-2"}};
    book.records.add(pull);
    Move move;
    move.id = "move-1";
    move.impressions = {{"TIDE-1"}};
    move.to = {"tides-wall"};
    move.at = on("2026-03-10");
    move.why = MoveWhy::consign;
    book.records.add(move);
    return book;
}

std::string factsOf(const build::Book& book, const SheetAbout& about, SheetDepth depth) {
    const SheetIndexes indexes(book.records);
    return SheetRecords(indexes, depth, on(asOf).latest())
        .textFor({"certificate", asOf, "en", about});
}

SheetAbout aboutSheet(const std::string& id) {
    SheetAbout about;
    about.edition = "TIDE";
    about.impressions = {id};
    return about;
}

SheetDepth withLight() {
    SheetDepth depth;
    depth.light = true;
    return depth;
}

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

TEST(SheetRecords, FollowAnImpressionDownToTheTins) {
    const std::string text = factsOf(studio(), aboutSheet("TIDE-1"), withLight());
    for (const char* part : {"\"pull-1\"", "\"veil-a/1\"", "\"record\":\"lot\"", "\"move-1\"",
                             "\"record\":\"layer\"", "\"record\":\"edition\""})
        EXPECT_TRUE(holds(text, part)) << part;
}

TEST(SheetRecords, LeaveOutImpressionsThatTheyAreNotAbout) {
    const SheetFacts facts =
        sheetFactsFrom(factsOf(studio(), aboutSheet("TIDE-2"), withLight()), "a sheet");
    int impressions = 0;
    for (const auto& [name, record] : facts.records)
        impressions += name.rfind("impression ", 0) == 0 ? 1 : 0;
    EXPECT_EQ(impressions, 1);
}

TEST(SheetRecords, TellNothingPrivateUnlessAsked) {
    const std::string text = factsOf(studio(), aboutSheet("TIDE-1"), withLight());
    for (const char* secret : {"Quay", "Tides", "tides", "cheaply", "\"price\"", "\"holder\""})
        EXPECT_FALSE(holds(text, secret)) << secret << "\n" << text;
    EXPECT_TRUE(holds(text, "\"to\":\"withheld-1\""));
}

TEST(SheetRecords, NameHoldersWhereAskedButNoContactAndNoPriceOfInk) {
    SheetDepth depth = withLight();
    depth.privacy.namesHolders = true;
    const std::string text = factsOf(studio(), aboutSheet("TIDE-1"), depth);
    EXPECT_TRUE(holds(text, "The Tides Room"));
    EXPECT_TRUE(holds(text, "\"holder\":\"tides\""));
    EXPECT_FALSE(holds(text, "Quay"));
    EXPECT_FALSE(holds(text, "\"price\""));
}

TEST(SheetRecords, StayTheSameWhenSomethingHappensLater) {
    build::Book book = studio();
    const std::string before = factsOf(book, aboutSheet("TIDE-1"), withLight());
    Move later;
    later.id = "move-2";
    later.impressions = {{"TIDE-1"}};
    later.to = {"line"};
    later.at = on("2026-03-21");
    later.why = MoveWhy::giveBack;
    book.records.add(later);
    EXPECT_EQ(factsOf(book, aboutSheet("TIDE-1"), withLight()), before);
}

TEST(SheetRecords, StandAsTheyWereOnTheDay) {
    build::Book book;
    book.edition("TIDE").impressions("TIDE", 1, 1, [](Impression& r) {
        r.designation = "1/3";
        r.designationKind = DesignationKind::numbered;
        r.signedOn = on("2026-04-01");
        r.fate = ImpressionFate::destroyed;
        r.fateOn = on("2026-05-01");
    });
    const std::string text = factsOf(book, aboutSheet("TIDE-1"), {});
    EXPECT_FALSE(holds(text, "1/3")) << text;
    EXPECT_FALSE(holds(text, "destroyed")) << text;
}

TEST(SheetRecords, OfTheSameBookAreTheSameBytes) {
    EXPECT_EQ(factsOf(studio(), aboutSheet("TIDE-1"), withLight()),
              factsOf(studio(), aboutSheet("TIDE-1"), withLight()));
}

TEST(SheetRecords, OfTheWholeBookHoldEveryImpression) {
    const std::string text = factsOf(studio(), {}, withLight());
    EXPECT_TRUE(holds(text, "\"id\":\"TIDE-1\""));
    EXPECT_TRUE(holds(text, "\"id\":\"TIDE-2\""));
}

SheetAbout aboutImpression(const std::string& id) {
    SheetAbout about;
    about.edition = "TIDE";
    about.impressions = {id};
    return about;
}

// Of the studio in which sheet 2 hung on the line until the 12th, and 3 hangs there still.
std::string certificateOf(const build::Book& book, const std::string& id) {
    return test::sheetText(book.records, test::certificateDepth(), aboutImpression(id));
}

TEST(SheetRecords, HoldTheWeatherOfDaysInTheLight) {
    build::Book book = test::sheetBook();
    for (const char* day : {"2026-02-20", "2026-03-05", "2026-03-15"})
        book.add(Weather{}, [&](Weather& r) {
            r.id = std::string("sky-") + day;
            r.on = on(day);
            r.sky = Sky::overcast;
        });
    EXPECT_TRUE(holds(certificateOf(book, "TIDE-2"), "sky-2026-03-05"));
    EXPECT_FALSE(holds(certificateOf(book, "TIDE-2"), "sky-2026-03-15"));
    EXPECT_TRUE(holds(certificateOf(book, "TIDE-3"), "sky-2026-03-15"));
    EXPECT_FALSE(holds(certificateOf(book, "TIDE-3"), "sky-2026-02-20"));
}

TEST(SheetRecords, HoldWhatWasMeteredWhereAPrintWas) {
    build::Book book = test::sheetBook();
    for (const char* place : {"line", "drawer"})
        for (const char* day : {"2026-03-05", "2026-03-15"})
            book.add(Metering{}, [&](Metering& r) {
                r.id = std::string(place) + "-" + day;
                r.place = {place};
                r.from = on(std::string(day) + "T09:00");
                r.to = on(std::string(day) + "T12:00");
                r.exposure_lxh = 900;
            });
    const std::string text = certificateOf(book, "TIDE-2");
    EXPECT_TRUE(holds(text, "line-2026-03-05"));
    EXPECT_FALSE(holds(text, "line-2026-03-15"));
    EXPECT_FALSE(holds(text, "drawer-2026-03-05"));
    EXPECT_TRUE(holds(text, "drawer-2026-03-15"));
}

TEST(SheetRecords, HoldThePhotographsOfAnImpression) {
    build::Book book = test::sheetBook();
    for (const char* id : {"TIDE-2", "TIDE-3"})
        book.add(Attachment{}, [&](Attachment& r) {
            r.id = std::string("of-") + id;
            r.impression = Ref<Impression>{id};
        });
    EXPECT_TRUE(holds(certificateOf(book, "TIDE-2"), "of-TIDE-2"));
    EXPECT_FALSE(holds(certificateOf(book, "TIDE-2"), "of-TIDE-3"));
}

// Who went along to the line is not the business of whoever has sheet 1.
TEST(SheetRecords, ListOnlyTheImpressionThatTheyAreAbout) {
    const SheetFacts first = sheetFactsFrom(certificateOf(test::sheetBook(), "TIDE-1"), "a sheet");
    const SheetFacts second = sheetFactsFrom(certificateOf(test::sheetBook(), "TIDE-2"), "a sheet");
    const auto listOf = [](const SheetFacts& facts, const std::string& name, const char* field) {
        std::string list;
        for (const auto& [record, tree] : facts.records)
            if (record == name && tree.find(field))
                for (const Tree& id : *tree.find(field)->asArray())
                    list += *id.asText() + " ";
        return list;
    };
    EXPECT_EQ(listOf(first, "move move1", "impressions"), "TIDE-1 ");
    EXPECT_EQ(listOf(second, "look look1", "impressions"), "TIDE-2 ");
    EXPECT_EQ(listOf(second, "look look1", "standsFor"), "");
    // It was not looked at itself.
    EXPECT_EQ(listOf(first, "look look1", "impressions"), "TIDE-2 TIDE-3 ");
    EXPECT_EQ(listOf(first, "look look1", "standsFor"), "TIDE-1 ");
    EXPECT_EQ(listOf(first, "pull pull1", "impressions"), "TIDE-1 ");
}

// How much ink one sheet got follows from that.
TEST(SheetRecords, SayHowManyWerePrintedWhereTheyDoNotListThem) {
    EXPECT_TRUE(holds(certificateOf(test::sheetBook(), "TIDE-1"),
                      "\"impressions\":[\"TIDE-1\"],\"impressionCount\":3}"));
    SheetAbout edition;
    edition.edition = "TIDE";
    const std::string whole = test::sheetText(test::sheetBook().records, {}, edition);
    EXPECT_TRUE(holds(whole, "\"impressions\":[\"TIDE-1\",\"TIDE-2\",\"TIDE-3\"]}"));
    EXPECT_FALSE(holds(whole, "impressionCount"));
}

TEST(SheetRecords, HoldOnlyTheFieldsThatAreNamed) {
    SheetDepth depth;
    depth.making = false;
    depth.printed = {{RecordKind::edition, {"code"}}, {RecordKind::impression, {"edition"}}};
    const std::string text =
        test::sheetText(test::sheetBook().records, depth, aboutImpression("TIDE-2"));
    EXPECT_TRUE(holds(text, "{\"record\":\"edition\",\"id\":\"TIDE\",\"code\":\"TIDE\"}")) << text;
    EXPECT_TRUE(holds(text, "{\"record\":\"impression\",\"id\":\"TIDE-2\",\"edition\":\"TIDE\"}"))
        << text;
    for (const char* other : {"party", "pull", "layer", "mix", "timeZone", "currency"})
        EXPECT_FALSE(holds(text, std::string("\"") + other + "\"")) << other;
}

TEST(SheetRecords, EndWithWhatWasReckoned) {
    const build::Book book = test::sheetBook();
    const SheetIndexes indexes(book.records);
    const auto reckoned = [](const std::string& impression) {
        return std::optional(Tree::object().set("impression", impression).set("verdict", "ready"));
    };
    const auto textWith = [&](const SheetDepth& depth) {
        return SheetRecords(indexes, depth, on(asOf).latest(), reckoned)
            .textFor({"certificate", asOf, "en", aboutImpression("TIDE-2")});
    };
    const std::string text = textWith(withLight());
    const std::string end =
        "  \"estimates\": [\n    {\"impression\":\"TIDE-2\",\"verdict\":\"ready\"}\n  ]\n}\n";
    EXPECT_EQ(text.substr(text.size() - end.size()), end);
    EXPECT_EQ(sheetFactsFrom(text, "a sheet").records.back().first, "estimate TIDE-2");
    EXPECT_FALSE(holds(textWith({}), "estimates"));
}

TEST(SheetRecords, TellThatASheetWasHandedOverButNotToWhomNorForWhat) {
    const std::string text = certificateOf(test::sheetBook(), "TIDE-1");
    EXPECT_TRUE(holds(text, "\"record\":\"transfer\",\"id\":\"transfer1\"")) << text;
    for (const char* secret : {"tides", "410", "EUR", "Forty"})
        EXPECT_FALSE(holds(text, secret)) << secret;
    SheetDepth named = test::certificateDepth();
    named.privacy.namesHolders = true;
    const std::string withNames =
        test::sheetText(test::sheetBook().records, named, aboutImpression("TIDE-1"));
    EXPECT_TRUE(holds(withNames, "\"receiver\":\"tides\""));
    EXPECT_FALSE(holds(withNames, "410"));
}

TEST(SheetRecords, CallThePlacesOfOneSheetByNumbersOfItsOwn) {
    build::Book book;
    book.place("elsewhere", PlaceKind::gallery).edition("TIDE").impressions("TIDE", 1, 2);
    book.place("second", PlaceKind::gallery);
    book.move("elsewhere", "2026-03-01", {"TIDE-1"}).move("second", "2026-03-02", {"TIDE-2"});
    EXPECT_TRUE(holds(certificateOf(book, "TIDE-2"), "\"to\":\"withheld-1\""));
    EXPECT_FALSE(holds(certificateOf(book, "TIDE-2"), "withheld-2"));
}

// It says on its heading only what lies there; a print that was there all along comes to light.
TEST(SheetRecords, OfADrawerHoldEveryMoveIntoIt) {
    build::Book book = test::sheetBook();
    SheetAbout about;
    about.place = "chest";
    about.impressions = {"TIDE-2"};
    const std::string before = test::sheetText(book.records, withLight(), about);
    EXPECT_FALSE(holds(before, "\"id\":\"TIDE-3\""));
    book.move("drawer", "2026-03-13", {"TIDE-3"});
    const std::string after = test::sheetText(book.records, withLight(), about);
    EXPECT_TRUE(holds(after, "\"id\":\"TIDE-3\""));
    EXPECT_TRUE(holds(after, "\"id\":\"move4\""));
}

TEST(SheetRecords, HoldNoRulesOfTheHouse) {
    const build::Book book = test::sheetBook();
    const RecordSet ruled = test::edited(book.records, [](auto& record) {
        if constexpr (std::is_same_v<std::decay_t<decltype(record)>, Book>) {
            record.houseRules = {{"airing_days", 10, Origin::studioRule, std::nullopt}};
            record.monthlySkies.resize(1);
        }
    });
    EXPECT_EQ(test::sheetTexts(ruled, false), test::sheetTexts(book.records, false));
}

TEST(SheetFacts, ComeBackAsTheyWentIn) {
    const SheetFacts facts =
        sheetFactsFrom(factsOf(studio(), aboutSheet("TIDE-1"), withLight()), "a sheet");
    EXPECT_EQ(facts.heading.sheet, "certificate");
    EXPECT_EQ(facts.heading.asOf, asOf);
    EXPECT_EQ(facts.heading.language, "en");
    EXPECT_EQ(facts.heading.about.edition, "TIDE");
    EXPECT_EQ(facts.heading.about.impressions, std::vector<std::string>{"TIDE-1"});
    EXPECT_FALSE(facts.namesHolders);
}

TEST(SheetFacts, ThatAgreeDifferInNothing) {
    const SheetFacts facts =
        sheetFactsFrom(factsOf(studio(), aboutSheet("TIDE-1"), withLight()), "a sheet");
    EXPECT_TRUE(differencesBetween(facts, facts).empty());
}

// A weighing was put right, and a pull that nobody had written down was added.
TEST(SheetFacts, TellWhatWasPutRightSince) {
    build::Book now;
    const build::Book then = studio();
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        if constexpr (std::is_same_v<R, Party>)
            return;
        for (R record : then.records.of<R>()) {
            if constexpr (std::is_same_v<R, Weighing>)
                record.mass_g = 21.5;
            now.records.add(record);
        }
    });
    now.records.add(*then.records.find<Party>("tides"));
    Pull pull = then.records.of<Pull>().front();
    pull.id = "pull-2";
    now.records.add(pull);
    const std::vector<FactsDifference> differences =
        differencesBetween(sheetFactsFrom(factsOf(then, aboutSheet("TIDE-1"), {}), "a sheet"),
                           sheetFactsFrom(factsOf(now, aboutSheet("TIDE-1"), {}), "the book"));
    ASSERT_EQ(differences.size(), 2u);
    EXPECT_EQ(differences[0].record, "weighing veil-a/1");
    EXPECT_EQ(differences[0].field, "mass_g");
    EXPECT_EQ(differences[0].onSheet, "20");
    EXPECT_EQ(differences[0].inBook, "21.5");
    EXPECT_EQ(differences[1].record, "pull pull-2");
    EXPECT_EQ(differences[1].onSheet, "");
}

TEST(SheetFacts, RefuseWhatIsNone) {
    EXPECT_EQ(test::messageOf([] { sheetFactsFrom("{}", "x.pdf, y.json"); }),
              "x.pdf, y.json /rackbookSheet: this is not the record of a sheet. Only sheets that "
              "rackbook made can be checked.");
    EXPECT_EQ(test::messageOf([] { sheetFactsFrom("{\"rackbookSheet\": 2}", "x"); }),
              "x /rackbookSheet: it is of form 2, which this version does not know. Only sheets "
              "that rackbook made can be checked.");
    EXPECT_EQ(test::messageOf(
                  [] { sheetFactsFrom("{\"rackbookSheet\": 1, \"sheet\": \"edition\"}", "x"); }),
              "x /asOf: a text is missing. Only sheets that rackbook made can be checked.");
}

TEST(SheetFacts, RefuseWhatNoSheetSays) {
    const std::string sound = factsOf(studio(), aboutSheet("TIDE-1"), withLight());
    const auto refusal = [&](const std::string& part, const std::string& instead) {
        std::string text = sound;
        text.replace(text.find(part), part.size(), instead);
        return test::messageOf([&] { sheetFactsFrom(text, "x"); });
    };
    const std::string end = ". Only sheets that rackbook made can be checked.";
    EXPECT_EQ(refusal("\"namesHolders\": false", "\"namesHolders\": \"x\""),
              "x /namesHolders: true or false is missing" + end);
    EXPECT_EQ(refusal("\"namesHolders\"", "\"foo\": 1, \"namesHolders\""),
              "x /foo: no record of a sheet has that" + end);
    EXPECT_EQ(refusal("\"edition\": \"TIDE\"", "\"edition\": \"TIDE\", \"bar\": \"\""),
              "x /about/bar: no record of a sheet has that" + end);
    EXPECT_EQ(refusal("\"language\": \"en\"", "\"language\": \"e\\u001b[31mn\""),
              "x /language: it holds control characters" + end);
    EXPECT_EQ(refusal("\"impressions\": [", "\"impressions\": [1, "),
              "x /about/impressions/0: a text is missing" + end);
    EXPECT_EQ(refusal("\"records\": [", "\"estimates\": {}, \"records\": ["),
              "x /estimates: a list is missing" + end);
}

}  // namespace
}  // namespace rackbook
