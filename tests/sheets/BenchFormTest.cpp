#include "sheets/BenchForm.h"

#include <gtest/gtest.h>

#include <set>

#include "EditionBook.h"
#include "SheetTools.h"
#include "sheets/BenchSheet.h"
#include "sheets/NamesInBoxes.h"

namespace rackbook {
namespace {

const test::SheetMeasurer measurer;

PageModel sheetOf(const RecordSet& records, const std::string& language = "en",
                  const char* day = "2026-01-05") {
    const SheetTemplate shipped = test::shippedTemplate("bench", benchSheetRules(), language);
    BenchFacts facts = benchFactsOf(records, *records.find<Layer>("HB-layer2"), test::onDay(day));
    facts.mix = "Ochre stock";
    return benchSheet(facts, shipped, measurer, test::fixedClock).model;
}

const FormField& fieldOf(const PageModel& model, const std::string& name) {
    for (const FormField& field : model.form)
        if (field.name == name)
            return field;
    throw std::runtime_error("there is no field " + name);
}

build::Book bookWithARun() {
    build::Book book = test::editionBook();
    book.place("line", PlaceKind::rack, [](Place& r) { r.name = "Drying line"; });
    book.place("drawer", PlaceKind::drawer);
    book.place("theirs", PlaceKind::wall, [](Place& r) { r.holder = Ref<Party>{"secret"}; });
    book.party("hand", [](Party& r) {
        r.name = "A Hand";
        r.roles = {PartyRole::printer};
    });
    book.mix("own", MixPurpose::portion, [](Mix& r) { r.edition = Ref<Edition>{"HB"}; });
    book.addLot("own", "clear", 20, "2026-01-03T08:00");
    book.addLot("own", "cobalt", 1, "2026-01-03T08:01");
    book.pull("HB-layer1", "2026-01-03", build::impressionIds("HB", 1, 4), [](Pull& r) {
        r.press = "hand,\nbaren";
        r.packing = "two sheets";
        r.printer = Ref<Party>{"hand"};
    });
    book.add(Move{}, [](Move& r) {
        r.id = "hung";
        r.impressions = {Ref<Impression>{build::impressionIds("HB", 1, 1).front()}};
        r.to = {"line"};
        r.at = build::on("2026-01-03");
        r.why = MoveWhy::hang;
    });
    return book;
}

TEST(BenchForm, HasAFieldForEachPlaceWithWordsOfItsOwn) {
    for (const char* language : {"en", "de", "fr", "es", "ja"}) {
        const PageModel model = sheetOf(test::editionBook().records, language);
        std::set<std::string> names;
        std::set<std::string> tooltips;
        std::set<int> elements;
        for (const FormField& field : model.form) {
            EXPECT_TRUE(names.insert(field.name).second) << field.name;
            EXPECT_TRUE(tooltips.insert(field.tooltip).second) << language << field.tooltip;
            EXPECT_EQ(field.tooltip.find('\n'), std::string::npos) << field.tooltip;
            EXPECT_EQ(field.tooltip.find('{'), std::string::npos) << field.tooltip;
            ASSERT_GE(field.element, 0) << field.name;
            EXPECT_TRUE(elements.insert(field.element).second) << field.name;
            EXPECT_EQ(model.structure[static_cast<std::size_t>(field.element)].kind,
                      ElementKind::form);
        }
    }
}

TEST(BenchForm, SaysInWhatFormThingsAreTyped) {
    const RecordSet records = test::editionBook().records;
    EXPECT_EQ(fieldOf(sheetOf(records), "pull.day").tooltip,
              "Date: such as 2026-03-28 or 28/3/2026");
    EXPECT_EQ(fieldOf(sheetOf(records, "de"), "pull.day").tooltip,
              "Datum: etwa 2026-03-28 oder 28.3.2026");
    EXPECT_EQ(fieldOf(sheetOf(records, "ja"), "pull.day").tooltip,
              "日付：例 2026-03-28、2026/3/28");
    EXPECT_EQ(fieldOf(sheetOf(records, "de"), "portion.mix_g").tooltip,
              "Mischung entnommen, g: eine Zahl, etwa 4,5");
    EXPECT_EQ(fieldOf(sheetOf(records), "sheet.HB-3.spoiled").tooltip, "Spoiled: working number 3");
    EXPECT_EQ(fieldOf(sheetOf(records, "de"), "sheet.HB-3.spoiled").tooltip,
              "Verdorben: Arbeitsnummer 3");
    EXPECT_EQ(fieldOf(sheetOf(records), everyPrinted).tooltip,
              "Printed: every impression that is listed");
}

TEST(BenchForm, HoldsWhatIsUsualAndOffersWhatIsThere) {
    const PageModel model = sheetOf(bookWithARun().records);
    EXPECT_EQ(fieldOf(model, "pull.press").value, "hand, baren");
    EXPECT_EQ(fieldOf(model, "pull.packing").value, "two sheets");
    EXPECT_EQ(fieldOf(model, "pull.printer").value, "A Hand");
    EXPECT_EQ(fieldOf(model, "pull.printer").choices, std::vector<std::string>{"A Hand"});
    EXPECT_EQ(fieldOf(model, "move.to").value, "Drying line");
    EXPECT_EQ(fieldOf(model, "move.to").choices, std::vector<std::string>{"Drying line"});
    EXPECT_EQ(fieldOf(model, "portion.baseLot").value, "clear");
    EXPECT_EQ(fieldOf(model, "portion.drierLot").value, "cobalt");
    EXPECT_EQ(fieldOf(model, "pull.portion").value, "");
    EXPECT_EQ(fieldOf(model, "pull.portion").choices, std::vector<std::string>{"own"});
    for (const char* name : {"pull.day", "pull.start", "portion.mix_g", "pull.inkBefore_g",
                             "pull.temperature_C", "pull.note", "sheet.HB-2.printed"})
        EXPECT_EQ(fieldOf(model, name).value, "") << name;
}

TEST(BenchForm, KnowsNothingOfLaterDays) {
    const PageModel model = sheetOf(bookWithARun().records, "en", "2026-01-02");
    EXPECT_NE(fieldOf(model, "pull.press").value, "hand, baren");
    EXPECT_EQ(fieldOf(model, "move.to").value, "");
    EXPECT_EQ(fieldOf(model, "portion.drierLot").value, "");
}

TEST(BenchForm, NamesAreThoseOfTheBook) {
    build::Book book;
    book.place("a", PlaceKind::wall, [](Place& r) { r.name = "Wall"; });
    book.place("b", PlaceKind::wall, [](Place& r) { r.name = "Wall"; });
    book.place("c", PlaceKind::wall, [](Place& r) { r.name = "a"; });
    const RecordSet& records = book.records;
    EXPECT_EQ(nameInBox(records, *records.find<Place>("a")), "a");
    EXPECT_EQ(namedInBox<Place>(records, "Wall").size(), 2u);
    ASSERT_EQ(namedInBox<Place>(records, "a").size(), 1u);
    EXPECT_EQ(namedInBox<Place>(records, "a").front()->id, "a") << "ids go before names";
    EXPECT_EQ(nameInBox(records, *records.find<Place>("c")), "c");
    EXPECT_TRUE(namedInBox<Place>(records, "wall").empty());
}

}  // namespace
}  // namespace rackbook
