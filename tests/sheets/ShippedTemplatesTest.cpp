#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "base/Files.h"
#include "sheets/Template.h"

namespace rackbook {
namespace {

using Json = nlohmann::ordered_json;

Tree treeOf(const Json& json) {
    if (json.is_string())
        return json.get<std::string>();
    if (json.is_number())
        return json.get<double>();
    Tree tree = json.is_array() ? Tree::array() : Tree::object();
    if (json.is_array())
        for (const Json& element : json)
            tree.add(treeOf(element));
    else
        for (const auto& [name, value] : json.items())
            tree.set(name, treeOf(value));
    return tree;
}

// Sections in their order; labels as the file has them, which the builders check for themselves.
void expectShipped(const std::string& sheet, const std::vector<std::string>& sections) {
    const std::string file = std::string(RACKBOOK_TEMPLATES) + "/" + sheet + ".json";
    const Json json = Json::parse(readFile(file, 1 << 20));
    TemplateRules rules{sheet, sections, {}};
    for (const auto& [name, value] : json.at("labels").items())
        rules.labels.push_back(name);
    const SheetTemplate read = SheetTemplate::read(treeOf(json), file, rules);
    EXPECT_EQ(read.sections(), sections);
    EXPECT_EQ(read.fonts().text, FontFamilies{}.text);
    EXPECT_FALSE(read.label("pageOf").empty());
    for (const std::string& section : sections)
        EXPECT_FALSE(read.label(section).empty()) << section;
    for (const std::string& label : rules.labels) {
        const std::string section = label.substr(0, label.find('.'));
        const bool known = std::find(sections.begin(), sections.end(), section) != sections.end();
        EXPECT_TRUE(known || section == label) << label;
    }
}

TEST(ShippedTemplates, EditionIsWhole) {
    expectShipped("edition",
                  {"identity", "inscriptions", "paper", "count", "blocks", "layers", "mixes",
                   "impressions", "matrix", "statement", "disclosure", "signatures"});
}

TEST(ShippedTemplates, ReadinessIsWhole) {
    expectShipped("readiness", {"summary", "doFirst", "impressions", "rules"});
}

}  // namespace
}  // namespace rackbook
