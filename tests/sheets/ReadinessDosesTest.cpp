#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "EditionBook.h"
#include "SheetMeasures.h"
#include "SheetTools.h"
#include "sheets/ReadinessSheet.h"
#include "sheets/TypeScale.h"

namespace rackbook {
namespace {

using test::onDay;

const test::SheetMeasurer measurer;
constexpr const char* today = "2026-03-20";

// A studio by a northern sea, and one extender-rich portion.
build::Book litStudio() {
    build::Book book;
    book.add(rackbook::Book{}, [](rackbook::Book& r) {
        r.id = "book";
        r.studio = "Studio at the Old Weir";
        r.timeZone = "Europe/Copenhagen";
        r.latitude_deg = 56;
        r.longitude_deg = 10;
    });
    book.lot("clear", LotKind::base).lot("cobalt", LotKind::drier);
    book.mix("portion", MixPurpose::portion);
    book.addLot("portion", "clear", 98, "2025-12-01T08:00");
    book.addLot("portion", "cobalt", 2, "2025-12-01T08:01");
    book.place("drawer", PlaceKind::drawer, LightKind::dark);
    return book;
}

const auto withPortion = [](Pull& r) { r.portion = Ref<Mix>{"portion"}; };

// Each print on a rack of its own, and so in a group of its own, from the day of its pull.
build::Book racksBook(int prints, const char* pulled = "2026-03-02T10:00") {
    build::Book book = litStudio();
    book.edition("HB").layer("HB", 1).impressions("HB", 1, prints);
    book.pull("HB-layer1", pulled, build::impressionIds("HB", 1, prints), withPortion);
    for (int i = 1; i <= prints; ++i) {
        const std::string rack = "rack" + std::to_string(100 + i);
        book.place(rack, PlaceKind::rack, LightKind::daylight);
        book.move(rack, pulled, {"HB-" + std::to_string(i)});
    }
    return book;
}

PageModel sheetOf(const RecordSet& records, const std::string& language = "en") {
    const SheetTemplate shipped =
        test::shippedTemplate("readiness", readinessSheetRules(), language);
    const ReadinessQuestion question{onDay(today), "", false, shipped.label("atGallery"),
                                     shipped.label("atHolder")};
    return readinessSheet(readinessFactsOf(records, question), shipped, measurer, test::fixedClock);
}

// What stands for a reader who doesn't see the plots, in order.
std::vector<std::string> alternatesIn(const PageModel& model) {
    std::vector<std::string> alternates;
    for (const StructureElement& element : model.structure)
        if (element.kind == ElementKind::figure)
            alternates.push_back(element.alternate);
    return alternates;
}

int figureOf(const PageModel& model, const std::string& beginning) {
    for (std::size_t i = 0; i < model.structure.size(); ++i)
        if (model.structure[i].alternate.rfind(beginning, 0) == 0)
            return static_cast<int>(i);
    return noElement;
}

// One plot, read off the page.
struct DrawnPlot {
    std::vector<Curve> curves;
    std::vector<Box> bands;
    std::vector<TextRun> texts;
    double left_mm = 1e9;
    double right_mm = 0;
    double top_mm = 1e9;
    double bottom_mm = 0;
};

DrawnPlot plotOf(const PageModel& model, int figure) {
    DrawnPlot plot;
    for (const Page& page : model.pages) {
        for (const Curve& curve : page.curves)
            if (curve.element == figure)
                plot.curves.push_back(curve);
        for (const Fill& fill : page.fills)
            if (fill.element == figure)
                plot.bands = fill.boxes;
        for (const TextRun& text : page.texts)
            if (text.element == figure)
                plot.texts.push_back(text);
        for (const Rule& rule : page.rules) {
            if (rule.element != figure)
                continue;
            if (rule.toX_mm - rule.fromX_mm > 5) {
                plot.left_mm = rule.fromX_mm;
                plot.right_mm = rule.toX_mm;
                plot.bottom_mm = rule.fromY_mm;
            }
            if (rule.toY_mm - rule.fromY_mm > 5)
                plot.top_mm = std::min(plot.top_mm, rule.fromY_mm);
        }
    }
    return plot;
}

// The height of a point in sunny days, by the figures beside the axis: one of 0 at its foot, and
// the highest.
double doseAt(const DrawnPlot& plot, double y_mm) {
    const TextRun* top = nullptr;
    double most = 0;
    for (const TextRun& text : plot.texts) {
        const std::optional<double> value = parseNumber(text.text);
        if (value && *value > most && text.x_mm < plot.left_mm) {
            most = *value;
            top = &text;
        }
    }
    EXPECT_NE(top, nullptr);
    const TypeScale scale = TypeScale::of(9.5);
    const double topAt_mm = top->baselineY_mm - scale.tableLine_mm * 0.26;
    return most * (plot.bottom_mm - y_mm) / (plot.bottom_mm - topAt_mm);
}

const Curve* likelyIn(const DrawnPlot& plot) {
    for (const Curve& curve : plot.curves)
        if (curve.dash_mm == 0)
            return &curve;
    return nullptr;
}

// "0.61 (0.18–2.6)" behind the first ": ".
struct SaidDose {
    double best = 0;
    double low = 0;
    double high = 0;
};

SaidDose doseIn(const std::string& alternate) {
    const std::size_t at = alternate.find(": ") + 2;
    const std::size_t open = alternate.find(" (", at);
    const std::size_t dash = alternate.find("–", at);
    const std::size_t close = alternate.find(')', open);
    return {parseNumber(alternate.substr(at, open - at)).value_or(-1),
            parseNumber(alternate.substr(open + 2, dash - open - 2)).value_or(-1),
            parseNumber(alternate.substr(dash + 3, close - dash - 3)).value_or(-1)};
}

TEST(ReadinessDoses, DrawsEachGroupThatWantsLight) {
    const PageModel model = sheetOf(racksBook(3).records);
    const std::vector<std::string> alternates = alternatesIn(model);
    ASSERT_EQ(alternates.size(), 4u);
    EXPECT_EQ(alternates[0].rfind("HB 1: ", 0), 0u) << alternates[0];
    EXPECT_EQ(alternates[1].rfind("HB 2: ", 0), 0u);
    EXPECT_EQ(alternates[2].rfind("HB 3: ", 0), 0u);
    EXPECT_EQ(alternates[3].rfind("A curve that rises", 0), 0u) << alternates[3];
    EXPECT_FALSE(test::says(model, "not drawn here"));
    expectTidy(model, Margins{});
}

TEST(ReadinessDoses, DrawsEightAtMostAndSaysHowManyMoreThereAre) {
    const PageModel eight = sheetOf(racksBook(8).records);
    EXPECT_EQ(alternatesIn(eight).size(), 9u);
    EXPECT_FALSE(test::says(eight, "not drawn here"));
    const PageModel more = sheetOf(racksBook(30).records);
    EXPECT_EQ(alternatesIn(more).size(), 9u);
    EXPECT_TRUE(
        test::says(more, "Less urgent groups that want light or a look, not drawn here: 22."));
    expectTidy(more, Margins{});
}

TEST(ReadinessDoses, PutsTheMostUrgentFirst) {
    build::Book book = racksBook(10);
    book.move("drawer", "2026-03-05T12:00", {"HB-10"});
    const std::vector<std::string> alternates = alternatesIn(sheetOf(book.records));
    EXPECT_EQ(alternates.at(0).rfind("HB 10: ", 0), 0u) << alternates.at(0);
}

TEST(ReadinessDoses, SaysInWordsWhatThePlotShows) {
    build::Book book = racksBook(2);
    book.look("2026-03-12", {"HB-1"}, Touch::dry, LookColour::turned);
    book.look("2026-03-17", {"HB-1"}, Touch::dry, LookColour::returning);
    const PageModel model = sheetOf(book.records);
    const int figure = figureOf(model, "HB 1: ");
    ASSERT_NE(figure, noElement);
    const std::string& alternate = model.structure[static_cast<std::size_t>(figure)].alternate;
    EXPECT_NE(alternate.find("sunny days since layer 1 (2 March 2026)."), std::string::npos)
        << alternate;
    EXPECT_NE(alternate.find("Looks: 12 March 2026 turned, 17 March 2026 returning."),
              std::string::npos);
    EXPECT_NE(alternate.find("Sunny days by date: 2 March 2026 0, "), std::string::npos);
    EXPECT_TRUE(test::says(model, "Looks: 12 March 2026 turned, 17 March 2026 returning."));

    const DrawnPlot plot = plotOf(model, figure);
    const SaidDose said = doseIn(alternate);
    const Curve* likely = likelyIn(plot);
    ASSERT_TRUE(likely);
    EXPECT_NEAR(doseAt(plot, likely->points.back().y_mm) / said.best, 1, 0.06);
    EXPECT_NEAR(likely->points.front().y_mm, plot.bottom_mm, 1e-9);
    EXPECT_NEAR(likely->points.front().x_mm, plot.left_mm, 1e-9);
    EXPECT_NEAR(likely->points.back().x_mm, plot.right_mm, 1e-9);
    ASSERT_EQ(plot.curves.size(), 3u);
    EXPECT_NEAR(doseAt(plot, plot.curves[0].points.back().y_mm) / said.low, 1, 0.06);
    for (const Curve& curve : plot.curves)
        for (std::size_t i = 1; i < curve.points.size(); ++i)
            EXPECT_LE(curve.points[i].y_mm, curve.points[i - 1].y_mm + 1e-9);  // light adds up
    // The words of the two looks stand in their order, above the plot.
    std::vector<std::string> marks;
    for (const TextRun& text : plot.texts)
        if (text.baselineY_mm < plot.top_mm && text.text != "Sunny days hung up out of doors")
            marks.push_back(text.text);
    EXPECT_EQ(marks, (std::vector<std::string>{"turned", "returning"}));
}

// The band reaches from where a look is worth making to where the light counts as enough.
TEST(ReadinessDoses, ShadesTheDoseThatIsWanted) {
    const build::Book book = racksBook(1);
    const ReadinessFacts facts = readinessFactsOf(book.records, {onDay(today), "", false, "", ""});
    const PageModel model = sheetOf(book.records);
    const int figure = figureOf(model, "HB 1: ");
    const DrawnPlot plot = plotOf(model, figure);
    ASSERT_EQ(plot.bands.size(), 1u);
    const double high = doseAt(plot, plot.bands[0].y_mm);
    const double low = doseAt(plot, plot.bands[0].y_mm + plot.bands[0].height_mm);
    const ReturnChance& chance = facts.light->model()->wanted.groups().front().chance;
    EXPECT_NEAR(chance.by(low), facts.rules.value("lookChance"), 0.005);
    EXPECT_NEAR(chance.by(high), facts.rules.value("returnedChance"), 0.005);
}

// Between the rack and today nobody knows where it was: from then on no dose is likelier than
// another.
TEST(ReadinessDoses, EndsTheLikelyLineWhereNothingIsLikely) {
    build::Book book = racksBook(1, "2026-02-10T10:00");
    RecordSet changed;
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        for (R record : book.records.of<R>()) {
            if constexpr (std::is_same_v<R, Move>)
                record.until = build::on("2026-03-05T12:00");
            changed.add(record);
        }
    });
    build::Book again;
    again.records = std::move(changed);
    again.move("drawer", "2026-03-15T12:00", {"HB-1"});
    const PageModel model = sheetOf(again.records);
    const int figure = figureOf(model, "HB 1: ");
    ASSERT_NE(figure, noElement);
    const DrawnPlot plot = plotOf(model, figure);
    const Curve* likely = likelyIn(plot);
    ASSERT_TRUE(likely);
    // 23 of the 38 days.
    const double share =
        (likely->points.back().x_mm - plot.left_mm) / (plot.right_mm - plot.left_mm);
    EXPECT_NEAR(share, 23.0 / 38, 0.05);
    EXPECT_TRUE(std::any_of(plot.curves.begin(), plot.curves.end(), [&](const Curve& curve) {
        return std::abs(curve.points.back().x_mm - plot.right_mm) < 1e-9;
    }));
    expectTidy(model, Margins{});
}

