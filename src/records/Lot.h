// One container of ink, base (extender), drier or modifier.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/Edtf.h"
#include "records/EnumText.h"
#include "records/RecordKind.h"
#include "records/Ref.h"

namespace rackbook {

struct Party;
struct Place;

enum class LotKind { ink, base, drier, modifier };
template <>
struct EnumText<LotKind> {
    static constexpr const char* names[] = {"ink", "base", "drier", "modifier"};
};

enum class Container { tin, tube, cartridge, jar, bottle, other };
template <>
struct EnumText<Container> {
    static constexpr const char* names[] = {"tin", "tube", "cartridge", "jar", "bottle", "other"};
};

// One metal of a drier, as a mass fraction of the drier itself.
struct DrierMetal {
    std::string metal;                   // cobalt, manganese, zirconium …
    std::optional<double> contentShare;  // 0 … 1

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("metal", r.metal);
        v("contentShare", r.contentShare);
    }
};

struct Lot {
    static constexpr RecordKind kind = RecordKind::lot;
    std::string id;
    LotKind lotKind = LotKind::ink;
    std::string colourWords;            // what the container says and how it looks
    std::vector<std::string> pigments;  // Colour Index generic names: PB15:3
    std::vector<DrierMetal> drierMetals;
    std::optional<Container> container;
    std::optional<double> netMass_g;
    std::optional<double> density_gml;
    std::optional<double> price;  // in the book's currency
    std::optional<Ref<Party>> supplier;
    std::optional<EdtfDate> boughtOn;
    std::optional<EdtfDate> openedOn;
    std::optional<EdtfDate> finishedOn;
    std::optional<Ref<Place>> place;
    std::optional<std::string> safetySheet;  // the user's own safety data sheet and its date
    std::optional<std::string> careNotes;
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("id", r.id);
        v("lotKind", r.lotKind);
        v("colourWords", r.colourWords);
        v("pigments", r.pigments);
        v("drierMetals", r.drierMetals);
        v("container", r.container);
        v("netMass_g", r.netMass_g);
        v("density_gml", r.density_gml);
        v("price", r.price);
        v("supplier", r.supplier);
        v("boughtOn", r.boughtOn);
        v("openedOn", r.openedOn);
        v("finishedOn", r.finishedOn);
        v("place", r.place);
        v("safetySheet", r.safetySheet);
        v("careNotes", r.careNotes);
        v("note", r.note);
    }
};

}  // namespace rackbook
