#include "exchange/FitId.h"

#include <gtest/gtest.h>

namespace rackbook {
namespace {

TEST(FitId, MakesIdsOfWords) {
    EXPECT_EQ(fitForId("Galerie Nord"), "Galerie-Nord");
    EXPECT_EQ(fitForId("  Möwe, sitzend  "), "Moewe-sitzend");
    EXPECT_EQ(fitForId("Almut Ræder & Søn"), "Almut-Raeder-Soen");
    EXPECT_EQ(fitForId("Jón Þórsson"), "Jon-Thorsson");
    EXPECT_EQ(fitForId("Łódź Straße"), "Lodz-Strasse");
    EXPECT_EQ(fitForId("e\u0301te\u0301"), "ete");  // not composed
    EXPECT_EQ(fitForId("EEL/07"), "EEL/07");
    EXPECT_EQ(fitForId("lot_3.b-2"), "lot_3.b-2");
    EXPECT_EQ(fitForId(" ,; "), "");
    EXPECT_EQ(fitForId(""), "");
}

TEST(FitId, TellsWordsOfOtherScriptsApart) {
    const std::string one = fitForId("版画");
    EXPECT_EQ(one.size(), 8u);
    EXPECT_EQ(one, fitForId("版画"));
    EXPECT_NE(one, fitForId("木版"));
    EXPECT_EQ(fitForId("Atelier 版画").substr(0, 8), "Atelier-");
}

TEST(FitId, CutsLongIdsAndKeepsThemApart) {
    const std::string longId(100, 'a');
    EXPECT_EQ(cutForId(longId).size(), 80u);
    EXPECT_NE(cutForId(longId + "b"), cutForId(longId + "c"));
    EXPECT_EQ(cutForId(std::string(80, 'a')), std::string(80, 'a'));
}

TEST(FitId, ComparesTextWithoutCapitalsAndSpaces) {
    EXPECT_EQ(comparedText(" GALERIE\u00A0 Süd "), comparedText("galerie süd"));
    EXPECT_NE(comparedText("Sud"), comparedText("Süd"));
}

}  // namespace
}  // namespace rackbook
