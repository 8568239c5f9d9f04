#include "pdf/CarriedFilesParser.h"

#include <set>

#include "pdf/CarriedFiles.h"
#include "pdf/CarriedFilesAnswer.h"
#include "pdf/ParsedPdf.h"

namespace rackbook {

namespace {

using PoDoFo::PdfObject;

constexpr int deepestNames = 32;

class FilesIn {
public:
    FilesIn(const ParsedPdf& pdf, std::size_t mostBytes) : m_pdf(pdf), m_bytesLeft(mostBytes) {}

    std::string answer() {
        appendText(m_answer, answerFound);
        const PdfObject* info = m_pdf.entry(m_pdf.trailer(), "Info");
        appendText(m_answer, textOf(m_pdf.entry(info, "Title")));
        appendText(m_answer, textOf(m_pdf.entry(info, "CreationDate")));
        const PdfObject* associated = m_pdf.entry(m_pdf.catalog(), "AF");
        if (associated && associated->IsArray()) {
            for (std::size_t i = 0; i < associated->GetArray().size(); ++i)
                addFile(m_pdf.resolved(&associated->GetArray()[i]));
        } else {
            addNamed(m_pdf.entry(m_pdf.entry(m_pdf.catalog(), "Names"), "EmbeddedFiles"), 0);
        }
        return m_answer;
    }

private:
    static std::string textOf(const PdfObject* object) {
        return object && (object->IsString() || object->IsHexString())
                   ? object->GetString().GetStringUtf8()
                   : std::string();
    }

    // A tree that comes back to itself ends at the depth or at the number of files.
    void addNamed(const PdfObject* node, int depth) {
        if (!node || depth > deepestNames || !m_seen.insert(node).second)
            return;
        const PdfObject* names = m_pdf.entry(node, "Names");
        if (names && names->IsArray())
            for (std::size_t i = 1; i < names->GetArray().size(); i += 2)
                addFile(m_pdf.resolved(&names->GetArray()[i]));
        const PdfObject* kids = m_pdf.entry(node, "Kids");
        if (kids && kids->IsArray())
            for (std::size_t i = 0; i < kids->GetArray().size(); ++i)
                addNamed(m_pdf.resolved(&kids->GetArray()[i]), depth + 1);
    }

    void addFile(const PdfObject* specification) {
        const PdfObject* streams = m_pdf.entry(specification, "EF");
        const PdfObject* stream = m_pdf.entry(streams, "UF");
        if (!stream)
            stream = m_pdf.entry(streams, "F");
        if (!stream || !stream->HasStream())
            return;
        if (++m_files > mostCarriedFiles)
            throw TooMany{};
        const PdfObject* name = m_pdf.entry(specification, "UF");
        appendText(m_answer, textOf(name ? name : m_pdf.entry(specification, "F")));
        const PdfObject* mediaType = m_pdf.entry(stream, "Subtype");
        appendText(m_answer,
                   mediaType && mediaType->IsName() ? mediaType->GetName().GetName() : "");
        appendText(m_answer, textOf(m_pdf.entry(specification, "Desc")));
        const std::string bytes = decodedStream(*stream, m_bytesLeft);
        m_bytesLeft -= bytes.size();
        appendText(m_answer, bytes);
    }

    const ParsedPdf& m_pdf;
    std::size_t m_bytesLeft;
    std::size_t m_files = 0;
    std::set<const PdfObject*> m_seen;
    std::string m_answer;
};

}  // namespace

std::string carriedFilesAnswer(const std::string& path, std::size_t mostBytes) {
    return answerFromPdf(path,
                         [&](const ParsedPdf& pdf) { return FilesIn(pdf, mostBytes).answer(); });
}

}  // namespace rackbook
