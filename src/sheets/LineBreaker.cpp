#include "sheets/LineBreaker.h"

#include <algorithm>

#include "base/Text.h"

namespace rackbook {

namespace {

constexpr double tolerance_mm = 1e-6;

bool isLetter(char32_t c) {
    return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= 0xC0 && c < 0x2000);
}

bool isMark(char32_t c) {
    return (c >= 0x0300 && c <= 0x036F) || (c >= 0x1AB0 && c <= 0x1AFF) ||
           (c >= 0x1DC0 && c <= 0x1DFF) || (c >= 0x20D0 && c <= 0x20FF) ||
           (c >= 0x3099 && c <= 0x309A);
}

// Kana, ideographs and the marks set with them, wide and narrow.
bool isEastAsian(char32_t c) {
    return (c >= 0x3000 && c <= 0x30FF) || (c >= 0x31F0 && c <= 0x31FF) ||
           (c >= 0x3400 && c <= 0x9FFF) || (c >= 0xF900 && c <= 0xFAFF) ||
           (c >= 0xFF01 && c <= 0xFF9F);
}

bool isDigit(char32_t c) {
    return c >= '0' && c <= '9';
}

bool isNoBreakSpace(char32_t c) {
    return c == 0x00A0 || c == 0x202F;
}

// What no line of Japanese begins or ends with: closing and opening brackets, stops, small kana,
// marks of length and repetition (JIS X 4051, classes of characters, from memory).
bool mayBeginLine(char32_t c) {
    static constexpr std::u32string_view never =
        U"）］｝」』】〉》〕〗〙〟、。，．・：；？！％ーｰ々〻ゝゞヽヾぁぃぅぇぉっゃゅょゎゕゖァィゥ"
        U"ェォッャュョヮヵヶ"
        U"ｧｨｩｪｫｬｭｮｯ｡､｣･～〜‐–…‥’”)]},.:;?!%/°";
    return never.find(c) == std::u32string_view::npos && !(c >= 0x31F0 && c <= 0x31FF);
}

bool mayEndLine(char32_t c) {
    static constexpr std::u32string_view never = U"（［｛「『【〈《〔〖〘〝｢‘“([{";
    return never.find(c) == std::u32string_view::npos;
}

// A figure keeps the word of what it counts: 20日.
bool breaksBetweenEastAsian(char32_t c, char32_t after) {
    if (!isEastAsian(c) && !isEastAsian(after))
        return false;
    if (isMark(after) || isNoBreakSpace(c) || isNoBreakSpace(after) || isDigit(c))
        return false;
    return mayEndLine(c) && mayBeginLine(after);
}

// Otherwise between letters only, so that 7/30, PB15-3 and 2004-06 stay whole.
bool breaksAfter(char32_t c, char32_t before, char32_t after) {
    if (breaksBetweenEastAsian(c, after))
        return true;
    const bool divides = c == '-' || c == '/' || c == 0x2010 || c == 0x2013 || c == 0x2014;
    return divides && isLetter(before) && isLetter(after);
}

// Gathers the lines of one text.
class Breaking {
public:
    Breaking(const TextMeasurer& measurer, FontRole role, double size_pt, double width_mm)
        : m_measurer(measurer),
          m_role(role),
          m_size_pt(size_pt),
          m_limit_mm(width_mm + tolerance_mm),
          m_space_mm(measurer.width_mm(role, size_pt, " ")) {}

    // A part that may stand on a line of its own; spaced where a space stood before it.
    void add(std::string_view part, bool spaced) {
        const double part_mm = width_mm(part);
        const double gap_mm = spaced && !m_line.empty() ? m_space_mm : 0;
        if (m_width_mm + gap_mm + part_mm <= m_limit_mm) {
            append(part, gap_mm, part_mm);
            return;
        }
        if (!m_line.empty())
            endLine();
        if (part_mm <= m_limit_mm)
            append(part, 0, part_mm);
        else
            addByCodePoints(part);
    }

