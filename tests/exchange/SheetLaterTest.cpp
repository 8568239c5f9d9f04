// What happens after a sheet's day changes nothing of the record in it; what happened before does.
#include <gtest/gtest.h>

#include <set>

#include "SheetBook.h"
#include "support/FieldFacts.h"

namespace rackbook {
namespace {

using build::on;

struct Event {
    const char* field;  // the date that says when it was: "lot.boughtOn"
    // Lets it happen on that day.
    std::function<RecordSet(const RecordSet&, const std::string&)> happen;
};

// One record changes.
template <class R, class Edit>
Event change(const char* field, const std::string& id, Edit edit) {
    return {field, [id, edit](const RecordSet& records, const std::string& day) {
                return test::edited(records, [&](auto& record) {
                    if constexpr (std::is_same_v<std::decay_t<decltype(record)>, R>)
                        if (record.id == id)
                            edit(record, on(day));
                });
            }};
}

// One record comes.
template <class R, class Fill>
Event addition(const char* field, Fill fill) {
    return {field, [fill](const RecordSet& records, const std::string& day) {
                RecordSet more = records;
                R record;
                record.id = "new";
                fill(record, on(day));
                more.add(std::move(record));
                return more;
            }};
}

std::vector<Event> eventsOfInk() {
    return {
        addition<Lot>("lot.boughtOn",
                      [](Lot& r, const EdtfDate& day) {
                          r.colourWords = "blue";
                          r.boughtOn = day;
                      }),
        change<Lot>("lot.openedOn", "rose", [](Lot& r, const EdtfDate& day) { r.openedOn = day; }),
        change<Lot>("lot.finishedOn", "rose",
                    [](Lot& r, const EdtfDate& day) { r.finishedOn = day; }),
        change<Balance>("balance.retiredOn", "scale",
                        [](Balance& r, const EdtfDate& day) { r.retiredOn = day; }),
        addition<Mix>("mix.madeOn",
                      [](Mix& r, const EdtfDate& day) {
                          r.name = "dusk";
                          r.madeOn = day;
                      }),
        change<Mix>("mix.finishedOn", "veil",
                    [](Mix& r, const EdtfDate& day) { r.finishedOn = day; }),
        addition<Weighing>("weighing.at",
                           [](Weighing& r, const EdtfDate& day) {
                               r.mix = {"veil"};
                               r.act = WeighingAct::discard;
                               r.at = day;
                               r.mass_g = 2;
                           }),
        addition<Drawdown>("drawdown.madeOn",
                           [](Drawdown& r, const EdtfDate& day) {
                               r.mix = Ref<Mix>{"veil"};
                               r.madeOn = day;
                           }),
        addition<Reading>("reading.takenOn",
                          [](Reading& r, const EdtfDate& day) {
                              r.drawdown = Ref<Drawdown>{"swatch"};
                              r.takenOn = day;
                          }),
        addition<StockTake>("stockTake.at",
                            [](StockTake& r, const EdtfDate& day) {
                                r.lot = {"rose"};
                                r.at = day;
                            }),
    };
}

std::vector<Event> eventsOfPrinting() {
    return {
        change<Block>("block.states.cutOn", "TIDE-key",
                      [](Block& r, const EdtfDate& day) {
                          r.states = {{1, "cut", day}};
                      }),
        change<Block>("block.fateOn", "TIDE-key",
                      [](Block& r, const EdtfDate& day) {
                          r.fate = MatrixFate::destroyed;
                          r.fateOn = day;
                      }),
        change<Impression>("impression.signedOn", "TIDE-2",
                           [](Impression& r, const EdtfDate& day) {
                               r.designation = "1/3";
                               r.designationKind = DesignationKind::numbered;
                               r.signedOn = day;
                           }),
        change<Impression>("impression.fateOn", "TIDE-2",
                           [](Impression& r, const EdtfDate& day) {
                               r.fate = ImpressionFate::destroyed;
                               r.fateOn = day;
                           }),
        addition<Pull>("pull.start",
                       [](Pull& r, const EdtfDate& day) {
                           r.layer = {"TIDE-layer1"};
                           r.start = day;
                           r.impressions = {{"TIDE-3"}};
                       }),
        change<Pull>("pull.end", "pull1",
                     [](Pull& r, const EdtfDate& day) {
                         r.end = day;
                         r.inkAfter_g = 4;
                     }),
        addition<Attachment>("attachment.takenOn",
                             [](Attachment& r, const EdtfDate& day) {
                                 r.edition = Ref<Edition>{"TIDE"};
                                 r.takenOn = day;
                             }),
        addition<Attachment>("attachment.takenOn",
                             [](Attachment& r, const EdtfDate& day) {
                                 r.impression = Ref<Impression>{"TIDE-2"};
                                 r.takenOn = day;
                             }),
    };
}

std::vector<Event> eventsOfLight() {
    return {
        change<Place>("place.light.from", "line",
                      [](Place& r, const EdtfDate& day) {
                          r.light.emplace_back();
                          r.light.back().from = day;
                      }),
        addition<Move>("move.at",
                       [](Move& r, const EdtfDate& day) {
                           r.to = {"drawer"};
                           r.at = day;
                           r.impressions = {{"TIDE-3"}};
                       }),
        change<Move>("move.until", "move2", [](Move& r, const EdtfDate& day) { r.until = day; }),
        addition<Look>("look.at",
                       [](Look& r, const EdtfDate& day) {
                           r.impressions = {{"TIDE-3"}};
                           r.at = day;
                       }),
        addition<Weather>("weather.on",
                          [](Weather& r, const EdtfDate& day) {
                              r.on = day;
                              r.sky = Sky::sunny;
                          }),
        addition<Metering>("metering.from",
                           [](Metering& r, const EdtfDate& day) {
                               r.place = {"line"};
                               r.from = EdtfDate::ofMinute(day.earliest() + 600);
                               r.to = EdtfDate::ofMinute(day.earliest() + 700);
                               r.exposure_lxh = 900;
                           }),
    };
}

// The gallery sells the sheet that it had on consignment.
Event sale() {
    return {"transfer.agreedOn", [](const RecordSet& records, const std::string& day) {
                RecordSet sold = test::edited(records, [](auto& record) {
                    if constexpr (std::is_same_v<std::decay_t<decltype(record)>, Impression>)
                        if (record.id == "TIDE-1")
                            record.holder = Ref<Party>{"collector"};
                });
                Transfer transfer;
                transfer.id = "new";
                transfer.impressions = {{"TIDE-1"}};
                transfer.giver = {"tides"};
                transfer.receiver = {"collector"};
                transfer.agreedOn = on(day);
                sold.add(transfer);
                return sold;
            }};
}

// A sheet that nobody held goes to the gallery.
Event firstConsignment() {
    return {"transfer.agreedOn", [](const RecordSet& records, const std::string& day) {
                RecordSet gone = test::edited(records, [](auto& record) {
                    if constexpr (std::is_same_v<std::decay_t<decltype(record)>, Impression>)
                        if (record.id == "TIDE-2")
                            record.holder = Ref<Party>{"tides"};
                });
                Transfer transfer;
                transfer.id = "new";
                transfer.impressions = {{"TIDE-2"}};
                transfer.giver = {"maker"};
                transfer.receiver = {"tides"};
                transfer.agreedOn = on(day);
                gone.add(transfer);
                return gone;
            }};
}

std::vector<Event> allEvents() {
    std::vector<Event> events = {sale(), firstConsignment()};
    for (const std::vector<Event>& some : {eventsOfInk(), eventsOfPrinting(), eventsOfLight()})
        events.insert(events.end(), some.begin(), some.end());
    return events;
}

TEST(SheetRecords, ChangeThroughNothingThatHappensLater) {
    const RecordSet before = test::sheetBook().records;
    for (const bool namesHolders : {false, true}) {
        const std::map<std::string, std::string> texts = test::sheetTexts(before, namesHolders);
        for (const Event& event : allEvents()) {
            const RecordSet after = event.happen(before, "2026-03-21");
            for (const auto& [sheet, text] : test::sheetTexts(after, namesHolders))
                EXPECT_EQ(text, texts.at(sheet)) << event.field << ": " << sheet;
        }
    }
}

TEST(SheetRecords, ChangeThroughAllThatHappenedByTheirDay) {
    const RecordSet before = test::sheetBook().records;
    const std::map<std::string, std::string> texts = test::sheetTexts(before, false);
    for (const Event& event : allEvents())
        EXPECT_NE(test::sheetTexts(event.happen(before, "2026-03-18"), false), texts)
            << event.field;
}

void noteDates(const std::vector<test::FieldFacts>& facts, const std::string& prefix,
               std::set<std::string>& dates) {
    for (const test::FieldFacts& field : facts) {
        const std::string path = prefix + "." + field.name;
        if (field.form == test::FieldFacts::Form::date)
            dates.insert(path);
        noteDates(field.parts, path, dates);
    }
}

TEST(SheetRecords, AreHeldAgainstEveryDateThatARecordHas) {
    std::set<std::string> dates;
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        noteDates(test::FieldFactsReader::of<R>(), textOf(R::kind), dates);
    });
    // What is declared or agreed beforehand, the end of a metering, and what stands on no sheet.
    std::set<std::string> tried = {"edition.year", "edition.promisedBy", "transfer.dueOn",
                                   "metering.to",  "issue.issuedOn",     "issue.asOf"};
    for (const Event& event : allEvents())
        tried.insert(event.field);
    EXPECT_EQ(tried, dates);
}

}  // namespace
}  // namespace rackbook