TEST(ReadinessDoses, SaysWhereDatesAreMissing) {
    build::Book book = litStudio();
    book.edition("HB").impressions("HB", 1, 1);
    book.layer("HB", 1, [](Layer& r) { r.extenderShare = 0.97; });
    book.pull("HB-layer1", "../2026-02-02", {"HB-1"});
    book.place("rack", PlaceKind::rack, LightKind::daylight);
    book.move("rack", "2026-02-02", {"HB-1"});
    book.look("2026-03-12", {"HB-1"}, Touch::dry, LookColour::turned);
    const PageModel model = sheetOf(book.records);
    EXPECT_EQ(figureOf(model, "HB 1: "), noElement);
    EXPECT_TRUE(
        test::says(model, "because the record doesn't say when their layer was pulled: 1."));
}

TEST(ReadinessDoses, SaysThatLightCannotBeEstimatedWithoutAPlaceOnEarth) {
    const PageModel model = sheetOf(test::editionBook().records);
    EXPECT_TRUE(test::says(model, "Light cannot be estimated: the studio's latitude"));
    EXPECT_TRUE(alternatesIn(model).empty());
}

TEST(ReadinessDoses, SaysThatNothingIsWanted) {
    build::Book book = litStudio();
    book.edition("HB").impressions("HB", 1, 2);
    const PageModel model = sheetOf(book.records);
    EXPECT_TRUE(test::says(model, "No impression wants light or a look."));
    ASSERT_EQ(alternatesIn(model).size(), 1u);
    expectTidy(model, Margins{});
}

