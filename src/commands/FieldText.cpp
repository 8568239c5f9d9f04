#include "commands/FieldText.h"

#include <algorithm>
#include <map>

#include "base/Numbers.h"
#include "base/Ranges.h"
#include "base/Text.h"
#include "records/FieldTraits.h"

namespace rackbook {

namespace {

class FieldTexts {
public:
    template <class T>
    void operator()(const char* name, const T& value) {
        if (std::string_view(name) == "id")
            return;
        const std::string text = textFor(value);
        if (!text.empty())
            m_texts.emplace_back(name, text);
    }

    std::vector<std::pair<std::string, std::string>> take() { return std::move(m_texts); }

private:
    static std::string textFor(const std::string& value) { return value; }
    static std::string textFor(bool value) { return value ? "yes" : ""; }
    static std::string textFor(int value) { return std::to_string(value); }
    static std::string textFor(double value) { return formatShortest(value); }
    static std::string textFor(const EdtfDate& value) { return value.text(); }

    template <class R>
    static std::string textFor(const Ref<R>& value) {
        return value.id;
    }

    template <class T>
    static std::string textFor(const std::optional<T>& value) {
        if constexpr (std::is_same_v<T, bool>)
            return value ? (*value ? "yes" : "no") : "";
        else
            return value ? textFor(*value) : std::string();
    }

    template <class R>
    static std::string textFor(const std::vector<Ref<R>>& refs) {
        std::vector<std::string> ids;
        for (const Ref<R>& ref : refs)
            ids.push_back(ref.id);
        return idsInShort(ids);
    }

    // A spectrum is told by its ends: nobody reads 36 numbers, and the record file has them.
    static std::string textFor(const std::vector<double>& items) {
        constexpr std::size_t readable = 8;
        std::string text;
        for (std::size_t i = 0; i < items.size(); ++i) {
            if (items.size() > readable && i == 2) {
                text += "; …";
                i = items.size() - 1;
            }
            text += (text.empty() ? "" : "; ") + textFor(items[i]);
        }
        return items.size() > readable ? text + " (" + std::to_string(items.size()) + " values)"
                                       : text;
    }

    template <class T>
    static std::string textFor(const std::vector<T>& items) {
        std::string text;
        for (const T& item : items)
            text += (text.empty() ? "" : "; ") + textFor(item);
        return text;
    }

    template <class T, std::enable_if_t<std::is_enum_v<T> || HasFields<T>::value, int> = 0>
    static std::string textFor(const T& value) {
        if constexpr (std::is_enum_v<T>) {
            return textOf(value);
        } else {
            FieldTexts inner;
            T::fields(value, inner);
            std::string text;
            for (const auto& [name, part] : inner.take())
                text += (text.empty() ? "" : ", ") + name + " " + part;
            return text;
        }
    }

    std::vector<std::pair<std::string, std::string>> m_texts;
};

}  // namespace

std::vector<std::pair<std::string, std::string>> fieldTexts(const Record& record) {
    return std::visit(
        [](const auto& r) {
            FieldTexts texts;
            std::decay_t<decltype(r)>::fields(r, texts);
            return texts.take();
        },
        record);
}

std::string fieldsInOneLine(const Record& record) {
    std::string line;
    for (const auto& [name, text] : fieldTexts(record))
        line += (line.empty() ? "" : ", ") + name + " " + text;
    return line;
}

std::string idsInShort(const std::vector<std::string>& ids) {
    std::map<std::string, std::vector<int>> numbered;
    std::vector<std::string> parts;
    for (const std::string& id : ids) {
        const std::size_t slash = id.rfind('/');
        const std::optional<long long> number =
            slash == std::string::npos ? std::nullopt
                                       : parseWhole(std::string_view(id).substr(slash + 1));
        if (number && *number > 0 && *number <= 100'000)
            numbered[id.substr(0, slash)].push_back(static_cast<int>(*number));
        else
            parts.push_back(id);
    }
    for (auto& [beginning, numbers] : numbered) {
        std::sort(numbers.begin(), numbers.end());
        parts.push_back(beginning + ":" + formatRanges(numbers));
    }
    return joined(parts, ", ");
}

}  // namespace rackbook
