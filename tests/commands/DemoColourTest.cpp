// The verbs of colour on the demonstration book, by their JSON reports. Its spectra were computed
// outside of the program, with other surface constants, film weights that are off by a few per cent
// and noise, so that what is expected here is nearness, not equality.
#include <gtest/gtest.h>

#include <filesystem>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

#include "Script.h"
#include "calc/ColourDifference.h"
#include "commands/Run.h"

namespace rackbook {

namespace {

using nlohmann::json;

class DemoColour : public testing::Test {
protected:
    void SetUp() override {
        std::filesystem::create_directory_symlink(std::string(RACKBOOK_SOURCE) + "/demo-edition",
                                                  "demo-edition");
        transcriptOf({"rackbook", "begin"});
        transcriptOf({"rackbook", "take-in", "demo-edition"});
    }

    static json report(const std::string& command) {
        std::vector<std::string> words = splitWords(command);
        words.push_back("--json");
        std::ostringstream out;
        std::ostringstream err;
        runProgram(words, out, err);
        EXPECT_EQ(err.str(), "") << command;
        return json::parse(out.str());
    }

    static double sumOfShares(const json& recipe) {
        double sum = 0;
        for (const json& part : recipe.at("shares"))
            sum += part.at("share").get<double>();
        return sum;
    }

private:
    FreshFolder m_folder;
};

TEST_F(DemoColour, KnowsEveryInkOnTheShelfByThreeDrawdownsOrMore) {
    std::set<std::string> checked;
    const json characterised = report("characterise");
    for (const json& lot : characterised.at("lots")) {
        if (lot.at("leftOut").is_null())
            continue;
        checked.insert(lot.at("lot"));
        EXPECT_GE(lot.at("drawdowns").size(), 2u) << lot.at("lot");
        EXPECT_LT(lot.at("leftOut").at("mean_dE00").get<double>(), 2.0) << lot.at("lot");
    }
    for (const char* lot : {"straw-ochre-1", "field-rose-1", "bottle-green-1", "peat-brown-1",
                            "plum-violet-1", "soft-black-1", "kiln-red-1", "dense-white-1"})
        EXPECT_EQ(checked.count(lot), 1u) << lot;
}

// Duncan's rule is tried on mixes that no ink was fitted to.
TEST_F(DemoColour, PredictsMixesOfSeveralInksThatTaughtNothing) {
    const json mixes = report("characterise").at("mixes");
    EXPECT_GE(mixes.size(), 8u);
    double sum = 0;
    for (const json& mix : mixes)
        sum += mix.at("check").at("mean_dE00").get<double>();
    EXPECT_LT(sum / static_cast<double>(mixes.size()), 1.5);
}

TEST_F(DemoColour, MatchesTheOldLayerWithoutTheInksThatAreGone) {
    const json match = report(
        "match FER 1 --film 8 --mass 40 --balance pocket-balance "
        "--on 2026-02-25");
    EXPECT_EQ(match.at("by"), "spectrum");
    ASSERT_GE(match.at("recipes").size(), 2u);
    for (const json& recipe : match.at("recipes")) {
        EXPECT_NEAR(sumOfShares(recipe), 1, 1e-9);
        for (const json& part : recipe.at("shares")) {
            EXPECT_GE(part.at("share").get<double>(), 0);
            for (const char* gone : {"old-ochre", "old-black", "marigold-1", "old-base", "base-1"})
                EXPECT_NE(part.at("lot"), gone);
        }
        EXPECT_GT(recipe.at("spread").at("together_dE00").get<double>(), 0);
    }
    EXPECT_LT(match.at("recipes")[0].at("dE00").at("D50").get<double>(), 0.5);
    // The grams that are weighed make the recipe that was predicted.
    const json& weighing = match.at("weighing");
    const json& plan = weighing.at("plans").at(weighing.at("chosen").get<std::size_t>());
    for (const json& share : plan.at("shares"))
        EXPECT_NEAR(share.at("weighedShare").get<double>() / share.at("recipeShare").get<double>(),
                    1, 0.05)
            << share.at("lot");
}

TEST_F(DemoColour, KeepsToWhatIsAskedOfARecipe) {
    const json match = report(
        "match EEL 4 --film 4-7 --extender 97% --drier drier-1=2% "
        "--without kiln-red-1 --colours 3 --on 2026-03-20");
    ASSERT_FALSE(match.at("recipes").empty());
    for (const json& recipe : match.at("recipes")) {
        EXPECT_NEAR(sumOfShares(recipe), 1, 1e-9);
        EXPECT_GE(recipe.at("filmWeight_gm2").get<double>(), 4);
        EXPECT_LE(recipe.at("filmWeight_gm2").get<double>(), 7);
        EXPECT_LE(recipe.at("shares").size(), 5u);
        for (const json& part : recipe.at("shares")) {
            EXPECT_NE(part.at("lot"), "kiln-red-1");
            const double share = part.at("share");
            if (part.at("lot") == "base-2") {
                EXPECT_NEAR(share, 0.97, 1e-9);
            } else if (part.at("lot") == "drier-1") {
                EXPECT_NEAR(share, 0.02, 1e-9);
            }
        }
    }
}

// Over the black half of the card an ink is matched over black, and comes out of its own tin.
TEST_F(DemoColour, MatchesOverTheBackingThatWasReadOver) {
    const json match = report("match plum-violet-black --on 2026-03-20");
    EXPECT_EQ(match.at("paperReading"), "contrast-card-black");
    const json& best = match.at("recipes")[0];
    EXPECT_LT(best.at("dE00").at("D50").get<double>(), 1);
    double violet = 0;
    for (const json& part : best.at("shares"))
        if (part.at("lot") == "plum-violet-1")
            violet = part.at("share");
    EXPECT_GT(violet, 0.9);
}

// A glaze hides nearly nothing, a layer of white most of what is below it.
TEST_F(DemoColour, TellsGlazesFromPaint) {
    const json glaze = report("match EEL 1 --on 2026-03-20");
    EXPECT_LT(glaze.at("recipes")[0].at("opacity").get<double>(), 0.05);
    const json white = report(
        "match dense-white-dd --paper contrast-card-black --film 9.3 "
        "--on 2026-03-20");
    EXPECT_GT(white.at("recipes")[0].at("opacity").get<double>(), 0.4);
}

// What was weighed in after the test was drawn down makes another batch of it.
TEST_F(DemoColour, ShadesNoBatchThatWasChangedSinceItsTest) {
    EXPECT_EQ(transcriptOf(splitWords("rackbook weigh ferry-again 0.78 --lot straw-ochre-1 "
                                      "--balance pocket-balance --at 2026-03-20T10:00"))
                  .find("[2]"),
              std::string::npos);
    EXPECT_EQ(transcriptOf(splitWords("rackbook shade ferry-again-d50 FER 1 --on 2026-03-20")),
              "rackbook: mix ferry-again was added to after drawdown ferry-again-dd was made. Draw "
              "it down again and measure that.\n[2]\n");
}

// The drawdown was taken out at 15:40 of its day; what went in later that day is not in it.
TEST_F(DemoColour, ShadesNoBatchThatWasChangedOnTheDayOfItsTest) {
    transcriptOf(
        splitWords("rackbook weigh ferry-again 10 --lot base-2 --balance pocket-balance "
                   "--at 2026-02-25T16:30"));
    EXPECT_EQ(transcriptOf(splitWords("rackbook shade ferry-again-d50 FER 1 --on 2026-03-20"))
                  .find("rackbook: mix ferry-again was added to after"),
              0u);
}

TEST_F(DemoColour, ShadesTheBatchThatHoldsTooMuchRed) {
    const json shade = report(
        "shade ferry-again-d50 FER 1 --balance pocket-balance "
        "--on 2026-03-20");
    const double before = shade.at("before_dE00");
    EXPECT_GT(before, 2);
    const json best = shade.at("waysAsWeighed")[0];
    EXPECT_LT(best.at("expected_dE00").at("D50").get<double>(), before / 4);
    // By the recipe, 0.889 g of red in the batch are enough for 57.4 g of it.
    std::map<std::string, double> added_g;
    for (const json& addition : best.at("additions"))
        added_g[addition.at("lot")] = addition.at("mass_g");
    EXPECT_EQ(added_g.size(), 2u);
    EXPECT_NEAR(added_g["straw-ochre-1"], 1.98, 0.6);
    EXPECT_NEAR(added_g["base-2"], 15.6, 2);
}

// The reading on the weir post taught nothing: no drawdown, no fit.
TEST_F(DemoColour, PredictsEightLayersOnOneAnother) {
    const json prediction = report("predict EEL --on 2026-03-20");
    const json& films = prediction.at("films");
    EXPECT_NE(prediction.at("warnings").dump().find("eel-02-post, on EEL/02, is"),
              std::string::npos);
    ASSERT_EQ(films.size(), 8u);
    const json top = films.back().at("onTopLab_D50");
    const json read = report("colour eel-02-post").at("readings")[0].at("colours")[0];
    EXPECT_LT(deltaE00({top.at("l"), top.at("a"), top.at("b")},
                       {read.at("l"), read.at("a"), read.at("b")}),
              2);
}

}  // namespace

}  // namespace rackbook
