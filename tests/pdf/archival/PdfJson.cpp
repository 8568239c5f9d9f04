#include "PdfJson.h"

#include <QByteArray>
#include <stdexcept>

#include "../OutsideReader.h"
#include "base/Files.h"

namespace rackbook {

namespace {

using nlohmann::json;

const json nothing;

json jsonOf(const std::string& path, const std::string& options) {
    const std::string made = path + ".json";
    const ToolRun run = readWith("{ qpdf " + options + " " + path + " >" + made + "; }");
    if (run.exitCode != 0 && run.exitCode != 3)
        throw std::runtime_error("qpdf cannot tell " + path + ": " + run.output);
    return json::parse(readFile(made, 1 << 28));
}

std::string fromBase64(const std::string& text) {
    return QByteArray::fromBase64(QByteArray::fromStdString(text)).toStdString();
}

constexpr const char* objectPrefix = "obj:";

}  // namespace

PdfJson::PdfJson(const std::string& bytes) : m_bytes(bytes) {
    const std::string path = fileWith(bytes, "checked.pdf");
    const json dictionaries = jsonOf(path, "--json=2 --json-stream-data=none");
    const json data = jsonOf(path,
                             "--json=2 --json-stream-data=inline --decode-level=all "
                             "--json-key=qpdf");
    const json& decoded = data.at("qpdf").at(1);
    for (const auto& [key, entry] : dictionaries.at("qpdf").at(1).items()) {
        if (key == "trailer") {
            m_trailer = entry.at("value");
            continue;
        }
        Object object;
        object.isStream = entry.contains("stream");
        object.value = object.isStream ? entry.at("stream").at("dict") : entry.at("value");
        if (object.isStream)
            object.data = fromBase64(decoded.at(key).at("stream").value("data", ""));
        m_objects.emplace(key.substr(std::string(objectPrefix).size()), std::move(object));
    }
    for (const json& page : dictionaries.at("pages"))
        m_pages.push_back(page.at("object"));
}

bool isReference(const json& value) {
    if (!value.is_string())
        return false;
    const auto& text = value.get_ref<const std::string&>();
    return text.size() > 4 && text[0] >= '0' && text[0] <= '9' &&
           text.compare(text.size() - 2, 2, " R") == 0;
}

const json& PdfJson::resolved(const json& value) const {
    if (!isReference(value))
        return value;
    const auto found = m_objects.find(value.get<std::string>());
    return found == m_objects.end() ? nothing : found->second.value;
}

const json& PdfJson::raw(const json& dictionary, const std::string& key) const {
    const json& known = resolved(dictionary);
    if (!known.is_object())
        return nothing;
    const auto found = known.find(key);
    return found == known.end() ? nothing : *found;
}

const json& PdfJson::at(const json& dictionary, const std::string& key) const {
    return resolved(raw(dictionary, key));
}

const PdfJson::Object* PdfJson::stream(const json& reference) const {
    if (!isReference(reference))
        return nullptr;
    const auto found = m_objects.find(reference.get<std::string>());
    return found != m_objects.end() && found->second.isStream ? &found->second : nullptr;
}

const json& PdfJson::inherited(const std::string& page, const std::string& key) const {
    constexpr int deepest = 64;
    json node = page;
    for (int i = 0; i < deepest && !node.is_null(); ++i) {
        if (!at(node, key).is_null())
            return at(node, key);
        node = raw(node, "/Parent");
    }
    return nothing;
}

std::string textOf(const json& string) {
    if (!string.is_string())
        return {};
    const auto& text = string.get_ref<const std::string&>();
    if (text.compare(0, 2, "u:") == 0)
        return text.substr(2);
    if (text.compare(0, 2, "b:") == 0)
        return QByteArray::fromHex(QByteArray::fromStdString(text.substr(2))).toStdString();
    return {};
}

json editableJson(const std::string& bytes) {
    return jsonOf(fileWith(bytes, "to-edit.pdf"),
                  "--json=2 --json-stream-data=inline --decode-level=none --json-key=qpdf");
}

std::string pdfFromJson(const json& tree) {
    const std::string from = fileWith(tree.dump(), "edited.json");
    const std::string to = fileWith("", "edited.pdf");
    const ToolRun run = readWith(
        "qpdf --json-input --object-streams=disable --stream-data=preserve "
        "--newline-before-endstream " +
        from + " " + to);
    if (run.exitCode != 0 && run.exitCode != 3)
        throw std::runtime_error("qpdf cannot make a PDF: " + run.output);
    return readFile(to, 1 << 28);
}

}  // namespace rackbook
