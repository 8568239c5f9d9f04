#include "base/Text.h"

#include <QChar>
#include <QString>
#include <algorithm>

namespace rackbook {

namespace {

// Length of the well-formed sequence at `at` (RFC 3629, table 3-7 of Unicode), or 0.
std::size_t sequenceLength(std::string_view bytes, std::size_t at) {
    const auto byte = [&](std::size_t i) {
        return i < bytes.size() ? static_cast<unsigned char>(bytes[i]) : 0u;
    };
    const auto continues = [&](std::size_t i, unsigned low = 0x80, unsigned high = 0xBF) {
        return byte(i) >= low && byte(i) <= high;
    };
    const unsigned first = byte(at);
    if (first < 0x80)
        return 1;
    if (first >= 0xC2 && first <= 0xDF)
        return continues(at + 1) ? 2 : 0;
    if (first >= 0xE0 && first <= 0xEF) {
        const unsigned low = first == 0xE0 ? 0xA0 : 0x80;
        const unsigned high = first == 0xED ? 0x9F : 0xBF;
        return continues(at + 1, low, high) && continues(at + 2) ? 3 : 0;
    }
    if (first >= 0xF0 && first <= 0xF4) {
        const unsigned low = first == 0xF0 ? 0x90 : 0x80;
        const unsigned high = first == 0xF4 ? 0x8F : 0xBF;
        return continues(at + 1, low, high) && continues(at + 2) && continues(at + 3) ? 4 : 0;
    }
    return 0;
}

QString fromUtf8(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

bool steersTerminal(char32_t c) {
    return c < 0x20 || (c >= 0x7F && c <= 0x9F) || (c >= 0x202A && c <= 0x202E) ||
           (c >= 0x2066 && c <= 0x2069) || c == 0x2028 || c == 0x2029;
}

char32_t decode(std::string_view sequence) {
    const auto bits = [&](std::size_t i, unsigned mask) {
        return static_cast<char32_t>(static_cast<unsigned char>(sequence[i]) & mask);
    };
    switch (sequence.size()) {
        case 1:
            return bits(0, 0x7F);
        case 2:
            return (bits(0, 0x1F) << 6) | bits(1, 0x3F);
        case 3:
            return (bits(0, 0x0F) << 12) | (bits(1, 0x3F) << 6) | bits(2, 0x3F);
        default:
            return (bits(0, 0x07) << 18) | (bits(1, 0x3F) << 12) | (bits(2, 0x3F) << 6) |
                   bits(3, 0x3F);
    }
}

std::string escapeOf(char32_t c) {
    static constexpr char digits[] = "0123456789ABCDEF";
    std::string text = "\\u";
    for (int shift = 12; shift >= 0; shift -= 4)
        text += digits[(c >> shift) & 0xF];
    return text;
}

bool isWide(char32_t c) {
    return (c >= 0x1100 && c <= 0x115F) || (c >= 0x2E80 && c <= 0xA4CF) ||
           (c >= 0xAC00 && c <= 0xD7A3) || (c >= 0xF900 && c <= 0xFAFF) ||
           (c >= 0xFE30 && c <= 0xFE6F) || (c >= 0xFF00 && c <= 0xFF60) ||
           (c >= 0xFFE0 && c <= 0xFFE6) || (c >= 0x1F300 && c <= 0x1FAFF) ||
           (c >= 0x20000 && c <= 0x3FFFD);
}

std::size_t editDistance(std::u32string_view a, std::u32string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j)
        row[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t substituted = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
            diagonal = row[j];
            row[j] = std::min({substituted, row[j] + 1, row[j - 1] + 1});
        }
    }
    return row.back();
}

}  // namespace

std::optional<std::size_t> invalidUtf8At(std::string_view bytes) {
    for (std::size_t at = 0; at < bytes.size();) {
        const std::size_t length = sequenceLength(bytes, at);
        if (length == 0)
            return at;
        at += length;
    }
    return std::nullopt;
}

std::string printableLines(std::string_view text) {
    std::string lines;
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        lines += (at > 0 ? "\n" : "") + printable(text.substr(at, end - at));
        at = end + 1;
    }
    return lines;
}

bool isBlank(std::string_view text) {
    const std::u32string points = codePoints(text);
    return std::all_of(points.begin(), points.end(), [](char32_t c) {
        // U+2800 is a braille cell without dots, U+3164 and U+115F … are fillers without a shape.
        return QChar::isSpace(c) || QChar::category(c) == QChar::Other_Format || c == 0x2800 ||
               c == 0x3164 || c == 0x115F || c == 0x1160 || c == 0xFFA0;
    });
}

std::string trimmed(std::string_view text, std::string_view blanks) {
    const std::size_t first = text.find_first_not_of(blanks);
    return first == std::string_view::npos
               ? std::string()
               : std::string(text.substr(first, text.find_last_not_of(blanks) - first + 1));
}

std::string normalised(std::string_view text) {
    const bool ascii = std::all_of(text.begin(), text.end(),
                                   [](char c) { return static_cast<unsigned char>(c) < 0x80; });
    if (ascii)
        return std::string(text);
    return fromUtf8(text).normalized(QString::NormalizationForm_C).toStdString();
}

std::string printable(std::string_view text) {
    std::string safe;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t length = sequenceLength(text, at);
        if (length == 0) {
            safe += escapeOf(0xFFFD);
            ++at;
            continue;
        }
        const std::string_view sequence = text.substr(at, length);
        const char32_t c = decode(sequence);
        if (steersTerminal(c))
            safe += escapeOf(c);
        else
            safe += sequence;
        at += length;
    }
    return safe;
}

std::optional<char32_t> controlCharacterIn(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t length = std::max<std::size_t>(1, sequenceLength(text, at));
        const char32_t c = decode(text.substr(at, length));
        if (steersTerminal(c) && c != '\n' && c != '\t')
            return c;
        at += length;
    }
    return std::nullopt;
}

std::size_t offsetOfCodePoint(std::string_view text, std::size_t n) {
    std::size_t at = 0;
    for (; n > 0 && at < text.size(); --n)
        at += std::max<std::size_t>(1, sequenceLength(text, at));
    return at;
}

std::u32string codePoints(std::string_view text) {
    return fromUtf8(text).toStdU32String();
}

int displayWidth(std::string_view text) {
    int width = 0;
    for (const char32_t c : codePoints(text)) {
        const QChar::Category category = QChar::category(c);
        if (category == QChar::Mark_NonSpacing || category == QChar::Mark_Enclosing ||
            category == QChar::Other_Format)
            continue;
        width += isWide(c) ? 2 : 1;
    }
    return width;
}

std::optional<std::string> nearestName(std::string_view name,
                                       const std::vector<std::string>& candidates) {
    const std::u32string wanted = codePoints(fromUtf8(name).toLower().toStdString());
    const std::size_t most = std::min<std::size_t>(3, std::max<std::size_t>(1, wanted.size() / 3));
    std::optional<std::string> best;
    std::size_t bestDistance = most + 1;
    for (const std::string& candidate : candidates) {
        const std::u32string known = codePoints(fromUtf8(candidate).toLower().toStdString());
        const std::size_t distance = editDistance(wanted, known);
        if (distance < bestDistance) {
            bestDistance = distance;
            best = candidate;
        }
    }
    return best;
}

std::string joined(const std::vector<std::string>& parts, std::string_view lastSeparator) {
    std::string text;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (i > 0)
            text += i + 1 == parts.size() ? std::string(lastSeparator) : ", ";
        text += parts[i];
    }
    return text;
}

}  // namespace rackbook
