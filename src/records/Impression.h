// One sheet of paper that was printed. It exists under its working number from the first layer;
// its designation is given at signing.
#pragma once

#include <optional>
#include <string>

#include "records/Edition.h"
#include "records/Party.h"

namespace rackbook {

enum class ImpressionFate { kept, spoiled, destroyed };
template <>
struct EnumText<ImpressionFate> {
    static constexpr const char* names[] = {"kept", "spoiled", "destroyed"};
};

struct Impression {
    static constexpr RecordKind kind = RecordKind::impression;
    std::string id;
    Ref<Edition> edition;
    int workingNumber = 1;  // pencilled while printing; unique in an edition, 1 … 100,000
    std::optional<std::string> designation;  // as written: 7/30, AP II/III, BAT
    std::optional<DesignationKind> designationKind;
    std::optional<EdtfDate> signedOn;
    ImpressionFate fate = ImpressionFate::kept;
    std::optional<EdtfDate> fateOn;
    std::optional<Ref<Party>> holder;
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("id", r.id);
        v("edition", r.edition);
        v("workingNumber", r.workingNumber);
        v("designation", r.designation);
        v("designationKind", r.designationKind);
        v("signedOn", r.signedOn);
        v("fate", r.fate);
        v("fateOn", r.fateOn);
        v("holder", r.holder);
        v("note", r.note);
    }
};

}  // namespace rackbook
