#include "commands/KindFields.h"

#include <algorithm>

#include "base/Files.h"
#include "base/Text.h"
#include "base/Tree.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

constexpr std::size_t largestSchema = std::size_t{1} << 20;

std::string textIn(const Tree& tree, const std::string& name) {
    const Tree* found = tree.find(name);
    return found != nullptr && found->asText() != nullptr ? *found->asText() : std::string();
}

std::vector<std::string> wordsIn(const Tree& tree, const std::string& name) {
    std::vector<std::string> words;
    if (const Tree* found = tree.find(name); found != nullptr && found->asArray() != nullptr)
        for (const Tree& word : *found->asArray())
            if (word.asText() != nullptr)
                words.push_back(*word.asText());
    return words;
}

class Walk {
public:
    explicit Walk(const Tree& schema) : m_schema(schema) {}

    std::vector<FieldMeaning> run() {
        addFields(m_schema, {});
        return std::move(m_fields);
    }

private:
    void addFields(const Tree& object, const std::string& prefix) {
        const Tree* properties = object.find("properties");
        if (properties == nullptr || properties->asObject() == nullptr)
            return;
        const std::vector<std::string> needed = wordsIn(object, "required");
        for (const auto& [name, property] : *properties->asObject()) {
            if (prefix.empty() && (name == "record" || name == "id"))
                continue;
            const bool isNeeded = std::find(needed.begin(), needed.end(), name) != needed.end();
            m_fields.push_back({prefix + name, isNeeded, meaningOf(property)});
            if (const Tree* parts = partsOf(property))
                addFields(*parts, prefix + name + ".");
        }
    }

    static std::string meaningOf(const Tree& property) {
        const std::string meaning = textIn(property, "description");
        const Tree* items = property.find("items");
        const std::vector<std::string> words =
            wordsIn(items != nullptr ? *items : property, "enum");
        return words.empty() ? meaning : meaning + " One of " + joined(words, " or ") + ".";
    }

    // The schema of the parts that a list consists of.
    const Tree* partsOf(const Tree& property) const {
        static const std::string beginning = "#/definitions/";
        const Tree* items = property.find("items");
        const std::string ref = items != nullptr ? textIn(*items, "$ref") : std::string();
        const Tree* definitions = m_schema.find("definitions");
        if (ref.rfind(beginning, 0) != 0 || definitions == nullptr)
            return nullptr;
        return definitions->find(ref.substr(beginning.size()));
    }

    const Tree& m_schema;
    std::vector<FieldMeaning> m_fields;
};

}  // namespace

std::vector<FieldMeaning> fieldsOfKind(const std::string& schemaFolder, RecordKind kind) {
    const std::string path =
        pathOf(pathOf(schemaFolder, "records"), std::string(textOf(kind)) + ".schema.json");
    const Tree schema = treeFromJson(readFile(path, largestSchema), path);
    return Walk(schema).run();
}

}  // namespace rackbook
