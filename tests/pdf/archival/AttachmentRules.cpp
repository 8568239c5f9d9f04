// Rules about embedded files (6.8; ISO 32000-1, 7.11).
#include <QCryptographicHash>
#include <functional>
#include <regex>
#include <set>

#include "ArchivalRules.h"

namespace rackbook {

namespace {

using nlohmann::json;

// Names in the tree with what they name, in the order in which they stand.
void listNames(const PdfJson& file, const json& node, int depth,
               std::vector<std::pair<std::string, std::string>>& names) {
    constexpr int deepest = 32;
    if (depth > deepest)
        return;
    const json& list = file.at(node, "/Names");
    for (std::size_t i = 0; i + 1 < list.size(); i += 2)
        names.emplace_back(textOf(list[i]), list[i + 1].dump());
    for (const json& kid : file.at(node, "/Kids"))
        listNames(file, kid, depth + 1, names);
}

std::set<std::string> associated(const PdfJson& file) {
    std::set<std::string> references;
    forEachDictionary(file, [&](const json& dictionary, const std::string&) {
        const json& files = file.at(dictionary, "/AF");
        for (const json& one :
             files.is_array() ? files : json::array({file.raw(dictionary, "/AF")}))
            references.insert(one.dump());
    });
    return references;
}

void checkParameters(ArchivalCase& checked, const json& parameters, const std::string& data,
                     const std::string& where) {
    if (textOf(checked.file.at(parameters, "/ModDate")).compare(0, 2, "D:") != 0)
        checked.add("6.8", where + ": no date of its last change");
    const json& size = checked.file.at(parameters, "/Size");
    if (!size.is_null() && size != data.size())
        checked.add("32000-1, 7.11.4", where + ": the size is not that of the data");
    const json& sum = checked.file.at(parameters, "/CheckSum");
    const QByteArray found =
        QCryptographicHash::hash(QByteArray::fromStdString(data), QCryptographicHash::Md5);
    // A checksum may come as text where its bytes happen to be readable.
    if (!sum.is_null() && textOf(sum) != found.toStdString())
        checked.add("32000-1, 7.11.4", where + ": the checksum is not that of the data");
}

void checkEmbedded(ArchivalCase& checked, const json& reference, const std::string& where) {
    const PdfJson::Object* stream = checked.file.stream(reference);
    if (!stream)
        return checked.add("6.8", where + ": no embedded file");
    const json& kind = checked.file.at(reference, "/Subtype");
    static const std::regex mediaType("\"/[a-z]+/[A-Za-z0-9.+-]+\"");
    if (!std::regex_match(kind.dump(), mediaType))
        checked.add("6.8", where + ": the media type " + kind.dump());
    checkParameters(checked, checked.file.at(reference, "/Params"), stream->data, where);
}

void checkSpecification(ArchivalCase& checked, const json& specification,
                        const std::string& where) {
    static const std::set<std::string> relations = {"/Source", "/Data", "/Alternative",
                                                    "/Supplement", "/Unspecified"};
    for (const char* key : {"/F", "/UF"})
        if (textOf(checked.file.at(specification, key)).empty())
            checked.add("6.8", where + ": no " + key);
    const json& relation = checked.file.at(specification, "/AFRelationship");
    if (!relation.is_string() || relations.count(relation.get<std::string>()) == 0)
        checked.add("6.8", where + ": the relation " + relation.dump());
    const json& streams = checked.file.at(specification, "/EF");
    checkEmbedded(checked, checked.file.raw(streams, "/F"), where);
    const json& second = checked.file.raw(streams, "/UF");
    if (!second.is_null() && second != checked.file.raw(streams, "/F"))
        checked.add("house", where + ": two files under one name");
}

}  // namespace

void checkAttachments(ArchivalCase& checked) {
    const json& tree =
        checked.file.at(checked.file.at(checked.file.catalog(), "/Names"), "/EmbeddedFiles");
    std::vector<std::pair<std::string, std::string>> names;
    listNames(checked.file, tree, 0, names);
    for (std::size_t i = 1; i < names.size(); ++i)
        if (names[i - 1].first >= names[i].first)
            checked.add("32000-1, 7.9.6", "the names of embedded files are not in order");
    const std::set<std::string> files = associated(checked.file);
    for (const auto& [reference, object] : checked.file.objects()) {
        if (!object.value.is_object() || !object.value.contains("/EF"))
            continue;
        const std::string where = "file specification " + reference;
        if (checked.isFirstPart())
            checked.add("19005-1, 6.1.11", where + ": an embedded file");
        checkSpecification(checked, object.value, where);
        const std::string quoted = json(reference).dump();
        if (files.count(quoted) == 0)
            checked.add("6.8", where + " is associated with nothing");
        bool isNamed = false;
        for (const auto& [name, named] : names)
            isNamed = isNamed || named == quoted;
        if (!isNamed)
            checked.add("house", where + " is not in the list of embedded files");
    }
}

}  // namespace rackbook
