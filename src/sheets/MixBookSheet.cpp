#include "sheets/MixBookSheet.h"

#include <algorithm>

#include "sheets/EstimateText.h"
#include "sheets/Flow.h"
#include "sheets/LabelKeys.h"
#include "sheets/LotText.h"
#include "sheets/SheetSetup.h"
#include "sheets/SheetWords.h"

namespace rackbook {

namespace {

constexpr int massDecimals = 2;
constexpr int shareDecimals = 2;

bool isThere(const MixAccount& account) {
    return !account.mix.finishedOn && account.left_g.high > 0;
}

std::string massText(const Estimate& mass_g, const SheetWords& words) {
    return estimateText(mass_g, massDecimals, words);
}

std::string percentsText(const Estimate& share, const SheetWords& words) {
    if (share.low <= 0 && share.high >= 1 && !share.isKnown())
        return words("notKnown");
    return estimateText({share.low * 100, share.best * 100, share.high * 100}, shareDecimals,
                        words);
}

std::string drierText(const MixAccount& account, const SheetWords& words) {
    return words.filled(std::string("mixes.drier.") + textOf(account.drier),
                        {{"share", percentsText(account.drierShare, words)}});
}

std::string headingText(const MixAccount& account, const SheetWords& words) {
    std::string text = account.mix.name + " – " + words.of("mixes.purpose", account.mix.purpose);
    if (account.mix.madeOn)
        text += " · " + words.filled("mixes.made", {{"date", words.when(*account.mix.madeOn)}});
    return text + " · " + drierText(account, words);
}

std::string sourceText(const MixInput& input, const SheetWords& words) {
    if (input.id.empty())
        return words("mixes.sourceNotRecorded");
    return input.isMix ? input.name : shortWords(input.name) + " (" + input.id + ")";
}

std::string outputText(const MixOutput& out, const SheetWords& words) {
    return words.filled(std::string("mixes.out.") + textOf(out.kind),
                        {{"mix", out.name},
                         {"code", out.code},
                         {"layer", std::to_string(out.layer)},
                         {"sheets", words.count(out.sheets)}});
}

std::string usedInText(const MixAccount& account, const SheetWords& words) {
    std::vector<std::string> parts;
    for (const LayersOfEdition& used : account.usedIn)
        parts.push_back(words.filled("mixes.layersOf",
                                     {{"code", used.code}, {"layers", numberRanges(used.layers)}}));
    return parts.empty() ? words("mixes.usedNowhere")
                         : words.filled("mixes.usedIn", {{"layers", words.inRow(parts)}});
}

std::string leftText(const MixAccount& account, const SheetWords& words) {
    if (account.mix.finishedOn)
        return words.filled("mixes.finished", {{"date", words.when(*account.mix.finishedOn)}});
    return words.filled("mixes.leftByTheBook", {{"mass", massText(account.left_g, words)}});
}

// The rows of one account stand on one page as long as they are few.
void keepTogether(SheetTable& table, std::size_t begin) {
    constexpr std::size_t mostRows = 14;
    if (table.rows.size() - begin > mostRows)
        return;
    for (std::size_t i = begin; i + 1 < table.rows.size(); ++i)
        table.rows[i].keepsWithNext = true;
}

void addAccount(SheetTable& table, const MixAccount& account, const SheetWords& words) {
    const std::size_t begin = table.rows.size();
    TableRow heading{{headingText(account, words)}};
    heading.heading = true;
    table.rows.push_back(std::move(heading));
    if (account.in.empty())
        table.rows.push_back({{words("mixes.neverWeighed"), "", "", "", ""}});
    for (const MixInput& input : account.in)
        table.rows.push_back(
            {{sourceText(input, words), words.tableDate(input.at), massText(input.mass_g, words),
              percentsText(input.share, words), ""}});
    for (const MixOutput& out : account.out)
        table.rows.push_back({{outputText(out, words), words.tableDate(out.at), "", "",
                               massText(out.mass_g, words)}});
    TableRow sum{{leftText(account, words) + "\n" + usedInText(account, words), "",
                  account.in.size() > 1 ? massText(account.in_g, words) : "", "",
                  account.out.size() > 1 ? massText(account.out_g, words) : ""}};
    sum.ruleAbove = true;
    table.rows.push_back(std::move(sum));
    keepTogether(table, begin);
}

bool holdsDrier(const MixBookFacts& facts) {
    for (const MixesOfEdition& edition : facts.editions)
        for (const MixAccount& account : edition.mixes)
            if (account.drier == DrierIn::some || account.drier == DrierIn::broken)
                return true;
    return false;
}

void addMixes(Flow& flow, const MixBookFacts& facts, const SheetWords& words) {
    if (facts.editions.empty()) {
        flow.paragraph(words("mixes.nothing"));
        return;
    }
    flow.paragraph(words("mixes.note"), TextStyle::small);
    if (holdsDrier(facts))
        flow.note(NoteKind::caution, "", words("mixes.caution"));
    for (const MixesOfEdition& edition : facts.editions) {
        flow.heading(2, edition.code.empty() ? words("mixes.noEdition")
                                             : edition.title + " (" + edition.code + ")");
        SheetTable table;
        table.columns = {{words("mixes.what"), Alignment::left, 1, 0},
                         {words("mixes.when"), Alignment::left, 0, 25},
                         {words("mixes.in"), Alignment::decimal, 0, 22},
                         {words("mixes.share"), Alignment::decimal, 0, 22},
                         {words("mixes.out"), Alignment::decimal, 0, 22}};
        for (const MixAccount& account : edition.mixes)
            addAccount(table, account, words);
        flow.table(table);
    }
}

void addThere(Flow& flow, const MixBookFacts& facts, const SheetWords& words) {
    SheetTable table;
    table.columns = {{words("there.mix"), Alignment::left, 1.5, 0},
                     {words("there.purpose"), Alignment::left, 0, 24},
                     {words("there.madeOn"), Alignment::left, 0, 25},
                     {words("there.drier"), Alignment::left, 1, 0},
                     {words("there.left"), Alignment::right, 0, 34}};
    for (const MixesOfEdition& edition : facts.editions)
        for (const MixAccount& account : edition.mixes)
            if (isThere(account))
                table.rows.push_back(
                    {{account.mix.name, words.of("mixes.purpose", account.mix.purpose),
                      words.tableDateOrNotRecorded(account.mix.madeOn), drierText(account, words),
                      massText(account.left_g, words)}});
    if (table.rows.empty())
        flow.paragraph(words("there.nothing"));
    else
        flow.table(table);
}

struct Section {
    const char* name;
    void (*add)(Flow& flow, const MixBookFacts& facts, const SheetWords& words);
};

const std::vector<Section>& allSections() {
    static const std::vector<Section> sections = {{"there", addThere}, {"mixes", addMixes}};
    return sections;
}

FlowSetup setupOf(const MixBookFacts& facts, const SheetTemplate& sheetTemplate,
                  const SheetWords& words, const std::string& created) {
    FlowSetup setup = sheetSetup(sheetTemplate, words, facts.studio, facts.asOf, created);
    setup.runningTitle = words("sheet");
    if (!facts.edition.empty())
        setup.runningTitle += " · " + facts.edition;
    setup.info.title = setup.runningTitle;
    setup.info.subject = words("sheet");
    return setup;
}

}  // namespace

TemplateRules mixBookSheetRules() {
    TemplateRules rules;
    rules.sheet = "mixes";
    for (const Section& section : allSections())
        rules.sections.push_back(section.name);
    const auto add = [&](const char* prefix, const char* words) {
        addLabelKeys(rules.labels, prefix, words);
    };
    add("", "sheet subtitle footer");
    add("there", "mix purpose madeOn drier left nothing");
    add("mixes",
        "nothing note caution noEdition what when in share out made neverWeighed "
        "sourceNotRecorded layersOf usedIn usedNowhere finished leftByTheBook");
    addLabelKeysOf<MixPurpose>(rules.labels, "mixes.purpose");
    addLabelKeysOf<DrierIn>(rules.labels, "mixes.drier");
    addLabelKeysOf<MixOutputKind>(rules.labels, "mixes.out");
    return rules;
}

PageModel mixBookSheet(const MixBookFacts& facts, const SheetTemplate& sheetTemplate,
                       const TextMeasurer& measurer, const std::string& created) {
    const SheetWords words(sheetTemplate);
    Flow flow(measurer, setupOf(facts, sheetTemplate, words, created));
    const std::string asOf = words.filled("subtitle", {{"date", words.day(facts.asOf)}});
    flow.title(words("sheet"), facts.edition.empty() ? asOf : facts.edition + " · " + asOf);
    for (const std::string& name : sheetTemplate.sections())
        for (const Section& section : allSections()) {
            if (name != section.name)
                continue;
            flow.heading(1, words(name));
            section.add(flow, facts, words);
        }
    return flow.finish();
}

}  // namespace rackbook
