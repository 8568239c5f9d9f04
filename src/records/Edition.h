// The impressions of one image, as declared: title, paper, size, proofs, statement.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/Edtf.h"
#include "records/EnumText.h"
#include "records/RecordKind.h"
#include "records/Ref.h"

namespace rackbook {

struct Party;

enum class EditionStatus { open, closed };
template <>
struct EnumText<EditionStatus> {
    static constexpr const char* names[] = {"open", "closed"};
};

// What a designation says the impression is. SP and CP are ambiguous in the trade, so the kind is
// held apart from the inscription as written.
enum class DesignationKind {
    numbered,
    artistsProof,
    bonATirer,
    printersProof,
    horsCommerce,
    trialProof,
    workingProof,
    stateProof,
    separationProof,
    colourProof,
    progressiveProof,
    cancellationProof,
    presentationProof,
    archive
};
template <>
struct EnumText<DesignationKind> {
    static constexpr const char* names[] = {
        "numbered",          "artistsProof", "bonATirer",        "printersProof",
        "horsCommerce",      "trialProof",   "workingProof",     "stateProof",
        "separationProof",   "colourProof",  "progressiveProof", "cancellationProof",
        "presentationProof", "archive"};
};

// What becomes, or became, of a matrix.
enum class MatrixFate { kept, cutAway, cancelled, effaced, destroyed };
template <>
struct EnumText<MatrixFate> {
    static constexpr const char* names[] = {"kept", "cutAway", "cancelled", "effaced", "destroyed"};
};

struct DeclaredProofs {
    DesignationKind designationKind = DesignationKind::artistsProof;
    int count = 0;  // 1 or more

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("designationKind", r.designationKind);
        v("count", r.count);
    }
};

struct Inscription {
    std::string text;
    std::string where;
    std::string medium;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("text", r.text);
        v("where", r.where);
        v("medium", r.medium);
    }
};

enum class DisclosureAnswer { stated, notApplicable, notKnown };
template <>
struct EnumText<DisclosureAnswer> {
    static constexpr const char* names[] = {"stated", "notApplicable", "notKnown"};
};

// One item of the disclosure checklist; the items are listed in calc/Disclosure.h.
struct Disclosure {
    std::string item;
    DisclosureAnswer answer = DisclosureAnswer::notKnown;
    std::optional<std::string> text;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("item", r.item);
        v("answer", r.answer);
        v("text", r.text);
    }
};

struct Edition {
    static constexpr RecordKind kind = RecordKind::edition;
    std::string id;
    std::string code;  // short, on labels and in lists; unique in a book
    std::string title;
    Ref<Party> maker;
    std::optional<Ref<Party>> printer;
    std::optional<Ref<Party>> publisher;
    std::string process;
    std::optional<EdtfDate> year;
    std::optional<double> imageHeight_mm;
    std::optional<double> imageWidth_mm;
    std::optional<double> sheetHeight_mm;
    std::optional<double> sheetWidth_mm;
    std::optional<std::string> paper;
    std::optional<int> declaredNumbered;  // the size given in the statement, 0 … 100,000
    std::vector<DeclaredProofs> declaredProofs;
    std::optional<int> declaredTotal;  // all signed impressions, where the statement gives it
    std::vector<Inscription> inscriptions;
    std::optional<std::string> statement;
    EditionStatus status = EditionStatus::open;
    std::optional<MatrixFate> promisedMatrixFate;
    std::optional<EdtfDate> promisedBy;
    std::vector<Disclosure> disclosures;
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("id", r.id);
        v("code", r.code);
        v("title", r.title);
        v("maker", r.maker);
        v("printer", r.printer);
        v("publisher", r.publisher);
        v("process", r.process);
        v("year", r.year);
        v("imageHeight_mm", r.imageHeight_mm);
        v("imageWidth_mm", r.imageWidth_mm);
        v("sheetHeight_mm", r.sheetHeight_mm);
        v("sheetWidth_mm", r.sheetWidth_mm);
        v("paper", r.paper);
        v("declaredNumbered", r.declaredNumbered);
        v("declaredProofs", r.declaredProofs);
        v("declaredTotal", r.declaredTotal);
        v("inscriptions", r.inscriptions);
        v("statement", r.statement);
        v("status", r.status);
        v("promisedMatrixFate", r.promisedMatrixFate);
        v("promisedBy", r.promisedBy);
        v("disclosures", r.disclosures);
        v("note", r.note);
    }
};

}  // namespace rackbook
