#include "Twin.h"

#include <gtest/gtest.h>

#include <QByteArray>
#include <set>

namespace rackbook {

using nlohmann::json;

Twin::Twin(const std::string& bytes) : m_good(bytes), m_tree(editableJson(bytes)) {
    m_highest = m_tree.at("qpdf").at(0).at("maxobjectid");
}

json& Twin::object(const std::string& reference) {
    json& entry = m_tree.at("qpdf").at(1).at("obj:" + reference);
    return entry.contains("stream") ? entry.at("stream").at("dict") : entry.at("value");
}

json& Twin::trailer() {
    return m_tree.at("qpdf").at(1).at("trailer").at("value");
}

json& Twin::catalog() {
    return object(trailer().at("/Root"));
}

json& Twin::info() {
    return object(trailer().at("/Info"));
}

json& Twin::page() {
    return object(pageReference());
}

json& Twin::font() {
    return object(page().at("/Resources").at("/Font").begin().value());
}

json& Twin::descendant() {
    return object(font().at("/DescendantFonts").at(0));
}

json& Twin::descriptor() {
    return object(descendant().at("/FontDescriptor"));
}

std::string Twin::add(const json& value) {
    const std::string reference = std::to_string(++m_highest) + " 0 R";
    m_tree.at("qpdf").at(1)["obj:" + reference] = {{"value", value}};
    m_tree.at("qpdf").at(0).at("maxobjectid") = m_highest;
    return reference;
}

std::string Twin::addStream(const json& dictionary, const std::string& data) {
    const std::string reference = add(json::object());
    setStream(reference, data, dictionary);
    return reference;
}

void Twin::setStream(const std::string& reference, const std::string& data,
                     const json& dictionary) {
    const std::string coded = QByteArray::fromStdString(data).toBase64().toStdString();
    m_tree.at("qpdf").at(1)["obj:" + reference] = {
        {"stream", {{"data", coded}, {"dict", dictionary}}}};
}

std::string Twin::content() const {
    return m_good.stream(m_good.raw(pageReference(), "/Contents"))->data;
}

void Twin::setContent(const std::string& data, const json& dictionary) {
    setStream(m_good.raw(pageReference(), "/Contents"), data, dictionary);
}

std::string Twin::metadata() const {
    return m_good.stream(m_good.raw(m_good.catalog(), "/Metadata"))->data;
}

void Twin::setMetadata(const std::string& packet, const json& dictionary) {
    setStream(m_good.raw(m_good.catalog(), "/Metadata"), packet, dictionary);
}

std::string clausesOf(const std::vector<ArchivalFinding>& findings) {
    std::set<std::string> clauses;
    for (const ArchivalFinding& finding : findings)
        clauses.insert(finding.clause);
    std::string list;
    for (const std::string& clause : clauses)
        list += (list.empty() ? "" : "; ") + clause;
    return list;
}

void expectEachFound(const std::string& good, const std::vector<BrokenTwin>& twins,
                     PdfLevel level) {
    for (const BrokenTwin& row : twins) {
        SCOPED_TRACE(row.name);
        try {
            Twin twin(good);
            row.breakIt(twin);
            const std::vector<ArchivalFinding> found = archivalFindings(twin.bytes(), level);
            EXPECT_EQ(clausesOf(found), row.clause) << linesOf(found);
        } catch (const std::exception& error) {
            ADD_FAILURE() << error.what();
        }
    }
}

}  // namespace rackbook
