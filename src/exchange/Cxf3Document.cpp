#include "exchange/Cxf3Document.h"

#include <QByteArray>
#include <QString>
#include <QStringTokenizer>
#include <QXmlStreamReader>

#include "base/Text.h"

namespace rackbook {

namespace {

constexpr QLatin1StringView coreNamespace("http://colorexchangeformat.com/CxF3-core");
constexpr std::size_t mostObjects = 20'000;
constexpr std::size_t mostSpecifications = 1000;
constexpr std::size_t mostNumbers = 1000;
constexpr int deepest = 12;

std::string bytesOf(QStringView text) {
    return text.toUtf8().toStdString();
}

class DocumentReader {
public:
    DocumentReader(std::string_view bytes, MeasurementDraft& draft)
        : m_xml(QByteArray::fromRawData(bytes.data(), static_cast<qsizetype>(bytes.size()))),
          m_draft(draft) {}

    Cxf3Document read() {
        if (reachRoot())
            readRoot();
        if (m_xml.hasError() && !m_hasStopped)
            m_draft.refuse({line(), {}, {}},
                           "this is not well-formed XML: " + bytesOf(m_xml.errorString()),
                           "Export the file again; it may be cut short.");
        return std::move(m_document);
    }

private:
    int line() const { return static_cast<int>(m_xml.lineNumber()); }

    void stop(const std::string& what, const std::string& remedy) {
        m_draft.refuse({line(), {}, {}}, what, remedy);
        m_hasStopped = true;
        m_xml.raiseError(QStringLiteral("stopped"));
    }

    // A DTD may stand before the root only.
    bool reachRoot() {
        while (!m_xml.atEnd() && !m_xml.isStartElement()) {
            m_xml.readNext();
            if (m_xml.isDTD())
                stop("the document has a DTD", "Leave out DOCTYPE; CxF has none.");
        }
        if (m_xml.hasError() || !m_xml.isStartElement())
            return false;
        if (m_xml.name() != QLatin1StringView("CxF")) {
            stop("the root element is " + excerpt(bytesOf(m_xml.name())),
                 "Give CxF/X core: its root is CxF.");
            return false;
        }
        if (m_xml.namespaceUri() != coreNamespace) {
            stop("the namespace of CxF is \"" + excerpt(bytesOf(m_xml.namespaceUri())) + "\"",
                 "Export as CxF3: its namespace is http://colorexchangeformat.com/CxF3-core.");
            return false;
        }
        return true;
    }

    // Calls `take` for each child element of that name, and reads past all others.
    template <class Take>
    void forEach(const char* name, const Take& take) {
        while (m_xml.readNextStartElement()) {
            if (isCore(name))
                take();
            else
                m_xml.skipCurrentElement();
        }
    }

    bool isCore(const char* name) const {
        return m_xml.name() == QLatin1StringView(name) && m_xml.namespaceUri() == coreNamespace;
    }

    std::string attribute(const char* name) const {
        return bytesOf(m_xml.attributes().value(QLatin1StringView(name)));
    }

    void readRoot() {
        forEach("Resources", [&] {
            while (m_xml.readNextStartElement()) {
                if (isCore("ObjectCollection"))
                    forEach("Object", [&] { readObject(); });
                else if (isCore("ColorSpecificationCollection"))
                    forEach("ColorSpecification", [&] { readSpecification(); });
                else
                    m_xml.skipCurrentElement();
            }
        });
        while (!m_xml.atEnd())
            m_xml.readNext();
    }

    void readObject() {
        Cxf3Object object;
        object.line = line();
        object.name = attribute("Name");
        object.id = attribute("Id");
        while (m_xml.readNextStartElement()) {
            if (isCore("CreationDate"))
                object.createdAt = bytesOf(m_xml.readElementText().trimmed());
            else if (isCore("ColorValues"))
                readColourValues(object);
            else
                m_xml.skipCurrentElement();
        }
        if (object.values.empty())
            return;
        if (m_document.objects.size() == mostObjects) {
            stop("there are more than " + std::to_string(mostObjects) + " objects",
                 "Split the file.");
            return;
        }
        m_document.objects.push_back(std::move(object));
    }

    void readColourValues(Cxf3Object& object) {
        while (m_xml.readNextStartElement()) {
            Cxf3Values values;
            values.line = line();
            values.element = bytesOf(m_xml.name());
            values.specification = attribute("ColorSpecification");
            values.start_nm = attribute("StartWL");
            values.measuredAt = attribute("MeasureDate");
            if (isCore("ReflectanceSpectrum"))
                values.numbers = numbersIn(m_xml.readElementText());
            else if (isCore("ColorCIELab"))
                values.numbers = children({"L", "A", "B"});
            else if (isCore("ColorCIEXYZ"))
                values.numbers = children({"X", "Y", "Z"});
            else {
                m_xml.skipCurrentElement();
                continue;
            }
            object.values.push_back(std::move(values));
        }
    }

    std::vector<std::string> numbersIn(const QString& text) {
        std::vector<std::string> numbers;
        const QString plain = text.simplified();
        for (const QStringView number : qTokenize(plain, u' ', Qt::SkipEmptyParts)) {
            numbers.push_back(bytesOf(number));
            if (numbers.size() > mostNumbers)
                break;  // more than any axis that is taken
        }
        return numbers;
    }

    // The texts of children of these names, in their order; empty where there is none.
    std::vector<std::string> children(const std::vector<const char*>& names) {
        std::vector<std::string> texts(names.size());
        while (m_xml.readNextStartElement()) {
            bool isTaken = false;
            for (std::size_t i = 0; i < names.size() && !isTaken; ++i)
                if (isCore(names[i])) {
                    texts[i] = bytesOf(m_xml.readElementText().trimmed());
                    isTaken = true;
                }
            if (!isTaken)
                m_xml.skipCurrentElement();
        }
        return texts;
    }

    void readSpecification() {
        Cxf3Specification specification;
        const std::string id = attribute("Id");
        readTexts(specification, {}, 0);
        if (m_document.specifications.size() < mostSpecifications)
            m_document.specifications.emplace(id, std::move(specification));
    }

    // Of the element at hand and what is below it.
    void readTexts(Cxf3Specification& into, const std::string& path, int depth) {
        if (depth > deepest) {
            stop("elements are nested too deeply", "No ColorSpecification is; check the file.");
            return;
        }
        for (const QXmlStreamAttribute& one : m_xml.attributes())
            into.texts.emplace(path + "@" + bytesOf(one.name()), bytesOf(one.value()));
        QString text;
        while (!m_xml.atEnd()) {
            m_xml.readNext();
            if (m_xml.isEndElement())
                break;
            if (m_xml.isCharacters() && text.size() < 2000)
                text += m_xml.text();
            if (m_xml.isStartElement())
                readTexts(into, (path.empty() ? "" : path + "/") + bytesOf(m_xml.name()),
                          depth + 1);
        }
        if (!text.trimmed().isEmpty() && into.texts.size() < 200)
            into.texts.emplace(path, bytesOf(text.trimmed()));
    }

    QXmlStreamReader m_xml;
    MeasurementDraft& m_draft;
    Cxf3Document m_document;
    bool m_hasStopped = false;
};

}  // namespace

std::optional<std::string> Cxf3Specification::text(const std::string& path) const {
    const auto found = texts.find(path);
    return found == texts.end() ? std::nullopt : std::optional(found->second);
}

Cxf3Document cxf3Document(std::string_view bytes, MeasurementDraft& draft) {
    return DocumentReader(bytes, draft).read();
}

}  // namespace rackbook
