#include "exchange/LightLog.h"

#include <algorithm>

#include "base/Error.h"
#include "base/Files.h"
#include "base/Numbers.h"
#include "base/Text.h"
#include "base/Utf8.h"
#include "exchange/LogTable.h"
#include "exchange/TextBytes.h"

namespace rackbook {

namespace {

constexpr std::size_t mostBytes = std::size_t{16} << 20;
constexpr double ms_min = 60'000;

std::string valueText(double value, LightQuantity quantity) {
    return formatShortest(value) + " " + nameOf(quantity);
}

// "2 d 3 h 10 min"
std::string durationText(std::int64_t duration_ms) {
    std::int64_t rest_s = duration_ms / 1000;
    std::string text;
    for (const auto& [length_s, name] :
         {std::pair(86'400, "d"), std::pair(3'600, "h"), std::pair(60, "min"), std::pair(1, "s")}) {
        if (rest_s >= length_s)
            text += (text.empty() ? "" : " ") + std::to_string(rest_s / length_s) + " " + name;
        rest_s %= length_s;
    }
    return text.empty() ? std::to_string(duration_ms) + " ms" : text;
}

// In the languages of Europe, and as UV or UVA.
bool saysUltraviolet(const std::string& heading) {
    std::string plain;
    for (const char c : heading)
        plain += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    return plain.find("uv") != std::string::npos || plain.find("ultravi") != std::string::npos;
}

class LogReader {
public:
    LogReader(const LightLogTerms& terms, LogFindings& findings)
        : m_terms(terms), m_findings(findings) {
        m_log.quantity = quantityOf(terms.unit);
    }

    LightLog read(std::string_view text) {
        m_heading = logHeadingIn(text, m_terms, m_findings);
        requireUnit();
        m_lines = logLinesIn(text, m_heading, m_terms, m_findings);
        findMoments(m_lines, m_terms.clock, m_findings);
        requireOrder();
        requirePast();
        requirePossibleValues();
        m_findings.requireNothingRefused();
        takeSamples();
        noteGaps();
        noteOthers();
        m_log.notes = m_findings.notes();
        return std::move(m_log);
    }

private:
    const std::string& valueName() const { return m_heading.names[m_heading.value]; }

    void requireUnit() {
        const std::optional<std::string> said = unitWordIn(valueName());
        if (said && said != unitWordIn(nameOf(m_terms.unit)))
            m_findings.refuse(
                {m_heading.line, valueName()},
                std::string("the heading names another unit than ") + nameOf(m_terms.unit),
                "Say the unit that the log is in.");
    }

    // Against the line before each, so that one jump back is told once.
    void requireOrder() {
        const LogLine* before = nullptr;
        for (const LogLine& line : m_lines) {
            if (before && line.utc_ms && *line.utc_ms < *before->utc_ms)
                m_findings.refuse({line.line, {}},
                                  "time goes back, from " + before->timeText + " in line " +
                                      std::to_string(before->line),
                                  orderRemedy(), line.timeText);
            else if (before && line.utc_ms == before->utc_ms && line.value && before->value &&
                     *line.value != *before->value)
                m_findings.refuse({line.line, valueName()},
                                  "the value is " + valueText(*line.value, m_log.quantity) +
                                      ", and " + valueText(*before->value, m_log.quantity) +
                                      " at the same time in line " + std::to_string(before->line),
                                  "Take one of the two lines out.", line.timeText);
            if (line.utc_ms)
                before = &line;
        }
    }

    std::string orderRemedy() const {
        const std::string remedy =
            "Put the lines in the order of time; split the log where the logger was set.";
        return m_terms.clock.kind() == LogClock::Kind::fixed
                   ? remedy + " Where it has summer time, say that it shows the wall clock."
                   : remedy;
    }

    // A wrong clock or order of dates puts many lines ahead at once.
    void requirePast() {
        if (!m_terms.present)
            return;
        const LogLine* first = nullptr;
        std::size_t ahead = 0;
        for (const LogLine& line : m_lines)
            if (line.utc_ms && *line.utc_ms >= (m_terms.present->utc_min + 1) * 60'000) {
                first = first ? first : &line;
                ++ahead;
            }
        if (first)
            m_findings.refuse(
                {first->line, {}},
                "this time is still to come" +
                    (ahead > 1 ? ", and so it is in " + std::to_string(ahead) + " lines in all"
                               : std::string()),
                "It is " + m_terms.present->words +
                    ": check the clock and the order of dates (--clock, --date-order); where they "
                    "hold, take out what the logger cannot have seen yet.",
                first->timeText);
    }

