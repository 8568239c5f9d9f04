// What the guarded process tells of the files inside a PDF: texts, each after its length.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>

namespace rackbook {

// The first text of an answer. After `found` follow title, date (as the PDF has it), and name,
// media type, description and bytes of each file.
constexpr const char* answerFound = "found";
constexpr const char* answerEncrypted = "encrypted";
constexpr const char* answerDamaged = "damaged";
constexpr const char* answerTooLarge = "too large";

inline void appendText(std::string& answer, const std::string& text) {
    for (unsigned shift = 0; shift < 64; shift += 8)
        answer += static_cast<char>((static_cast<std::uint64_t>(text.size()) >> shift) & 0xFF);
    answer += text;
}

// Takes texts off an answer, which may be anything.
class AnswerTexts {
public:
    explicit AnswerTexts(const std::string& answer) : m_answer(answer) {}

    bool atEnd() const { return m_at == m_answer.size(); }

    // Nothing where no whole text is left.
    std::optional<std::string> next() {
        constexpr std::size_t lengthBytes = 8;
        if (m_answer.size() - m_at < lengthBytes)
            return std::nullopt;
        std::uint64_t length = 0;
        for (std::size_t i = lengthBytes; i-- > 0;)
            length = length << 8 | static_cast<unsigned char>(m_answer[m_at + i]);
        if (length > m_answer.size() - m_at - lengthBytes)
            return std::nullopt;
        m_at += lengthBytes + static_cast<std::size_t>(length);
        return m_answer.substr(m_at - static_cast<std::size_t>(length),
                               static_cast<std::size_t>(length));
    }

private:
    const std::string& m_answer;
    std::size_t m_at = 0;
};

}  // namespace rackbook
