// A parsed PDF from outside. Private to pdf/, and only for a guarded process: the PDF library may
// crash or not come back.
#pragma once

#include <podofo/podofo.h>

#include <cstddef>
#include <functional>
#include <string>

namespace rackbook {

// Thrown where more is held than may be given back.
struct TooLarge {};
// Thrown where more things are held than may be given back.
struct TooMany {};

class ParsedPdf {
public:
    ParsedPdf(PoDoFo::PdfVecObjects& objects, const PoDoFo::PdfObject& trailer)
        : m_objects(objects), m_trailer(trailer) {}

    const PoDoFo::PdfObject* trailer() const { return &m_trailer; }
    const PoDoFo::PdfObject* catalog() const { return entry(&m_trailer, "Root"); }

    // What it refers to, or itself. References to references do not stand in files that are sound.
    const PoDoFo::PdfObject* resolved(const PoDoFo::PdfObject* object) const;

    // The member of a dictionary, resolved; nothing where there is none.
    const PoDoFo::PdfObject* entry(const PoDoFo::PdfObject* parent, const char* key) const;

private:
    PoDoFo::PdfVecObjects& m_objects;
    const PoDoFo::PdfObject& m_trailer;
};

// The bytes of a stream without its filters. Throws TooLarge beyond `most`.
std::string decodedStream(const PoDoFo::PdfObject& stream, std::size_t most);

// Parses the file and gives what the work makes of it, or the word that says why not (see
// CarriedFilesAnswer.h).
std::string answerFromPdf(const std::string& path,
                          const std::function<std::string(const ParsedPdf&)>& work);

}  // namespace rackbook
