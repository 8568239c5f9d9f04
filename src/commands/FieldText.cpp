#include "commands/FieldText.h"

#include <algorithm>
#include <map>

#include "base/Numbers.h"
#include "base/Ranges.h"
#include "base/Text.h"
#include "commands/PlainFields.h"
#include "records/FieldTraits.h"

namespace rackbook {

namespace {

class FieldTexts {
public:
    explicit FieldTexts(FieldStyle style = FieldStyle::names) : m_style(style) {}

    template <class T>
    void operator()(const char* name, const T& value) {
        if (std::string_view(name) == "id")
            return;
        const std::string text = textFor(value);
        if (text.empty())
            return;
        if (m_style == FieldStyle::names)
            m_texts.emplace_back(name, text);
        else
            m_texts.emplace_back(plainField(name), text + unitOfField(name));
    }

    std::vector<std::pair<std::string, std::string>> take() { return std::move(m_texts); }

private:
    // A line break in a line of many fields would be shown as an escape.
    std::string textFor(const std::string& value) const {
        if (m_style == FieldStyle::names)
            return value;
        std::string text;
        for (const char c : value)
            text += c == '\n' ? std::string(" / ") : std::string(1, c);
        return text;
    }
    std::string textFor(bool value) const { return value ? "yes" : ""; }
    std::string textFor(int value) const { return std::to_string(value); }
    std::string textFor(double value) const { return formatShortest(value); }
    std::string textFor(const EdtfDate& value) const { return value.text(); }

    template <class R>
    std::string textFor(const Ref<R>& value) const {
        return value.id;
    }

    template <class T>
    std::string textFor(const std::optional<T>& value) const {
        if constexpr (std::is_same_v<T, bool>)
            return value ? (*value ? "yes" : "no") : "";
        else
            return value ? textFor(*value) : std::string();
    }

    template <class R>
    std::string textFor(const std::vector<Ref<R>>& refs) const {
        std::vector<std::string> ids;
        for (const Ref<R>& ref : refs)
            ids.push_back(ref.id);
        return idsInShort(ids);
    }

    // A spectrum is told by its ends: nobody reads 36 numbers, and the record file has them.
    std::string textFor(const std::vector<double>& items) const {
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
    std::string textFor(const std::vector<T>& items) const {
        std::string text;
        for (const T& item : items)
            text += (text.empty() ? "" : "; ") + textFor(item);
        return text;
    }

    template <class T, std::enable_if_t<std::is_enum_v<T> || HasFields<T>::value, int> = 0>
    std::string textFor(const T& value) const {
        if constexpr (std::is_enum_v<T>) {
            return m_style == FieldStyle::names ? textOf(value) : plainWord(textOf(value));
        } else {
            FieldTexts inner(m_style);
            T::fields(value, inner);
            std::string text;
            for (const auto& [name, part] : inner.take())
                text += (text.empty() ? "" : ", ") + name + " " + part;
            return text;
        }
    }

    FieldStyle m_style;
    std::vector<std::pair<std::string, std::string>> m_texts;
};

}  // namespace

std::vector<std::pair<std::string, std::string>> fieldTexts(const Record& record,
                                                            FieldStyle style) {
    return std::visit(
        [style](const auto& r) {
            FieldTexts texts(style);
            std::decay_t<decltype(r)>::fields(r, texts);
            return texts.take();
        },
        record);
}

std::string fieldsInOneLine(const Record& record) {
    std::string line;
    for (const auto& [name, text] : fieldTexts(record, FieldStyle::plain))
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
