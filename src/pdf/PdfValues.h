// Values as the PDF library wants them. Private to pdf/.
#pragma once

#include <podofo/podofo.h>

#include <string>

namespace rackbook {

// Pre: valid UTF-8.
inline PoDoFo::PdfString unicodeString(const std::string& text) {
    return PoDoFo::PdfString(reinterpret_cast<const PoDoFo::pdf_utf8*>(text.c_str()));
}

// The same written in hexadecimal digits. poppler misreads long strings in parentheses that stand
// early in a file with many objects, some of them free: it takes the numbers of free objects for
// places in the file, and the string for one that runs into another object.
inline PoDoFo::PdfString hexadecimalString(const std::string& text) {
    const PoDoFo::PdfString plain = unicodeString(text);
    const std::string bytes =
        "\xFE\xFF" + std::string(plain.GetString(), static_cast<std::size_t>(plain.GetLength()));
    return {bytes.data(), static_cast<PoDoFo::pdf_long>(bytes.size()), true};
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
