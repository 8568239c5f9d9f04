// Impressions going from one place to another.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "records/Issue.h"
#include "records/Place.h"

namespace rackbook {

enum class MoveWhy { hang, store, consign, lend, sell, give, giveBack, destroy, other };
template <>
struct EnumText<MoveWhy> {
    static constexpr const char* names[] = {"hang", "store",  "consign", "lend", "sell",
                                            "give", "return", "destroy", "other"};
};

struct Move {
    static constexpr RecordKind kind = RecordKind::move;
    std::string id;
    std::vector<Ref<Impression>> impressions;
    std::optional<Ref<Place>> from;
    Ref<Place> to;
    EdtfDate at = EdtfDate::ofMinute(0);
    std::optional<EdtfDate> until;  // when they had left again, where no later move says it
    MoveWhy why = MoveWhy::other;
    bool interleaved = false;  // under interleaving or stacked: no light reaches the face
    std::optional<Ref<Issue>> document;
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("id", r.id);
        v("impressions", r.impressions);
        v("from", r.from);
        v("to", r.to);
        v("at", r.at);
        v("until", r.until);
        v("why", r.why);
        v("interleaved", r.interleaved);
        v("document", r.document);
        v("note", r.note);
    }
};

}  // namespace rackbook
