#include "commands/FieldWords.h"

#include <optional>
#include <vector>

#include "base/Numbers.h"
#include "base/Text.h"
#include "commands/RecordNamed.h"
#include "commands/SheetSelection.h"
#include "records/FieldTraits.h"

namespace rackbook {

namespace {

std::vector<std::string> itemsOf(const std::string& value) {
    std::vector<std::string> items;
    for (std::size_t at = 0; at <= value.size() && !value.empty();) {
        const std::size_t comma = std::min(value.find(',', at), value.size());
        std::string item = value.substr(at, comma - at);
        item.erase(0, item.find_first_not_of(' '));
        item.erase(item.find_last_not_of(' ') + 1);
        items.push_back(std::move(item));
        at = comma + 1;
    }
    return items;
}

template <class T>
struct IsListOfParts : std::false_type {};
template <class T>
struct IsListOfParts<std::vector<T>> : HasFields<T> {};

class FieldSetter {
public:
    // `rest` is what is left of the path, `around` names what the fields belong to.
    FieldSetter(const BookFile& book, const FieldWords& words, const std::string& rest,
                std::string around)
        : m_book(book), m_words(words), m_around(std::move(around)) {
        const std::size_t dot = rest.find('.');
        m_name = rest.substr(0, dot);
        m_rest = dot == std::string::npos ? std::string() : rest.substr(dot + 1);
    }

    template <class T>
    void operator()(const char* name, T& value) {
        if (std::string_view(name) != "id")
            m_names.emplace_back(name);
        if (m_name != name)
            return;
        m_found = true;
        if constexpr (IsListOfParts<T>::value) {
            setPart(value);
        } else {
            if (!m_rest.empty())
                throw UsageError(m_name + " of " + m_around + " has no parts",
                                 "Write " + m_name + "=VALUE.");
            set(value, m_words.value);
        }
    }

    void requireFound() const {
        if (m_found)
            return;
        const std::optional<std::string> nearest = nearestName(m_name, m_names);
        throw UsageError(
            m_around + " has no field \"" + excerpt(m_name) + "\"",
            nearest ? "Did you mean " + *nearest + "?" : "It has " + joined(m_names) + ".");
    }

private:
    [[noreturn]] void refuse(const std::string& value, const std::string& why,
                             const std::string& remedy) const {
        throw UsageError(m_words.path + " is \"" + excerpt(value) + "\", which is " + why, remedy);
    }

    void set(std::string& value, const std::string& text) const { value = text; }

    void set(bool& value, const std::string& text) const {
        if (text != "yes" && text != "no")
            refuse(text, "neither yes nor no", "Write " + m_words.path + "=yes or =no.");
        value = text == "yes";
    }

    void set(int& value, const std::string& text) const {
        const std::optional<long long> number = parseWhole(text);
        if (!number || *number < -1'000'000 || *number > 1'000'000)
            refuse(text, "not a whole number", "Write digits only, such as 12.");
        value = static_cast<int>(*number);
    }

    void set(double& value, const std::string& text) const {
        const std::optional<double> number = parseNumber(text);
        if (!number)
            refuse(text, "not a number", "Write digits with a decimal point, such as 12.5.");
        value = *number;
    }

    void set(EdtfDate& value, const std::string& text) const {
        value = EdtfDate::parse(text, m_words.path);
    }

    template <class R>
    void set(Ref<R>& value, const std::string& text) const {
        value.id = recordNamed<R>(m_book, text).id;
    }

    template <class E, std::enable_if_t<std::is_enum_v<E>, int> = 0>
    void set(E& value, const std::string& text) const {
        const std::optional<E> known = enumFrom<E>(text);
        const std::vector<std::string> names = enumNames<E>();
        if (!known) {
            const std::optional<std::string> nearest = nearestName(text, names);
            refuse(text, "none of its words",
                   nearest ? "Did you mean " + *nearest + "?"
                           : "Write " + joined(names, " or ") + ".");
        }
        value = *known;
    }

    template <class T>
    void set(std::optional<T>& value, const std::string& text) const {
        value.reset();
        if (text.empty())
            return;
        T made{};
        set(made, text);
        value = std::move(made);
    }

    void set(std::vector<Ref<Impression>>& items, const std::string& text) const {
        items.clear();
        if (!text.empty())
            items = refsTo(sheetsNamed(m_book, text).sheets);
    }

    template <class T>
    void set(std::vector<T>& items, const std::string& text) const {
        items.clear();
        for (const std::string& one : itemsOf(text)) {
            items.emplace_back();
            set(items.back(), one);
        }
    }

    template <class T>
    void setPart(std::vector<T>& items) const {
        if (m_rest.empty()) {
            if (!m_words.value.empty())
                refuse(m_words.value, "no value for a list of parts",
                       "Set its parts, such as " + m_name + ".1." + firstFieldOf<T>() + "=VALUE.");
            items.clear();
            return;
        }
        const std::size_t dot = m_rest.find('.');
        const std::optional<long long> number = parseWhole(m_rest.substr(0, dot));
        if (!number && items.size() > 1)
            throw UsageError(m_name + " has " + std::to_string(items.size()) + " parts",
                             "Say which, such as " + m_name + ".2." + m_rest + ".");
        const long long position = number.value_or(1);
        const long long next = static_cast<long long>(items.size()) + 1;
        if (position < 1 || position > next)
            throw UsageError(m_name + " has no part " + std::to_string(position),
                             "The next new one is " + m_name + "." + std::to_string(next) + ".");
        if (number && dot == std::string::npos)
            throw UsageError(m_words.path + " is a part, and no field of it is named",
                             "Write " + m_words.path + "." + firstFieldOf<T>() + "=VALUE.");
        if (position == next)
            items.emplace_back();
        FieldSetter inner(m_book, m_words, number ? m_rest.substr(dot + 1) : m_rest,
                          m_name + " of " + m_around);
        T::fields(items[static_cast<std::size_t>(position - 1)], inner);
        inner.requireFound();
    }

    struct FirstName {
        std::string name;
        template <class T>
        void operator()(const char* field, const T&) {
            if (name.empty())
                name = field;
        }
    };

    template <class T>
    static std::string firstFieldOf() {
        FirstName first;
        const T sample{};
        T::fields(sample, first);
        return first.name;
    }

    const BookFile& m_book;
    const FieldWords& m_words;
    std::string m_around;
    std::string m_name;
    std::string m_rest;
    std::vector<std::string> m_names;
    bool m_found = false;
};

}  // namespace

FieldWords fieldWordsFrom(const std::string& words) {
    const std::size_t sign = words.find('=');
    if (sign == std::string::npos || sign == 0)
        throw UsageError("\"" + excerpt(words) + "\" sets no field", "Write FIELD=VALUE.");
    return {words.substr(0, sign), words.substr(sign + 1)};
}

void setField(const BookFile& book, Record& record, const FieldWords& words) {
    if (words.path == "id")
        throw UsageError("the id of a record never changes",
                         "Enter a new record under the other id.");
    std::visit(
        [&](auto& r) {
            using R = std::decay_t<decltype(r)>;
            FieldSetter setter(book, words, words.path, nameOf(R::kind, r.id));
            R::fields(r, setter);
            setter.requireFound();
        },
        record);
}

}  // namespace rackbook
