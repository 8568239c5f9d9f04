// Values as the PDF library wants them.
#pragma once

#include <podofo/podofo.h>

#include <string>

namespace rackbook {

// Pre: valid UTF-8.
inline PoDoFo::PdfString unicodeString(const std::string& text) {
    return PoDoFo::PdfString(reinterpret_cast<const PoDoFo::pdf_utf8*>(text.c_str()));
}

// By way of a variant: the library's own overload for whole numbers crashes.
inline PoDoFo::PdfObject wholeNumber(std::size_t value) {
    return PoDoFo::PdfObject(PoDoFo::PdfVariant(static_cast<PoDoFo::pdf_int64>(value)));
}

inline void setBytes(PoDoFo::PdfObject& object, const std::string& bytes,
                     const PoDoFo::TVecFilters& filters) {
    object.GetStream()->Set(bytes.data(), static_cast<PoDoFo::pdf_long>(bytes.size()), filters);
}

// As they are.
inline void setUncompressed(PoDoFo::PdfObject& object, const std::string& bytes) {
    setBytes(object, bytes, {});
}

inline void setCompressed(PoDoFo::PdfObject& object, const std::string& bytes) {
    setBytes(object, bytes, {PoDoFo::ePdfFilter_FlateDecode});
}

}  // namespace rackbook
