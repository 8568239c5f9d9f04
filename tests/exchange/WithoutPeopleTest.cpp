#include "exchange/WithoutPeople.h"

#include <gtest/gtest.h>

#include <set>

#include "SheetBook.h"
#include "exchange/RecordCodec.h"
#include "exchange/RecordFiles.h"
#include "exchange/Selection.h"
#include "records/FieldTraits.h"
#include "records/Personal.h"
#include "support/Paths.h"
#include "support/SampleRecords.h"

namespace rackbook {
namespace {

// Puts a word that no other field has into every text that may name somebody.
class SecretsWriter {
public:
    SecretsWriter(RecordKind kind, std::set<std::string>& secrets, std::string prefix = {})
        : m_kind(kind), m_secrets(secrets), m_prefix(std::move(prefix)) {}

    template <class T>
    void operator()(const char* name, T& value) {
        write(m_prefix + name, value);
    }

private:
    template <class T>
    void write(const std::string& path, std::optional<T>& value) {
        if (value)
            write(path, *value);
    }
    template <class T>
    void write(const std::string& path, std::vector<T>& values) {
        if constexpr (!std::is_arithmetic_v<T>)
            for (T& value : values)
                write(path, value);
    }
    void write(const std::string& path, std::string& value) {
        const bool isForm =
            path == "id" || path == "currency" || path.find("ha256") != std::string::npos;
        if (isForm || personalMark(m_kind, path) == Personal::none)
            return;
        value = "secret-" + std::to_string(m_secrets.size()) + "-" + path;
        m_secrets.insert(value);
    }
    template <class T>
    void write(const std::string& path, T& value) {
        if constexpr (HasFields<T>::value) {
            SecretsWriter parts(m_kind, m_secrets, path + ".");
            T::fields(value, parts);
        }
    }

    RecordKind m_kind;
    std::set<std::string>& m_secrets;
    std::string m_prefix;
};

struct SecretBook {
    RecordSet records;
    std::set<std::string> secrets;
};

// Every field of every kind filled, and a secret in all that may say one. Places are a holder's.
SecretBook secretBook() {
    SecretBook book;
    for (const auto& records : {test::namedRecords(), test::fullRecords()})
        for (Record record : records) {
            if (Place* place = std::get_if<Place>(&record))
                place->holder = Ref<Party>{"party-b"};
            std::visit(
                [&](auto& r) {
                    using R = std::decay_t<decltype(r)>;
                    SecretsWriter writer(R::kind, book.secrets);
                    R::fields(r, writer);
                },
                record);
            book.records.add(record);
        }
    return book;
}

std::string textOfAll(const std::vector<Record>& records) {
    std::string text;
    for (const Record& record : records)
        text += encodeRecord(record) + "\n";
    return text;
}

TEST(WithoutPeople, NoSecretIsLeft) {
    const SecretBook book = secretBook();
    EXPECT_GT(book.secrets.size(), 50u);
    const std::string before = textOfAll(allRecords(book.records));
    WithoutPeople people(book.records);
    const std::string text = textOfAll(people.of(allRecords(book.records)));
    for (const std::string& secret : book.secrets) {
        EXPECT_NE(before.find(secret), std::string::npos) << secret;
        EXPECT_EQ(text.find(secret), std::string::npos) << secret;
    }
    for (const char* id : {"\"party-b\"", "full-party-0", "full-place-0", "full-transfer-0",
                           "full-issue-0", "full-move-0", "full-attachment-0"}) {
        EXPECT_NE(before.find(id), std::string::npos) << id;
        if (std::string(id) != "\"party-b\"") {
            EXPECT_EQ(text.find(id), std::string::npos) << id;
        }
    }
    for (const char* field : {"\"note\"", "\"price\"", "\"currency\":\"DKK\",\"terms\"",
                              "latitude_deg", "longitude_deg", "\"contact\"", "\"caption\"",
                              "fileName", "contentSha256", "fileSha256", "\"statement\""})
        EXPECT_EQ(text.find(field), std::string::npos) << field;
}

TEST(WithoutPeople, WhatIsLeftIsValid) {
    const SecretBook book = secretBook();
    WithoutPeople people(book.records);
    RecordFileReader reader(test::schemaFolder());
    for (const Record& record : people.of(allRecords(book.records)))
        reader.add(record, nameOf(kindOf(record), idOf(record)));
    for (const Finding& finding : reader.findings())
        ADD_FAILURE() << describe(finding);
}

// Refs of a record, by kind and id.
class RefsOf {
public:
    explicit RefsOf(std::vector<std::pair<RecordKind, std::string>>& refs) : m_refs(refs) {}
    template <class T>
    void operator()(const char*, const T& value) {
        look(value);
    }

private:
    template <class R>
    void look(const Ref<R>& ref) {
        m_refs.emplace_back(R::kind, ref.id);
    }
    template <class T>
    void look(const std::optional<T>& value) {
        if (value)
            look(*value);
    }
    template <class T>
    void look(const std::vector<T>& values) {
        if constexpr (!std::is_arithmetic_v<T>)
            for (const T& value : values)
                look(value);
    }
    template <class T>
    void look(const T&) {}

