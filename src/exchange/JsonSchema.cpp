#include "exchange/JsonSchema.h"

#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validation_results.hpp>
#include <valijson/validator.hpp>

#include "base/Error.h"
#include "base/Files.h"
#include "base/Text.h"

namespace rackbook {

namespace {

constexpr std::size_t largestSchema = 1 << 20;

// The name that the validator's sentence gives in single quotes after `lead`.
std::string nameAfter(const std::string& sentence, std::string_view lead) {
    const std::size_t at = sentence.find(lead);
    const std::size_t from = at == std::string::npos ? at : at + lead.size();
    const std::size_t to = sentence.rfind('\'');
    return from == std::string::npos || to <= from ? std::string()
                                                   : sentence.substr(from, to - from);
}

bool startsWith(const std::string& text, std::string_view beginning) {
    return text.compare(0, beginning.size(), beginning) == 0;
}

// The steps "[a]" and "[3]" of the validator's context as a JSON pointer.
std::string pointerOf(const std::vector<std::string>& context) {
    std::string pointer;
    for (const std::string& step : context)
        if (step.size() > 2 && step.front() == '[')
            pointer += "/" + pointerStep(step.substr(1, step.size() - 2));
    return pointer;
}

// The part of a schema that speaks of the value at a pointer; follows $ref within the file.
const Json* schemaAt(const Json& schema, const std::string& pointer) {
    const Json* node = &schema;
    const auto resolve = [&] {
        while (node != nullptr && node->is_object() && node->contains("$ref")) {
            const std::string& target = (*node)["$ref"].get_ref<const std::string&>();
            node = startsWith(target, "#") ? &schema.at(Json::json_pointer(target.substr(1)))
                                           : nullptr;
        }
    };
    std::size_t at = 0;
    resolve();
    while (node != nullptr && at < pointer.size()) {
        const std::size_t end = std::min(pointer.find('/', at + 1), pointer.size());
        const std::string step = pointer.substr(at + 1, end - at - 1);
        at = end;
        if (node->contains("properties") && (*node)["properties"].contains(step))
            node = &(*node)["properties"][step];
        else if (node->contains("items"))
            node = &(*node)["items"];
        else
            node = nullptr;
        resolve();
    }
    return node;
}

std::string withoutFullStop(std::string text) {
    while (!text.empty() && text.back() == '.')
        text.pop_back();
    return text;
}

std::string unknownFieldRemedy(const Json* schema, const std::string& name) {
    std::vector<std::string> known;
    if (schema != nullptr && schema->contains("properties"))
        for (const auto& [property, unused] : (*schema)["properties"].items())
            known.push_back(property);
    if (const std::optional<std::string> nearest = nearestName(name, known))
        return "Did you mean " + *nearest + "?";
    return "Take it out, or use one of " + joined(known, " and ") + ".";
}

std::string typeRemedy(const Json* schema) {
    if (schema == nullptr || !schema->contains("type"))
        return "See schema/README.md.";
    const Json& type = (*schema)["type"];
    const std::string word = type.is_string() ? type.get<std::string>() : type.dump();
    if (word == "string")
        return "Give a text, in quotes.";
    if (word == "number")
        return "Give a number, without quotes.";
    if (word == "integer")
        return "Give a whole number, without quotes.";
    if (word == "array")
        return "Give a list, in [ ].";
    if (word == "boolean")
        return "Give true or false.";
    return "Give an object, in { }.";
}

std::string enumRemedy(const Json* schema, const std::string& value) {
    if (schema == nullptr || !schema->contains("enum"))
        return "See schema/README.md.";
    std::vector<std::string> words;
    for (const Json& word : (*schema)["enum"])
        words.push_back(word.is_string() ? word.get<std::string>() : word.dump());
    if (const std::optional<std::string> nearest = nearestName(value, words))
        return "Did you mean " + *nearest + "? It is one of " + joined(words, " or ") + ".";
    return "Use one of " + joined(words, " or ") + ".";
}

std::string meaningRemedy(const Json* schema) {
    if (schema == nullptr || !schema->contains("description"))
        return "See schema/README.md.";
    return "It means: " + withoutFullStop((*schema)["description"].get<std::string>()) + ".";
}

// Bounds, by the beginning of the validator's sentence and the keyword of the schema.
struct Bound {
    const char* said;
    const char* keyword;
    const char* before;
    const char* after;
};

constexpr Bound bounds[] = {
    {"Expected number greater than or equal to", "minimum", "it is below ", ""},
    {"Expected number greater than", "exclusiveMinimum", "it is not above ", ""},
    {"Expected number less than or equal to", "maximum", "it is above ", ""},
    {"Expected number less than", "exclusiveMaximum", "it is not below ", ""},
    {"String should be no fewer than", "minLength", "the text is shorter than ", " characters"},
    {"String should be no more than", "maxLength", "the text is longer than ", " characters"},
    {"Array should contain no fewer than", "minItems", "the list is shorter than ", " items"},
    {"Array should contain no more than", "maxItems", "the list is longer than ", " items"},
};

std::optional<std::string> boundWords(const std::string& said, const Json* schema) {
    for (const Bound& bound : bounds) {
        if (!startsWith(said, bound.said) || schema == nullptr || !schema->contains(bound.keyword))
            continue;
        const Json& limit = (*schema)[bound.keyword];
        const std::string plural = bound.after;
        const bool one = limit == 1 && !plural.empty();
        return bound.before + limit.dump() + (one ? plural.substr(0, plural.size() - 1) : plural);
    }
    return std::nullopt;
}

// The validator's sentence in our words; nothing for those that only repeat a deeper one.
std::optional<Complaint> inOurWords(const valijson::ValidationResults::Error& error,
                                    const Json& schema, const Json& object) {
    const std::string& said = error.description;
    const std::string pointer = pointerOf(error.context);
    const Json* part = schemaAt(schema, pointer);
    const Json::json_pointer at(pointer);
    const Json* value = object.contains(at) ? &object.at(at) : nullptr;
    if (startsWith(said, "Failed to validate"))
        return std::nullopt;
    if (startsWith(said, "Object contains a property")) {
        const std::string name = nameAfter(said, "constraints: '");
        return Complaint{pointer + "/" + pointerStep(name),
                         "there is no field \"" + excerpt(name) + "\" here",
                         unknownFieldRemedy(part, name)};
    }
    if (startsWith(said, "Missing required property")) {
        const std::string name = nameAfter(said, "property '");
        const std::string field = pointer + "/" + pointerStep(name);
        return Complaint{field, "the field \"" + name + "\" is missing",
                         meaningRemedy(schemaAt(schema, field))};
    }
    if (startsWith(said, "Value type not permitted"))
        return Complaint{pointer, "it is of the wrong type", typeRemedy(part)};
    if (startsWith(said, "Failed to match against any enum"))
        return Complaint{
            pointer, "it is none of the words that may stand here",
            enumRemedy(part, value != nullptr && value->is_string() ? value->get<std::string>()
                                                                    : std::string())};
    if (startsWith(said, "Failed to match regex"))
        return Complaint{pointer, "it is not written the way it should be", meaningRemedy(part)};
    return Complaint{pointer, boundWords(said, part).value_or(withoutFullStop(said)),
                     meaningRemedy(part)};
}

}  // namespace

struct JsonSchema::Inner {
    Json text;
    valijson::Schema compiled;
    mutable valijson::Validator validator;  // keeps compiled patterns
};

JsonSchema::JsonSchema(const std::string& path) : m_inner(std::make_unique<Inner>()) {
    m_inner->text = parseJson(readFile(path, largestSchema), path);
    try {
        valijson::adapters::NlohmannJsonAdapter adapter(m_inner->text);
        valijson::SchemaParser parser;
        parser.populateSchema(adapter, m_inner->compiled);
    } catch (const std::exception& error) {
        throw InputError(path, std::string("it is no JSON Schema: ") + error.what(),
                         "Install Rackbook again.");
    }
}

JsonSchema::~JsonSchema() = default;

std::vector<Complaint> JsonSchema::complaintsAbout(const Json& value) const {
    const valijson::adapters::NlohmannJsonAdapter adapter(value);
    if (m_inner->validator.validate(m_inner->compiled, adapter, nullptr))
        return {};
    // Only a value that failed pays for the sentences.
    valijson::ValidationResults results;
    m_inner->validator.validate(m_inner->compiled, adapter, &results);
    std::vector<Complaint> complaints;
    valijson::ValidationResults::Error error;
    while (results.popError(error))
        if (std::optional<Complaint> complaint = inOurWords(error, m_inner->text, value))
            complaints.push_back(std::move(*complaint));
    if (complaints.empty())
        complaints.push_back({{}, "it does not satisfy its schema", "See schema/README.md."});
    return complaints;
}

}  // namespace rackbook
