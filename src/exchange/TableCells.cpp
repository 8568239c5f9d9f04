#include "exchange/TableCells.h"

#include <algorithm>
#include <cmath>

#include "base/Error.h"
#include "base/Numbers.h"
#include "base/Ranges.h"
#include "base/Text.h"
#include "exchange/FitId.h"
#include "exchange/MeasurementWords.h"
#include "exchange/TablePattern.h"

namespace rackbook {

namespace {

constexpr int mostNumbers = 10'000;

template <class T>
CellValue<T> refused(std::string what, std::string remedy) {
    return {std::nullopt, std::move(what), std::move(remedy)};
}

bool isAmong(const std::vector<std::string>& words, const std::string& compared) {
    return std::any_of(words.begin(), words.end(),
                       [&](const std::string& word) { return comparedText(word) == compared; });
}

// Cells of old lists write 30x20, 30 X 20 and 30 × 20 alike.
std::string partOf(std::string text, const ValueRule& rule) {
    std::string mark = rule.partedBy;
    if (mark == "x")
        for (const std::string other : {"×", "X"})
            for (std::size_t at = text.find(other); at != std::string::npos; at = text.find(other))
                text.replace(at, other.size(), mark);
    std::size_t at = 0;
    for (std::size_t i = 0; i < *rule.part; ++i) {
        at = text.find(mark, at);
        if (at == std::string::npos)
            return {};
        at += mark.size();
    }
    return trimmed(text.substr(at, text.find(mark, at) - at));
}

std::optional<bool> yesNoIn(const std::string& text) {
    const std::string word = comparedText(text);
    for (const char* yes : {"yes", "true", "ja", "wahr", "1"})
        if (word == yes)
            return true;
    for (const char* no : {"no", "false", "nein", "falsch", "0"})
        if (word == no)
            return false;
    return std::nullopt;
}

// 29.7 cm are 297 mm and not 297.00000000000006.
double product(double value, double times) {
    constexpr double grid = 1e9;
    const double exact = value * times;
    return times == 1 || std::abs(exact) > 1e6 ? exact : std::round(exact * grid) / grid;
}

CellValue<Json> wordIn(const std::string& text, const KindField& field) {
    const std::string compared = comparedText(text);
    for (const std::string& word : field.words)
        if (comparedText(word) == compared)
            return {Json(word), {}, {}};
    const std::optional<std::string> nearest = nearestName(text, field.words);
    return refused<Json>("it is none of the words that may stand here",
                         (nearest ? "Did you mean " + *nearest + "? " : std::string()) +
                             "Say what it means in the mapping, such as \"words\": {\"" +
                             excerpt(text) + "\": \"" + nearest.value_or(field.words.front()) +
                             "\"}; it is one of " + joined(field.words, " or ") + ".");
}

CellValue<Json> numberValue(const std::string& text, const NumberForm& form, const ValueRule& rule,
                            bool isWhole) {
    const CellValue<double> number = numberIn(text, form, rule.units);
    if (!number.value)
        return refused<Json>(number.what, number.remedy);
    const double value = product(*number.value, rule.times);
    constexpr double mostWhole = 1e9;
    if (!isWhole)
        return {Json(value), {}, {}};
    if (value != std::floor(value) || std::abs(value) > mostWhole)
        return refused<Json>("this is not a whole number", "Write digits only, such as 12.");
    return {Json(static_cast<long long>(value)), {}, {}};
}

}  // namespace

namespace {

std::string withNumbers(const std::string& headings, const NumbersRule& rule) {
    return headings.empty() ? rule.column : headings + " and " + rule.column;
}

}  // namespace

std::string headingsOfPattern(const std::string& pattern) {
    std::vector<std::string> names;
    for (const PatternPiece& piece : soundPieces(pattern))
        if (piece.kind == PatternPiece::Kind::column)
            names.push_back(piece.text);
    return joined(names);
}

std::string headingsOf(const ValueRule& rule) {
    std::string headings;
    if (rule.source == ValueRule::Source::column)
        headings = rule.text;
    else if (rule.source == ValueRule::Source::pattern)
        headings = headingsOfPattern(rule.text);
    return rule.numbers ? withNumbers(headings, *rule.numbers) : headings;
}

std::string headingsOfId(const RecordRule& rule) {
    const std::string headings = headingsOfPattern(rule.id);
    return rule.numbers ? withNumbers(headings, *rule.numbers) : headings;
}

std::string TableCells::cell(const CsvRow& row, const std::string& column) const {
    const std::size_t at = *m_columns.find(column);
    if (at >= row.fields.size())
        return {};
    std::string text = cellText(row.fields[at], m_mapping.keepSpaces);
    if (!text.empty() && !m_mapping.missing.empty() &&
        isAmong(m_mapping.missing, comparedText(text)))
        return {};
    return text;
}

bool TableCells::holds(const ConditionRule& rule, const CsvRow& row) const {
    const std::string text = cell(row, rule.column);
    if (rule.is.empty() && rule.isNot.empty())
        return !text.empty();
    const std::string compared = comparedText(text);
    return (rule.is.empty() || isAmong(rule.is, compared)) && !isAmong(rule.isNot, compared);
}

CellValue<std::vector<int>> TableCells::numbers(const NumbersRule& rule, const CsvRow& row) const {
    const std::string text = cell(row, rule.column);
    if (text.empty())
        return {std::vector<int>{}, {}, {}};
    if (rule.isCount) {
        const CellValue<double> count = numberIn(text, m_mapping.numbers);
        if (!count.value || *count.value != std::floor(*count.value) || *count.value < 0 ||
            *count.value > mostNumbers)
            return refused<std::vector<int>>("this is no count",
                                             "Write a whole number from 0 to 10,000.");
        std::vector<int> numbers;
        for (int i = 1; i <= static_cast<int>(*count.value); ++i)
            numbers.push_back(i);
        return {std::move(numbers), {}, {}};
    }
    try {
        std::string plain;
        for (const char c : text)
            if (c != ' ')
                plain += c == ';' ? ',' : c;
        return {parseRanges(plain), {}, {}};
    } catch (const UsageError&) {
        return refused<std::vector<int>>("these are no numbers of sheets",
                                         "Write them as 1-12,15.");
    }
}

std::optional<std::string> TableCells::filled(const std::string& pattern, const CsvRow& row,
                                              std::optional<int> number, bool isId) const {
    std::string text;
    for (const PatternPiece& piece : soundPieces(pattern)) {
        if (piece.kind == PatternPiece::Kind::literal) {
            text += piece.text;
        } else if (piece.kind == PatternPiece::Kind::number) {
            const std::string digits = std::to_string(number.value_or(0));
            text += std::string(piece.width - std::min(piece.width, digits.size()), '0') + digits;
        } else {
            const std::string found = cell(row, piece.text);
            const std::string fit = isId ? fitForId(found) : found;
            if (fit.empty())
                return std::nullopt;
            text += fit;
        }
    }
    return isId ? cutForId(std::move(text)) : text;
}

std::optional<std::string> TableCells::text(const ValueRule& rule, const CsvRow& row,
                                            std::optional<int> number, bool isId) const {
    std::optional<std::string> text;
    if (rule.source == ValueRule::Source::column)
        text = cell(row, rule.text);
    else if (rule.source == ValueRule::Source::pattern)
        text = filled(rule.text, row, number, isId && !rule.find);
    else
        text = rule.text;
    if (text && rule.part)
        text = partOf(*text, rule);
    if (text && !rule.words.empty()) {
        const std::string compared = comparedText(*text);
        for (const auto& [word, meaning] : rule.words)
            if (comparedText(word) == compared) {
                text = meaning;
                break;
            }
    }
    if (!text || text->empty())
        return rule.otherwise;
    return text;
}

CellValue<Json> TableCells::valueIn(const std::string& text, const KindField& field,
                                    const ValueRule& rule) const {
    const bool isFixed = rule.source == ValueRule::Source::fixed;
    switch (field.form) {
        case FieldForm::text:
        case FieldForm::reference:
        case FieldForm::parts:
            return {Json(text), {}, {}};
        case FieldForm::word:
            return wordIn(text, field);
        case FieldForm::date: {
            const CellValue<std::string> date =
                dateIn(text, isFixed ? DateForm{} : m_mapping.dates);
            return date.value ? CellValue<Json>{Json(*date.value), {}, {}}
                              : refused<Json>(date.what, date.remedy);
        }
        case FieldForm::yesNo:
            if (const std::optional<bool> value = yesNoIn(text))
                return {Json(*value), {}, {}};
            return refused<Json>("this is neither yes nor no",
                                 "Say what it means in the mapping, such as \"words\": {\"x\": "
                                 "\"yes\"}.");
        case FieldForm::number:
        case FieldForm::whole:
            break;
    }
    return numberValue(text, isFixed ? NumberForm{} : m_mapping.numbers, rule,
                       field.form == FieldForm::whole);
}

std::vector<std::string> itemsIn(const std::string& text, const KindField& field) {
    const std::string marks = field.form == FieldForm::number ? ";\n" : ";,\n";
    std::vector<std::string> items;
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find_first_of(marks, at), text.size());
        const std::string item = trimmed(text.substr(at, end - at));
        if (!item.empty())
            items.push_back(item);
        at = end + 1;
    }
    return items;
}

}  // namespace rackbook
