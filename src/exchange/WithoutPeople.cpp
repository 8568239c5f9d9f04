#include "exchange/WithoutPeople.h"

#include "exchange/WithoutPrivate.h"
#include "records/FieldTraits.h"
#include "records/Personal.h"

namespace rackbook {

// Goes through the fields of one record and of the parts in it.
class WithoutPeople::Cleaner {
public:
    Cleaner(WithoutPeople& people, RecordKind kind, bool isNamed, std::string prefix = {})
        : m_people(people), m_kind(kind), m_isNamed(isNamed), m_prefix(std::move(prefix)) {}

    template <class T>
    void operator()(const char* name, T& value) {
        const std::string path = m_prefix + name;
        // A field that nobody has decided about does not leave the book.
        clean(path, personalMark(m_kind, path).value_or(Personal::mayHold), value);
    }

private:
    template <class T>
    void clean(const std::string& path, Personal mark, std::optional<T>& value) {
        if (!value)
            return;
        if constexpr (IsRef<T>::value || HasFields<T>::value) {
            clean(path, mark, *value);
        } else if (mark != Personal::none && !mustStay(path, mark)) {
            note(path);
            value.reset();
        } else {
            clean(path, mark, *value);
        }
    }
    template <class T>
    void clean(const std::string& path, Personal mark, std::vector<T>& values) {
        if constexpr (!std::is_arithmetic_v<T>)
            for (T& value : values)
                clean(path, mark, value);
    }
    template <class R>
    void clean(const std::string&, Personal, Ref<R>& ref) {
        ref.id = m_people.nameFor(R::kind, ref.id);
    }
    void clean(const std::string& path, Personal mark, std::string& value) {
        if (mark == Personal::none || path == "sha256")
            return;
        if (path == "id") {
            value = m_people.nameFor(m_kind, value);
        } else if (m_kind == RecordKind::place && path == "name") {
            if (m_isNamed)
                value = m_newId;
        } else if (m_kind == RecordKind::party && path == "name") {
            value = m_newId;
        } else {
            note(path);
            value = withheldText;
        }
        if (path == "id")
            m_newId = value;
    }
    template <class T>
    void clean(const std::string& path, Personal, T& value) {
        if constexpr (HasFields<T>::value) {
            Cleaner inner(m_people, m_kind, m_isNamed, path + ".");
            T::fields(value, inner);
        }
    }

    // Dates of a transfer stay, and so do the words of what is declared to be stated.
    static bool mustStay(const std::string& path, Personal mark) {
        return path == "disclosures.text" || (mark == Personal::linked && path == "dueOn");
    }

    void note(const std::string& path) {
        ++m_people.m_leftOut[std::string(textOf(m_kind)) + "." + path];
    }

    WithoutPeople& m_people;
    RecordKind m_kind;
    bool m_isNamed;  // it goes by another id
    std::string m_prefix;
    std::string m_newId;
};

namespace {

// "party-3", but for an id that stays and is just that.
template <class R>
std::string neutralName(const RecordSet& all, std::size_t number, bool idsStay) {
    std::string name = std::string(textOf(R::kind)) + "-" + std::to_string(number);
    while (idsStay && all.find<R>(name))
        name += "-x";
    return name;
}

}  // namespace

WithoutPeople::WithoutPeople(const RecordSet& all) {
    const Withheld withheld(all, {});
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        if (personalMark(R::kind, "id") == Personal::none)
            return;
        std::size_t number = 0;
        for (const R& record : all.of<R>()) {
            ++number;
            constexpr bool isPlace = std::is_same_v<R, Place>;
            if (!isPlace || withheld.isPlace(record.id))
                m_names[{R::kind, record.id}] = neutralName<R>(all, number, isPlace);
        }
    });
}

const std::string& WithoutPeople::nameFor(RecordKind kind, const std::string& id) const {
    const auto found = m_names.find({kind, id});
    return found == m_names.end() ? id : found->second;
}

Record WithoutPeople::of(const Record& record) {
    const RecordKind kind = kindOf(record);
    const bool isNamed = m_names.count({kind, idOf(record)}) != 0;
    m_renamed[kind] += isNamed ? 1 : 0;
    Record clean = record;
    Cleaner cleaner(*this, kind, isNamed);
    std::visit([&](auto& r) { std::decay_t<decltype(r)>::fields(r, cleaner); }, clean);
    if (Party* party = std::get_if<Party>(&clean))
        party->contactWithheld =
            party->contactWithheld || std::get<Party>(record).contact.has_value();
    return clean;
}

std::vector<Record> WithoutPeople::of(const std::vector<Record>& records) {
    std::vector<Record> clean;
    for (const Record& record : records)
        clean.push_back(of(record));
    return clean;
}

RecordSet WithoutPeople::of(const RecordSet& records) {
    RecordSet clean;
    forEachRecordType([&](auto tag) {
        for (const auto& record : records.of<typename decltype(tag)::Type>())
            clean.add(of(Record(record)));
    });
    return clean;
}

}  // namespace rackbook
