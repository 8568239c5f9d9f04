// What the eye and a fingertip found.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "records/Impression.h"
#include "records/Reading.h"

namespace rackbook {

enum class Touch { wet, tacky, dry };
template <>
struct EnumText<Touch> {
    static constexpr const char* names[] = {"wet", "tacky", "dry"};
};

// The colour beside what it should be: turned (brownish), returning, true.
enum class LookColour { turned, returning, trueColour };
template <>
struct EnumText<LookColour> {
    static constexpr const char* names[] = {"turned", "returning", "true"};
};

struct Look {
    static constexpr RecordKind kind = RecordKind::look;
    std::string id;
    std::vector<Ref<Impression>> impressions;  // those looked at
    std::vector<Ref<Impression>> standsFor;    // others that this sample is taken to speak for
    EdtfDate at = EdtfDate::ofMinute(0);
    std::optional<Touch> touch;  // at least one of touch and colour
    std::optional<LookColour> colour;
    std::optional<Ref<Reading>> reading;
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("id", r.id);
        v("impressions", r.impressions);
        v("standsFor", r.standsFor);
        v("at", r.at);
        v("touch", r.touch);
        v("colour", r.colour);
        v("reading", r.reading);
        v("note", r.note);
    }
};

}  // namespace rackbook
