#include "store/BookRules.h"

#include <gtest/gtest.h>

#include "StoreBook.h"
#include "store/RecordReader.h"

namespace rackbook {
namespace {

using test::correctionProblems;
using test::problemsOf;
using test::takeSound;

class BookRulesTest : public test::StoreBook {
protected:
    BookRulesTest() { takeSound(book(), test::namedRecords()); }
};

Book bookNamed(const std::string& id) {
    Book book;
    book.id = id;
    book.studio = "Studio";
    book.timeZone = "Europe/Copenhagen";
    return book;
}

Edition editionOf(const std::string& id, const std::string& code) {
    Edition edition;
    edition.id = id;
    edition.code = code;
    edition.title = "T";
    edition.maker.id = "party-a";
    edition.process = "linocut";
    return edition;
}

Impression impressionOf(const std::string& id, const std::string& edition, int number) {
    Impression impression;
    impression.id = id;
    impression.edition.id = edition;
    impression.workingNumber = number;
    return impression;
}

Layer layerOf(const std::string& id, const std::string& edition, int ordinal) {
    Layer layer;
    layer.id = id;
    layer.edition.id = edition;
    layer.ordinal = ordinal;
    layer.colourWords = "red";
    return layer;
}

Mix mixOf(const std::string& id) {
    Mix mix;
    mix.id = id;
    mix.name = id;
    return mix;
}

Weighing into(const std::string& mix, const std::string& from) {
    Weighing weighing;
    weighing.id = from + "-into-" + mix;
    weighing.mix.id = mix;
    weighing.fromMix = Ref<Mix>{from};
    weighing.mass_g = 5;
    return weighing;
}

Place placeOf(const std::string& id, const std::string& within) {
    Place place;
    place.id = id;
    place.name = id;
    if (!within.empty())
        place.within = Ref<Place>{within};
    return place;
}

std::string cycleProblem(int index, const std::string& mix) {
    return std::to_string(index) +
           " /fromMix: the mix would be made from itself, by way of others (" + mix +
           "). Begin a new mix for what was scraped together again.";
}

std::string placeProblem(int index) {
    return std::to_string(index) +
           " /within: the place would lie within itself, by way of others (). Name the place "
           "around "
           "it.";
}

TEST_F(BookRulesTest, AllowOneBookRecord) {
    takeSound(book(), {bookNamed("one")});
    EXPECT_EQ(problemsOf(book(), {bookNamed("two")}),
              "0 /id: a book holds one book record, and it is there already: one (). Correct that "
              "one, keeping its id, instead of adding another.");
    EXPECT_EQ(countOf(book(), RecordKind::book), 1);
}

TEST_F(BookRulesTest, AllowAnEditionsCodeOnce) {
    takeSound(book(), {editionOf("first", "ABC")});
    EXPECT_EQ(problemsOf(book(), {editionOf("second", "ABC")}),
              "0 /code: the code is taken by edition first (). Choose another code.");
    takeSound(book(), {editionOf("second", "ABD")});
    EXPECT_EQ(correctionProblems(book(), {editionOf("second", "ABC")}),
              "0 /code: the code is taken by edition first (). Choose another code.");
    EXPECT_EQ(correctionProblems(book(), {editionOf("first", "ABD"), editionOf("second", "ABC")}),
              "");
}

TEST_F(BookRulesTest, AllowAWorkingNumberOnceInAnEdition) {
    takeSound(book(), {impressionOf("i1", "edition-a", 1), impressionOf("j1", "edition-b", 1)});
    EXPECT_EQ(problemsOf(book(), {impressionOf("i2", "edition-a", 1)}),
              "0 /workingNumber: the working number is taken in this edition by impression i1 (). "
              "Give the sheet a number of its own.");
}

TEST_F(BookRulesTest, AllowALayersPlaceOnceInAnEdition) {
    takeSound(book(), {layerOf("l1", "edition-a", 1), layerOf("k1", "edition-b", 1)});
    EXPECT_EQ(problemsOf(book(), {layerOf("l2", "edition-a", 1)}),
              "0 /ordinal: the place in the printing order is taken by layer l1 (). Number the "
              "layers 1, 2, 3 in the order of printing.");
}

TEST_F(BookRulesTest, RefuseAPullOfAnotherEditionsSheets) {
    takeSound(book(), {impressionOf("other", "edition-b", 1)});
    Pull pull;
    pull.id = "p";
    pull.layer.id = "layer-a";
    pull.impressions = {{"impression-a"}, {"other"}};
    EXPECT_EQ(problemsOf(book(), {pull}),
              "0 /impressions: the layer is of another edition than impression other (). Name the "
              "layer of the edition that the sheets belong to.");
}

TEST_F(BookRulesTest, RefuseToMoveAPrintedSheetToAnotherEdition) {
    Impression sheet = *findIn<Impression>(book(), "impression-a");
    sheet.edition.id = "edition-b";
    EXPECT_EQ(correctionProblems(book(), {sheet}),
              "0 /edition: a layer of another edition was printed on it in pull pull-a (). Correct "
              "the pull first, or leave the sheet in its edition.");
}

TEST_F(BookRulesTest, RefuseToMoveAPrintedLayerToAnotherEdition) {
    Layer layer = *findIn<Layer>(book(), "layer-a");
    layer.edition.id = "edition-b";
    EXPECT_EQ(correctionProblems(book(), {layer}),
              "0 /edition: sheets of another edition were printed from it in pull pull-a (). "
              "Correct the pull first, or leave the layer in its edition.");
}

TEST_F(BookRulesTest, LetALayerAndItsSheetsMoveTogether) {
    Layer layer = *findIn<Layer>(book(), "layer-a");
    layer.edition.id = "edition-b";
    Impression sheet = *findIn<Impression>(book(), "impression-a");
    sheet.edition.id = "edition-b";
    EXPECT_EQ(correctionProblems(book(), {layer, sheet}), "");
}

TEST_F(BookRulesTest, RefuseMixesThatGoInCircles) {
    takeSound(book(), {mixOf("a"), mixOf("b"), mixOf("c"), into("b", "a"), into("c", "b")});
    EXPECT_EQ(problemsOf(book(), {into("a", "c")}), cycleProblem(0, "a"));
    EXPECT_EQ(problemsOf(book(), {into("a", "b")}), cycleProblem(0, "a"));
    takeSound(book(), {into("c", "a")});
}

TEST_F(BookRulesTest, BlameOnlyMixesThatLieOnTheCircle) {
    const std::vector<Record> records = {mixOf("before"),
                                         mixOf("a"),
                                         mixOf("b"),
                                         mixOf("after"),
                                         mixOf("aside"),
                                         mixOf("aside2"),
                                         into("a", "b"),
                                         into("b", "a"),
                                         into("a", "before"),  // feeds the circle
                                         into("after", "a"),   // is fed by it
                                         into("after", "aside"),
                                         into("aside", "aside2")};
    EXPECT_EQ(problemsOf(book(), records),
              cycleProblem(6, "a") + "\n" + cycleProblem(7, "b") + "\n" + cycleProblem(8, "a"));
}

TEST_F(BookRulesTest, AllowMixesThatMeetAgain) {
    takeSound(book(), {mixOf("a"), mixOf("b"), mixOf("c"), mixOf("d"), into("b", "a"),
                       into("c", "a"), into("d", "b"), into("d", "c")});
}

TEST_F(BookRulesTest, FollowLongChainsWithoutRunningOutOfStack) {
    std::vector<Record> records = {mixOf("m0")};
    for (int i = 1; i < 20000; ++i) {
        records.push_back(mixOf("m" + std::to_string(i)));
        records.push_back(into("m" + std::to_string(i), "m" + std::to_string(i - 1)));
    }
    takeSound(book(), records);
    EXPECT_EQ(problemsOf(book(), {into("m0", "m19999")}), cycleProblem(0, "m0"));
}

TEST_F(BookRulesTest, RefusePlacesThatLieWithinThemselves) {
    EXPECT_EQ(problemsOf(book(), {placeOf("room", "box"), placeOf("rack", "room"),
                                  placeOf("box", "rack"), placeOf("sheet", "box")}),
              placeProblem(0) + "\n" + placeProblem(1) + "\n" + placeProblem(2));
    takeSound(book(), {placeOf("room", ""), placeOf("rack", "room"), placeOf("box", "rack")});
    EXPECT_EQ(correctionProblems(book(), {placeOf("room", "box")}), placeProblem(0));
}

TEST_F(BookRulesTest, AreAllToldInTheOrderOfTheRecords) {
    EXPECT_EQ(problemsOf(book(), {placeOf("x", "y"), placeOf("y", "x"), editionOf("e", "code-a")}),
              placeProblem(0) + "\n" + placeProblem(1) +
                  "\n2 /code: the code is taken by edition edition-a (). Choose another code.");
}

}  // namespace
}  // namespace rackbook
