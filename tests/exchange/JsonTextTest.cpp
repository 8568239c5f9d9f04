#include "exchange/JsonText.h"

#include <gtest/gtest.h>

#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::messageOf;

std::string refusal(std::string_view text) {
    return messageOf<InputError>([&] { parseJson(text, "f.json"); });
}

// Texts of our own after the grammar of RFC 8259; the remark says the rule.
TEST(JsonText, AcceptsWhatTheGrammarAllows) {
    const std::string_view texts[] = {
        "null",                            // section 3: any value may stand alone
        " \t\r\n [ ] ",                    // section 2: white space around tokens
        "{\"\":0}",                        // section 4: an empty name
        "[0,-0,10,1.5,1e3,1E+2,-2.5e-3]",  // section 6
        "1e-999",                          // too small to tell from nothing
        "123456789012345678901234567890",
        "\"\\\"\\\\\\/\\b\\f\\n\\r\\t\\u00e9\"",  // section 7: all escapes
        "\"\\ud83c\\udfa8\"",                     // section 7: a pair of surrogates
        "\"\\u0000\"",                            // an escaped zero is a character like any other
        "\"\x7F\"",                               // DEL is no control character here
        "\"\xF0\x9F\x8E\xA8\"",                   // UTF-8 as it is
        "\xEF\xBB\xBF{}",  // section 8.1: a mark at the beginning may be ignored
        "[true,false,null]",
    };
    for (const std::string_view text : texts)
        EXPECT_EQ(refusal(text), "(nothing was thrown)") << text;
}

TEST(JsonText, ReadsValuesAsTheyAre) {
    const Json json = parseJson(R"({"b":[1,2.5,"\u00e9",true,null],"a":{}})", "f.json");
    EXPECT_EQ(json["b"][0], 1);
    EXPECT_EQ(json["b"][1], 2.5);
    EXPECT_EQ(json["b"][2], "é");
    EXPECT_EQ(json["b"][3], true);
    EXPECT_TRUE(json["b"][4].is_null());
    EXPECT_TRUE(json["a"].is_object());
}

// The words after the dash are those of the JSON library (nlohmann 3.11).
TEST(JsonText, RefusesWhatTheGrammarForbids) {
    struct Case {
        std::string_view text;
        const char* why;
    };
    const Case cases[] = {
        {"", "while parsing value - unexpected end of input; expected '[', '{', or a literal"},
        {"[1", "while parsing array - unexpected end of input; expected ']'"},
        {"{\"a\"", "while parsing object separator - unexpected end of input; expected ':'"},
        {"\"abc", "while parsing value - invalid string: missing closing quote"},
        {"NaN", "while parsing value - invalid literal"},
        {"-Infinity", "while parsing value - invalid number; expected digit after '-'"},
        {"01", "while parsing value - unexpected number literal; expected end of input"},
        {"1.", "while parsing value - invalid number; expected digit after '.'"},
        {"+1", "while parsing value - invalid literal"},
        {"[1,]", "while parsing value - unexpected ']'; expected '[', '{', or a literal"},
        {"{\"a\":1,}", "while parsing object key - unexpected '}'; expected string literal"},
        {"{a:1}", "while parsing object key - invalid literal"},
        {"'a'", "while parsing value - invalid literal"},
        {"// c\n1", "while parsing value - invalid literal"},
        {"\"\\x\"", "while parsing value - invalid string: forbidden character after backslash"},
        {"\"\t\"",
         "while parsing value - invalid string: control character U+0009 (HT) must be escaped to "
         "\\u0009 or \\t"},
        {"\"\\ud800\"",
         "while parsing value - invalid string: surrogate U+D800..U+DBFF must be followed by "
         "U+DC00..U+DFFF"},
        {"1 2", "while parsing value - unexpected number literal; expected end of input"},
        {"[1]x", "while parsing value - invalid literal"},
        {"True", "while parsing value - invalid literal"},
    };
    for (const Case& one : cases)
        EXPECT_EQ(refusal(one.text), "f.json:1: it is not JSON: syntax error " +
                                         std::string(one.why) + ". Mend the file at that line.")
            << one.text;
}

TEST(JsonText, NamesTheLineOfAFault) {
    EXPECT_EQ(refusal("[\n1,\n2\n,x]").substr(0, 9), "f.json:4:");
    EXPECT_EQ(refusal("{\n\"a\": 1\n").substr(0, 9), "f.json:3:");
    EXPECT_EQ(refusal("[\r\n1,\r\nx]").substr(0, 9), "f.json:3:");
}

TEST(JsonText, RefusesWhatIsNotUtf8) {
    EXPECT_EQ(refusal("{\"a\":\n\"\xC3(\"}"),
              "f.json:2: byte 8 is not UTF-8. Save the file as UTF-8.");
    EXPECT_EQ(refusal("\xFE\xFF"), "f.json:1: byte 1 is not UTF-8. Save the file as UTF-8.");
}

