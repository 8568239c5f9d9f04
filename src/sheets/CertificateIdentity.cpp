#include "sheets/CertificateParts.h"
#include "sheets/DesignationNotes.h"
#include "sheets/EditionParts.h"

namespace rackbook::certificateparts {

namespace {

constexpr double codeSide_mm = 26;

// Leaves room for the identity on the same page.
constexpr double photographHeight_mm = 60;

// "Numbered: 30, Artist's proof: 3; 34 in all"
std::string sizeText(const EditionFacts& facts, const SheetWords& words) {
    const Edition& edition = facts.edition;
    std::vector<std::string> parts = {words.labelled(
        words.of("designation", DesignationKind::numbered),
        edition.declaredNumbered ? words.count(*edition.declaredNumbered) : words("notRecorded"))};
    const std::string proofs = editionparts::proofsWords(facts, words);
    if (!proofs.empty())
        parts.push_back(proofs);
    std::string text = words.inRow(parts);
    if (edition.declaredTotal)
        text = words.filled("identity.sizeTotal",
                            {{"parts", text}, {"total", words.count(*edition.declaredTotal)}});
    return edition.status == EditionStatus::open
               ? words.filled("identity.stillOpen", {{"size", text}})
               : text;
}

void addInscription(std::vector<LabelValue>& rows, const Impression& impression,
                    const SheetWords& words) {
    rows.push_back({words("identity.designation"), impression.designation
                                                       ? *impression.designation
                                                       : words("identity.notSigned")});
    if (impression.designation) {
        rows.push_back(
            {words("identity.kind"), impression.designationKind
                                         ? words.of("designation", *impression.designationKind)
                                         : words("notRecorded")});
        rows.push_back({words("identity.signedOn"), words.dateOrNotRecorded(impression.signedOn)});
    }
    rows.push_back({words("identity.working"), std::to_string(impression.workingNumber)});
    if (impression.fate == ImpressionFate::kept)
        return;
    const std::string& fate = words.of("impressionFate", impression.fate);
    rows.push_back(
        {words("identity.fate"),
         impression.fateOn ? words.inRow({fate, words.date(*impression.fateOn)}) : fate});
}

}  // namespace

std::string nameOf(const Impression& impression, const SheetWords& words) {
    if (impression.designation)
        return *impression.designation;
    return words.filled("identity.workingNumber",
                        {{"number", std::to_string(impression.workingNumber)}});
}

void addIdentity(Flow& flow, const Content& content) {
    const SheetWords& words = content.words;
    const Edition& edition = content.edition.edition;
    const auto known = [&](const std::string& text) {
        return text.empty() ? words("notRecorded") : text;
    };
    std::vector<LabelValue> rows;
    addInscription(rows, content.own.impression, words);
    const std::vector<std::string>& printers = content.own.printers;
    const LengthUnit unit = content.edition.lengthUnit;
    const std::vector<LabelValue> ofEdition = {
        {words("identity.edition"), edition.code},
        {words("identity.maker"), known(content.edition.maker)},
        {words("identity.year"), words.dateOrNotRecorded(edition.year)},
        {words("identity.process"), known(edition.process)},
        {words("identity.paper"), words.textOrNotRecorded(edition.paper)},
        {words("identity.image"), words.size(edition.imageHeight_mm, edition.imageWidth_mm, unit)},
        {words("identity.sheet"), words.size(edition.sheetHeight_mm, edition.sheetWidth_mm, unit)},
        {words(printers.size() > 1 ? "identity.printers" : "identity.printer"),
         known(words.listed(printers))},
        {words("identity.publisher"), known(content.edition.publisher)},
        {words("identity.size"), sizeText(content.edition, words)}};
    rows.insert(rows.end(), ofEdition.begin(), ofEdition.end());
    flow.labelValues(rows);
    addDesignationNotes(flow, edition, {&content.own.impression}, words);
}

void addPhotograph(Flow& flow, const Content& content) {
    rackbook::addPhotograph(
        flow, *content.own.photograph,
        {content.edition.edition.title,
         content.words(content.own.photographIsOfIt ? "photograph.ofIt" : "photograph.ofEdition"),
         photographHeight_mm},
        content.words);
}

void addStatement(Flow& flow, const Content& content) {
    editionparts::addStatement(flow, content.edition, content.words);
    editionparts::addPromiseNotes(flow, content.edition, "statement", content.words);
}

void addCode(Flow& flow, const Content& content) {
    const SheetWords& words = content.words;
    const Edition& edition = content.edition.edition;
    const std::string code = certificateCode(edition, content.own.impression, content.record);
    Panel panel;
    panel.content = QrText{code};
    panel.alternate = words.filled("code.shows", {{"text", code}});
    flow.panels({panel}, codeSide_mm);
    flow.paragraph(words.filled("code.note", {{"file", content.record.fileName}}) + "\n" + code,
                   TextStyle::small);
}

void addSignatures(Flow& flow, const Content& content) {
    editionparts::addSignatureLines(flow, content.edition.maker, content.own.printers,
                                    content.words);
}

}  // namespace rackbook::certificateparts
