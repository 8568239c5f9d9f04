// What is in one heap or jar over time. Its contents are the sum of its weighings.
#pragma once

#include <optional>
#include <string>

#include "base/Edtf.h"
#include "records/EnumText.h"
#include "records/RecordKind.h"
#include "records/Ref.h"

namespace rackbook {

struct Edition;
struct Place;

enum class MixPurpose { stock, letDown, portion };
template <>
struct EnumText<MixPurpose> {
    static constexpr const char* names[] = {"stock", "letDown", "portion"};
};

struct Mix {
    static constexpr RecordKind kind = RecordKind::mix;
    std::string id;
    std::string name;
    MixPurpose purpose = MixPurpose::stock;
    bool drierFree = false;  // declared: no drier may go in
    std::optional<Ref<Edition>> edition;
    std::optional<EdtfDate> madeOn;
    std::optional<EdtfDate> finishedOn;
    std::optional<Ref<Place>> place;
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("id", r.id);
        v("name", r.name);
        v("purpose", r.purpose);
        v("drierFree", r.drierFree);
        v("edition", r.edition);
        v("madeOn", r.madeOn);
        v("finishedOn", r.finishedOn);
        v("place", r.place);
        v("note", r.note);
    }
};

}  // namespace rackbook
