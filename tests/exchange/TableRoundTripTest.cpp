// Records written as a table, and taken again with the mapping that is proposed for it.
#include <gtest/gtest.h>

#include <map>
#include <random>

#include "base/Text.h"
#include "exchange/CsvWriter.h"
#include "exchange/RecordCells.h"
#include "exchange/RecordCodec.h"
#include "exchange/RecordFiles.h"
#include "exchange/TableFindings.h"
#include "exchange/TableProposal.h"
#include "exchange/TreeJson.h"
#include "support/NaughtyTexts.h"
#include "support/Paths.h"
#include "support/SampleRecords.h"

namespace rackbook {
namespace {

StandingRecords nothingStands() {
    return {[](RecordKind, const std::string&) { return false; },
            [](RecordKind, const std::string&) { return std::string(); },
            [](RecordKind, const std::string&) {
                return std::vector<std::pair<std::string, std::string>>{};
            }};
}

struct Writing {
    CsvWriting csv;
    char decimal = '.';
};

const Writing writings[] = {{{',', false}, '.'}, {{';', true}, ','}, {{'\t', false}, ','}};

std::vector<std::string> payloadsOf(const std::vector<Record>& records) {
    std::vector<std::string> payloads;
    for (const Record& record : records)
        payloads.push_back(encodeRecord(record));
    return payloads;
}

std::vector<std::string> takenAgain(RecordKind kind, const std::vector<Record>& records,
                                    const Writing& writing) {
    const std::string text = csvText(cellsOf(kind, records, writing.decimal), writing.csv);
    const TableFile seen =
        tableFileFrom(text, {std::nullopt, std::nullopt, EncodingGuess::windows1252}, "t.csv");
    const TableProposal proposal = proposedMapping(seen, kind, {});
    EXPECT_TRUE(proposal.passedOver.empty());
    const TableMapping mapping =
        mappingFrom(jsonText(proposal.mapping), "m.json", test::schemaFolder());
    const TableFile table = tableFileFrom(text, mapping.form, "t.csv");
    const MadeFromTable made = recordsFrom(table, mapping, nothingStands(), {});
    RecordFileReader reader(test::schemaFolder());
    reader.read("t.csv", recordsText(made));
    for (const Finding& finding : tableFindings(table, mapping, made, reader.findings()))
        ADD_FAILURE() << describe(finding);
    std::vector<std::string> payloads;
    for (const IncomingRecord& incoming : reader.records())
        payloads.push_back(incoming.payload);
    return payloads;
}

TEST(TableRoundTrip, KeepsEveryFieldOfEveryKind) {
    std::map<RecordKind, std::vector<Record>> byKind;
    for (const Record& record : test::fullRecords())
        byKind[kindOf(record)].push_back(record);
    EXPECT_EQ(byKind.size(), std::variant_size_v<Record>);
    for (const auto& [kind, records] : byKind)
        for (const Writing& writing : writings)
            EXPECT_EQ(takenAgain(kind, records, writing), payloadsOf(records)) << textOf(kind);
}

// Every text that a record keeps comes back, wherever in the row it stands.
TEST(TableRoundTrip, KeepsNaughtyTexts) {
    std::vector<Record> records;
    for (const test::NaughtyText& one : test::keptNaughtyTexts()) {
        Lot lot;
        lot.id = "lot-" + std::to_string(records.size());
        lot.colourWords = normalised(one.text);
        lot.note = lot.colourWords;
        lot.careNotes = lot.colourWords;
        lot.lotKind = LotKind::drier;
        if (lot.colourWords.size() <= 80)
            lot.drierMetals = {{lot.colourWords, 0.5}};
        records.emplace_back(lot);
    }
    for (const Writing& writing : writings)
        EXPECT_EQ(takenAgain(RecordKind::lot, records, writing), payloadsOf(records));
}

std::string randomText(std::mt19937& random) {
    static const std::vector<std::string> pieces = {
        "a", "B", "7",  " ", "  ", ",", ";", "\t", "\n", "\"",  "'",  "=",   "+",      "-",
        "@", "ü", "版", "{", "}",  "#", "?", "/",  "|",  "1,5", "-3", "yes", "\u00A0", "x"};
    std::string text;
    for (std::size_t i = 0, most = random() % 8; i < most; ++i)
        text += pieces[random() % pieces.size()];
    return text + "x";  // seen, whatever stands before
}

double randomNumber(std::mt19937& random) {
    const double whole = static_cast<double>(random() % 100'000);
    return whole / (random() % 2 == 0 ? 1 : 7) + 0.001;
}

TEST(TableRoundTrip, KeepsAnyTextAndNumber) {
    std::mt19937 random(20261126);
    for (int round = 0; round < 60; ++round) {
        std::vector<Record> records;
        for (int i = 0; i < 12; ++i) {
            Lot lot;
            lot.id = "lot-" + std::to_string(i);
            lot.colourWords = randomText(random);
            if (random() % 3 != 0)
                lot.note = randomText(random);
            if (random() % 3 != 0)
                lot.netMass_g = randomNumber(random);
            if (random() % 3 != 0)
                lot.boughtOn = EdtfDate::parse(random() % 2 == 0 ? "-0044" : "2004-06-23");
            records.emplace_back(lot);
        }
        for (const Writing& writing : writings)
            EXPECT_EQ(takenAgain(RecordKind::lot, records, writing), payloadsOf(records)) << round;
    }
}

}  // namespace
}  // namespace rackbook
