#include "exchange/WithoutPrivate.h"

#include <set>
#include <string_view>
#include <unordered_map>

#include "records/FieldTraits.h"

namespace rackbook {

namespace {

using Withheld = std::unordered_map<std::string, std::string>;  // place id, what stands instead

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

Withheld withheldPlaces(const RecordSet& records) {
    Withheld withheld;
    for (const Place& place : records.of<Place>())
        if (liesOutOfStudio(records, place))
            withheld.emplace(place.id, "withheld-" + std::to_string(withheld.size() + 1));
    return withheld;
}

// Takes the private fields out of a record and of the parts in it.
class Cleaner {
public:
    Cleaner(const PrivacyChoice& choice, const Withheld& withheld) : m_withheld(withheld) {
        m_private = {"note",     "contact",      "supplier",      "careNotes",
                     "document", "latitude_deg", "longitude_deg", "recipient"};
        if (!choice.namesHolders)
            m_private.insert("holder");
    }

    template <class T>
    void operator()(const char* name, T& value) {
        clean(name, value);
    }

private:
    template <class T>
    void clean(std::string_view name, std::optional<T>& value) {
        if (m_private.count(name) != 0)
            value.reset();
        else if (value)
            clean(name, *value);
    }

    template <class T>
    void clean(std::string_view name, std::vector<T>& values) {
        for (auto&& value : values)
            clean(name, value);
    }

    void clean(std::string_view, Ref<Place>& place) {
        const auto found = m_withheld.find(place.id);
        if (found != m_withheld.end())
            place.id = found->second;
    }

    template <class T>
    void clean(std::string_view, T& value) {
        if constexpr (HasFields<T>::value)
            T::fields(value, *this);
    }

    std::set<std::string_view> m_private;
    const Withheld& m_withheld;
};

void cleanMore(Place& place, const PrivacyChoice&, const Withheld& withheld) {
    const auto found = withheld.find(place.id);
    if (found == withheld.end())
        return;
    place.id = found->second;
    place.name = found->second;
    place.within.reset();
}

void cleanMore(Lot& lot, const PrivacyChoice&, const Withheld&) {
    lot.price.reset();
}

void cleanMore(Transfer& transfer, const PrivacyChoice& choice, const Withheld&) {
    if (choice.tellsPrices)
        return;
    transfer.price.reset();
    transfer.currency.reset();
    transfer.terms.reset();
}

template <class R>
void cleanMore(R&, const PrivacyChoice&, const Withheld&) {}

}  // namespace

RecordSet withoutPrivate(const RecordSet& records, const PrivacyChoice& choice) {
    const Withheld withheld = choice.namesHolders ? Withheld() : withheldPlaces(records);
    RecordSet cleaned;
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        for (R record : records.of<R>()) {
            Cleaner cleaner(choice, withheld);
            R::fields(record, cleaner);
            cleanMore(record, choice, withheld);
            cleaned.add(std::move(record));
        }
    });
    return cleaned;
}

}  // namespace rackbook