// Ten sunny prints looked at one by one, five of them found true.
build::Book learntBook() {
    build::Book book = racksBook(10, "2026-01-02T10:00");
    for (int i = 1; i <= 10; ++i)
        book.look("2026-0" + std::string(i % 2 == 0 ? "3-0" : "2-2") + std::to_string(i % 9 + 1),
                  {"HB-" + std::to_string(i)}, Touch::dry,
                  i % 2 == 0 ? LookColour::trueColour : LookColour::returning);
    return book;
}

TEST(ReadinessDoses, SaysWhereTheCurveComesFrom) {
    const PageModel untaught = sheetOf(racksBook(1).records);
    EXPECT_TRUE(test::says(untaught, "By the house rule alone: no look has taught it yet."));
    EXPECT_TRUE(test::says(untaught, "These are estimates."));
    const build::Book book = learntBook();
    const ReadinessFacts facts = readinessFactsOf(book.records, {onDay(today), "", false, "", ""});
    const std::size_t looks = facts.light->model()->wanted.groups().front().count;
    ASSERT_GT(looks, 5u);
    EXPECT_TRUE(test::says(sheetOf(book.records),
                           "Learnt from looks in this studio: " + std::to_string(looks) + "."));
    build::Book few = racksBook(1, "2026-02-02T10:00");
    few.look("2026-03-10", {"HB-1"}, Touch::dry, LookColour::returning);
    EXPECT_TRUE(test::says(sheetOf(few.records),
                           "The house rule, moved by looks in this studio: 1, too few to learn"));
}

