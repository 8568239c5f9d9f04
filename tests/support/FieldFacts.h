// What the record types say about their fields, gathered from the types themselves: tests hold
// schemas, tables and sample records against it.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "records/FieldTraits.h"
#include "records/Record.h"

namespace rackbook::test {

struct FieldFacts {
    enum class Form { text, date, whole, real, flag, word, ref, parts };

    std::string name;
    Form form = Form::text;
    bool isOptional = false;
    bool isList = false;
    std::vector<std::string> words;  // of an enumeration
    RecordKind target{};             // of a reference
    std::vector<FieldFacts> parts;   // of a structure
};

class FieldFactsReader {
public:
    template <class T>
    static std::vector<FieldFacts> of() {
        FieldFactsReader reader;
        T value{};
        T::fields(value, reader);
        return std::move(reader.m_facts);
    }

    template <class T>
    void operator()(const char* name, const T&) {
        FieldFacts facts;
        facts.name = name;
        read<T>(facts);
        m_facts.push_back(std::move(facts));
    }

private:
    template <class T>
    static void read(FieldFacts& facts) {
        using Form = FieldFacts::Form;
        if constexpr (IsOptional<T>::value) {
            facts.isOptional = true;
            read<typename T::value_type>(facts);
        } else if constexpr (IsVector<T>::value) {
            facts.isList = true;
            read<typename T::value_type>(facts);
        } else if constexpr (IsRef<T>::value) {
            facts.form = Form::ref;
            facts.target = IsRef<T>::Target::kind;
        } else if constexpr (std::is_same_v<T, EdtfDate>) {
            facts.form = Form::date;
        } else if constexpr (std::is_same_v<T, bool>) {
            facts.form = Form::flag;
        } else if constexpr (std::is_same_v<T, int>) {
            facts.form = Form::whole;
        } else if constexpr (std::is_same_v<T, double>) {
            facts.form = Form::real;
        } else if constexpr (std::is_enum_v<T>) {
            facts.form = Form::word;
            facts.words = enumNames<T>();
        } else if constexpr (HasFields<T>::value) {
            facts.form = Form::parts;
            facts.parts = of<T>();
        } else {
            static_assert(std::is_same_v<T, std::string>, "a field of a type not known here");
        }
    }

    std::vector<FieldFacts> m_facts;
};

// Paths of all fields that hold something: "pull.note", "block.states.cutOn".
class FilledFields {
public:
    FilledFields(std::set<std::string>& paths, std::string prefix)
        : m_paths(paths), m_prefix(std::move(prefix)) {}

    template <class T>
    void operator()(const char* name, const T& value) {
        note(m_prefix + "." + name, value);
    }

private:
    template <class T>
    void note(const std::string& path, const T& value) {
        if constexpr (IsOptional<T>::value) {
            if (value)
                note(path, *value);
        } else if constexpr (IsVector<T>::value) {
            for (const auto& item : value)
                note(path, item);
        } else {
            if constexpr (std::is_same_v<T, std::string>)
                if (value.empty())
                    return;
            m_paths.insert(path);
            if constexpr (HasFields<T>::value) {
                FilledFields inner(m_paths, path);
                T::fields(value, inner);
            }
        }
    }

    std::set<std::string>& m_paths;
    std::string m_prefix;
};

inline void noteFilled(const Record& record, std::set<std::string>& paths) {
    std::visit(
        [&](const auto& r) {
            using R = std::decay_t<decltype(r)>;
            FilledFields filled(paths, textOf(R::kind));
            R::fields(r, filled);
        },
        record);
}

inline void notePaths(const std::vector<FieldFacts>& facts, const std::string& prefix,
                      std::set<std::string>& paths) {
    for (const FieldFacts& field : facts) {
        paths.insert(prefix + "." + field.name);
        notePaths(field.parts, prefix + "." + field.name, paths);
    }
}

}  // namespace rackbook::test
