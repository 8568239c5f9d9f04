#include "pdf/FilesInside.h"

#include <algorithm>

#include "base/Text.h"
#include "pdf/PdfMetadata.h"
#include "pdf/PdfValues.h"

namespace rackbook {

namespace {

using PoDoFo::PdfArray;
using PoDoFo::PdfDictionary;
using PoDoFo::PdfName;
using PoDoFo::PdfReference;

// The older of the two names is a string of bytes without an encoding of its own.
std::string inAscii(const std::string& name) {
    std::string plain;
    for (const char32_t c : codePoints(name))
        plain += c < 0x80 ? static_cast<char>(c) : '_';
    return plain;
}

PdfReference streamOf(PoDoFo::PdfMemDocument& document, const AssociatedFile& file,
                      const std::string& date) {
    PoDoFo::PdfObject* stream = document.GetObjects().CreateObject("EmbeddedFile");
    stream->GetDictionary().AddKey("Subtype", PdfName(file.mediaType));
    PdfDictionary parameters;
    parameters.AddKey("Size", wholeNumber(file.bytes.size()));
    parameters.AddKey("ModDate", PoDoFo::PdfString(date));
    stream->GetDictionary().AddKey("Params", parameters);
    setCompressed(*stream, file.bytes);
    return stream->Reference();
}

PdfReference specificationOf(PoDoFo::PdfMemDocument& document, const AssociatedFile& file,
                             const std::string& date) {
    const PdfReference stream = streamOf(document, file, date);
    PdfDictionary streams;
    streams.AddKey("F", stream);
    streams.AddKey("UF", stream);
    PoDoFo::PdfObject* specification = document.GetObjects().CreateObject("Filespec");
    PdfDictionary& dictionary = specification->GetDictionary();
    dictionary.AddKey("F", PoDoFo::PdfString(inAscii(file.name)));
    dictionary.AddKey("UF", unicodeString(file.name));
    if (!file.description.empty())
        dictionary.AddKey("Desc", unicodeString(file.description));
    dictionary.AddKey("AFRelationship", PdfName("Source"));
    dictionary.AddKey("EF", streams);
    return specification->Reference();
}

struct Named {
    PoDoFo::PdfString key;
    PdfReference specification;
};

std::string bytesOf(const PoDoFo::PdfString& text) {
    return {text.GetString(), static_cast<std::size_t>(text.GetLength())};
}

// One node holds all: a sheet carries a handful.
PdfDictionary nameTree(std::vector<Named> files) {
    std::sort(files.begin(), files.end(),
              [](const Named& a, const Named& b) { return bytesOf(a.key) < bytesOf(b.key); });
    PdfArray names;
    for (const Named& file : files) {
        names.push_back(file.key);
        names.push_back(file.specification);
    }
    PdfDictionary tree;
    tree.AddKey("Names", names);
    return tree;
}

}  // namespace

void putFilesInside(PoDoFo::PdfMemDocument& document, const std::vector<AssociatedFile>& files,
                    const std::string& created) {
    if (files.empty())
        return;
    const std::string date = pdfDate(created);
    PdfArray associated;
    std::vector<Named> named;
    for (const AssociatedFile& file : files) {
        const PdfReference specification = specificationOf(document, file, date);
        associated.push_back(specification);
        named.push_back({hexadecimalString(file.name), specification});
    }
    PdfDictionary names;
    names.AddKey("EmbeddedFiles", nameTree(std::move(named)));
    PdfDictionary& catalog = document.GetCatalog()->GetDictionary();
    catalog.AddKey("AF", associated);
    catalog.AddKey("Names", names);
}

}  // namespace rackbook