    void endLine() {
        m_lines.push_back(m_line);
        m_line.clear();
        m_width_mm = 0;
    }

    std::vector<std::string> lines() && { return std::move(m_lines); }

private:
    double width_mm(std::string_view part) const {
        return m_measurer.width_mm(m_role, m_size_pt, part);
    }

    void append(std::string_view part, double gap_mm, double part_mm) {
        if (gap_mm > 0)
            m_line += ' ';
        m_line += part;
        m_width_mm += gap_mm + part_mm;
    }

    void addByCodePoints(std::string_view word) {
        const std::u32string points = codePoints(word);
        std::size_t point = 0;
        for (std::size_t at = 0; at < word.size();) {
            std::size_t length = offsetOfCodePoint(word.substr(at), 1);
            for (++point; point < points.size() && isMark(points[point]); ++point)
                length += offsetOfCodePoint(word.substr(at + length), 1);
            const std::string_view cluster = word.substr(at, length);
            const double cluster_mm = width_mm(cluster);
            if (!m_line.empty() && m_width_mm + cluster_mm > m_limit_mm)
                endLine();
            append(cluster, 0, cluster_mm);
            at += length;
        }
    }

    const TextMeasurer& m_measurer;
    FontRole m_role;
    double m_size_pt;
    double m_limit_mm;
    double m_space_mm;
    std::vector<std::string> m_lines;
    std::string m_line;
    double m_width_mm = 0;
};

// A word in the parts between which a line may end.
template <class Parts>
void addWord(Parts& parts, std::string_view word) {
    const std::u32string points = codePoints(word);
    std::size_t from = 0;
    std::size_t at = 0;
    bool spaced = true;
    for (std::size_t i = 0; i < points.size(); ++i) {
        at += offsetOfCodePoint(word.substr(at), 1);
        const char32_t before = i > 0 ? points[i - 1] : 0;
        const bool last = i + 1 == points.size();
        if (!last && !breaksAfter(points[i], before, points[i + 1]))
            continue;
        parts.add(word.substr(from, at - from), spaced);
        spaced = false;
        from = at;
    }
}

template <class Parts>
void addText(Parts& parts, std::string_view text) {
    for (std::size_t from = 0; from <= text.size();) {
        const std::size_t lineEnd = std::min(text.find('\n', from), text.size());
        for (std::size_t at = from; at < lineEnd;) {
            const std::size_t wordEnd = std::min(text.find(' ', at), lineEnd);
            if (wordEnd > at)
                addWord(parts, text.substr(at, wordEnd - at));
            at = wordEnd + 1;
        }
        parts.endLine();
        from = lineEnd + 1;
    }
}

// Keeps nothing of a text but the width of its widest part.
class Widest {
public:
    Widest(const TextMeasurer& measurer, FontRole role, double size_pt)
        : m_measurer(measurer), m_role(role), m_size_pt(size_pt) {}

    void add(std::string_view part, bool) {
        m_width_mm = std::max(m_width_mm, m_measurer.width_mm(m_role, m_size_pt, part));
    }
    void endLine() {}
    double width_mm() const { return m_width_mm; }

private:
    const TextMeasurer& m_measurer;
    FontRole m_role;
    double m_size_pt;
    double m_width_mm = 0;
};

}  // namespace

std::vector<std::string> breakLines(const TextMeasurer& measurer, FontRole role, double size_pt,
                                    std::string_view text, double width_mm) {
    Breaking breaking(measurer, role, size_pt, width_mm);
    addText(breaking, text);
    return std::move(breaking).lines();
}

double leastWidth_mm(const TextMeasurer& measurer, FontRole role, double size_pt,
                     std::string_view text) {
    Widest widest(measurer, role, size_pt);
    addText(widest, text);
    return widest.width_mm();
}

}  // namespace rackbook
