#include "cli/HarmlessStream.h"

#include <algorithm>
#include <array>

#include "base/Text.h"

namespace rackbook {

namespace {

// Those of Console.cpp.
constexpr std::array<std::string_view, 3> colourSequences = {"\x1b[0m", "\x1b[1m", "\x1b[31m"};

bool isPlain(char c) {
    return (c >= 0x20 && c < 0x7F) || c == '\n' || c == '\t';
}

bool beginsWith(std::string_view text, std::string_view beginning) {
    return text.substr(0, beginning.size()) == beginning;
}

// Bytes of the character that `first` begins, as far as it tells.
std::size_t lengthAfter(char first) {
    const auto byte = static_cast<unsigned char>(first);
    return byte >= 0xF0 ? 4 : byte >= 0xE0 ? 3 : byte >= 0xC0 ? 2 : 1;
}

// Whether more may follow that belongs to what stands at the beginning of `text`.
bool isBegun(std::string_view text, bool colours) {
    if (text[0] == '\r')
        return text.size() == 1;
    if (text[0] == '\x1b')
        return colours && std::any_of(colourSequences.begin(), colourSequences.end(),
                                      [&](std::string_view sequence) {
                                          return text.size() < sequence.size() &&
                                                 beginsWith(sequence, text);
                                      });
    return text.size() < lengthAfter(text[0]);
}

// Bytes at the beginning of `text` that stay as they are although not plain, or 0.
std::size_t allowedAt(std::string_view text, bool colours) {
    if (beginsWith(text, "\r\n"))
        return 2;
    for (const std::string_view sequence : colourSequences)
        if (colours && beginsWith(text, sequence))
            return sequence.size();
    return 0;
}

}  // namespace

HarmlessBuffer::~HarmlessBuffer() {
    pass({}, true);
}

void HarmlessBuffer::pass(std::string_view text, bool isEnd) {
    std::string joined;
    if (!m_begun.empty()) {
        joined = m_begun + std::string(text);
        m_begun.clear();
        text = joined;
    }
    while (!text.empty()) {
        const auto odd = std::find_if_not(text.begin(), text.end(), isPlain);
        const auto plain = static_cast<std::size_t>(odd - text.begin());
        m_to.write(text.data(), static_cast<std::streamsize>(plain));
        text.remove_prefix(plain);
        if (text.empty())
            return;
        if (!isEnd && isBegun(text, m_colours)) {
            m_begun = text;
            return;
        }
        std::size_t length = allowedAt(text, m_colours);
        if (length > 0) {
            m_to.write(text.data(), static_cast<std::streamsize>(length));
        } else {
            length = std::min(text.size(), lengthAfter(text[0]));
            // What is no UTF-8 goes byte by byte.
            if (invalidUtf8At(text.substr(0, length)))
                length = 1;
            m_to << printable(text.substr(0, length));
        }
        text.remove_prefix(length);
    }
}

HarmlessBuffer::int_type HarmlessBuffer::overflow(int_type c) {
    if (traits_type::eq_int_type(c, traits_type::eof()))
        return traits_type::not_eof(c);
    const char one = traits_type::to_char_type(c);
    return xsputn(&one, 1) == 1 ? c : traits_type::eof();
}

std::streamsize HarmlessBuffer::xsputn(const char* text, std::streamsize count) {
    pass({text, static_cast<std::size_t>(count)}, false);
    return m_to ? count : 0;
}

int HarmlessBuffer::sync() {
    m_to.flush();
    return m_to ? 0 : -1;
}

std::ostream& streamBehind(std::ostream& stream) {
    auto* guard = dynamic_cast<HarmlessBuffer*>(stream.rdbuf());
    return guard == nullptr ? stream : guard->behind();
}

}  // namespace rackbook
