#include "exchange/CgatsHeader.h"

#include <sstream>
#include <vector>

#include "base/Error.h"
#include "base/Text.h"
#include "exchange/CgatsScan.h"
#include "exchange/MeasurementWords.h"

namespace rackbook {

namespace {

constexpr std::size_t longestGeometry = 80;
constexpr std::size_t longestInstrument = 500;

// A statement as it was found, and where.
struct Stated {
    std::string keyword;
    std::string text;
};

class HeaderReader {
public:
    HeaderReader(const CgatsKeywords& keywords, bool hasComputed, int line, MeasurementDraft& draft)
        : m_keywords(keywords), m_hasComputed(hasComputed), m_line(line), m_draft(draft) {}

    Reading read() {
        Reading reading;
        if (m_hasComputed)
            takeLight(reading);
        reading.condition = settled<MeasurementCondition>(
            {sourcePart("MeasurementCondition"), plain("MEASUREMENT_CONDITION"), plain("FILTER")},
            conditionIn, {});
        if (const auto backing = m_keywords.value("SAMPLE_BACKING"))
            reading.backing = backingIn(*backing);
        if (const auto geometry = m_keywords.value("MEASUREMENT_GEOMETRY"))
            reading.geometry = plainWords(*geometry, longestGeometry);
        if (const auto instrument = m_keywords.value("INSTRUMENTATION"))
            reading.instrument = plainWords(*instrument, longestInstrument);
        reading.takenOn = takenOn();
        return reading;
    }

private:
    // A spectrum stands for no light, so that what is said of one then says nothing.
    void takeLight(Reading& reading) {
        reading.illuminant = settled<Illuminant>(
            statements("ILLUMINANT", "Illumination"), illuminantIn,
            "Readings hold values for D50, D65 and A only: export them for one of these.");
        reading.observer = settled<Observer>(statements("OBSERVER", "ObserverAngle"), observerIn,
                                             "Readings hold values for 2 and 10 degrees only.");
    }

    Stated plain(const char* keyword) const {
        return {keyword, m_keywords.value(keyword).value_or("")};
    }

    Stated weighting(const char* name) const {
        return {"WEIGHTING_FUNCTION", m_keywords.named("WEIGHTING_FUNCTION", name).value_or("")};
    }

    // A part of MEASUREMENT_SOURCE "Illumination=D50 ObserverAngle=2".
    Stated sourcePart(const std::string& name) const {
        std::istringstream parts(m_keywords.value("MEASUREMENT_SOURCE").value_or(""));
        for (std::string part; parts >> part;) {
            const std::size_t equals = part.find('=');
            if (equals != std::string::npos && isSameWord(part.substr(0, equals), name))
                return {"MEASUREMENT_SOURCE " + name, part.substr(equals + 1)};
        }
        return {};
    }

    std::vector<Stated> statements(const char* weightingName, const std::string& partName) const {
        return {weighting(weightingName), sourcePart(partName)};
    }

    // What all statements agree on. One that is not understood is refused where there is a
    // remedy, and left aside otherwise.
    template <class E, class Parse>
    std::optional<E> settled(const std::vector<Stated>& statements, const Parse& parse,
                             const std::string& remedy) {
        std::optional<E> value;
        const Stated* from = nullptr;
        for (const Stated& stated : statements) {
            if (stated.text.empty())
                continue;
            const std::optional<E> found = parse(stated.text);
            if (!found && !remedy.empty())
                m_draft.refuse({m_line, {}, {}}, stated.keyword + " says " + excerpt(stated.text),
                               remedy);
            if (found && value && *found != *value)
                m_draft.refuse({m_line, {}, {}},
                               from->keyword + " says " + textOf(*value) + ", and " +
                                   stated.keyword + " says " + textOf(*found),
                               "Put the one right that is wrong.");
            if (found && !value) {
                value = found;
                from = &stated;
            }
        }
        return value;
    }

    std::optional<EdtfDate> takenOn() {
        const std::optional<std::string> created = m_keywords.value("CREATED");
        if (!created || created->empty())
            return std::nullopt;
        try {
            if (const std::optional<EdtfDate> day = dayIn(*created, "CREATED"))
                return day;
            m_draft.note({m_line, {}, {}},
                         "CREATED is \"" + excerpt(*created) + "\", which can be read in two ways",
                         "Say with --taken-on when it was measured.");
        } catch (const InputError& error) {
            m_draft.refuse({m_line, {}, {}}, error.what(), {});
        }
        return std::nullopt;
    }

    const CgatsKeywords& m_keywords;
    bool m_hasComputed;
    int m_line;
    MeasurementDraft& m_draft;
};

}  // namespace

Reading cgatsConditions(const CgatsKeywords& keywords, bool hasComputed, int line,
                        MeasurementDraft& draft) {
    return HeaderReader(keywords, hasComputed, line, draft).read();
}

}  // namespace rackbook
