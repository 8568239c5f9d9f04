#include "commands/SoughtNames.h"

#include <QString>
#include <algorithm>
#include <set>

namespace rackbook {

namespace {

constexpr std::size_t fewestLettersOfWord = 3;

// Letters and digits in runs, in one case and without what only decorates them.
std::vector<std::string> wordsOf(std::string_view text) {
    const QString folded = QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()))
                               .normalized(QString::NormalizationForm_KD)
                               .toCaseFolded();
    std::vector<std::string> words;
    std::u32string word;
    const auto finish = [&] {
        if (!word.empty())
            words.push_back(
                QString::fromUcs4(word.data(), static_cast<qsizetype>(word.size())).toStdString());
        word.clear();
    };
    for (const char32_t c : folded.toStdU32String()) {
        if (QChar::isLetterOrNumber(c))
            word += c;
        else if (!QChar::isMark(c))
            finish();
    }
    finish();
    return words;
}

std::size_t lettersOf(const std::vector<std::string>& words) {
    std::size_t count = 0;
    for (const std::string& word : words)
        count += static_cast<std::size_t>(QString::fromStdString(word).size());
    return count;
}

bool tellsNothing(const std::string& word) {
    static const std::set<std::string> common = {"and", "dem", "den", "der", "des", "det",
                                                 "les", "och", "the", "und", "van", "von"};
    return common.count(word) != 0;
}

}  // namespace

void SoughtNames::add(std::string_view text, std::size_t fewestLetters) {
    std::vector<std::string> words = wordsOf(text);
    if (words.empty() || lettersOf(words) < fewestLetters)
        return;
    const bool isKnown = std::any_of(m_sought.begin(), m_sought.end(),
                                     [&](const Sought& sought) { return sought.words == words; });
    if (isKnown)
        return;
    m_sought.push_back({std::move(words), std::string(text)});
    std::stable_sort(m_sought.begin(), m_sought.end(), [](const Sought& a, const Sought& b) {
        return a.words.size() > b.words.size();
    });
}

void SoughtNames::addName(std::string_view name) {
    add(name, 1);
    for (const std::string& word : wordsOf(name))
        if (!tellsNothing(word))
            add(word, fewestLettersOfWord);
}

void SoughtNames::addWhole(std::string_view text) {
    while (!text.empty()) {
        const std::size_t end = std::min(text.find_first_of("\n,;"), text.size());
        std::string_view part = text.substr(0, end);
        while (!part.empty() && part.front() == ' ')
            part.remove_prefix(1);
        add(part, fewestLettersOfWord);
        text.remove_prefix(std::min(end + 1, text.size()));
    }
}

std::optional<std::string> SoughtNames::foundIn(std::string_view text) const {
    const std::vector<std::string> words = wordsOf(text);
    for (const Sought& sought : m_sought)
        if (std::search(words.begin(), words.end(), sought.words.begin(), sought.words.end()) !=
            words.end())
            return sought.shown;
    return std::nullopt;
}

}  // namespace rackbook
