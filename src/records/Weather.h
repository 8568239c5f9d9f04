// The cloud of one day over the studio, as seen.
#pragma once

#include <optional>
#include <string>

#include "base/Edtf.h"
#include "records/EnumText.h"
#include "records/RecordKind.h"

namespace rackbook {

// What somebody says of the sky of a day: sunny throughout or nearly so, sun and cloud taking
// turns, grey throughout.
enum class Sky { sunny, broken, overcast };
template <>
struct EnumText<Sky> {
    static constexpr const char* names[] = {"sunny", "broken", "overcast"};
};

struct Weather {
    static constexpr RecordKind kind = RecordKind::weather;
    std::string id;
    EdtfDate on = EdtfDate::ofDay(0);  // a single day
    std::optional<Sky> sky;            // exactly one of sky and oktas
    std::optional<double> oktas;       // eighths of the sky that were covered, 0 … 8, as a mean
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("id", r.id);
        v("on", r.on);
        v("sky", r.sky);
        v("oktas", r.oktas);
        v("note", r.note);
    }
};

}  // namespace rackbook
