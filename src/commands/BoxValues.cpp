#include "commands/BoxValues.h"

#include "base/Text.h"
#include "base/TypedDate.h"
#include "base/TypedNumber.h"
#include "sheets/BenchForm.h"

namespace rackbook {

namespace {

// As a plain hyphen, whatever sign of minus was typed.
std::string withPlainMinus(std::string text) {
    const std::string minus = "−";
    if (text.rfind(minus, 0) == 0)
        text.replace(0, minus.size(), "-");
    return text;
}

std::string withoutUnit(std::string text) {
    for (const char* unit : {"g", "%", "°C", "C"}) {
        const std::string ending = unit;
        if (text.size() > ending.size() &&
            text.compare(text.size() - ending.size(), ending.size(), ending) == 0) {
            text.erase(text.size() - ending.size());
            break;
        }
    }
    return trimmed(text);
}

std::string dayForms(const FilledBoxes& boxes) {
    return "Write it as 2026-03-28 or " + dayInOrder(2026, 3, 28, dateOrderOf(boxes.words()), "/") +
           ", with all of the year.";
}

}  // namespace

std::optional<double> numberIn(FilledBoxes& boxes, const std::string& name) {
    const std::string text = boxes.text(name);
    if (text.empty())
        return std::nullopt;
    const std::optional<double> number =
        parseTypedNumber(withoutUnit(withPlainMinus(plainlyTyped(text))));
    if (!number)
        boxes.refuse(name, "it is no number",
                     "Write a number with one decimal point or comma and nothing between "
                     "thousands, such as 4.5 or 4,5.",
                     text);
    return number;
}

std::optional<double> massIn(FilledBoxes& boxes, const std::string& name) {
    const std::optional<double> mass_g = numberIn(boxes, name);
    if (!mass_g || *mass_g >= 0)
        return mass_g;
    boxes.refuse(name, "it is less than nothing", "Write a mass of 0 g or more.", boxes.text(name));
    return std::nullopt;
}

std::optional<std::string> wordsIn(const FilledBoxes& boxes, const std::string& name) {
    const std::string text = boxes.text(name);
    return text.empty() ? std::nullopt : std::optional(text);
}

std::optional<std::string> dayIn(FilledBoxes& boxes) {
    const std::string text = boxes.text("pull.day");
    if (text.empty()) {
        boxes.refuse("pull.day", "it is not filled in, and a run wants its day", dayForms(boxes));
        return std::nullopt;
    }
    const std::optional<std::string> day = typedDay(text, dateOrderOf(boxes.words()));
    if (!day)
        boxes.refuse("pull.day", "it is no day", dayForms(boxes), text);
    return day;
}

std::optional<EdtfDate> momentIn(FilledBoxes& boxes, const std::string& name,
                                 const std::string& day) {
    const std::string text = plainlyTyped(boxes.text(name));
    if (text.empty())
        return std::nullopt;
    if (const std::optional<std::string> clock = typedClock(text))
        return EdtfDate::parse(day + "T" + *clock);
    const std::size_t between = text.find_last_of(" T");
    if (between != std::string::npos) {
        const auto own = typedDay(text.substr(0, between), dateOrderOf(boxes.words()));
        const auto clock = typedClock(text.substr(between + 1));
        if (own && clock)
            return EdtfDate::parse(*own + "T" + *clock);
    }
    boxes.refuse(name, "it is no time of a day",
                 "Write hours and minutes such as 18:30; for another day that day before them, as "
                 "2026-03-29 00:30.",
                 text);
    return std::nullopt;
}

void refuseUnknown(FilledBoxes& boxes, const std::string& name, RecordKind kind, bool isOneOfMany) {
    const std::string word = textOf(kind);
    if (isOneOfMany)
        boxes.refuse(name, "more than one " + word + " of the book is called so", "Write its id.",
                     boxes.text(name));
    else
        boxes.refuse(name, "the book has no " + word + " of that id or name",
                     "Write one that rackbook list " + word +
                         " shows, or enter it first with "
                         "rackbook enter " +
                         word + ".",
                     boxes.text(name));
}

}  // namespace rackbook
