#include "records/Record.h"

#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "records/RecordSet.h"
#include "support/FieldFacts.h"
#include "support/SampleRecords.h"

namespace rackbook {
namespace {

// Enumerators in their order, so that the words can be counted against them.
template <class E>
void expectWords(E last) {
    const std::vector<std::string> words = enumNames<E>();
    EXPECT_EQ(words.size(), static_cast<std::size_t>(last) + 1);
    EXPECT_EQ(std::set<std::string>(words.begin(), words.end()).size(), words.size());
    for (std::size_t i = 0; i < words.size(); ++i) {
        EXPECT_EQ(enumFrom<E>(words[i]), static_cast<E>(i));
        EXPECT_EQ(textOf(static_cast<E>(i)), words[i]);
    }
    EXPECT_EQ(enumFrom<E>(""), std::nullopt);
    EXPECT_EQ(enumFrom<E>("no such word"), std::nullopt);
}

TEST(EnumText, HasOneWordForEachEnumerator) {
    expectWords(RecordKind::metering);
    expectWords(LengthUnit::in);
    expectWords(Origin::publishedSource);
    expectWords(EditionStatus::closed);
    expectWords(DesignationKind::archive);
    expectWords(MatrixFate::destroyed);
    expectWords(DisclosureAnswer::notKnown);
    expectWords(ImpressionFate::destroyed);
    expectWords(Touch::dry);
    expectWords(LookColour::trueColour);
    expectWords(LotKind::modifier);
    expectWords(Container::other);
    expectWords(MixPurpose::portion);
    expectWords(MoveWhy::other);
    expectWords(PartyRole::supplier);
    expectWords(PlaceKind::other);
    expectWords(LightKind::metered);
    expectWords(Glass::filtering);
    expectWords(Sky::overcast);
    expectWords(Illuminant::A);
    expectWords(Observer::deg10);
    expectWords(MeasurementCondition::M3);
    expectWords(Backing::self);
    expectWords(TransferKind::giveBack);
    expectWords(WeighingAct::discard);
}

TEST(EnumText, NamesTheEnumeratorsThatReadDifferentlyInCode) {
    EXPECT_STREQ(textOf(LookColour::trueColour), "true");
    EXPECT_STREQ(textOf(MoveWhy::giveBack), "return");
    EXPECT_STREQ(textOf(TransferKind::giveBack), "return");
    EXPECT_STREQ(textOf(Observer::deg10), "10deg");
    EXPECT_STREQ(textOf(MixPurpose::letDown), "letDown");
}

TEST(Record, StandsInTheOrderOfItsKinds) {
    std::size_t next = 0;
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        EXPECT_EQ(static_cast<std::size_t>(R::kind), next);
        EXPECT_EQ(Record(R{}).index(), next);
        EXPECT_EQ(kindOf(Record(R{})), R::kind);
        ++next;
    });
    EXPECT_EQ(next, enumNames<RecordKind>().size());
    int calls = 0;
    withRecordType(RecordKind::mix, [&](auto tag) {
        ++calls;
        EXPECT_TRUE((std::is_same_v<typename decltype(tag)::Type, Mix>));
    });
    EXPECT_EQ(calls, 1);
}

TEST(Record, IsNamedByKindAndId) {
    EXPECT_EQ(nameOf(RecordKind::mix, "grey"), "mix grey");
    Mix mix;
    mix.id = "grey";
    EXPECT_EQ(idOf(Record(mix)), "grey");
}

TEST(Record, NamesNoFieldTwice) {
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        std::set<std::string> names;
        for (const test::FieldFacts& field : test::FieldFactsReader::of<R>())
            EXPECT_TRUE(names.insert(field.name).second) << textOf(R::kind) << " " << field.name;
        EXPECT_EQ(test::FieldFactsReader::of<R>().front().name, "id");
        EXPECT_EQ(test::FieldFactsReader::of<R>().back().name, "note");
    });
}

TEST(Record, TellsWhenItHappened) {
    const auto when = [](const Record& record) {
        const std::optional<EdtfDate> date = happenedAt(record);
        return date ? date->text() : std::string("none");
    };
    const EdtfDate day = EdtfDate::parse("2026-03-04");
    Weighing weighing;
    weighing.at = day;
    Pull pull;
    pull.start = day;
    pull.end = EdtfDate::parse("2026-03-05");
    Move move;
    move.at = day;
    Look look;
    look.at = day;
    Transfer transfer;
    transfer.agreedOn = day;
    Issue issue;
    issue.issuedOn = day;
    Reading reading;
    reading.takenOn = day;
    Drawdown drawdown;
    drawdown.madeOn = day;
    StockTake stockTake;
    stockTake.at = day;
    Weather weather;
    weather.on = day;
    Metering metering;
    metering.from = day;
    metering.to = EdtfDate::parse("2026-03-05");
    for (const Record& record : {Record(weighing), Record(pull), Record(move), Record(look),
                                 Record(transfer), Record(issue), Record(reading), Record(drawdown),
                                 Record(stockTake), Record(weather), Record(metering)})
        EXPECT_EQ(when(record), "2026-03-04") << textOf(kindOf(record));
    EXPECT_EQ(when(Reading{}), "none");
    Edition edition;
    edition.year = day;
    EXPECT_EQ(when(edition), "none");
}

