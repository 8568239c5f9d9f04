#include "pdf/PdfMetadata.h"

#include "base/Error.h"
#include "base/Finding.h"
#include "base/Text.h"

namespace rackbook {

namespace {

// Whether the text has the shape of the pattern, where 0 stands for any digit and other
// characters for themselves.
bool hasShape(std::string_view text, std::string_view pattern) {
    if (text.size() != pattern.size())
        return false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool digit = text[i] >= '0' && text[i] <= '9';
        if (pattern[i] == '0' ? !digit : text[i] != pattern[i])
            return false;
    }
    return true;
}

std::string escaped(const std::string& text, const std::string& field) {
    if (invalidUtf8At(text) || controlCharacterIn(text))
        throw RenderError("document " + field,
                          "\"" + excerpt(text) + "\" holds bytes that are no readable text",
                          "Write it again without them.");
    std::string safe;
    for (const char c : text) {
        if (c == '&')
            safe += "&amp;";
        else if (c == '<')
            safe += "&lt;";
        else if (c == '>')
            safe += "&gt;";
        else
            safe += c;
    }
    return safe;
}

std::string property(const std::string& name, const std::string& value) {
    return "   <" + name + ">" + value + "</" + name + ">\n";
}

std::string optionalProperty(const std::string& name, const std::string& value,
                             const std::string& before, const std::string& after) {
    return value.empty() ? std::string() : property(name, before + value + after);
}

const std::string inDefaultLanguage = "<rdf:Alt><rdf:li xml:lang=\"x-default\">";

std::string properties(const DocumentInfo& info, PdfLevel level) {
    const std::string program = escaped(info.program, "program");
    std::string text;
    text += property("dc:format", "application/pdf");
    text += property("dc:title",
                     inDefaultLanguage + escaped(info.title, "title") + "</rdf:li></rdf:Alt>");
    text += optionalProperty("dc:creator", escaped(info.author, "author"), "<rdf:Seq><rdf:li>",
                             "</rdf:li></rdf:Seq>");
    text += optionalProperty("dc:description", escaped(info.subject, "subject"), inDefaultLanguage,
                             "</rdf:li></rdf:Alt>");
    text += optionalProperty("dc:language", escaped(info.language, "language"), "<rdf:Bag><rdf:li>",
                             "</rdf:li></rdf:Bag>");
    text += optionalProperty("pdf:Keywords", escaped(info.keywords, "keywords"), "", "");
    text += property("pdf:Producer", program);
    text += property("xmp:CreatorTool", program);
    for (const char* name : {"xmp:CreateDate", "xmp:ModifyDate", "xmp:MetadataDate"})
        text += property(name, info.created);
    text += property("pdfaid:part", level == PdfLevel::a1b ? "1" : "3");
    text += property("pdfaid:conformance", "B");
    return text;
}

}  // namespace

std::string pdfDate(const std::string& created) {
    const bool universal = hasShape(created, "0000-00-00T00:00:00Z");
    if (!universal && !hasShape(created, "0000-00-00T00:00:00+00:00") &&
        !hasShape(created, "0000-00-00T00:00:00-00:00"))
        throw RenderError("document date",
                          "\"" + excerpt(created) + "\" is not a date with time and zone",
                          "Write it as 2026-03-04T08:30:00Z.");
    const auto part = [&](std::size_t at, std::size_t length) {
        return created.substr(at, length);
    };
    const std::string clock =
        "D:" + part(0, 4) + part(5, 2) + part(8, 2) + part(11, 2) + part(14, 2) + part(17, 2);
    return clock + (universal ? "+00'00'" : part(19, 3) + "'" + part(23, 2) + "'");
}

std::string xmpPacket(const DocumentInfo& info, PdfLevel level) {
    if (info.title.empty())
        throw RenderError("document title", "it is empty", "Give the sheet a title.");
    pdfDate(info.created);
    return "<?xpacket begin=\"\xEF\xBB\xBF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
           "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\n"
           " <rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n"
           "  <rdf:Description rdf:about=\"\"\n"
           "    xmlns:dc=\"http://purl.org/dc/elements/1.1/\"\n"
           "    xmlns:pdf=\"http://ns.adobe.com/pdf/1.3/\"\n"
           "    xmlns:xmp=\"http://ns.adobe.com/xap/1.0/\"\n"
           "    xmlns:pdfaid=\"http://www.aiim.org/pdfa/ns/id/\">\n" +
           properties(info, level) +
           "  </rdf:Description>\n"
           " </rdf:RDF>\n"
           "</x:xmpmeta>\n"
           "<?xpacket end=\"w\"?>";
}

}  // namespace rackbook
