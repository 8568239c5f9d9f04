// Rules about what the file says of itself (6.1.5, 6.6).
#include <QDateTime>
#include <QXmlStreamReader>
#include <array>
#include <map>
#include <regex>
#include <set>

#include "ArchivalRules.h"

namespace rackbook {

namespace {

using nlohmann::json;

const QString rdf = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";

// Prefixes of the schemas that every reader knows (6.6.2.3).
const std::map<QString, std::string> knownSchemas = {
    {"http://purl.org/dc/elements/1.1/", "dc:"},
    {"http://ns.adobe.com/pdf/1.3/", "pdf:"},
    {"http://ns.adobe.com/xap/1.0/", "xmp:"},
    {"http://ns.adobe.com/xap/1.0/mm/", "xmpMM:"},
    {"http://ns.adobe.com/xap/1.0/rights/", "xmpRights:"},
    {"http://www.aiim.org/pdfa/ns/id/", "pdfaid:"}};

// "dc:title" → its text, that of lists with line breaks between.
std::map<std::string, std::string> propertiesIn(ArchivalCase& checked, const std::string& packet) {
    std::map<std::string, std::string> properties;
    QXmlStreamReader reader(QByteArray::fromStdString(packet));
    std::string property;
    int depth = 0;
    while (!reader.atEnd()) {
        const auto token = reader.readNext();
        const QString space = reader.namespaceUri().toString();
        if (token == QXmlStreamReader::StartElement) {
            ++depth;
            const auto known = knownSchemas.find(space);
            if (depth == 4 && known != knownSchemas.end())
                property = known->second + reader.name().toString().toStdString();
            if (depth == 4 && known == knownSchemas.end())
                checked.add("6.6.2.3", "a property of an unknown schema, " + space.toStdString());
            if (space == rdf && reader.name() == u"li" && !properties[property].empty())
                properties[property] += "\n";
        } else if (token == QXmlStreamReader::EndElement) {
            if (depth-- == 4)
                property.clear();
        } else if (token == QXmlStreamReader::Characters && !property.empty() &&
                   !reader.isWhitespace()) {
            properties[property] += reader.text().toString().toStdString();
        }
    }
    if (reader.hasError())
        checked.add("6.6.2.1", "the packet is no XML: " + reader.errorString().toStdString());
    return properties;
}

// Seconds since 1970, or -1.
qint64 momentOfInfo(const std::string& date) {
    static const std::regex form(
        "D:(\\d{4})(\\d\\d)(\\d\\d)(\\d\\d)(\\d\\d)(\\d\\d)([+-]\\d\\d)'(\\d\\d)'?");
    std::smatch part;
    if (!std::regex_match(date, part, form))
        return -1;
    const std::string iso = part.str(1) + "-" + part.str(2) + "-" + part.str(3) + "T" +
                            part.str(4) + ":" + part.str(5) + ":" + part.str(6) + part.str(7) +
                            ":" + part.str(8);
    return QDateTime::fromString(QString::fromStdString(iso), Qt::ISODate).toSecsSinceEpoch();
}

qint64 momentOfPacket(const std::string& date) {
    const QDateTime moment = QDateTime::fromString(QString::fromStdString(date), Qt::ISODate);
    return moment.isValid() ? moment.toSecsSinceEpoch() : -2;
}

void checkInfo(ArchivalCase& checked, std::map<std::string, std::string>& properties) {
    static const std::array<std::pair<const char*, const char*>, 8> pairs = {
        {{"/Title", "dc:title"},
         {"/Author", "dc:creator"},
         {"/Subject", "dc:description"},
         {"/Keywords", "pdf:Keywords"},
         {"/Creator", "xmp:CreatorTool"},
         {"/Producer", "pdf:Producer"},
         {"/CreationDate", "xmp:CreateDate"},
         {"/ModDate", "xmp:ModifyDate"}}};
    const json& info = checked.file.at(checked.file.trailer(), "/Info");
    for (const auto& [key, property] : pairs) {
        const std::string said = textOf(checked.file.at(info, key));
        const bool isDate = std::string(key).find("Date") != std::string::npos;
        const bool alike = isDate && !said.empty()
                               ? momentOfInfo(said) == momentOfPacket(properties[property])
                               : said == properties[property];
        if (!alike)
            checked.add("6.1.5", std::string(key) + " is \"" + said + "\", " + property + " \"" +
                                     properties[property] + "\"");
    }
}

void checkClaim(ArchivalCase& checked, std::map<std::string, std::string>& properties) {
    if (properties["pdfaid:part"] != (checked.isFirstPart() ? "1" : "3"))
        checked.add("6.6.4", "the part is \"" + properties["pdfaid:part"] + "\"");
    const std::string conformance = properties["pdfaid:conformance"];
    if (conformance != "A" && conformance != "B" && !(conformance == "U" && !checked.isFirstPart()))
        checked.add("6.6.4", "the conformance is \"" + conformance + "\"");
    const json& mark = checked.file.at(checked.file.catalog(), "/MarkInfo");
    if (conformance == "A" && checked.file.at(mark, "/Marked") != true)
        checked.add("6.7.2", "level A is claimed without tags");
}

void checkLanguage(ArchivalCase& checked, std::map<std::string, std::string>& properties) {
    const std::string language = textOf(checked.file.at(checked.file.catalog(), "/Lang"));
    static const std::regex form("([A-Za-z]{1,8}(-[A-Za-z0-9]{1,8})*)?");
    if (!std::regex_match(language, form))
        checked.add("6.7.4", "the language \"" + language + "\"");
    if (language != properties["dc:language"])
        checked.add("house", "/Lang is \"" + language + "\", dc:language \"" +
                                 properties["dc:language"] + "\"");
}

}  // namespace

void checkMetadata(ArchivalCase& checked) {
    const json& reference = checked.file.raw(checked.file.catalog(), "/Metadata");
    const PdfJson::Object* stream = checked.file.stream(reference);
    if (!stream)
        return checked.add("6.6.2.1", "the catalog has no metadata");
    if (checked.file.at(reference, "/Type") != "/Metadata" ||
        checked.file.at(reference, "/Subtype") != "/XML")
        checked.add("32000-1, 14.3.2", "the metadata are not named as such");
    if (!checked.file.at(reference, "/Filter").is_null())
        checked.add(checked.isFirstPart() ? "19005-1, 6.7.2" : "house",
                    "the metadata are compressed");
    static const std::regex header("^<\\?xpacket begin=(\"[^\"]*\"|'[^']*') id=[^ ]*\\?>");
    if (!std::regex_search(stream->data, header))
        checked.add("6.6.2.1", "the packet has no header, or one with odd attributes");
    std::map<std::string, std::string> properties = propertiesIn(checked, stream->data);
    checkInfo(checked, properties);
    checkClaim(checked, properties);
    checkLanguage(checked, properties);
}

}  // namespace rackbook