    std::vector<std::pair<RecordKind, std::string>>& m_refs;
};

TEST(WithoutPeople, EveryNameLeadsSomewhere) {
    const SecretBook book = secretBook();
    WithoutPeople people(book.records);
    const std::vector<Record> records = people.of(allRecords(book.records));
    std::set<std::pair<RecordKind, std::string>> known;
    for (const Record& record : records)
        EXPECT_TRUE(known.emplace(kindOf(record), idOf(record)).second) << idOf(record);
    std::size_t count = 0;
    for (const Record& record : records) {
        std::vector<std::pair<RecordKind, std::string>> refs;
        RefsOf reader(refs);
        std::visit([&](const auto& r) { std::decay_t<decltype(r)>::fields(r, reader); }, record);
        for (const auto& ref : refs)
            EXPECT_EQ(known.count(ref), 1u) << ref.second << " in " << encodeRecord(record);
        count += refs.size();
    }
    EXPECT_GT(count, 60u);
}

TEST(WithoutPeople, SaysWhatItLeftOut) {
    const SecretBook book = secretBook();
    WithoutPeople people(book.records);
    people.of(allRecords(book.records));
    EXPECT_EQ(people.leftOut().at("transfer.terms"), 1u);
    EXPECT_EQ(people.leftOut().at("place.light.note"), 2u);
    EXPECT_EQ(people.leftOut().at("edition.inscriptions.text"), 2u);
    EXPECT_EQ(people.leftOut().at("book.latitude_deg"), 1u);
    EXPECT_EQ(people.leftOut().count("transfer.dueOn"), 0u);
    EXPECT_EQ(people.renamed().at(RecordKind::party), book.records.of<Party>().size());
}

// Written kind by kind or edition by edition, a party is called the same.
TEST(WithoutPeople, NamesAreThoseOfTheWholeBook) {
    build::Book book = test::sheetBook();
    WithoutPeople whole(book.records);
    WithoutPeople again(book.records);
    whole.of(allRecords(book.records));
    for (const Party& party : book.records.of<Party>())
        EXPECT_EQ(whole.nameFor(RecordKind::party, party.id), idOf(again.of(Record(party))));
}

TEST(WithoutPeople, PlacesOfTheStudioKeepTheirNames) {
    build::Book book;
    book.place("line", PlaceKind::rack)
        .place("place-3", PlaceKind::drawer)
        .place("anes", PlaceKind::holderAddress)
        .place("anes-hall", PlaceKind::wall, [](Place& r) { r.within = Ref<Place>{"anes"}; });
    WithoutPeople people(book.records);
    EXPECT_EQ(people.nameFor(RecordKind::place, "line"), "line");
    EXPECT_EQ(people.nameFor(RecordKind::place, "place-3"), "place-3");
    // Its number is taken by an id that stays.
    EXPECT_EQ(people.nameFor(RecordKind::place, "anes"), "place-3-x");
    EXPECT_EQ(people.nameFor(RecordKind::place, "anes-hall"), "place-4");
    const Place hall = std::get<Place>(people.of(Record(*book.records.find<Place>("anes-hall"))));
    EXPECT_EQ(hall.name, "place-4");
    EXPECT_EQ(hall.within->id, "place-3-x");
}

TEST(WithoutPeople, AContactThatWasLeftOutIsSaidToBe) {
    build::Book book;
    book.party("ane", [](Party& r) { r.contact = "12 Quay Street"; }).party("ole");
    WithoutPeople people(book.records);
    EXPECT_TRUE(
        std::get<Party>(people.of(Record(*book.records.find<Party>("ane")))).contactWithheld);
    EXPECT_FALSE(
        std::get<Party>(people.of(Record(*book.records.find<Party>("ole")))).contactWithheld);
}

}  // namespace
}  // namespace rackbook
