// The JSON Schemas are written by hand, for people; here they are held against the record types.
#include <gtest/gtest.h>

#include <climits>
#include <nlohmann/json.hpp>

#include "exchange/RecordCodec.h"
#include "support/FieldFacts.h"
#include "support/Paths.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

using nlohmann::json;
using test::FieldFacts;
using test::FieldFactsReader;

const json& resolved(const json& root, const json& node) {
    return node.contains("$ref")
               ? root.at(json::json_pointer(node["$ref"].get<std::string>().substr(1)))
               : node;
}

std::set<std::string> namesIn(const json& object) {
    std::set<std::string> names;
    for (const auto& [name, value] : object.items())
        names.insert(name);
    return names;
}

std::set<std::string> wordsIn(const json& array) {
    return {array.begin(), array.end()};
}

void expectObject(const json& root, const json& node, const std::vector<FieldFacts>& fields,
                  const std::set<std::string>& besides, const json& defaults);

void expectValue(const json& root, const json& node, const FieldFacts& field) {
    using Form = FieldFacts::Form;
    switch (field.form) {
        case Form::text:
        case Form::ref:
        case Form::date:
            EXPECT_EQ(node.at("type"), "string");
            EXPECT_GE(node.at("minLength"), 1);
            EXPECT_LE(node.at("maxLength"), 10000);
            EXPECT_FALSE(node.contains("enum"));
            if (field.form == Form::ref) {
                EXPECT_EQ(node.at("maxLength"), 80);
            }
            if (field.form == Form::date) {
                EXPECT_EQ(node.at("maxLength"), 60);
            }
            break;
        case Form::word:
            EXPECT_EQ(node.at("type"), "string");
            EXPECT_EQ(node.at("enum").get<std::vector<std::string>>(), field.words);
            break;
        case Form::whole:
            EXPECT_EQ(node.at("type"), "integer");
            EXPECT_GE(node.at("minimum"), INT_MIN);
            EXPECT_LE(node.at("maximum"), INT_MAX);
            break;
        case Form::real:
            EXPECT_EQ(node.at("type"), "number");
            EXPECT_TRUE(node.contains("minimum") || node.contains("exclusiveMinimum"));
            EXPECT_TRUE(node.contains("maximum") || node.contains("exclusiveMaximum"));
            break;
        case Form::flag:
            EXPECT_EQ(node.at("type"), "boolean");
            break;
        case Form::parts:
            expectObject(root, node, field.parts, {}, json::object());
            break;
    }
}

// A field is needed unless it is optional, a list that may be empty, or has a default.
void expectNeeded(const json& node, const FieldFacts& field, const std::set<std::string>& required,
                  const json& defaults) {
    const bool mayBeEmpty = field.isList && node.value("minItems", 0) == 0;
    const bool hasDefault = node.contains("default");
    EXPECT_EQ(required.count(field.name) == 1, !field.isOptional && !mayBeEmpty && !hasDefault);
    if (hasDefault) {
        EXPECT_FALSE(field.isOptional || field.isList);
        // False flags are left out of a record's text.
        const json inType = defaults.value(field.name, json(false));
        if (!defaults.empty()) {
            EXPECT_EQ(node["default"], inType);
        }
    }
}

void expectObject(const json& root, const json& node, const std::vector<FieldFacts>& fields,
                  const std::set<std::string>& besides, const json& defaults) {
    EXPECT_EQ(node.at("type"), "object");
    EXPECT_EQ(node.at("additionalProperties"), false);
    std::set<std::string> wanted = besides;
    for (const FieldFacts& field : fields)
        wanted.insert(field.name);
    EXPECT_EQ(namesIn(node.at("properties")), wanted);
    const std::set<std::string> required = wordsIn(node.at("required"));
    for (const std::string& name : besides)
        EXPECT_EQ(required.count(name), 1u) << name;
    for (const FieldFacts& field : fields) {
        SCOPED_TRACE(field.name);
        if (!node["properties"].contains(field.name))
            continue;
        const json& property = node["properties"][field.name];
        EXPECT_NE(property.value("description", ""), "");
        expectNeeded(property, field, required, defaults);
        if (!field.isList) {
            expectValue(root, resolved(root, property), field);
            continue;
        }
        EXPECT_EQ(property.at("type"), "array");
        EXPECT_TRUE(property.contains("maxItems"));
        expectValue(root, resolved(root, property.at("items")), field);
    }
}

json schemaOf(RecordKind kind) {
    return json::parse(
        test::bytesOf(test::schemaFolder() + "/records/" + textOf(kind) + ".schema.json"));
}

TEST(Schemas, AgreeWithTheRecordTypes) {
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        SCOPED_TRACE(textOf(R::kind));
        const json schema = schemaOf(R::kind);
        EXPECT_EQ(schema.at("title"), textOf(R::kind));
        EXPECT_EQ(schema.at("$schema"), "http://json-schema.org/draft-07/schema#");
        EXPECT_EQ(schema["properties"]["record"]["enum"], json::array({textOf(R::kind)}));
        expectObject(schema, schema, FieldFactsReader::of<R>(), {"record"},
                     json::parse(encodeRecord(R{})));
    });
}

TEST(Schemas, UseEveryDefinitionTheyMake) {
    for (std::size_t i = 0; i < enumNames<RecordKind>().size(); ++i) {
        const json schema = schemaOf(static_cast<RecordKind>(i));
        const std::string text = schema.dump();
        const json definitions = schema.value("definitions", json::object());
        for (const auto& [name, value] : definitions.items())
            EXPECT_NE(text.find("#/definitions/" + name + "\""), std::string::npos) << name;
    }
}

TEST(Schemas, OfTheFileNameEveryKind) {
    const json schema =
        json::parse(test::bytesOf(test::schemaFolder() + "/record-file.schema.json"));
    EXPECT_EQ(schema["definitions"]["record"]["properties"]["record"]["enum"]
                  .get<std::vector<std::string>>(),
              enumNames<RecordKind>());
}

}  // namespace
}  // namespace rackbook
