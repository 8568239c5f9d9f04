// A PDF as qpdf tells it in JSON (qpdf manual, "qpdf JSON version 2"), for rules that ask about
// objects. Names begin with "/", strings with "u:" or "b:", references read "7 0 R".
#pragma once

#include <map>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

namespace rackbook {

class PdfJson {
public:
    // Throws std::runtime_error where qpdf cannot read the bytes.
    explicit PdfJson(const std::string& bytes);

    struct Object {
        nlohmann::json value;  // of a stream its dictionary as it stands in the file
        bool isStream = false;
        std::string data;  // of a stream, decoded
    };

    const std::string& bytes() const { return m_bytes; }
    const std::map<std::string, Object>& objects() const { return m_objects; }  // by "7 0 R"
    const nlohmann::json& trailer() const { return m_trailer; }
    const nlohmann::json& catalog() const { return at(m_trailer, "/Root"); }
    // References to the pages in their order.
    const std::vector<std::string>& pages() const { return m_pages; }

    // What the value stands for: itself, or the object (of a stream the dictionary) that it refers
    // to; null for a reference to nothing.
    const nlohmann::json& resolved(const nlohmann::json& value) const;
    const nlohmann::json& resolved(nlohmann::json&& value) const = delete;  // it may be the answer

    // The member of a dictionary or of what is referred to, resolved; null where there is none.
    const nlohmann::json& at(const nlohmann::json& dictionary, const std::string& key) const;

    // The same without following the member's reference.
    const nlohmann::json& raw(const nlohmann::json& dictionary, const std::string& key) const;

    // The stream that is referred to, or null.
    const Object* stream(const nlohmann::json& reference) const;

    // The page's member, or that of a node above it.
    const nlohmann::json& inherited(const std::string& page, const std::string& key) const;

private:
    std::string m_bytes;
    std::map<std::string, Object> m_objects;
    nlohmann::json m_trailer;
    std::vector<std::string> m_pages;
};

bool isReference(const nlohmann::json& value);

// UTF-8 of a text string, the bytes of a binary one; empty for other values.
std::string textOf(const nlohmann::json& string);

// The file as JSON to be edited, and back; streams are kept as they are. Throws
// std::runtime_error where qpdf fails.
nlohmann::json editableJson(const std::string& bytes);
std::string pdfFromJson(const nlohmann::json& tree);

}  // namespace rackbook
