#include "exchange/WithoutPrivate.h"

#include <gtest/gtest.h>

#include <set>

#include "SheetBook.h"
#include "exchange/RecordCodec.h"
#include "records/FieldTraits.h"

namespace rackbook {
namespace {

// Of each kind, what may leave the studio on no sheet without being asked for.
const std::map<std::string, std::set<std::string>>& secretFields() {
    static const std::map<std::string, std::set<std::string>> fields = {
        {"", {"note"}},
        {"book", {"latitude_deg", "longitude_deg"}},
        {"party", {"contact"}},
        {"place", {"holder"}},
        {"lot", {"price", "supplier", "careNotes"}},
        {"impression", {"holder"}},
        {"transfer", {"price", "currency", "terms"}},
        {"issue", {"recipient"}},
        {"move", {"document"}}};
    return fields;
}

// Writes a secret into each of them, as the record types have them.
class SecretsWriter {
public:
    SecretsWriter(std::string kind, std::vector<std::string>& secrets)
        : m_kind(std::move(kind)), m_secrets(secrets) {}

    template <class T>
    void operator()(const char* name, std::optional<T>& value) {
        if (isSecret(name))
            write(value.emplace());
        else if (value)
            (*this)(name, *value);
    }
    template <class T>
    void operator()(const char* name, std::vector<T>& values) {
        for (auto&& value : values)
            (*this)(name, value);
    }
    template <class T>
    void operator()(const char*, T& value) {
        if constexpr (HasFields<T>::value)
            T::fields(value, *this);
    }

private:
    bool isSecret(const std::string& name) const {
        const auto own = secretFields().find(m_kind);
        return secretFields().at("").count(name) != 0 ||
               (own != secretFields().end() && own->second.count(name) != 0);
    }
    void write(std::string& value) {
        value = "secret-" + std::to_string(m_secrets.size());
        m_secrets.push_back(value + "\"");
    }
    void write(double& value) {
        value = 7000.25 + static_cast<double>(m_secrets.size());
        m_secrets.push_back(":" + std::to_string(7000 + m_secrets.size()) + ".25");
    }
    template <class R>
    void write(Ref<R>& value) {
        write(value.id);
    }
    // No field of another type is private.
    template <class T>
    void write(T&) {
        ADD_FAILURE() << m_kind;
    }

