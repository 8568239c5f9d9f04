// A document that was handed out.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "records/Impression.h"
#include "records/Layer.h"
#include "records/Mix.h"
#include "records/Place.h"
#include "records/Transfer.h"

namespace rackbook {

struct Issue {
    static constexpr RecordKind kind = RecordKind::issue;
    std::string id;
    std::string sheetKind;  // the name of the sheet's template: edition, readiness …
    EdtfDate issuedOn = EdtfDate::ofMinute(0);
    std::optional<EdtfDate> asOf;         // the day that the sheet speaks of
    std::optional<std::string> language;  // a BCP 47 tag, as en-GB
    std::optional<Ref<Party>> recipient;
    std::optional<Ref<Edition>> edition;
    std::vector<Ref<Impression>> impressions;
    std::optional<Ref<Transfer>> transfer;  // what else it is about
    std::optional<Ref<Mix>> mix;
    std::optional<Ref<Layer>> layer;
    std::optional<Ref<Place>> place;
    bool namesHolders = false;                 // it says who has the impressions
    std::optional<std::string> fileName;       // as it was given out, without its folder
    std::optional<std::string> contentSha256;  // of the facts on it
    std::optional<std::string> fileSha256;     // of the PDF
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("id", r.id);
        v("sheetKind", r.sheetKind);
        v("issuedOn", r.issuedOn);
        v("asOf", r.asOf);
        v("language", r.language);
        v("recipient", r.recipient);
        v("edition", r.edition);
        v("impressions", r.impressions);
        v("transfer", r.transfer);
        v("mix", r.mix);
        v("layer", r.layer);
        v("place", r.place);
        v("namesHolders", r.namesHolders);
        v("fileName", r.fileName);
        v("contentSha256", r.contentSha256);
        v("fileSha256", r.fileSha256);
        v("note", r.note);
    }
};

}  // namespace rackbook
