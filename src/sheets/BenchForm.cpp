#include "sheets/BenchForm.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "sheets/TextRules.h"

namespace rackbook {

namespace {

// Within the frame, or above the line.
constexpr double inset_mm = 0.4;

using Member = std::string BenchUsual::*;
using Offered = std::vector<std::string> BenchChoices::*;

std::string usualAt(const std::string& name, const BenchUsual& usual) {
    static const std::map<std::string, Member> members = {
        {"pull.press", &BenchUsual::press},          {"pull.packing", &BenchUsual::packing},
        {"pull.printer", &BenchUsual::printer},      {"portion.baseLot", &BenchUsual::baseLot},
        {"portion.drierLot", &BenchUsual::drierLot}, {"move.to", &BenchUsual::hungAt}};
    const auto found = members.find(name);
    return found == members.end() ? std::string() : usual.*found->second;
}

std::vector<std::string> offeredAt(const std::string& name, const BenchChoices& choices) {
    static const std::map<std::string, Offered> members = {
        {"pull.printer", &BenchChoices::printers},
        {"pull.portion", &BenchChoices::portions},
        {"portion.baseLot", &BenchChoices::baseLots},
        {"portion.drierLot", &BenchChoices::drierLots},
        {"move.to", &BenchChoices::places}};
    const auto found = members.find(name);
    return found == members.end() ? std::vector<std::string>() : choices.*found->second;
}

FormField::Kind formKind(FieldKind kind) {
    switch (kind) {
        case FieldKind::choice:
            return FormField::Kind::choice;
        case FieldKind::lines:
            return FormField::Kind::lines;
        case FieldKind::tick:
            return FormField::Kind::tick;
        default:
            return FormField::Kind::text;
    }
}

// Lines broken by hand, with or without a hyphen, as one.
std::string onOneLine(std::string text) {
    const auto isLetter = [](char c) {
        return static_cast<unsigned char>(c) >= 0x80 || isalpha(c);
    };
    for (std::size_t at = text.find('\n'); at != std::string::npos; at = text.find('\n')) {
        const bool isDivided = at >= 2 && text[at - 1] == '-' && isLetter(text[at - 2]);
        const bool isEastAsian = at >= 1 && static_cast<unsigned char>(text[at - 1]) >= 0xE0 &&
                                 static_cast<unsigned char>(text[at - 1]) < 0xF0;
        if (isDivided)
            text.erase(at - 1, 2);
        else
            text.replace(at, 1, isEastAsian ? "" : " ");
    }
    return text;
}

std::string exampleDay(const SheetWords& words) {
    const bool hasPoints = words("dateDay").find("{day}.") != std::string::npos;
    return dayInOrder(2026, 3, 28, dateOrderOf(words), hasPoints ? "." : "/");
}

std::string tooltipOf(const BenchField& field, const std::string& place, int workingNumber,
                      const SheetWords& words) {
    const std::string label = benchFieldLabel(field, words);
    if (place == everyPrinted)
        return words.filled("form.every", {{"label", label}});
    if (isOfImpressions(field))
        return words.filled("form.impression",
                            {{"label", label}, {"number", std::to_string(workingNumber)}});
    switch (field.kind) {
        case FieldKind::date:
            return words.filled("form.date", {{"label", label}, {"example", exampleDay(words)}});
        case FieldKind::time:
            return words.filled("form.time", {{"label", label}});
        case FieldKind::number:
            return words.filled("form.number",
                                {{"label", label}, {"example", words.figure(4.5, 1)}});
        default:
            return label;
    }
}

std::map<std::string, int> workingNumbers(const BenchFacts& facts) {
    std::map<std::string, int> numbers;
    for (const BenchField& field : benchFields())
        if (isOfImpressions(field))
            for (const BenchImpression& one : facts.impressions)
                numbers[benchFieldName(field, facts.code, one.workingNumber)] = one.workingNumber;
    return numbers;
}

std::string settableLine(std::string text, const BenchFormTerms& terms) {
    std::replace(text.begin(), text.end(), '\n', ' ');
    return settable(terms.measurer, FontRole::body, text, terms.where);
}

// Where programs cover printed lines with what is typed, they are to cover all of their length.
Box within(const Box& box, FormField::Kind kind) {
    const double aside_mm = kind == FormField::Kind::lines ? -inset_mm / 2 : inset_mm;
    return {box.x_mm + aside_mm, box.y_mm + inset_mm, box.width_mm - 2 * aside_mm,
            box.height_mm - 2 * inset_mm};
}

// As large as the terms say, smaller where the value wants it.
double sizeFor(const FormField& field, const BenchFormTerms& terms) {
    constexpr double least_pt = 6;
    constexpr double margins_mm = 2;
    const double room_mm = field.box.width_mm - margins_mm;
    const double width_mm = terms.measurer.width_mm(FontRole::body, terms.size_pt, field.value);
    const double fitting_pt = std::floor(terms.size_pt * room_mm / width_mm * 4) / 4;
    return width_mm <= room_mm ? terms.size_pt : std::max(least_pt, fitting_pt);
}

}  // namespace

DateOrder dateOrderOf(const SheetWords& words) {
    const std::string& label = words("dateDay");
    const std::size_t day = label.find("{day}");
    const std::size_t month = label.find("{month}");
    const std::size_t year = label.find("{year}");
    if (year < day)
        return DateOrder::yearMonthDay;
    return month < day ? DateOrder::monthDayYear : DateOrder::dayMonthYear;
}

std::string benchFieldLabel(const BenchField& field, const SheetWords& words) {
    return onOneLine(words(field.label));
}

std::vector<FormField> benchForm(const BenchFacts& facts, const std::vector<FieldPlace>& places,
                                 const BenchFormTerms& terms) {
    const std::map<std::string, int> numbers = workingNumbers(facts);
    std::vector<FormField> form;
    for (const FieldPlace& place : places) {
        const BenchField& field = benchFieldAt(place);
        const auto number = numbers.find(place.name);
        FormField made;
        made.name = place.name;
        made.kind = formKind(field.kind);
        made.tooltip =
            tooltipOf(field, place.name, number == numbers.end() ? 0 : number->second, terms.words);
        made.value = settableLine(usualAt(place.name, facts.usual), terms);
        made.choices = offeredAt(place.name, facts.choices);
        made.page = place.page;
        made.box = within(place.box, made.kind);
        made.size_pt = sizeFor(made, terms);
        made.element = place.element;
        form.push_back(std::move(made));
    }
    return form;
}

}  // namespace rackbook
