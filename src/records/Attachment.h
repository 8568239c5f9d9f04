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
    std::string sha256;     // 64 lower-case hexadecimal digits
    std::string mediaType;  // image/jpeg, image/png, application/pdf …
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
        v("caption", r.caption);
        v("takenOn", r.takenOn);
        v("edition", r.edition);
        v("impression", r.impression);
        v("drawdown", r.drawdown);
        v("note", r.note);
    }
};

}  // namespace rackbook
