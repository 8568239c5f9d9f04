#include "exchange/DublinCore.h"

#include <QXmlStreamWriter>

namespace rackbook {

namespace {

// XML 1.0, production Char.
QString allowedInXml(const std::string& text) {
    QString allowed = QString::fromStdString(text);
    for (QChar& c : allowed)
        if ((c.unicode() < 0x20 && c != '\t' && c != '\n' && c != '\r') || c.unicode() >= 0xFFFE)
            c = QChar::ReplacementCharacter;
    return allowed;
}

}  // namespace

std::string dublinCoreText(const std::vector<std::pair<std::string, std::string>>& elements) {
    const QString container = "http://www.openarchives.org/OAI/2.0/oai_dc/";
    const QString terms = "http://purl.org/dc/elements/1.1/";
    QByteArray text;
    QXmlStreamWriter writer(&text);
    writer.setAutoFormatting(true);
    writer.setAutoFormattingIndent(2);
    writer.writeStartDocument();
    writer.writeNamespace(container, "oai_dc");
    writer.writeNamespace(terms, "dc");
    writer.writeStartElement(container, "dc");
    for (const auto& [name, value] : elements)
        writer.writeTextElement(terms, QString::fromStdString(name), allowedInXml(value));
    writer.writeEndElement();
    writer.writeEndDocument();
    return text.toStdString();
}

}  // namespace rackbook
