// Texts that are trouble, in every place of every kind of record where a text stands.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <set>

#include "base/Text.h"
#include "exchange/RecordCodec.h"
#include "exchange/RecordFiles.h"
#include "support/NaughtyTexts.h"
#include "support/Paths.h"
#include "support/SampleRecords.h"

namespace rackbook {
namespace {

using Json = nlohmann::json;
using Pointer = Json::json_pointer;

// Pointers of all texts in a record: words, dates, ids and free text alike.
void noteTexts(const Json& value, const Pointer& here, std::vector<Pointer>& found) {
    if (value.is_string())
        found.push_back(here);
    else if (value.is_array() && !value.empty())
        noteTexts(value.front(), here / 0, found);
    else if (value.is_object())
        for (const auto& [name, inner] : value.items())
            if (name != "record")
                noteTexts(inner, here / name, found);
}

struct TextPlace {
    Json record;
    Pointer at;
    std::string name;  // "lot /note"
};

// Each once, in a record that is sound.
std::vector<TextPlace> textPlaces() {
    std::vector<TextPlace> places;
    std::set<std::string> seen;
    for (const Record& record : test::fullRecords()) {
        const Json json = Json::parse(encodeRecord(record));
        std::vector<Pointer> found;
        noteTexts(json, Pointer(), found);
        for (const Pointer& at : found) {
            const std::string name = textOf(kindOf(record)) + std::string(" ") + at.to_string();
            if (seen.insert(name).second)
                places.push_back({json, at, name});
        }
    }
    return places;
}

// The texts in one place, each in a record of its own, as a list; which came in, by number.
struct Taken {
    std::map<std::size_t, Json> records;
    std::map<std::size_t, std::string> complaints;
};

Taken takenWith(const TextPlace& place) {
    Json list = Json::array();
    for (const test::NaughtyText& one : test::naughtyTexts) {
        list.push_back(place.record);
        list.back()[place.at] = one.text;
    }
    RecordFileReader reader(test::schemaFolder());
    reader.read("f.json", list.dump());
    Taken taken;
    for (const IncomingRecord& incoming : reader.records())
        taken.records[incoming.position] = Json::parse(incoming.payload);
    for (const Finding& finding : reader.findings()) {
        const std::string said = describe(finding);
        EXPECT_FALSE(controlCharacterIn(said)) << place.name << ": " << said;
        EXPECT_EQ(said.find('\n'), std::string::npos) << place.name << ": " << said;
        EXPECT_GT(finding.where.line, 0) << said;
        const Pointer pointer(finding.where.pointer);
        taken.complaints[std::stoul(pointer.to_string().substr(1))] += finding.where.pointer + "\n";
    }
    return taken;
}

TEST(NaughtyTexts, AreKeptOrRefusedByTheNameOfTheirField) {
    const std::vector<TextPlace> places = textPlaces();
    ASSERT_GT(places.size(), 150u);
    std::size_t kept = 0;
    for (const TextPlace& place : places) {
        const Taken taken = takenWith(place);
        for (std::size_t i = 0; i < std::size(test::naughtyTexts); ++i) {
            const test::NaughtyText& one = test::naughtyTexts[i];
            const auto record = taken.records.find(i);
            const auto complaint = taken.complaints.find(i);
            ASSERT_NE(record == taken.records.end(), complaint == taken.complaints.end())
                << place.name << ", " << one.name;
            if (record == taken.records.end()) {
                const std::string field = "/" + std::to_string(i) + place.at.to_string();
                const std::string around = field.substr(0, field.rfind('/'));
                // A sheet that was spoiled must be among the sheets of its pull.
                const bool isSheet = place.name == "pull /impressions/0";
                EXPECT_TRUE(isSheet || complaint->second.find(field + "\n") != std::string::npos ||
                            complaint->second.find(around + "\n") != std::string::npos)
                    << place.name << ", " << one.name << ": " << complaint->second;
                continue;
            }
            ++kept;
            EXPECT_TRUE(one.isKept) << place.name << ", " << one.name;
            Json wanted = place.record;
            // Free text is kept in Unicode's composed form, and nothing else is done to it.
            wanted[place.at] = normalised(one.text);
            EXPECT_EQ(record->second, wanted) << place.name << ", " << one.name;
        }
    }
    EXPECT_GT(kept, 5000u);
}

// Where anything may be written, all is kept but what no text should hold.
TEST(NaughtyTexts, AreKeptInNotes) {
    for (const TextPlace& place : textPlaces()) {
        if (place.at.back() != "note")
            continue;
        const Taken taken = takenWith(place);
        for (std::size_t i = 0; i < std::size(test::naughtyTexts); ++i)
            EXPECT_EQ(taken.records.count(i) == 1, test::naughtyTexts[i].isKept)
                << place.name << ", " << test::naughtyTexts[i].name;
    }
}

// Half of a pair of surrogates, in the escapes of JSON: no character, so no record.
TEST(NaughtyTexts, AreNoHalvesOfCharacters) {
    for (const char* escape :
         {"\\ud800", "\\udfff", "\\ud83c\\ud83c", "\\udfa8\\ud83c", "\\ud83cx"}) {
        RecordFileReader reader(test::schemaFolder());
        reader.read("f.json", "{\"record\":\"lot\",\"note\":\"a" + std::string(escape) + "b\"}");
        ASSERT_EQ(reader.findings().size(), 1u) << escape;
        EXPECT_NE(describe(reader.findings()[0]).find("f.json:1: it is not JSON"),
                  std::string::npos)
            << escape;
        EXPECT_TRUE(reader.records().empty());
    }
}

}  // namespace
}  // namespace rackbook
