#include "exchange/FitId.h"

#include <QString>
#include <map>

#include "base/Sha256.h"
#include "base/Text.h"

namespace rackbook {

namespace {

constexpr std::size_t longestId = 80;
constexpr std::size_t hashDigits = 8;

// Spelled with two letters where the language does so when it lacks the letter.
const std::map<char32_t, std::string>& spelledOut() {
    static const std::map<char32_t, std::string> letters = {
        {U'ä', "ae"}, {U'ö', "oe"}, {U'ü', "ue"}, {U'Ä', "Ae"}, {U'Ö', "Oe"}, {U'Ü', "Ue"},
        {U'ß', "ss"}, {U'æ', "ae"}, {U'Æ', "Ae"}, {U'ø', "oe"}, {U'Ø', "Oe"}, {U'å', "aa"},
        {U'Å', "Aa"}, {U'œ', "oe"}, {U'Œ', "Oe"}, {U'đ', "d"},  {U'Đ', "D"},  {U'ł', "l"},
        {U'Ł', "L"},  {U'þ', "th"}, {U'Þ', "Th"}, {U'ð', "d"},  {U'Ð', "D"},  {U'ı', "i"}};
    return letters;
}

bool isIdCharacter(char32_t c) {
    return (c >= U'a' && c <= U'z') || (c >= U'A' && c <= U'Z') || (c >= U'0' && c <= U'9') ||
           c == U'.' || c == U'_' || c == U'-' || c == U'/';
}

// The letter below its accents; 0 where it is no letter or digit, other letters as they are.
char32_t bareLetter(char32_t c) {
    const QString parts = QString::fromUcs4(&c, 1).normalized(QString::NormalizationForm_KD);
    if (parts.isEmpty() || !parts[0].isLetterOrNumber())
        return QChar::isLetterOrNumber(c) ? c : 0;
    return parts[0].isHighSurrogate() ? c : parts[0].unicode();
}

std::string hashOf(std::string_view text) {
    return sha256(text).substr(0, hashDigits);
}

}  // namespace

std::string fitForId(std::string_view text) {
    const std::string composed = normalised(text);
    std::string id;
    bool hasOther = false;
    bool wantsHyphen = false;
    const auto append = [&](std::string_view piece) {
        if (wantsHyphen && !id.empty())
            id += '-';
        wantsHyphen = false;
        id += piece;
    };
    for (const char32_t c : codePoints(composed)) {
        if (isIdCharacter(c)) {
            append(std::string(1, static_cast<char>(c)));
        } else if (const auto found = spelledOut().find(c); found != spelledOut().end()) {
            append(found->second);
        } else if (const char32_t bare = bareLetter(c); bare != 0 && isIdCharacter(bare)) {
            append(std::string(1, static_cast<char>(bare)));
        } else {
            hasOther = hasOther || bare != 0;
            wantsHyphen = true;
        }
    }
    if (hasOther)
        id += (id.empty() ? "" : "-") + hashOf(composed);
    return id;
}

std::string cutForId(std::string id) {
    if (id.size() <= longestId)
        return id;
    const std::string hash = hashOf(id);
    return id.substr(0, longestId - hashDigits - 1) + "-" + hash;
}

std::string comparedText(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()))
        .normalized(QString::NormalizationForm_C)
        .simplified()
        .toCaseFolded()
        .toStdString();
}

}  // namespace rackbook