    std::string m_kind;
    std::vector<std::string>& m_secrets;
};

struct SecretBook {
    RecordSet records;
    std::vector<std::string> secrets;
};

// The small studio with a bill, a metering, a photograph and the weather, and a secret in every
// field that may hold one.
SecretBook secretBook() {
    build::Book book = test::sheetBook();
    book.add(Attachment{}, [](Attachment& r) {
        r.id = "picture";
        r.impression = Ref<Impression>{"TIDE-2"};
    });
    book.add(Weather{}, [](Weather& r) {
        r.id = "sun";
        r.on = build::on("2026-03-05");
    });
    book.add(Metering{}, [](Metering& r) {
        r.id = "meter";
        r.place = {"line"};
        r.from = build::on("2026-03-05T09:00");
        r.to = build::on("2026-03-05T12:00");
    });
    book.add(Issue{}, [](Issue& r) {
        r.id = "bill";
        r.issuedOn = build::on("2026-03-10");
    });
    SecretBook made;
    made.records = test::edited(book.records, [&](auto& record) {
        using R = std::decay_t<decltype(record)>;
        SecretsWriter writer(textOf(R::kind), made.secrets);
        R::fields(record, writer);
    });
    return made;
}

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

TEST(WithoutPrivate, LeavesNoPrivateFieldOnAnySheet) {
    const SecretBook book = secretBook();
    EXPECT_GT(book.secrets.size(), 40u);
    for (const auto& [sheet, text] : test::sheetTexts(book.records, false)) {
        // The sheet of a transfer tells its own price and terms.
        if (sheet.rfind("transfer of", 0) == 0)
            continue;
        for (const std::string& secret : book.secrets)
            EXPECT_FALSE(holds(text, secret)) << sheet << ": " << secret;
        for (const char* name : {"tides", "Tides", "collector", "\"giver\":\"maker\""})
            EXPECT_FALSE(holds(text, name)) << sheet << ": " << name;
    }
}

// Else the test above would find nothing anywhere.
TEST(WithoutPrivate, IsAboutFieldsThatWouldBeWritten) {
    const SecretBook book = secretBook();
    std::string text;
    forEachRecordType([&](auto tag) {
        for (const auto& record : book.records.of<typename decltype(tag)::Type>())
            text += encodeRecord(record);
    });
    for (const std::string& secret : book.secrets)
        EXPECT_TRUE(holds(text, secret)) << secret;
}

TEST(WithoutPrivate, KeepsContactsNotesAndCostsBackAlsoWhereHoldersAreNamed) {
    const PrivacyChoice all{true, true};
    EXPECT_FALSE(isPrivate(RecordKind::impression, "holder", all));
    EXPECT_FALSE(isPrivate(RecordKind::transfer, "price", all));
    EXPECT_TRUE(isPrivate(RecordKind::lot, "price", all));
    EXPECT_TRUE(isPrivate(RecordKind::party, "contact", all));
    EXPECT_TRUE(isPrivate(RecordKind::move, "note", all));
    EXPECT_FALSE(isPrivate(RecordKind::book, "currency", {}));
    EXPECT_TRUE(isPrivate(RecordKind::transfer, "currency", {}));
}

TEST(WithoutPrivate, ReachesThePartsOfARecord) {
    Place place;
    place.light.emplace_back();
    place.light.back().note = "opposite the bank";
    Record record = place;
    withoutPrivate(record, {});
    EXPECT_EQ(std::get<Place>(record).light.front().note, std::nullopt);
}

// Two galleries in the book; the sheet that speaks of the second only calls it the first.
TEST(Withheld, IsNumberedByWhatTheSheetSpeaksOf) {
    build::Book book;
    book.place("atelier", PlaceKind::room)
        .place("a", PlaceKind::gallery)
        .place("b", PlaceKind::gallery)
        .place("b-back", PlaceKind::shelf, [](Place& r) { r.within = Ref<Place>{"b"}; });
    const Withheld withheld(book.records, {});
    EXPECT_FALSE(withheld.isPlace("atelier"));
    EXPECT_TRUE(withheld.isPlace("b-back"));
    WithheldNames names;
    Record place = *book.records.find<Place>("b-back");
    EXPECT_TRUE(withheld.rename(place, names));
    EXPECT_EQ(std::get<Place>(place).id, "withheld-1");
    EXPECT_EQ(std::get<Place>(place).name, "withheld-1");
    EXPECT_EQ(std::get<Place>(place).within, std::nullopt);
    Move move;
    move.from = Ref<Place>{"atelier"};
    move.to = {"b"};
    Record record = move;
    EXPECT_TRUE(withheld.rename(record, names));
    EXPECT_EQ(std::get<Move>(record).from->id, "atelier");
    EXPECT_EQ(std::get<Move>(record).to.id, "withheld-2");
    Record atelier = *book.records.find<Place>("atelier");
    EXPECT_FALSE(withheld.rename(atelier, names));
}

TEST(Withheld, IsNothingWhereHoldersAreNamed) {
    build::Book book;
    book.place("a", PlaceKind::gallery);
    const Withheld withheld(book.records, {true, false});
    EXPECT_FALSE(withheld.isPlace("a"));
    EXPECT_FALSE(withheld.areParties());
    EXPECT_TRUE(Withheld(book.records, {}).areParties());
    EXPECT_FALSE(Withheld(book.records, {false, true}).areParties());
}

}  // namespace
}  // namespace rackbook
