// The public JSON parsing test suite (JsonSuiteCases.h) through the reader of record files.
#include <gtest/gtest.h>

#include <set>

#include "JsonSuiteCases.h"
#include "base/Text.h"
#include "exchange/RecordCodec.h"
#include "exchange/RecordFiles.h"
#include "support/Paths.h"
#include "support/SampleRecords.h"

namespace rackbook {
namespace {

// Names that stand twice in one object: the suite has them accepted, and RFC 8259 (section 4) only
// says that names should be unique. A record that says two things is not one record: refused.
const std::set<std::string> saidTwice = {"y_object_duplicated_key",
                                         "y_object_duplicated_key_and_value"};

std::string manyTimes(const std::string& piece, int times) {
    std::string text;
    for (int i = 0; i < times; ++i)
        text += piece;
    return text;
}

class JsonSuite : public ::testing::Test {
protected:
    // What is said of a text, in lines.
    std::string saidOf(const std::string& text) {
        const std::size_t before = m_reader.findings().size();
        m_before = m_reader.records().size();
        m_reader.read("f.json", text);
        std::string said;
        for (std::size_t i = before; i < m_reader.findings().size(); ++i)
            said += describe(m_reader.findings()[i]) + "\n";
        return said;
    }
    std::size_t recordsOfLast() { return m_reader.records().size() - m_before; }

    static bool isAboutJson(const std::string& said) {
        for (const char* words :
             {"is not JSON", "is not UTF-8", "zero byte", "too large to be held", "nested deeper"})
            if (said.find(words) != std::string::npos)
                return true;
        return false;
    }

    // File, line, what, what to do.
    static void expectRefusal(const std::string& said, const std::string& name) {
        EXPECT_EQ(said.substr(0, 7), "f.json:") << name << ": " << said;
        EXPECT_NE(said.find_first_of("123456789"), std::string::npos) << name << ": " << said;
        EXPECT_TRUE(isAboutJson(said)) << name << ": " << said;
        EXPECT_GE(std::count(said.begin(), said.end(), '.'), 3) << name << ": " << said;
        EXPECT_FALSE(invalidUtf8At(said)) << name;
        EXPECT_FALSE(controlCharacterIn(said)) << name << ": " << said;
    }

    RecordFileReader m_reader{test::schemaFolder()};

private:
    std::size_t m_before = 0;
};

TEST_F(JsonSuite, IsThereAsAWhole) {
    std::map<char, int> counted;
    std::set<std::string> names;
    for (const test::JsonCase& one : test::jsonCases) {
        ++counted[one.name[0]];
        EXPECT_TRUE(names.insert(one.name).second) << one.name;
        EXPECT_EQ(one.isFromName, invalidUtf8At(one.text).has_value() ||
                                      std::string(one.name).find("utf16") != std::string::npos)
            << one.name;
    }
    EXPECT_EQ(counted, (std::map<char, int>{{'y', 95}, {'n', 186}, {'i', 34}}));
}

TEST_F(JsonSuite, AcceptsWhatEveryReaderMust) {
    for (const test::JsonCase& one : test::jsonCases) {
        if (one.name[0] != 'y')
            continue;
        const std::string said = saidOf(std::string(one.text));
        EXPECT_EQ(recordsOfLast(), 0u) << one.name;
        if (saidTwice.count(one.name) != 0) {
            EXPECT_NE(said.find("stands twice in one object"), std::string::npos) << said;
            continue;
        }
        EXPECT_FALSE(isAboutJson(said)) << one.name << ": " << said;
        // None of them is a record, and all but the empty list are told so.
        const bool isEmptyList = one.text.find_first_not_of("[] \n") == std::string_view::npos;
        EXPECT_EQ(said.empty(), isEmptyList && one.text.find("[[") == std::string_view::npos)
            << one.name << ": " << said;
    }
}

TEST_F(JsonSuite, RefusesWhatEveryReaderMust) {
    for (const test::JsonCase& one : test::jsonCases) {
        if (one.name[0] != 'n')
            continue;
        expectRefusal(saidOf(std::string(one.text)), one.name);
        EXPECT_EQ(recordsOfLast(), 0u) << one.name;
    }
}

// What came whole before the fault does not come in either: the findings stand for the file.
TEST_F(JsonSuite, RefusesThemBehindASoundRecordToo) {
    const std::string sound = encodeRecord(test::namedRecords().front());
    ASSERT_EQ(saidOf("[" + sound + "]"), "");
    ASSERT_EQ(recordsOfLast(), 1u);
    for (const test::JsonCase& one : test::jsonCases)
        if (one.name[0] == 'n') {
            const std::string text = "[\n" + sound + ",\n" + std::string(one.text) + "\n]";
            expectRefusal(saidOf(text), one.name);
        }
}

// Each either way, but told: the same for all of one sort.
TEST_F(JsonSuite, DecidesWhatReadersMayDecide) {
    const std::set<std::string> accepted = {
        "i_number_double_huge_neg_exp",   "i_number_real_underflow",
        "i_number_too_big_neg_int",       "i_number_too_big_pos_int",
        "i_number_very_big_negative_int", "i_structure_UTF-8_BOM_empty_object",
    };
    for (const test::JsonCase& one : test::jsonCases) {
        if (one.name[0] != 'i')
            continue;
        const std::string said = saidOf(std::string(one.text));
        EXPECT_EQ(recordsOfLast(), 0u) << one.name;
        EXPECT_NE(said, "") << one.name;
        if (accepted.count(one.name) != 0)
            EXPECT_FALSE(isAboutJson(said)) << one.name << ": " << said;
        else
            expectRefusal(said, one.name);
    }
}

// n_structure_100000_opening_arrays, n_structure_open_array_object, i_structure_500_nested_arrays.
TEST_F(JsonSuite, IsNotExhaustedByNesting) {
    for (const std::string& text :
         {manyTimes("[", 100'000), manyTimes("[{\"\":", 50'000) + "\n",
          manyTimes("[", 500) + manyTimes("]", 500), manyTimes("{\"records\":[", 50'000),
          "{\"record\":\"lot\",\"note\":" + manyTimes("[", 1'000'000)})
        expectRefusal(saidOf(text), text.substr(0, 20));
}

// A name that stands twice is refused with its line wherever it stands in a record.
TEST_F(JsonSuite, RefusesARecordThatSaysTwoThings) {
    for (const char* text : {"{\"record\":\"lot\",\n\"id\":\"a\",\n\"id\":\"b\"}",
                             "[{\"record\":\"lot\",\n\n\"id\":\"a\", \"id\":\"a\"}]",
                             "{\"rackbookRecords\":1,\n\"records\":[],\n\"records\":[]}"})
        EXPECT_EQ(saidOf(text).substr(0, 20), "f.json:3: the name \"") << saidOf(text);
    EXPECT_EQ(recordsOfLast(), 0u);
}

}  // namespace
}  // namespace rackbook
