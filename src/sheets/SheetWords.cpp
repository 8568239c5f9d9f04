#include "sheets/SheetWords.h"

#include <algorithm>

#include "base/Numbers.h"
#include "base/Ranges.h"
#include "base/Text.h"

namespace rackbook {

namespace {

bool endsInQualifier(std::string_view text) {
    return !text.empty() && (text.back() == '?' || text.back() == '~' || text.back() == '%');
}

// "2026-03-04T09:30" to "2026-03-04", in both halves of an interval.
std::string withoutClock(std::string_view text) {
    const std::size_t slash = text.find('/');
    if (slash != std::string_view::npos)
        return withoutClock(text.substr(0, slash)) + "/" + withoutClock(text.substr(slash + 1));
    return std::string(text.substr(0, text.find('T')));
}

}  // namespace

const std::vector<std::string>& SheetWords::labels() {
    static const std::vector<std::string> keys = {"and",
                                                  "dateRead",
                                                  "dateAbout",
                                                  "dateUncertain",
                                                  "dateAboutUncertain",
                                                  "dateBetween",
                                                  "dateInterval",
                                                  "dateOpenStart",
                                                  "dateOpenEnd",
                                                  "dateUnknownStart",
                                                  "dateUnknownEnd",
                                                  "season21",
                                                  "season22",
                                                  "season23",
                                                  "season24"};
    return keys;
}

// In one pass, so that braces in a title or a name stay what they are.
std::string SheetWords::filled(const std::string& key, Filling filling) const {
    const std::string& label = m_template.label(key);
    std::string text;
    for (std::size_t at = 0; at < label.size();) {
        const auto fits = [&](const auto& entry) {
            return label.compare(at, entry.first.size() + 2,
                                 "{" + std::string(entry.first) + "}") == 0;
        };
        const auto* found = std::find_if(filling.begin(), filling.end(), fits);
        if (found == filling.end()) {
            text += label[at++];
        } else {
            text += found->second;
            at += found->first.size() + 2;
        }
    }
    return text;
}

std::string SheetWords::listed(const std::vector<std::string>& parts) const {
    return joined(parts, " " + m_template.label("and") + " ");
}

std::string SheetWords::date(const EdtfDate& date) const {
    const std::string written = withoutClock(date.text());
    const std::string words = reading(written);
    return words == written ? written
                            : filled("dateRead", {{"written", written}, {"words", words}});
}

std::string SheetWords::dateOrNotRecorded(const std::optional<EdtfDate>& given) const {
    return given ? date(*given) : m_template.label("notRecorded");
}

std::string SheetWords::textOrNotRecorded(const std::optional<std::string>& text) const {
    return text && !text->empty() ? *text : m_template.label("notRecorded");
}

std::string SheetWords::reading(std::string_view written) const {
    const std::size_t slash = written.find('/');
    if (slash == std::string_view::npos)
        return oneDate(written);
    const std::string_view from = written.substr(0, slash);
    const std::string_view to = written.substr(slash + 1);
    if (from == ".." || from.empty())
        return filled(from.empty() ? "dateUnknownStart" : "dateOpenStart", {{"date", oneDate(to)}});
    if (to == ".." || to.empty())
        return filled(to.empty() ? "dateUnknownEnd" : "dateOpenEnd", {{"date", oneDate(from)}});
    return filled("dateInterval", {{"from", oneDate(from)}, {"to", oneDate(to)}});
}

std::string SheetWords::oneDate(std::string_view written) const {
    if (endsInQualifier(written)) {
        const std::string plain = oneDate(written.substr(0, written.size() - 1));
        const char* key = written.back() == '~'   ? "dateAbout"
                          : written.back() == '?' ? "dateUncertain"
                                                  : "dateAboutUncertain";
        return filled(key, {{"date", plain}});
    }
    if (written.find('X') != std::string_view::npos) {
        const EdtfDate bounds = EdtfDate::parse(written);
        return filled("dateBetween",
                      {{"from", formatDay(bounds.earliest())}, {"to", formatDay(bounds.latest())}});
    }
    const bool isSeason = written.size() == 7 && written[4] == '-' && written[5] == '2';
    if (isSeason)
        return filled("season" + std::string(written.substr(5)),
                      {{"year", std::string(written.substr(0, 4))}});
    return std::string(written);
}

std::string percentFigure(double share, int decimals) {
    return formatFixed(share * 100, decimals);
}

std::string percentRange(const Estimate& share, int decimals) {
    return percentFigure(share.low, decimals) + "–" + percentFigure(share.high, decimals);
}

bool printsAsOne(const Estimate& share, int decimals) {
    return percentFigure(share.low, decimals) == percentFigure(share.high, decimals);
}

std::string numberRanges(const std::vector<int>& numbers) {
    std::string text;
    for (const char c : formatRanges(numbers))
        text += c == '-' ? std::string("–") : c == ',' ? std::string(", ") : std::string(1, c);
    return text;
}

std::string shortWords(const std::string& words) {
    return words.substr(0, words.find(';'));
}

}  // namespace rackbook
