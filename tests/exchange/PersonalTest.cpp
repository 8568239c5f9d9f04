// Which fields are personal: decided for every field, said alike by code and schemas, and no less
// than what stays off sheets.
#include "records/Personal.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "exchange/WithoutPrivate.h"
#include "records/Record.h"
#include "support/FieldFacts.h"
#include "support/Paths.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

using nlohmann::json;
using test::FieldFacts;
using test::FieldFactsReader;

const json& resolved(const json& root, const json& node) {
    const json& at = node.contains("items") ? node["items"] : node;
    return at.contains("$ref")
               ? root.at(json::json_pointer(at["$ref"].get<std::string>().substr(1)))
               : at;
}

// Calls see(path, field, its node in the schema) for every field, those of parts too.
template <class See>
void eachField(const json& root, const json& node, const std::vector<FieldFacts>& fields,
               const std::string& prefix, See&& see) {
    for (const FieldFacts& field : fields) {
        const json& property = node.at("properties").at(field.name);
        see(prefix + field.name, field, property);
        if (field.form == FieldFacts::Form::parts)
            eachField(root, resolved(root, property), field.parts, prefix + field.name + ".", see);
    }
}

template <class See>
void eachFieldOfAll(See&& see) {
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        const json schema = json::parse(
            test::bytesOf(test::schemaFolder() + "/records/" + textOf(R::kind) + ".schema.json"));
        eachField(schema, schema, FieldFactsReader::of<R>(), "",
                  [&](const std::string& path, const FieldFacts& field, const json& property) {
                      see(R::kind, path, field, property);
                  });
    });
}

std::string nameOf(RecordKind kind, const std::string& path) {
    return std::string(textOf(kind)) + "." + path;
}

TEST(PersonalMarks, AreDecidedForEveryField) {
    std::size_t fields = 0;
    eachFieldOfAll([&](RecordKind kind, const std::string& path, const FieldFacts&, const json&) {
        ++fields;
        EXPECT_TRUE(personalMark(kind, path))
            << nameOf(kind, path) << ": say in records/Personal.cpp and in its schema whether it "
            << "is about people";
    });
    EXPECT_GT(fields, 250u);
    EXPECT_FALSE(personalMark(RecordKind::party, "shoeSize"));
}

TEST(PersonalMarks, AreSaidAlikeByTheSchemas) {
    eachFieldOfAll(
        [&](RecordKind kind, const std::string& path, const FieldFacts&, const json& property) {
            EXPECT_EQ(property.value("x-personal", "none"),
                      std::string(textOf(personalMark(kind, path).value_or(Personal::none))))
                << nameOf(kind, path);
        });
}

// What leaves the studio on no sheet without being asked for is about somebody, or may be.
TEST(PersonalMarks, CoverWhatIsPrivate) {
    std::size_t privateFields = 0;
    eachFieldOfAll([&](RecordKind kind, const std::string& path, const FieldFacts&, const json&) {
        if (!isPrivate(kind, path.substr(path.rfind('.') + 1), {}))
            return;
        ++privateFields;
        EXPECT_NE(personalMark(kind, path), Personal::none) << nameOf(kind, path);
    });
    EXPECT_GT(privateFields, 25u);
}

TEST(PersonalMarks, CoverEveryReferenceToAPartyAndToAPlace) {
    eachFieldOfAll(
        [&](RecordKind kind, const std::string& path, const FieldFacts& field, const json&) {
            if (field.form != FieldFacts::Form::ref)
                return;
            if (field.target == RecordKind::party || field.target == RecordKind::place) {
                EXPECT_EQ(personalMark(kind, path), Personal::linked) << nameOf(kind, path);
            }
        });
}

// Free text is what may be long and has no form.
TEST(PersonalMarks, CoverEveryLongText) {
    eachFieldOfAll([&](RecordKind kind, const std::string& path, const FieldFacts& field,
                       const json& property) {
        if (field.form != FieldFacts::Form::text || property.value("maxLength", 0) < 10000)
            return;
        EXPECT_NE(personalMark(kind, path), Personal::none) << nameOf(kind, path);
    });
}

}  // namespace
}  // namespace rackbook
