#include "pdf/FormValuesParser.h"

#include <set>

#include "pdf/CarriedFilesAnswer.h"
#include "pdf/ParsedPdf.h"

namespace rackbook {

namespace {

using PoDoFo::PdfObject;

constexpr std::size_t mostFields = 10'000;
constexpr std::size_t mostNodes = 40'000;
constexpr int deepestFields = 32;

class FieldsIn {
public:
    FieldsIn(const ParsedPdf& pdf, std::size_t mostBytes) : m_pdf(pdf), m_mostBytes(mostBytes) {}

    std::string answer() {
        appendText(m_answer, answerFound);
        const PdfObject* form = m_pdf.entry(m_pdf.catalog(), "AcroForm");
        const PdfObject* fields = m_pdf.entry(form, "Fields");
        if (fields && fields->IsArray())
            for (std::size_t i = 0; i < fields->GetArray().size(); ++i)
                addNode(m_pdf.resolved(&fields->GetArray()[i]), {}, 0);
        return m_answer;
    }

private:
    // What fields inherit from those above them (ISO 32000-1, 12.7.3.1).
    struct Inherited {
        std::string name;  // texts, see FormValuesParser.h
        const PdfObject* kind = nullptr;
        const PdfObject* value = nullptr;
    };

    // A tree that comes back to itself ends where it was before.
    void addNode(const PdfObject* node, Inherited above, int depth) {
        if (!node || !node->IsDictionary() || depth > deepestFields || !m_seen.insert(node).second)
            return;
        if (m_seen.size() > mostNodes)
            throw TooLarge{};
        if (const PdfObject* name = m_pdf.entry(node, "T"))
            appendText(above.name, bytesOf(*name));
        if (const PdfObject* kind = m_pdf.entry(node, "FT"))
            above.kind = kind;
        if (const PdfObject* value = m_pdf.entry(node, "V"))
            above.value = value;
        const PdfObject* kids = m_pdf.entry(node, "Kids");
        if (kids && kids->IsArray() && hasNamedKid(*kids)) {
            for (std::size_t i = 0; i < kids->GetArray().size(); ++i)
                addNode(m_pdf.resolved(&kids->GetArray()[i]), above, depth + 1);
            return;
        }
        addField(*node, above);
    }

    // Kids without a name are only what pages show of the field.
    bool hasNamedKid(const PdfObject& kids) const {
        for (std::size_t i = 0; i < kids.GetArray().size(); ++i)
            if (m_pdf.entry(m_pdf.resolved(&kids.GetArray()[i]), "T"))
                return true;
        return false;
    }

    void addField(const PdfObject& field, const Inherited& known) {
        if (!known.kind || !known.kind->IsName() || known.name.empty())
            return;
        if (++m_fields > mostFields)
            throw TooLarge{};
        appendText(m_answer, known.name);
        if (known.kind->GetName().GetName() == "Btn") {
            appendText(m_answer, formTick);
            appendText(m_answer, isOn(field, known.value) ? formOn : "");
        } else {
            appendText(m_answer, formText);
            appendText(m_answer, known.value ? bytesOf(*known.value) : std::string());
        }
        if (m_answer.size() > m_mostBytes)
            throw TooLarge{};
    }

    // The value goes before what is shown.
    bool isOn(const PdfObject& field, const PdfObject* value) const {
        const PdfObject* state = value ? value : m_pdf.entry(&field, "AS");
        if (!state)
            return false;
        const std::string word = state->IsName() ? state->GetName().GetName() : bytesOf(*state);
        return !word.empty() && word != "Off";
    }

    // The library takes the mark of UTF-16 off, and turns it to its bigger end first.
    static std::string bytesOf(const PoDoFo::PdfString& string) {
        const std::string bytes(string.GetString(), static_cast<std::size_t>(string.GetLength()));
        return (string.IsUnicode() ? "\xFE\xFF" : "") + bytes;
    }

    // Some programs write what was chosen as a list of one.
    std::string bytesOf(const PdfObject& value) const {
        if (value.IsString() || value.IsHexString())
            return bytesOf(value.GetString());
        if (value.IsName())
            return value.GetName().GetName();
        if (value.HasStream())
            return decodedStream(value, m_mostBytes);
        const PdfObject* first = value.IsArray() && !value.GetArray().empty()
                                     ? m_pdf.resolved(&value.GetArray()[0])
                                     : nullptr;
        return first && !first->IsArray() ? bytesOf(*first) : std::string();
    }

    const ParsedPdf& m_pdf;
    std::size_t m_mostBytes;
    std::size_t m_fields = 0;
    std::set<const PdfObject*> m_seen;
    std::string m_answer;
};

}  // namespace

std::string formValuesAnswer(const std::string& path, std::size_t mostBytes) {
    return answerFromPdf(path,
                         [&](const ParsedPdf& pdf) { return FieldsIn(pdf, mostBytes).answer(); });
}

}  // namespace rackbook
