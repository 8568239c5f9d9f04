#include "exchange/WithoutPrivate.h"

#include <algorithm>

#include "records/FieldTraits.h"

namespace rackbook {

namespace {

bool isOutOfStudio(const Place& place) {
    return place.holder || place.placeKind == PlaceKind::gallery ||
           place.placeKind == PlaceKind::holderAddress;
}

// A place within a holder's would tell just as much.
bool liesOutOfStudio(const RecordSet& records, const Place& place) {
    const Place* at = &place;
    for (std::size_t steps = 0; at && steps <= records.of<Place>().size(); ++steps) {
        if (isOutOfStudio(*at))
            return true;
        at = records.find(at->within);
    }
    return false;
}

class Cleaner {
public:
    Cleaner(RecordKind kind, const PrivacyChoice& choice) : m_kind(kind), m_choice(choice) {}

    template <class T>
    void operator()(const char* name, std::optional<T>& value) {
        if (isPrivate(m_kind, name, m_choice))
            value.reset();
        else if (value)
            cleanParts(*value);
    }
    template <class T>
    void operator()(const char*, std::vector<T>& values) {
        for (auto&& value : values)
            cleanParts(value);
    }
    template <class T>
    void operator()(const char*, T& value) {
        cleanParts(value);
    }

private:
    template <class T>
    void cleanParts(T& value) {
        if constexpr (HasFields<T>::value)
            T::fields(value, *this);
    }

    RecordKind m_kind;
    const PrivacyChoice& m_choice;
};

class Renamer {
public:
    Renamer(const Withheld& withheld, WithheldNames& names, bool renamesParties)
        : m_withheld(withheld), m_names(names), m_renamesParties(renamesParties) {}

    template <class T>
    void operator()(const char*, T& value) {
        rename(value);
    }

    bool didRename() const { return m_didRename; }

private:
    void rename(Ref<Place>& place) {
        if (m_withheld.isPlace(place.id))
            put(RecordKind::place, place.id);
    }
    void rename(Ref<Party>& party) {
        if (m_renamesParties)
            put(RecordKind::party, party.id);
    }
    template <class T>
    void rename(std::optional<T>& value) {
        if (value)
            rename(*value);
    }
    template <class R>
    void rename(std::vector<Ref<R>>& refs) {
        for (Ref<R>& ref : refs)
            rename(ref);
    }
    template <class T>
    void rename(T&) {}

    void put(RecordKind kind, std::string& id) {
        id = m_names.nameFor(kind, id);
        m_didRename = true;
    }

    const Withheld& m_withheld;
    WithheldNames& m_names;
    bool m_renamesParties;
    bool m_didRename = false;
};

bool renamePlace(Place& place, const Withheld& withheld, WithheldNames& names) {
    if (!withheld.isPlace(place.id))
        return false;
    place.id = place.name = names.nameFor(RecordKind::place, place.id);
    place.within.reset();
    return true;
}

}  // namespace

bool isPrivate(RecordKind kind, std::string_view field, const PrivacyChoice& choice) {
    static constexpr std::string_view always[] = {"note",          "contact",  "supplier",
                                                  "careNotes",     "document", "latitude_deg",
                                                  "longitude_deg", "recipient"};
    if (std::find(std::begin(always), std::end(always), field) != std::end(always))
        return true;
    if (field == "holder")
        return !choice.namesHolders;
    if (kind == RecordKind::lot)
        return field == "price";
    return kind == RecordKind::transfer && !choice.tellsTransfers &&
           (field == "price" || field == "currency" || field == "terms");
}

void withoutPrivate(Record& record, const PrivacyChoice& choice) {
    Cleaner cleaner(kindOf(record), choice);
    std::visit([&](auto& r) { std::decay_t<decltype(r)>::fields(r, cleaner); }, record);
}

const std::string& WithheldNames::nameFor(RecordKind kind, const std::string& id) {
    const std::string next = "withheld-" + std::to_string(m_names.size() + 1);
    return m_names.emplace(std::pair(kind, id), next).first->second;
}

Withheld::Withheld(const RecordSet& records, const PrivacyChoice& choice)
    : m_areParties(!choice.namesHolders && !choice.tellsTransfers) {
    if (choice.namesHolders)
        return;
    for (const Place& place : records.of<Place>())
        if (liesOutOfStudio(records, place))
            m_places.insert(place.id);
}

bool Withheld::rename(Record& record, WithheldNames& names) const {
    Place* place = std::get_if<Place>(&record);
    const bool isRenamed = place && renamePlace(*place, *this, names);
    Renamer renamer(*this, names, m_areParties && kindOf(record) == RecordKind::transfer);
    std::visit([&](auto& r) { std::decay_t<decltype(r)>::fields(r, renamer); }, record);
    return isRenamed || renamer.didRename();
}

}  // namespace rackbook
