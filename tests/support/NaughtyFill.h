// Writes one text into every place of a record where anything may be written, found by the record
// types themselves: a field that is added later is filled too.
#pragma once

#include <functional>
#include <set>
#include <string>
#include <vector>

#include "records/FieldTraits.h"
#include "records/Record.h"

namespace rackbook::test {

class NaughtyFill {
public:
    using Making = std::function<std::string(const std::string&)>;

    // One text for all. Lists get one item, because the same twice may be forbidden, and longer
    // texts than any field may hold go into notes alone.
    explicit NaughtyFill(const std::string& text)
        : m_make([=](const std::string&) { return text; }),
          m_isOneText(true),
          m_isLong(text.size() > 60) {}
    // What becomes of a text that is there.
    explicit NaughtyFill(Making make) : m_make(std::move(make)) {}

    template <class T>
    void operator()(const char* name, T& value) {
        // These have a form of their own.
        static const std::set<std::string> ruled = {"id",       "code",     "timeZone",
                                                    "currency", "rule",     "language",
                                                    "fileName", "pigments", "mediaType"};
        const std::string field = name;
        const bool isRuled = ruled.count(field) != 0 || field.find("ha256") != std::string::npos;
        if (!isRuled && (!m_isLong || field == "note"))
            fill(value);
    }

private:
    template <class T>
    void fill(T& value) {
        if constexpr (std::is_same_v<T, std::string>) {
            value = m_make(value);
        } else if constexpr (IsOptional<T>::value) {
            if (value)
                fill(*value);
        } else if constexpr (IsVector<T>::value) {
            using Item = typename T::value_type;
            if constexpr (std::is_same_v<Item, std::string> || HasFields<Item>::value)
                if (m_isOneText && value.size() > 1)
                    value.resize(1);
            for (auto& item : value)
                fill(item);
        } else if constexpr (HasFields<T>::value && !IsRef<T>::value) {
            T::fields(value, *this);
        }
    }

    Making m_make;
    bool m_isOneText = false;
    bool m_isLong = false;
};

// Puts an ending behind the ids that a record has and names.
class IdEnding {
public:
    explicit IdEnding(std::string ending) : m_ending(std::move(ending)) {}

    template <class T>
    void operator()(const char* name, T& value) {
        if constexpr (std::is_same_v<T, std::string>) {
            if (std::string(name) == "id")
                value += m_ending;
        } else {
            end(value);
        }
    }

private:
    template <class T>
    void end(T& value) {
        if constexpr (IsOptional<T>::value) {
            if (value)
                end(*value);
        } else if constexpr (IsVector<T>::value) {
            for (auto& item : value)
                end(item);
        } else if constexpr (IsRef<T>::value) {
            value.id += m_ending;
        } else if constexpr (HasFields<T>::value) {
            T::fields(value, *this);
        }
    }

    std::string m_ending;
};

template <class Visitor>
void visitFields(Record& record, Visitor visitor) {
    std::visit([&](auto& r) { std::decay_t<decltype(r)>::fields(r, visitor); }, record);
}

}  // namespace rackbook::test
