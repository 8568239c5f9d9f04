#include <algorithm>
#include <array>
#include <map>
#include <string>
#include <string_view>
#include <type_traits>

#include "checks/EachEdition.h"
#include "checks/FindingList.h"
#include "checks/Rules.h"

namespace rackbook::rules {

namespace {

const Pull* firstPull(const ImpressionTimeline& timeline) {
    return timeline.pulls.empty() ? nullptr : timeline.pulls.front();
}

// Before every pull of the impression, whichever was the first.
bool isBeforeAllPulls(const EdtfDate& date, const ImpressionTimeline& timeline) {
    return firstPull(timeline) &&
           std::all_of(timeline.pulls.begin(), timeline.pulls.end(),
                       [&](const Pull* pull) { return certainlyBefore(date, pull->start); });
}

void checkImpression(const Impression& impression, FindingList& found) {
    if (impression.fate != ImpressionFate::kept && impression.fateOn && impression.signedOn &&
        certainlyBefore(*impression.fateOn, *impression.signedOn))
        found.add(Severity::error, impression, "/signedOn",
                  std::string("it was signed after it was ") + textOf(impression.fate) + ", on " +
                      impression.fateOn->text(),
                  impression.signedOn->text(), "Correct one of the two dates.");
}

// Names of dates that may well lie ahead.
bool mayLieAhead(std::string_view field) {
    static constexpr std::array<std::string_view, 3> ahead = {"promisedBy", "dueOn", "until"};
    return std::find(ahead.begin(), ahead.end(), field) != ahead.end();
}

template <class R>
class AheadVisitor {
public:
    AheadVisitor(const R& record, CivilMinute asOf, FindingList& found)
        : m_record(record), m_asOf(asOf), m_found(found) {}

    template <class T>
    void operator()(const char* name, const T& value) {
        if constexpr (std::is_same_v<T, EdtfDate>)
            check(name, value);
        else if constexpr (std::is_same_v<T, std::optional<EdtfDate>>)
            if (value)
                check(name, *value);
    }

private:
    void check(const char* name, const EdtfDate& date) {
        if (!mayLieAhead(name) && date.earliest() > m_asOf)
            m_found.add(Severity::note, m_record, std::string("/") + name,
                        "the date lies after " + formatDay(m_asOf), date.text(),
                        "Correct it, or record it once it has happened.");
    }

    const R& m_record;
    CivilMinute m_asOf;
    FindingList& m_found;
};

}  // namespace

Findings datesOutOfOrder(const AuditContext& context) {
    FindingList found;
    std::map<const Look*, Numbers> tooEarly;
    eachImpression(context, [&](const Impression& impression, const ImpressionTimeline& timeline) {
        checkImpression(impression, found);
        for (const Look* look : timeline.looks)
            if (isBeforeAllPulls(look->at, timeline))
                tooEarly[look].add(context.records(), impression);
    });
    for (const auto& [look, numbers] : tooEarly)
        found.add(Severity::error, *look, "/at",
                  numbers.words("was", "were") + " looked at before any pull", look->at.text(),
                  "Correct the date of the look or of the pull.");
    for (const Reading& reading : context.records().of<Reading>()) {
        const Drawdown* drawdown = context.records().find(reading.drawdown);
        if (drawdown && drawdown->madeOn && reading.takenOn &&
            certainlyBefore(*reading.takenOn, *drawdown->madeOn))
            found.add(
                Severity::error, reading, "/takenOn",
                "drawdown " + drawdown->id + " was only made later, on " + drawdown->madeOn->text(),
                reading.takenOn->text(), "Correct one of the two dates.");
    }
    return found.take();
}

Findings datesAhead(const AuditContext& context) {
    FindingList found;
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        for (const R& record : context.records().of<R>()) {
            AheadVisitor<R> visitor(record, context.asOf(), found);
            R::fields(record, visitor);
        }
    });
    return found.take();
}

}  // namespace rackbook::rules
