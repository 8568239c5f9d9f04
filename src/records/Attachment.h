// A photograph or scan, known by the hash of its bytes.
#pragma once

#include <optional>
#include <string>

#include "records/Drawdown.h"
#include "records/Impression.h"

namespace rackbook {

struct Attachment {
    static constexpr RecordKind kind = RecordKind::attachment;
    std::string id;
    std::string sha256;            // 64 lower-case hexadecimal digits
    std::string mediaType;         // image/jpeg, image/png, application/pdf …
    std::optional<int> width_px;   // of a picture, as its bytes hold it
    std::optional<int> height_px;  // likewise
    // How it is turned to be seen upright, 1 … 8 as the Exif standard numbers it; absent: 1.
    std::optional<int> orientation;
    std::optional<std::string> caption;
    std::optional<EdtfDate> takenOn;
    std::optional<Ref<Edition>> edition;  // at most one of these three
    std::optional<Ref<Impression>> impression;
    std::optional<Ref<Drawdown>> drawdown;
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("id", r.id);
        v("sha256", r.sha256);
        v("mediaType", r.mediaType);
        v("width_px", r.width_px);
        v("height_px", r.height_px);
        v("orientation", r.orientation);
        v("caption", r.caption);
        v("takenOn", r.takenOn);
        v("edition", r.edition);
        v("impression", r.impression);
        v("drawdown", r.drawdown);
        v("note", r.note);
    }
};

}  // namespace rackbook
