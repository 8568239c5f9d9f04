// A document that was handed out.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "records/Impression.h"

namespace rackbook {

struct Issue {
    static constexpr RecordKind kind = RecordKind::issue;
    std::string id;
    std::string sheetKind;  // the name of the sheet's template: edition, readiness …
    EdtfDate issuedOn = EdtfDate::ofMinute(0);
    std::optional<Ref<Party>> recipient;
    std::optional<Ref<Edition>> edition;
    std::vector<Ref<Impression>> impressions;
    std::optional<std::string> contentSha256;  // of the facts on it
    std::optional<std::string> fileSha256;     // of the PDF
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("id", r.id);
        v("sheetKind", r.sheetKind);
        v("issuedOn", r.issuedOn);
        v("recipient", r.recipient);
        v("edition", r.edition);
        v("impressions", r.impressions);
        v("contentSha256", r.contentSha256);
        v("fileSha256", r.fileSha256);
        v("note", r.note);
    }
};

}  // namespace rackbook