// A share rises from none to nearly all, and lies between its bounds.
TEST(ReadinessDoses, DrawsTheCurveBetweenItsBounds) {
    for (const build::Book& book : {racksBook(1), learntBook()}) {
        const PageModel model = sheetOf(book.records);
        const DrawnPlot plot = plotOf(model, figureOf(model, "A curve that rises"));
        ASSERT_EQ(plot.curves.size(), 3u);
        const Curve& low = plot.curves[0];
        const Curve& high = plot.curves[1];
        const Curve& likely = plot.curves[2];
        EXPECT_EQ(likely.dash_mm, 0);
        ASSERT_EQ(low.points.size(), likely.points.size());
        for (std::size_t i = 0; i < likely.points.size(); ++i) {
            EXPECT_GE(low.points[i].y_mm, likely.points[i].y_mm - 1e-9);
            EXPECT_LE(high.points[i].y_mm, likely.points[i].y_mm + 1e-9);
        }
        EXPECT_NEAR(doseAt(plot, likely.points.front().y_mm), 0, 1e-9);
        EXPECT_NEAR(doseAt(plot, likely.points.back().y_mm), 97, 0.01);
    }
}

TEST(ReadinessDoses, AreTidyInEveryLanguage) {
    build::Book book = racksBook(5);
    book.look("2026-03-12", {"HB-1"}, Touch::dry, LookColour::turned);
    for (const char* language : {"en", "de", "fr", "es", "ja"})
        expectTidy(sheetOf(book.records, language), Margins{});
}

// The caption of the curve and the reasons of a print tell of the same threshold.
TEST(ReadinessDoses, SayOneFigureForHalfOfThePrints) {
    std::string all = test::wordsOf(sheetOf(racksBook(1).records));
    std::replace(all.begin(), all.end(), '\n', ' ');
    const auto figureAfter = [&](const std::string& words) {
        const std::size_t at = all.find(words);
        return at == std::string::npos ? words : all.substr(at + words.size(), 4);
    };
    EXPECT_EQ(figureAfter("Half of such prints have their colour back at "),
              figureAfter("Half of the prints have their colour back by "));
}

}  // namespace
}  // namespace rackbook
