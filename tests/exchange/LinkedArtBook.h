// What the tests of descriptions as Linked Art share: small books, and the files made of them.
#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "LinkedArtFacts.h"
#include "exchange/LinkedArt.h"
#include "exchange/TreeJson.h"
#include "support/Build.h"

namespace rackbook::test {

inline const std::string base = "https://prints.example/";

inline LinkedArtChoice choice() {
    LinkedArtChoice chosen;
    chosen.base = base;
    chosen.bookMark = "a mark";
    chosen.program = "rackbook 1";
    chosen.day = "2026-03-20";
    return chosen;
}

inline std::vector<std::string> allImpressions(const RecordSet& records) {
    std::vector<std::string> ids;
    for (const Impression& impression : records.of<Impression>())
        ids.push_back(impression.id);
    return ids;
}

// By path, as other programs read it.
inline std::map<std::string, Json> written(const RecordSet& records,
                                           const LinkedArtChoice& chosen) {
    std::map<std::string, Json> files;
    for (const LinkedArtFile& file : linkedArtOf(records, allImpressions(records), chosen).files)
        EXPECT_TRUE(files.emplace(file.path, Json::parse(jsonText(file.content))).second)
            << file.path;
    return files;
}

inline void expectWithinTheRules(const std::map<std::string, Json>& files) {
    for (const auto& [path, content] : files)
        for (const std::string& broken : brokenLinkedArtRules(content))
            ADD_FAILURE() << path << " " << broken;
}

inline std::string allText(const std::map<std::string, Json>& files) {
    std::string text;
    for (const auto& [path, content] : files)
        text += path + content.dump() + "\n";
    return text;
}

// The content of every statement, and of every name and identifier, anywhere in it.
inline std::vector<std::string> contentsIn(const Json& value) {
    std::vector<std::string> contents;
    if (value.is_object() && value.contains("content"))
        contents.push_back(value["content"]);
    if (value.is_structured())
        for (const Json& item : value)
            for (std::string& content : contentsIn(item))
                contents.push_back(std::move(content));
    return contents;
}

inline bool says(const Json& value, const std::string& content) {
    const std::vector<std::string> contents = contentsIn(value);
    return std::find(contents.begin(), contents.end(), content) != contents.end();
}

inline void gatherLinks(const Json& value, std::set<std::string>& links) {
    if (value.is_object() && value.contains("id"))
        links.insert(value["id"].get<std::string>());
    if (value.is_structured())
        for (const Json& item : value)
            gatherLinks(item, links);
}

inline build::Book studio() {
    build::Book book;
    book.add(Book{}, [](Book& r) {
        r.id = "studio";
        r.studio = "North shed";
        r.timeZone = "Europe/Copenhagen";
    });
    return book;
}

// One edition E with one sheet E-1, which the caller changes.
template <class EditEdition, class EditSheet>
build::Book oneSheet(EditEdition editEdition, EditSheet editSheet) {
    build::Book book = studio();
    book.edition("E", editEdition);
    book.impressions("E", 1, 1, editSheet);
    return book;
}

inline build::Book oneSheet() {
    return oneSheet(build::AsIs(), build::AsIs());
}

inline Json sheetOf(const build::Book& book, const LinkedArtChoice& chosen = choice()) {
    return written(book.records, chosen).at("impression/E-1.json");
}

}  // namespace rackbook::test
