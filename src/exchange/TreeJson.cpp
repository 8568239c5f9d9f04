#include "exchange/TreeJson.h"

#include <cmath>
#include <cstdint>

#include "exchange/JsonText.h"
#include "exchange/RecordCodec.h"

namespace rackbook {

namespace {

using Ordered = nlohmann::ordered_json;

template <class AnyJson>
Tree fromJson(const AnyJson& json) {
    switch (json.type()) {
        case Json::value_t::boolean:
            return Tree(json.template get<bool>());
        case Json::value_t::number_unsigned:
            // Beyond 64 bits with a sign only the nearest real number is left.
            if (json.template get<std::uint64_t>() > INT64_MAX)
                return Tree(json.template get<double>());
            return Tree(json.template get<std::int64_t>());
        case Json::value_t::number_integer:
            return Tree(json.template get<std::int64_t>());
        case Json::value_t::number_float:
            return Tree(json.template get<double>());
        case Json::value_t::string:
            return Tree(json.template get<std::string>());
        case Json::value_t::array: {
            Tree tree = Tree::array();
            for (const AnyJson& item : json)
                tree.add(fromJson(item));
            return tree;
        }
        case Json::value_t::object: {
            Tree tree = Tree::object();
            for (const auto& [name, value] : json.items())
                tree.set(name, fromJson(value));
            return tree;
        }
        default:
            return Tree();
    }
}

Ordered toJson(const Tree& tree) {
    if (const bool* value = tree.asBool())
        return *value;
    if (const std::int64_t* value = tree.asWhole())
        return *value;
    if (const double* value = tree.asReal())
        return std::isfinite(*value) ? Ordered(*value) : Ordered(nullptr);
    if (const std::string* value = tree.asText())
        return *value;
    if (const Tree::Array* items = tree.asArray()) {
        Ordered json = Ordered::array();
        for (const Tree& item : *items)
            json.push_back(toJson(item));
        return json;
    }
    if (const Tree::Object* members = tree.asObject()) {
        Ordered json = Ordered::object();
        for (const auto& [name, value] : *members)
            json[name] = toJson(value);
        return json;
    }
    return nullptr;
}

}  // namespace

Tree treeFromJson(std::string_view text, const std::string& file) {
    // Read first with all the care there is; then again in the order of writing.
    parseJson(text, file);
    return fromJson(Ordered::parse(text));
}

std::string jsonText(const Tree& tree) {
    return toJson(tree).dump(2, ' ', false, Ordered::error_handler_t::replace) + "\n";
}

std::string jsonLine(const Tree& tree) {
    return toJson(tree).dump(-1, ' ', false, Ordered::error_handler_t::replace);
}

Tree treeOf(const Record& record) {
    return fromJson(Ordered::parse(encodeRecord(record)));
}

}  // namespace rackbook
