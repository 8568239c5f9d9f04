// Where impressions, lots or swatches can be: a tree, each place with its light over time.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/Edtf.h"
#include "records/EnumText.h"
#include "records/Party.h"
#include "records/Ref.h"

namespace rackbook {

enum class PlaceKind { room, rack, wall, drawer, box, shelf, gallery, holderAddress, other };
template <>
struct EnumText<PlaceKind> {
    static constexpr const char* names[] = {"room",  "rack",    "wall",          "drawer", "box",
                                            "shelf", "gallery", "holderAddress", "other"};
};

enum class LightKind { dark, daylight, outdoors, artificial, metered };
template <>
struct EnumText<LightKind> {
    static constexpr const char* names[] = {"dark", "daylight", "outdoors", "artificial",
                                            "metered"};
};

// What daylight comes through. open: no glass between. filtering: sold as keeping ultraviolet out.
enum class Glass { open, clearSingle, clearDouble, coatedDouble, laminated, filtering };
template <>
struct EnumText<Glass> {
    static constexpr const char* names[] = {"open",         "clearSingle", "clearDouble",
                                            "coatedDouble", "laminated",   "filtering"};
};

// The light at a place from a day on, until the next entry.
struct Light {
    std::optional<EdtfDate> from;  // absent: since always
    LightKind lightKind = LightKind::dark;
    std::optional<double> windowAzimuth_deg;   // the way the window looks, 0 north … 90 east
    std::optional<double> daylightFactor_pct;  // 0 … 100
    std::optional<Glass> glass;
    std::optional<double> glassTransmittance;  // visible, 0 … 1; not with open
    // Of near ultraviolet, 0 … 1, as measured or as the maker's sheet states; not with open.
    std::optional<double> glassUltravioletTransmittance;
    std::optional<bool> directSun;
    std::optional<double> illuminance_lx;  // typical, where it was measured
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("from", r.from);
        v("lightKind", r.lightKind);
        v("windowAzimuth_deg", r.windowAzimuth_deg);
        v("daylightFactor_pct", r.daylightFactor_pct);
        v("glass", r.glass);
        v("glassTransmittance", r.glassTransmittance);
        v("glassUltravioletTransmittance", r.glassUltravioletTransmittance);
        v("directSun", r.directSun);
        v("illuminance_lx", r.illuminance_lx);
        v("note", r.note);
    }
};

struct Place {
    static constexpr RecordKind kind = RecordKind::place;
    std::string id;
    std::string name;
    PlaceKind placeKind = PlaceKind::other;
    std::optional<Ref<Place>> within;
    std::optional<Ref<Party>> holder;  // whose place it is, where not the studio's
    std::optional<int> capacity;       // impressions
    std::vector<Light> light;          // empty: not known
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("id", r.id);
        v("name", r.name);
        v("placeKind", r.placeKind);
        v("within", r.within);
        v("holder", r.holder);
        v("capacity", r.capacity);
        v("light", r.light);
        v("note", r.note);
    }
};

}  // namespace rackbook