// Changes one field: the one at a position.
class FieldChanger {
public:
    explicit FieldChanger(std::size_t wanted) : m_wanted(wanted) {}

    template <class T>
    void operator()(const char* name, T& value) {
        if (m_next++ != m_wanted)
            return;
        m_name = name;
        change(value);
    }
    const std::string& name() const { return m_name; }

private:
    static void change(std::string& value) { value += "x"; }
    static void change(int& value) { ++value; }
    static void change(double& value) { value = std::nextafter(value, 1e9); }
    static void change(bool& value) { value = !value; }
    static void change(EdtfDate& value) { value = EdtfDate::parse("1931"); }
    template <class R>
    static void change(Ref<R>& value) {
        value.id += "x";
    }
    template <class T>
    static void change(std::optional<T>& value) {
        value.reset();
    }
    template <class T>
    static void change(std::vector<T>& value) {
        if constexpr (HasFields<T>::value) {
            FieldChanger inner(0);
            T::fields(value.back(), inner);
        } else {
            std::swap(value.front(), value.back());
        }
    }
    template <class E, std::enable_if_t<std::is_enum_v<E>, int> = 0>
    static void change(E& value) {
        value = static_cast<E>(value == E{} ? 1 : 0);
    }

    std::size_t m_wanted;
    std::size_t m_next = 0;
    std::string m_name;
};

TEST(Record, SaysTheSameOnlyWhereEveryFieldIsEqual) {
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        const R full = test::filled<R>(false);
        EXPECT_TRUE(sameFacts(full, R(full)));
        EXPECT_TRUE(sameFacts(R{}, R{}));
        const std::size_t fields = test::FieldFactsReader::of<R>().size();
        for (std::size_t i = 0; i < fields; ++i) {
            R other = full;
            FieldChanger changer(i);
            R::fields(other, changer);
            EXPECT_FALSE(sameFacts(full, other)) << textOf(R::kind) << " " << changer.name();
            EXPECT_FALSE(sameFacts(other, full)) << textOf(R::kind) << " " << changer.name();
        }
    });
}

TEST(Record, TellsListsOfOtherLengthsApart) {
    Pull pull;
    pull.impressions = {{"i1"}, {"i2"}};
    Pull shorter = pull;
    shorter.impressions.pop_back();
    EXPECT_FALSE(sameFacts(pull, shorter));
    EXPECT_FALSE(sameFacts(shorter, pull));
}

TEST(Record, TellsKindsApart) {
    EXPECT_FALSE(sameFacts(Mix{}, Lot{}));
}

TEST(SampleRecords, FillEveryFieldThereIs) {
    std::set<std::string> wanted;
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        test::notePaths(test::FieldFactsReader::of<R>(), textOf(R::kind), wanted);
    });
    std::set<std::string> found;
    for (const Record& record : test::fullRecords())
        test::noteFilled(record, found);
    EXPECT_EQ(found, wanted);
}

TEST(RecordSet, FindsRecordsByKindAndId) {
    RecordSet records;
    for (const Record& record : test::namedRecords())
        records.add(record);
    EXPECT_EQ(records.size(), test::namedRecords().size());
    ASSERT_EQ(records.of<Mix>().size(), 2u);
    EXPECT_EQ(records.of<Mix>()[1].id, "mix-b");
    EXPECT_TRUE(records.of<Book>().empty());
    EXPECT_EQ(records.find<Mix>("mix-b")->id, "mix-b");
    EXPECT_EQ(records.find<Lot>("mix-b"), nullptr);
    EXPECT_EQ(records.find(Ref<Lot>{"lot-a"})->id, "lot-a");
    EXPECT_EQ(records.find(std::optional<Ref<Lot>>{}), nullptr);
    EXPECT_EQ(records.find(std::optional(Ref<Lot>{"lot-b"}))->id, "lot-b");
    EXPECT_EQ(records.indexOf<Mix>("mix-b"), 1);
    EXPECT_EQ(records.indexOf<Mix>("mix-c"), -1);
}

}  // namespace
}  // namespace rackbook
