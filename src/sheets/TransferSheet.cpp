#include "sheets/TransferSheet.h"

#include <cmath>

#include "sheets/Flow.h"
#include "sheets/LabelKeys.h"
#include "sheets/SheetSetup.h"
#include "sheets/SheetWords.h"

namespace rackbook {

namespace {

// What was handed over for a time only.
bool comesBack(const TransferFacts& facts) {
    return facts.transfer.transferKind == TransferKind::consignment ||
           facts.transfer.transferKind == TransferKind::loan;
}

bool isPriced(const TransferFacts& facts) {
    return facts.transfer.transferKind == TransferKind::consignment ||
           facts.transfer.transferKind == TransferKind::sale;
}

std::string nameOf(const TransferParty& party, const SheetWords& words) {
    return party.name.empty() ? words("notRecorded") : party.name;
}

std::string withContact(const TransferParty& party, const SheetWords& words) {
    return nameOf(party, words) + (party.contact.empty() ? "" : "\n" + party.contact);
}

// Whole, or with the two decimals that most currencies have, or as many as were recorded.
std::string amountText(double amount, const SheetWords& words) {
    const auto isWhole = [](double value) { return std::abs(value - std::round(value)) < 1e-6; };
    if (isWhole(amount))
        return words.figure(amount, 0);
    return isWhole(amount * 100) ? words.figure(amount, 2) : words.shortFigure(amount);
}

std::string priceText(const TransferFacts& facts, const SheetWords& words) {
    const Transfer& transfer = facts.transfer;
    if (!transfer.price)
        return words("notRecorded");
    const std::string amount = amountText(*transfer.price, words);
    const std::string money =
        transfer.currency ? words.filled("agreement.money",
                                         {{"amount", amount}, {"currency", *transfer.currency}})
                          : words.filled("agreement.noCurrency", {{"amount", amount}});
    const std::size_t count = transfer.impressions.size();
    if (count < 2)
        return money;
    return words.filled(
        "agreement.together",
        {{"price", money}, {"count", words.count(static_cast<std::int64_t>(count))}});
}

void addAgreement(Flow& flow, const TransferFacts& facts, const SheetWords& words) {
    const Transfer& transfer = facts.transfer;
    const TransferKind kind = transfer.transferKind;
    std::vector<LabelValue> entries = {
        {words.of("agreement.giver", kind), withContact(facts.giver, words)},
        {words.of("agreement.receiver", kind), withContact(facts.receiver, words)},
        {words("agreement.agreed"), words.date(transfer.agreedOn)}};
    if (comesBack(facts) || transfer.dueOn)
        entries.push_back({words("agreement.due"), words.dateOrNotRecorded(transfer.dueOn)});
    if (isPriced(facts) || transfer.price)
        entries.push_back({words("agreement.price"), priceText(facts, words)});
    entries.push_back({words("agreement.terms"), words.textOrNotRecorded(transfer.terms)});
    flow.labelValues(entries);
    flow.paragraph(words("agreement.law"), TextStyle::small);
}

std::string workingName(const TransferPrint& print, const SheetWords& words) {
    return words.filled("impressions.working", {{"number", std::to_string(print.workingNumber)}});
}

std::string editionText(const TransferEdition& of, const TransferFacts& facts,
                        const SheetWords& words) {
    const Edition& edition = of.edition;
    return words.filled(
        "impressions.edition",
        {{"maker", of.maker.empty() ? words("notRecorded") : of.maker},
         {"title", edition.title},
         {"code", edition.code},
         {"year", words.dateOrNotRecorded(edition.year)},
         {"process", edition.process.empty() ? words("notRecorded") : edition.process},
         {"size", words.size(edition.imageHeight_mm, edition.imageWidth_mm, facts.lengthUnit)},
         {"sheet", words.size(edition.sheetHeight_mm, edition.sheetWidth_mm, facts.lengthUnit)}});
}

// As much as a line that is written by hand wants.
constexpr double rowHeight_mm = 10;

TableRow rowOf(const TransferPrint& print, const TransferFacts& facts, const SheetWords& words) {
    std::string second = workingName(print, words);
    if (print.fate != ImpressionFate::kept)
        second += "\n" + words.of("impressionFate", print.fate);
    TableRow row{{(print.designation.empty() ? words("impressions.unsigned") : print.designation) +
                      "\n" + second,
                  ""}};
    if (comesBack(facts))
        row.cells.emplace_back("");
    row.least_mm = rowHeight_mm;
    return row;
}

void addImpressions(Flow& flow, const TransferFacts& facts, const SheetWords& words) {
    if (facts.editions.empty()) {
        flow.paragraph(words("none"));
        return;
    }
    SheetTable table;
    table.columns = {{words("impressions.designation"), Alignment::left, 0, 40},
                     {words("impressions.condition"), Alignment::left, 1, 0}};
    if (comesBack(facts))
        table.columns.push_back({words("impressions.conditionBack"), Alignment::left, 1, 0});
    for (const TransferEdition& edition : facts.editions) {
        TableRow heading{{editionText(edition, facts, words)}};
        heading.heading = true;
        table.rows.push_back(std::move(heading));
        for (const TransferPrint& print : edition.prints)
            table.rows.push_back(rowOf(print, facts, words));
    }
    flow.table(table);
    flow.paragraph(words("impressions.note"), TextStyle::small);
}

// "EEL 7/30, 8/30; BRK #4", of those with one of the verdicts.
std::string namesWith(std::initializer_list<Verdict> wanted, const TransferFacts& facts,
                      const SheetWords& words) {
    std::vector<std::string> all;
    for (const TransferEdition& edition : facts.editions) {
        std::vector<std::string> names;
        for (const TransferPrint& print : edition.prints)
            for (const Verdict verdict : wanted)
                if (print.verdict == verdict)
                    names.push_back(print.designation.empty()
                                        ? "#" + std::to_string(print.workingNumber)
                                        : print.designation);
        if (!names.empty())
            all.push_back(edition.edition.code + " " + words.inRow(names));
    }
    return words.apart(all);
}

void addLight(Flow& flow, const TransferFacts& facts, const SheetWords& words) {
    const std::string more = namesWith({Verdict::bringOut, Verdict::moreLight}, facts, words);
    const std::string look = namesWith({Verdict::lookDue}, facts, words);
    const std::string unknown = namesWith({Verdict::unknown}, facts, words);
    const std::string ready = namesWith({Verdict::ready, Verdict::notAffected}, facts, words);
    if (!more.empty())
        flow.note(NoteKind::caution, words.labelled(words("light.more"), more),
                  words("light.moreAdvice"));
    if (!look.empty())
        flow.note(NoteKind::note, words.labelled(words("light.look"), look),
                  words("light.lookAdvice"));
    if (!unknown.empty())
        flow.note(NoteKind::note, words.labelled(words("light.unknown"), unknown),
                  words("light.unknownAdvice"));
    const std::string day = words.day(facts.asOf);
    if (!ready.empty())
        flow.paragraph(words.filled("light.ready", {{"date", day}, {"prints", ready}}));
    if (more.empty() && look.empty() && unknown.empty() && ready.empty())
        flow.paragraph(words("light.nothing"));
    if (!more.empty() || !look.empty() || !unknown.empty())
        flow.paragraph(words.filled("light.note", {{"date", day}}), TextStyle::small);
}

const std::vector<std::string>& carePoints() {
    static const std::vector<std::string> points = {"keep",  "light", "handling",
                                                    "frame", "back",  "damage"};
    return points;
}

void addCare(Flow& flow, const TransferFacts&, const SheetWords& words) {
    std::vector<LabelValue> entries;
    for (const std::string& point : carePoints())
        entries.push_back({words("care." + point), words("care." + point + "How")});
    flow.labelValues(entries);
}

// What was recorded only afterwards, without its day or a party, is nothing to sign for.
bool canBeSigned(const TransferFacts& facts) {
    const EdtfDate& agreed = facts.transfer.agreedOn;
    return dayOf(agreed.earliest()) == dayOf(agreed.latest()) && !facts.giver.name.empty() &&
           !facts.receiver.name.empty();
}

void addReceipt(Flow& flow, const TransferFacts& facts, const SheetWords& words) {
    if (!canBeSigned(facts)) {
        flow.paragraph(words("receipt.none"));
        return;
    }
    const TransferKind kind = facts.transfer.transferKind;
    flow.paragraph(words.filled(
        "receipt.received",
        {{"count", words.count(static_cast<std::int64_t>(facts.transfer.impressions.size()))}}));
    const auto caption = [&](const char* side, const TransferParty& party) {
        return words.labelled(words.of(side, kind), nameOf(party, words)) + "\n" +
               words("receipt.where");
    };
    flow.signatureLines(
        {caption("agreement.giver", facts.giver), caption("agreement.receiver", facts.receiver)});
}

bool always(const TransferFacts&) {
    return true;
}

struct Section {
    const char* name;
    void (*add)(Flow& flow, const TransferFacts& facts, const SheetWords& words);
    bool (*applies)(const TransferFacts& facts);
};

const std::vector<Section>& allSections() {
    static const std::vector<Section> sections = {{"agreement", addAgreement, always},
                                                  {"impressions", addImpressions, always},
                                                  {"light", addLight, always},
                                                  {"care", addCare, comesBack},
                                                  {"receipt", addReceipt, always}};
    return sections;
}

std::string titleOf(const TransferFacts& facts, const SheetWords& words) {
    return words.of("agreement.title", facts.transfer.transferKind);
}

FlowSetup setupOf(const TransferFacts& facts, const SheetTemplate& sheetTemplate,
                  const SheetWords& words, const std::string& created) {
    FlowSetup setup = sheetSetup(sheetTemplate, words, facts.studio, facts.asOf, created);
    setup.runningTitle = titleOf(facts, words) + " · " + facts.transfer.id;
    setup.info.title = titleOf(facts, words) + " " + facts.transfer.id;
    setup.info.subject = words("sheet");
    return setup;
}

}  // namespace

TemplateRules transferSheetRules() {
    TemplateRules rules;
    rules.sheet = "transfer";
    for (const Section& section : allSections())
        rules.sections.push_back(section.name);
    const auto add = [&](const char* prefix, const char* words) {
        addLabelKeys(rules.labels, prefix, words);
    };
    add("", "sheet subtitle footer");
    for (const char* prefix : {"agreement.title", "agreement.giver", "agreement.receiver"})
        addLabelKeysOf<TransferKind>(rules.labels, prefix);
    add("agreement", "agreed due price money noCurrency together terms law");
    add("impressions", "edition designation unsigned working condition conditionBack note");
    add("light", "more moreAdvice look lookAdvice unknown unknownAdvice ready nothing note");
    for (const std::string& point : carePoints()) {
        rules.labels.push_back("care." + point);
        rules.labels.push_back("care." + point + "How");
    }
    add("receipt", "received none where");
    return rules;
}

PageModel transferSheet(const TransferFacts& facts, const SheetTemplate& sheetTemplate,
                        const TextMeasurer& measurer, const std::string& created) {
    const SheetWords words(sheetTemplate);
    Flow flow(measurer, setupOf(facts, sheetTemplate, words, created));
    flow.title(titleOf(facts, words), words.filled("subtitle", {{"reference", facts.transfer.id}}));
    for (const std::string& name : sheetTemplate.sections())
        for (const Section& section : allSections()) {
            if (name != section.name || !section.applies(facts))
                continue;
            flow.heading(1, words(name));
            section.add(flow, facts, words);
        }
    return flow.finish();
}

}  // namespace rackbook
