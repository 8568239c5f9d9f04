#include <algorithm>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "checks/FindingList.h"
#include "checks/MeteringDoubts.h"
#include "checks/Rules.h"

namespace rackbook::rules {

namespace {

std::string skyWords(const Weather& weather) {
    return weather.sky ? std::string(textOf(*weather.sky)) : "given in oktas";
}

// Of those gone through so far, the one that measured longest into the day, by what it measured.
class LastMetered {
public:
    // The earlier one that measured the same at the same time as the next one.
    const Metering* overlapped(const Metering& next) const {
        for (const Metering* earlier : {m_exposure, m_ultraviolet})
            if (earlier && measureTheSame(*earlier, next))
                return earlier;
        return nullptr;
    }

    void add(const Metering& metering) {
        if (metering.exposure_lxh)
            keepLater(m_exposure, metering);
        if (metering.nearUltraviolet_Whm2)
            keepLater(m_ultraviolet, metering);
    }

private:
    static void keepLater(const Metering*& kept, const Metering& metering) {
        if (!kept || metering.to.latest() > kept->to.latest())
            kept = &metering;
    }

    const Metering* m_exposure = nullptr;
    const Metering* m_ultraviolet = nullptr;
};

using Doubt = std::optional<MeteringDoubt> (MeteringDoubts::*)(const Metering&) const;

// Only what asks for the sun needs the studio.
Findings doubted(const AuditContext& context, Doubt doubt, const Book* studio = nullptr) {
    const std::vector<Metering>& meterings = context.records().of<Metering>();
    FindingList found;
    if (meterings.empty())
        return found.take();
    const MeteringDoubts doubts(context.records().of<Place>(), meterings, studio);
    for (const Metering& metering : meterings)
        if (const std::optional<MeteringDoubt> its = (doubts.*doubt)(metering))
            found.add(Severity::warning, metering, its->pointer, its->what, its->value,
                      its->remedy);
    return found.take();
}

}  // namespace

Findings weatherTwice(const AuditContext& context) {
    FindingList found;
    std::map<std::int64_t, const Weather*> ofDay;
    for (const Weather& weather : context.records().of<Weather>()) {
        const auto [before, isFirst] = ofDay.emplace(dayOf(weather.on.earliest()), &weather);
        if (!isFirst)
            found.add(Severity::warning, weather, "/on",
                      "weather " + before->second->id + " is about this day too; its sky is " +
                          skyWords(*before->second) + ", this one's is " + skyWords(weather),
                      weather.on.text(), "Strike out the one that does not hold.");
    }
    return found.take();
}

Findings meteringOverlap(const AuditContext& context) {
    std::map<std::string, std::vector<const Metering*>> ofPlace;
    for (const Metering& metering : context.records().of<Metering>())
        ofPlace[metering.place.id].push_back(&metering);
    FindingList found;
    for (auto& [place, meterings] : ofPlace) {
        std::stable_sort(meterings.begin(), meterings.end(),
                         [](const Metering* a, const Metering* b) {
                             return a->from.earliest() < b->from.earliest();
                         });
        LastMetered last;
        for (const Metering* metering : meterings) {
            if (const Metering* other = last.overlapped(*metering))
                found.add(Severity::warning, *metering, "/from",
                          "metering " + other->id + " measured the same at place " + place +
                              " until " + other->to.text(),
                          metering->from.text(),
                          "Correct the times, or strike out one of the two.");
            last.add(*metering);
        }
    }
    return found.take();
}

Findings meteringInDark(const AuditContext& context) {
    return doubted(context, &MeteringDoubts::darkPlace);
}

Findings meteringBeyondSun(const AuditContext& context) {
    const std::vector<Book>& studios = context.records().of<Book>();
    return doubted(context, &MeteringDoubts::beyondSun,
                   studios.empty() ? nullptr : &studios.front());
}

Findings meteringBeyondItsLight(const AuditContext& context) {
    return doubted(context, &MeteringDoubts::beyondItsLight);
}

}  // namespace rackbook::rules
