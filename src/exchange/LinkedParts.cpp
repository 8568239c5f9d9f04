#include "exchange/LinkedParts.h"

#include "base/Clock.h"
#include "base/Numbers.h"

namespace rackbook {

namespace {

enum class Bound { first, last };

Tree partOf(const char* type) {
    return Tree::object().set("type", type);
}

// RFC 3339 has years of four digits.
bool canBeWritten(CivilMinute minute) {
    static const CivilMinute first = daysFromCivil({0, 1, 1}) * minutesPerDay;
    static const CivilMinute after = daysFromCivil({10000, 1, 1}) * minutesPerDay;
    return minute >= first && minute < after;
}

std::string shiftText(int offset_min) {
    const auto twoDigits = [](int value) {
        return std::string(value < 10 ? "0" : "") + std::to_string(value);
    };
    const int size_min = offset_min < 0 ? -offset_min : offset_min;
    return (offset_min < 0 ? "-" : "+") + twoDigits(size_min / 60) + ":" + twoDigits(size_min % 60);
}

void setMoment(Tree& span, const char* name, const EdtfDate& date, Bound bound,
               const std::string& timeZone) {
    const CivilMinute minute = bound == Bound::first ? date.earliest() : date.latest();
    if (!canBeWritten(minute))
        return;
    const std::optional<int> offset_min = date.utcOffset_min();
    span.set(name, formatMinute(minute) + (bound == Bound::first ? ":00" : ":59") +
                       (offset_min ? shiftText(*offset_min) : offsetText(minute, timeZone)));
}

Tree namedSpan(const std::string& name) {
    Tree span = partOf("TimeSpan");
    span.set("_label", name);
    span.set("identified_by", Tree::array().add(linkedName(name, linkedTerms::displayName)));
    return span;
}

}  // namespace

Tree linkedName(const std::string& content, const LinkedTerm& kind) {
    Tree name = partOf("Name");
    name.set("classified_as", classifiedAs(kind));
    name.set("content", content);
    return name;
}

Tree linkedIdentifier(const std::string& content, const std::string& label) {
    Tree identifier = partOf("Identifier");
    identifier.set("_label", label);
    identifier.set("classified_as", classifiedAs(linkedTerms::localNumber));
    identifier.set("content", content);
    return identifier;
}

Tree linkedHash(const std::string& content, const std::string& label) {
    return partOf("Identifier").set("_label", label).set("content", content);
}

Tree linkedStatement(const std::string& content, const LinkedTerm& kind, const std::string& label) {
    Tree statement = partOf("LinguisticObject");
    statement.set("_label", label);
    statement.set("classified_as", classifiedAs(kind));
    statement.set("content", content);
    return statement;
}

Tree linkedLength(double length_mm, const LinkedTerm& kind) {
    Tree length = partOf("Dimension");
    length.set("_label", std::string(kind.label));
    length.set("classified_as", classifiedAs(kind));
    length.set("identified_by", Tree::array().add(linkedName(formatShortest(length_mm) + " mm",
                                                             linkedTerms::displayName)));
    length.set("value", length_mm / 10);
    length.set("unit", linkedTerm(linkedTerms::centimetres, "MeasurementUnit"));
    return length;
}

Tree linkedSpan(const EdtfDate& date, const std::string& timeZone) {
    Tree span = namedSpan(date.text());
    setMoment(span, "begin_of_the_begin", date, Bound::first, timeZone);
    setMoment(span, "end_of_the_end", date, Bound::last, timeZone);
    return span;
}

Tree linkedSpan(const EdtfDate& begin, const std::optional<EdtfDate>& end,
                const std::string& timeZone) {
    // What is written as an interval says its end itself.
    if (!end && begin.isInterval())
        return linkedSpan(begin, timeZone);
    Tree span = namedSpan(end ? begin.text() + " to " + end->text() : "from " + begin.text());
    setMoment(span, "begin_of_the_begin", begin, Bound::first, timeZone);
    setMoment(span, "end_of_the_begin", begin, Bound::last, timeZone);
    if (end) {
        setMoment(span, "begin_of_the_end", *end, Bound::first, timeZone);
        setMoment(span, "end_of_the_end", *end, Bound::last, timeZone);
    }
    return span;
}

Tree linkedSpanWithin(const EdtfDate& begin, const EdtfDate& end, const std::string& timeZone) {
    Tree span = namedSpan(begin == end ? begin.text() : begin.text() + " to " + end.text());
    setMoment(span, "begin_of_the_begin", begin, Bound::first, timeZone);
    setMoment(span, "end_of_the_end", end, Bound::last, timeZone);
    return span;
}

void setUnlessEmpty(Tree& tree, const std::string& name, Tree list) {
    if (list.asArray() && !list.asArray()->empty())
        tree.set(name, std::move(list));
}

}  // namespace rackbook
