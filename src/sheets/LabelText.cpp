#include "sheets/LabelText.h"

#include <algorithm>
#include <cmath>

#include "base/Text.h"
#include "sheets/LineBreaker.h"

namespace rackbook {

namespace {

constexpr double tolerance_mm = 1e-6;
constexpr double lineStep = 1.25;  // of the type size
constexpr double oneStepSmaller = 0.93;

double sizeAt(const LabelLine& line, int step) {
    return std::max(line.least_pt, line.size_pt * std::pow(oneStepSmaller, step));
}

bool isLetterOfWord(char32_t c) {
    constexpr char32_t firstEastAsian = 0x2E80;
    const bool isJoint = c == U'-' || c == U'/' || (c >= 0x2010 && c <= 0x2015);
    return c < firstEastAsian && !isJoint;
}

// Whether a line ends inside a word. Pre: single spaces in the text.
bool partsWord(const std::string& text, const std::vector<std::string>& lines) {
    std::size_t at = 0;
    for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
        at += lines[i].size();
        if (at < text.size() && text[at] == ' ') {
            ++at;
            continue;
        }
        const std::u32string before = codePoints(lines[i]);
        const std::u32string after = codePoints(lines[i + 1]);
        if (!before.empty() && !after.empty() && isLetterOfWord(before.back()) &&
            isLetterOfWord(after.front()))
            return true;
    }
    return false;
}

std::string withSingleSpaces(const std::string& text) {
    std::string single;
    for (const char c : text)
        if (c != ' ' || (!single.empty() && single.back() != ' '))
            single += c;
    while (!single.empty() && single.back() == ' ')
        single.pop_back();
    return single;
}

class LabelFitting {
public:
    LabelFitting(const std::vector<LabelLine>& lines, const LabelRoom& room,
                 const TextMeasurer& measurer)
        : m_lines(lines), m_room(room), m_measurer(measurer) {
        for (LabelLine& line : m_lines)
            line.text = withSingleSpaces(line.text);
    }

    std::optional<std::vector<SetLabelLine>> fit(bool mayPartWords) const {
        for (int step = 0;; ++step) {
            std::optional<std::vector<SetLabelLine>> set = at(step, mayPartWords);
            if (set)
                return set;
            const bool isLeast = std::all_of(
                m_lines.begin(), m_lines.end(),
                [&](const LabelLine& line) { return sizeAt(line, step) <= line.least_pt; });
            if (isLeast)
                return std::nullopt;
        }
    }

private:
    std::optional<std::vector<SetLabelLine>> at(int step, bool mayPartWords) const {
        std::vector<SetLabelLine> set;
        for (std::size_t i = 0; i < m_lines.size(); ++i) {
            const LabelLine& line = m_lines[i];
            const FontRole role = line.isStrong ? FontRole::bodyStrong : FontRole::body;
            const double size_pt = sizeAt(line, step);
            const std::vector<std::string> broken =
                breakLines(m_measurer, role, size_pt, line.text, m_room.width_mm);
            if (!mayPartWords && partsWord(line.text, broken))
                return std::nullopt;
            for (const std::string& text : broken) {
                if (m_measurer.width_mm(role, size_pt, text) > m_room.width_mm + tolerance_mm)
                    return std::nullopt;
                set.push_back({i, role, size_pt, text});
            }
        }
        if (heightOf(set) > m_room.height_mm + tolerance_mm)
            return std::nullopt;
        return set;
    }

    std::vector<LabelLine> m_lines;
    LabelRoom m_room;
    const TextMeasurer& m_measurer;
};

}  // namespace

double labelStep_mm(double size_pt) {
    return size_pt * lineStep * mmPerPoint;
}

double heightOf(const std::vector<SetLabelLine>& lines) {
    double sum_mm = 0;
    for (const SetLabelLine& line : lines)
        sum_mm += labelStep_mm(line.size_pt);
    return sum_mm;
}

std::optional<std::vector<SetLabelLine>> fittedLines(const std::vector<LabelLine>& lines,
                                                     const LabelRoom& room,
                                                     const TextMeasurer& measurer) {
    const LabelFitting fitting(lines, room, measurer);
    std::optional<std::vector<SetLabelLine>> whole = fitting.fit(false);
    return whole ? whole : fitting.fit(true);
}

}  // namespace rackbook
