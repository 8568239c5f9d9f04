#include "pdf/PdfText.h"

#include <cstddef>

#include "base/Text.h"
#include "base/Utf8.h"

namespace rackbook {

namespace {

constexpr char32_t undecodable = 0xFFFD;

// ISO 32000-1, annex D.2: where PDFDocEncoding is not Latin 1.
constexpr char16_t from18[] = {0x02D8, 0x02C7, 0x02C6, 0x02D9, 0x02DD, 0x02DB, 0x02DA, 0x02DC};
constexpr char16_t from80[] = {
    0x2022, 0x2020, 0x2021, 0x2026, 0x2014, 0x2013, 0x0192, 0x2044, 0x2039, 0x203A, 0x2212,
    0x2030, 0x201E, 0x201C, 0x201D, 0x2018, 0x2019, 0x201A, 0x2122, 0xFB01, 0xFB02, 0x0141,
    0x0152, 0x0160, 0x0178, 0x017D, 0x0131, 0x0142, 0x0153, 0x0161, 0x017E, 0xFFFD, 0x20AC};

char32_t documentCharacter(unsigned char byte) {
    if (byte >= 0x18 && byte < 0x20)
        return from18[byte - 0x18];
    if (byte >= 0x80 && byte <= 0xA0)
        return from80[byte - 0x80];
    return byte == 0x7F || byte == 0xAD ? undecodable : byte;
}

class Utf16 {
public:
    Utf16(const std::string& bytes, bool bigEndian) : m_bytes(bytes), m_bigEndian(bigEndian) {}

    std::string text() {
        std::string text;
        while (m_at + 1 < m_bytes.size()) {
            const char32_t c = next();
            if (c == escape)
                passLanguage();
            else
                appendUtf8(text, c);
        }
        if (m_at < m_bytes.size())
            appendUtf8(text, undecodable);
        return text;
    }

private:
    static constexpr char32_t escape = 0x1B;

    char32_t unit() {
        const char32_t first = static_cast<unsigned char>(m_bytes[m_at]);
        const char32_t second = static_cast<unsigned char>(m_bytes[m_at + 1]);
        m_at += 2;
        return m_bigEndian ? first << 8 | second : second << 8 | first;
    }

    char32_t next() {
        const char32_t first = unit();
        if (first < 0xD800 || first > 0xDFFF)
            return first;
        if (first > 0xDBFF || m_at + 1 >= m_bytes.size())
            return undecodable;
        const char32_t second = unit();
        if (second < 0xDC00 || second > 0xDFFF) {
            m_at -= 2;
            return undecodable;
        }
        return 0x10000 + ((first - 0xD800) << 10) + (second - 0xDC00);
    }

    // "en" or "enUS", up to the next escape.
    void passLanguage() {
        const std::size_t start = m_at;
        while (m_at + 1 < m_bytes.size() && m_at - start <= 8)
            if (unit() == escape)
                return;
        m_at = start;
    }

    const std::string& m_bytes;
    bool m_bigEndian;
    std::size_t m_at = 2;  // after the mark
};

std::string soundUtf8(const std::string& bytes) {
    std::string text = bytes;
    for (auto wrong = invalidUtf8At(text); wrong; wrong = invalidUtf8At(text))
        text.replace(*wrong, 1, "\xEF\xBF\xBD");
    return text;
}

std::string withLineFeeds(const std::string& text) {
    std::string plain;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] == '\r' && i + 1 < text.size() && text[i + 1] == '\n')
            continue;
        plain += text[i] == '\r' ? '\n' : text[i];
    }
    return plain;
}

}  // namespace

std::string decodedPdfText(const std::string& bytes) {
    const auto startsWith = [&](const std::string& mark) { return bytes.rfind(mark, 0) == 0; };
    if (startsWith("\xFE\xFF"))
        return withLineFeeds(Utf16(bytes, true).text());
    if (startsWith("\xFF\xFE"))
        return withLineFeeds(Utf16(bytes, false).text());
    if (startsWith("\xEF\xBB\xBF"))
        return withLineFeeds(soundUtf8(bytes.substr(3)));
    std::string text;
    for (const char c : bytes)
        appendUtf8(text, documentCharacter(static_cast<unsigned char>(c)));
    return withLineFeeds(text);
}

}  // namespace rackbook