TEST(JsonText, RefusesZeroBytesWhereverTheyStand) {
    const std::string end =
        " is a zero byte, which no JSON holds. Save the file as UTF-8, not "
        "UTF-16, and without padding.";
    EXPECT_EQ(refusal(std::string_view("1\0", 2)), "f.json:1: byte 2" + end);
    EXPECT_EQ(refusal(std::string_view("[]\n\0[1]", 7)), "f.json:2: byte 4" + end);
    EXPECT_EQ(refusal(std::string_view("\"a\0\"", 4)), "f.json:1: byte 3" + end);
    EXPECT_EQ(refusal(std::string_view("[\0]\0", 4)), "f.json:1: byte 2" + end);
}

TEST(JsonText, RefusesNumbersBeyondRange) {
    EXPECT_EQ(refusal("[\n1e999]"),
              "f.json:2: a number is too large to be held. Correct the number.");
    EXPECT_EQ(refusal("-1e999"), "f.json:1: a number is too large to be held. Correct the number.");
}

TEST(JsonText, RefusesTheSameNameTwice) {
    EXPECT_EQ(refusal("{\"a\":\n1,\n\"b\":{\"c\":1,\n\"c\":2}}"),
              "f.json:4: the name \"c\" stands twice in one object. Keep one of the two.");
    EXPECT_EQ(refusal("{\"ab\":1,\"a\\u0062\":1}"),
              "f.json:1: the name \"ab\" stands twice in one object. Keep one of the two.");
    EXPECT_EQ(refusal("[{\"a\":1},{\"a\":1}]"), "(nothing was thrown)");
}

TEST(JsonText, RefusesNestingThatIsTooDeep) {
    const std::string wanted =
        "f.json:1: it is nested deeper than 64 levels. No record is; check the file.";
    const std::string deepest = std::string(64, '[') + std::string(64, ']');
    EXPECT_EQ(refusal(deepest), "(nothing was thrown)");
    EXPECT_EQ(refusal("[" + deepest + "]"), wanted);
    EXPECT_EQ(refusal(std::string(100000, '[')), wanted);
    std::string objects;
    for (int i = 0; i < 100000; ++i)
        objects += "{\"a\":";
    EXPECT_EQ(refusal(objects), wanted);
}

TEST(JsonText, HoldsLongStrings) {
    const std::string text(10 << 20, 'x');
    EXPECT_EQ(parseJson("\"" + text + "\"", "f.json").get_ref<const std::string&>(), text);
}

TEST(JsonText, RefusesATextCutShortAnywhere) {
    const std::string whole = R"({"record":"mix","id":"grey","a":[1.5,true,{"b":"é"}]})";
    ASSERT_EQ(refusal(whole), "(nothing was thrown)");
    for (std::size_t length = 0; length < whole.size(); ++length)
        EXPECT_NE(refusal(whole.substr(0, length)), "(nothing was thrown)") << length;
}

TEST(JsonText, FindsTheLinesOfValues) {
    const std::string text =
        "{\n"                          // 1
        "  \"rackbookRecords\": 1,\n"  // 2
        "  \"records\": [\n"           // 3
        "    {\"id\": \"a\",\n"        // 4
        "     \"list\": [1,\n"         // 5
        "       2,\n"                  // 6
        "       {\"x\": 3}\n"          // 7
        "     ]\n"                     // 8
        "    },\n"                     // 9
        "    {\"id\": \"b\"},\n"       // 10
        "\n"                           // 11
        "    {\n"                      // 12
        "     \"a/b~c\": 4\n"          // 13
        "    }\n"                      // 14
        "  ]\n"                        // 15
        "}\n";
    const std::vector<std::pair<std::string, int>> wanted = {
        {"", 1},
        {"/records", 3},
        {"/records/0", 4},
        {"/records/0/id", 4},
        {"/records/0/list", 5},
        {"/records/0/list/0", 5},
        {"/records/0/list/1", 6},
        {"/records/0/list/2", 7},
        {"/records/0/list/2/x", 7},
        {"/records/1/id", 10},
        {"/records/2", 12},
        {"/records/2/a~1b~0c", 13},
        {"/records/0/list/9", 5},   // not there: the list around it
        {"/records/1/mass_g", 10},  // not there: the record around it
        {"/records/9/id", 3},
        {"/nothing", 1},
    };
    std::vector<std::string> pointers;
    for (const auto& [pointer, line] : wanted)
        pointers.push_back(pointer);
    const std::vector<int> lines = linesOf(text, pointers);
    ASSERT_EQ(lines.size(), wanted.size());
    for (std::size_t i = 0; i < lines.size(); ++i)
        EXPECT_EQ(lines[i], wanted[i].second) << wanted[i].first;
}

TEST(JsonText, EscapesTheStepsOfPointers) {
    EXPECT_EQ(pointerStep("mass_g"), "mass_g");
    EXPECT_EQ(pointerStep("a/b~c"), "a~1b~0c");
    EXPECT_EQ(pointerStep(""), "");
}

}  // namespace
}  // namespace rackbook
