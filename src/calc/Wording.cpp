#include "calc/Wording.h"

#include <algorithm>
#include <cmath>

#include "base/Numbers.h"

namespace rackbook {

namespace {

constexpr double hair = 1e-6;

std::string percent(double share) {
    std::string text = formatFixed(share * 100, 1);
    if (text.size() > 2 && text.compare(text.size() - 2, 2, ".0") == 0)
        text.resize(text.size() - 2);
    return text;
}

}  // namespace

std::string dayWords(const TimeSpan& span) {
    const bool fromEver = span.earliest <= beginningOfTime;
    const bool forEver = span.latest >= endOfTime;
    if (fromEver && forEver)
        return "at an unknown time";
    if (fromEver)
        return "by " + formatDay(span.latest);
    if (forEver)
        return "after " + formatDay(span.earliest);
    if (dayOf(span.earliest) == dayOf(span.latest))
        return "on " + formatDay(span.earliest);
    return "between " + formatDay(span.earliest) + " and " + formatDay(span.latest);
}

std::string percentWords(const Estimate& share) {
    const std::string low = percent(share.low);
    const std::string high = percent(share.high);
    return low == high ? low + " %" : low + "–" + high + " %";
}

namespace {

struct WholeDays {
    explicit WholeDays(double lowDays, double highDays)
        : low(std::floor(lowDays + hair)), high(std::floor(highDays + hair)) {}

    // More than any studio has existed: the count has no upper end.
    bool isOpen() const { return high > 1e6; }
    bool isRange() const { return high > low + 1; }

    double low;
    double high;
};

}  // namespace

std::string daysWords(double low, double high) {
    const WholeDays days(low, high);
    const std::string from = formatFixed(days.low, 0);
    if (days.isOpen())
        return from + " days or more";
    if (days.isRange())
        return from + " to " + formatFixed(days.high, 0) + " days";
    return from + (days.low == 1 ? " day" : " days");
}

std::string daysFigures(double low, double high) {
    const WholeDays days(low, high);
    const std::string from = formatFixed(days.low, 0);
    if (days.isOpen())
        return from + " or more";
    return days.isRange() ? from + "–" + formatFixed(days.high, 0) : from;
}

RoughFigure roughFigure(double value) {
    constexpr int mostDecimals = 4;
    constexpr double leastShown = 0.00005;
    if (!(value >= leastShown) || std::isinf(value))
        return {std::isinf(value) ? value : 0, 0};
    const int exponent = static_cast<int>(std::floor(std::log10(value)));
    const double unit = std::pow(10.0, exponent - 1);
    const double rounded = std::round(value / unit) * unit;
    // 9.96 becomes 10, not 10.0.
    const int shown = static_cast<int>(std::floor(std::log10(rounded * (1 + 1e-12))));
    return {rounded, std::clamp(1 - shown, 0, mostDecimals)};
}

std::string roughly(double value) {
    const RoughFigure rough = roughFigure(value);
    return formatFixed(rough.value, rough.decimals);
}

std::string roughly(const Estimate& value) {
    if (std::isinf(value.high))
        return roughly(value.low) + " or more";
    // Beside bounds of four decimals a figure says less than these words.
    if (value.high > 0 && value.high < 0.001)
        return "less than 0.001";
    const std::string low = roughly(value.low);
    const std::string high = roughly(value.high);
    const std::string bounds = low == high ? low : low + "–" + high;
    if (!value.isKnown())
        return bounds;
    const std::string best = roughly(value.best);
    return best == bounds ? best : best + " (" + bounds + ")";
}

std::string originWords(const RuleInForce& rule) {
    if (!rule.source.empty())
        return rule.source;
    switch (rule.origin) {
        case Origin::studioRule:
            return "studio rule";
        case Origin::fitted:
            return "fitted";
        case Origin::publishedSource:
            return "published source";
        case Origin::commonPractice:
            break;
    }
    return "common practice";
}

}  // namespace rackbook
