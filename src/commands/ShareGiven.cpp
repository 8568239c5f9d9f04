#include "commands/ShareGiven.h"

#include <limits>
#include <optional>

#include "base/Error.h"
#include "base/TypedNumber.h"

namespace rackbook {

namespace {

double shareUpTo(double most, const std::string& text, const std::string& label) {
    const std::string example = most > 1 ? "10%." : "95%.";
    const bool isPercent = !text.empty() && text.back() == '%';
    std::string number = isPercent ? text.substr(0, text.size() - 1) : text;
    number.erase(number.find_last_not_of(' ') + 1);
    const std::optional<double> value = parseTypedNumber(number);
    const std::string what = label + " is \"" + excerpt(text) + "\"";
    if (!value)
        throw UsageError(what + ", which is no share", "Write per cent, such as " + example);
    if (!isPercent && *value >= 1)
        throw UsageError(what + ", which may be a share or per cent",
                         "Write per cent with the sign, such as " + example);
    const double share = isPercent ? *value / 100 : *value;
    if (share < 0 || share > most)
        throw UsageError(
            what, most > 1 ? "Give a share of 0% or more." : "Give a share between 0% and 100%.");
    return share;
}

}  // namespace

double shareGiven(const std::string& text, const std::string& label) {
    return shareUpTo(1, text, label);
}

double markupGiven(const std::string& text, const std::string& label) {
    return shareUpTo(std::numeric_limits<double>::max(), text, label);
}

double positiveGiven(const std::string& text, const std::string& label, const std::string& remedy) {
    const std::optional<double> value = parseTypedNumber(text);
    if (!value || *value <= 0)
        throw UsageError(label + " is \"" + excerpt(text) + "\"", remedy);
    return *value;
}

}  // namespace rackbook
