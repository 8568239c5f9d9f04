#include "sheets/EditionParts.h"

namespace rackbook::editionparts {

namespace {

constexpr double photographHeight_mm = 75;

}  // namespace

void addIdentity(Flow& flow, const EditionFacts& facts, const SheetWords& words) {
    const Edition& edition = facts.edition;
    const auto known = [&](const std::string& text) {
        return text.empty() ? words("notRecorded") : text;
    };
    flow.labelValues({{words("identity.code"), edition.code},
                      {words("identity.maker"), known(facts.maker)},
                      {words(facts.printers.size() > 1 ? "identity.printers" : "identity.printer"),
                       known(words.listed(facts.printers))},
                      {words("identity.publisher"), known(facts.publisher)},
                      {words("identity.process"), known(edition.process)},
                      {words("identity.year"), words.dateOrNotRecorded(edition.year)},
                      {words("identity.studio"), known(facts.studio)},
                      {words("identity.state"), words.of("identity", edition.status)}});
}

void addInscriptions(Flow& flow, const EditionFacts& facts, const SheetWords& words) {
    if (facts.edition.inscriptions.empty()) {
        flow.paragraph(words("notRecorded"));
        return;
    }
    SheetTable table;
    table.columns = {{words("inscriptions.what"), Alignment::left, 1.2, 0},
                     {words("inscriptions.where"), Alignment::left, 1.2, 0},
                     {words("inscriptions.medium"), Alignment::left, 0.8, 0}};
    for (const Inscription& inscription : facts.edition.inscriptions)
        table.rows.push_back({{inscription.text, inscription.where, inscription.medium}});
    flow.table(table);
}

void addPaper(Flow& flow, const EditionFacts& facts, const SheetWords& words) {
    const Edition& edition = facts.edition;
    flow.labelValues({{words("paper.name"), words.textOrNotRecorded(edition.paper)},
                      {words("paper.image"),
                       words.size(edition.imageHeight_mm, edition.imageWidth_mm, facts.lengthUnit)},
                      {words("paper.sheet"), words.size(edition.sheetHeight_mm,
                                                        edition.sheetWidth_mm, facts.lengthUnit)}});
}

void addStatement(Flow& flow, const EditionFacts& facts, const SheetWords& words) {
    flow.paragraph(words.textOrNotRecorded(facts.edition.statement));
}

void addPhotograph(Flow& flow, const EditionFacts& facts, const SheetWords& words) {
    rackbook::addPhotograph(flow, *facts.photograph, {facts.edition.title, "", photographHeight_mm},
                            words);
}

void addSignatures(Flow& flow, const EditionFacts& facts, const SheetWords& words) {
    addSignatureLines(flow, facts.maker, facts.printers, words);
}

void addSignatureLines(Flow& flow, const std::string& maker,
                       const std::vector<std::string>& printers, const SheetWords& words) {
    const auto caption = [&](const std::string& name, const char* label) {
        return name.empty() ? words(label) : name + "\n" + words(label);
    };
    std::vector<std::string> captions = {caption(maker, "signatures.maker")};
    for (const std::string& printer : printers)
        if (printer != maker)
            captions.push_back(caption(printer, "signatures.printer"));
    if (printers.empty())
        captions.push_back(words("signatures.printer"));
    flow.signatureLines(captions);
}

}  // namespace rackbook::editionparts
