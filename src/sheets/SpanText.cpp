#include "sheets/SpanText.h"

namespace rackbook {

std::string spanText(const TimeSpan& span) {
    if (dayOf(span.earliest) == dayOf(span.latest))
        return formatDay(span.earliest);
    const CivilDate first = civilFromDays(dayOf(span.earliest));
    const CivilDate last = civilFromDays(dayOf(span.latest));
    const bool wholeYears =
        first.month == 1 && first.day == 1 && last.month == 12 && last.day == 31;
    if (!wholeYears)
        return formatDay(span.earliest) + "\n– " + formatDay(span.latest);
    return first.year == last.year ? std::to_string(first.year)
                                   : std::to_string(first.year) + "–" + std::to_string(last.year);
}

}  // namespace rackbook
