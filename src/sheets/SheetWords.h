// The words of one sheet: the labels of its template, and figures and dates as sheets print them.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/Edtf.h"
#include "calc/Estimate.h"
#include "records/EnumText.h"
#include "sheets/Template.h"

namespace rackbook {

class SheetWords {
public:
    using Filling = std::initializer_list<std::pair<std::string_view, std::string>>;

    // Labels that every sheet using this class needs.
    static const std::vector<std::string>& labels();

    // The template must outlive it.
    explicit SheetWords(const SheetTemplate& sheetTemplate) : m_template(sheetTemplate) {}

    const std::string& operator()(const std::string& key) const { return m_template.label(key); }

    // The label with {name} replaced by its filling.
    std::string filled(const std::string& key, Filling filling) const;

    // The label "prefix.name of the enumerator".
    template <class E>
    const std::string& of(const std::string& prefix, E value) const {
        return m_template.label(prefix + "." + textOf(value));
    }

    // "a, b and c"
    std::string listed(const std::vector<std::string>& parts) const;

    // As written, without a clock time; with a reading in plain words where it is badly known:
    // "1998~ (about 1998)".
    std::string date(const EdtfDate& date) const;
    std::string dateOrNotRecorded(const std::optional<EdtfDate>& date) const;
    std::string textOrNotRecorded(const std::optional<std::string>& text) const;

private:
    std::string reading(std::string_view written) const;
    std::string oneDate(std::string_view written) const;

    const SheetTemplate& m_template;
};

// A share of 0 … 1 in per cent, without the sign.
std::string percentFigure(double share, int decimals);

// "low–high" in per cent, without the sign.
std::string percentRange(const Estimate& share, int decimals);

// True where both bounds print alike.
bool printsAsOne(const Estimate& share, int decimals);

// "1–12, 15" of {1, 2, … 12, 15}. Pre: sorted, without repeats.
std::string numberRanges(const std::vector<int>& numbers);

// The words before the first semicolon: the name that a container goes by.
std::string shortWords(const std::string& words);

}  // namespace rackbook