    // A wrong unit makes many lines impossible at once.
    void requirePossibleValues() {
        const double most = highestPossible(m_log.quantity);
        const LogLine* highest = nullptr;
        std::size_t above = 0;
        for (const LogLine& line : m_lines)
            if (line.value && *line.value > most) {
                ++above;
                highest = !highest || *line.value > *highest->value ? &line : highest;
            }
        if (!highest)
            return;
        m_findings.refuse(
            {highest->line, valueName()},
            "the light is " + valueText(*highest->value, m_log.quantity) +
                (above > 1 ? ", and too high in " + std::to_string(above) + " lines in all"
                           : std::string()) +
                "; full sun stays below " + formatFixed(most, 0) + " " + nameOf(m_log.quantity),
            std::string("Check that the log is in ") + nameOf(m_terms.unit) +
                "; where it is, take out what the logger cannot have seen.");
    }

    void takeSamples() {
        m_log.columns.time = m_heading.names[m_heading.time];
        m_log.columns.value = valueName();
        if (m_heading.date)
            m_log.columns.date = m_heading.names[*m_heading.date];
        for (const LogLine& line : m_lines) {
            if (!m_kept.empty() && m_kept.back()->utc_ms == line.utc_ms) {
                ++m_log.repeatedLines;
                continue;
            }
            m_kept.push_back(&line);
            m_log.samples.push_back({static_cast<double>(*line.utc_ms) / ms_min, *line.value});
        }
    }

    void noteGaps() {
        std::vector<std::int64_t> times_ms;
        for (const LogLine* line : m_kept)
            times_ms.push_back(*line->utc_ms);
        const std::optional<std::int64_t> usual_ms = medianStep_ms(times_ms);
        if (!usual_ms)
            return;
        m_log.usualStep_min = static_cast<double>(*usual_ms) / ms_min;
        for (std::size_t i = 1; i < m_kept.size(); ++i) {
            const std::int64_t step_ms = times_ms[i] - times_ms[i - 1];
            if (step_ms <= gapSteps * *usual_ms)
                continue;
            m_log.gaps.push_back({m_log.samples[i - 1].utc_min, m_log.samples[i].utc_min});
            m_findings.note({m_kept[i]->line, {}},
                            "nothing was logged from " + m_kept[i - 1]->timeText + " to " +
                                m_kept[i]->timeText + ", " + durationText(step_ms) +
                                "; the usual step is " + durationText(*usual_ms),
                            "The light of that time is not known.");
        }
    }

    void noteOthers() {
        if (m_log.repeatedLines > 0)
            m_findings.note({},
                            std::to_string(m_log.repeatedLines) +
                                (m_log.repeatedLines == 1 ? " line has" : " lines have") +
                                " the time and value of the line before",
                            "Such lines count once.");
        // All of sunlight has some 20 times the watts of its ultraviolet (ASTM G173-03: 4.5 %).
        if (m_log.quantity == LightQuantity::ultravioletA_Wm2 && !saysUltraviolet(valueName()))
            m_findings.note({m_heading.line, valueName()},
                            "the heading does not say that this is ultraviolet; all of sunlight "
                            "has some 20 times as much",
                            "Take it only where the logger measures UV-A (315 to 400 nm).");
        double highest = 0;
        for (const LightSample& sample : m_log.samples)
            highest = std::max(highest, sample.value);
        if (highest < leastOfLitPlaces(m_log.quantity))
            m_findings.note({}, "no value goes above " + valueText(highest, m_log.quantity),
                            std::string("Where the place is not dark, check that the log is in ") +
                                nameOf(m_terms.unit) + ".");
    }

    const LightLogTerms& m_terms;
    LogFindings& m_findings;
    LogHeading m_heading;
    std::vector<LogLine> m_lines;
    std::vector<const LogLine*> m_kept;  // those that became samples
    LightLog m_log;
};

}  // namespace

LightLog lightLogIn(std::string_view bytes, const std::string& file, const LightLogTerms& terms) {
    if (bytes.substr(0, byteOrderMark.size()) == byteOrderMark)
        bytes.remove_prefix(byteOrderMark.size());
    LogFindings findings(file);
    if (bytes.size() > mostBytes)
        findings.refuse({}, "the file is larger than 16 MB", "Split it.");
    else if (const auto fault = textFaultIn(bytes, "Give the log as CSV."))
        findings.refuse({fault->line, {}}, fault->what, fault->remedy);
    findings.requireNothingRefused();
    return LogReader(terms, findings).read(bytes);
}

LightLog readLightLog(const std::string& path, const LightLogTerms& terms) {
    return lightLogIn(readFile(path, mostBytes), path, terms);
}

}  // namespace rackbook
