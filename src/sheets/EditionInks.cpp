#include <algorithm>
#include <map>
#include <set>

#include "base/Numbers.h"
#include "records/AsItStood.h"
#include "sheets/EditionParts.h"
#include "sheets/LotText.h"

namespace rackbook::editionparts {

namespace {

constexpr int decimals = 3;

// The inks in one place, so that the tables of layers can call them by short names.
class LotList {
public:
    explicit LotList(const EditionFacts& facts) : m_asOf(facts.asOf) {
        for (const LayerFacts& layer : facts.layers) {
            for (const PullFacts& pull : layer.pulls)
                if (pull.ink)
                    add(*pull.ink);
            if (layer.mixInk)
                add(*layer.mixInk);
        }
        std::stable_sort(m_lots.begin(), m_lots.end(),
                         [](const Lot& a, const Lot& b) { return a.lotKind < b.lotKind; });
        for (const Lot& lot : m_lots)
            ++m_namesakes[shortWords(lot.colourWords)];
    }

    bool isEmpty() const { return m_lots.empty(); }

    bool needsCaution() const {
        return std::any_of(m_lots.begin(), m_lots.end(), rackbook::needsCaution);
    }

    std::string shortName(const Lot& lot) const {
        const std::string name = shortWords(lot.colourWords);
        return m_namesakes.at(name) > 1 ? name + " (" + lot.id + ")" : name;
    }

    void set(Flow& flow, const SheetWords& words) const {
        SheetTable table;
        table.columns = {{words("mixes.lot"), Alignment::left, 1.7, 0},
                         {words("mixes.kind"), Alignment::left, 0, 18},
                         {words("mixes.pigments"), Alignment::left, 0.9, 0},
                         {words("mixes.container"), Alignment::left, 0, 34},
                         {words("mixes.id"), Alignment::left, 0.8, 0}};
        for (const Lot& lot : m_lots)
            table.rows.push_back({{lot.colourWords, words.of("lotKind", lot.lotKind),
                                   contentText(lot, words), containerText(lot, words), lot.id}});
        flow.heading(2, words("mixes.lots"));
        flow.table(table);
    }

private:
    // What it came in, and when it was bought and opened, as far as that is recorded.
    static std::string containerText(const Lot& lot, const SheetWords& words) {
        std::string text =
            lot.container ? words.of("container", *lot.container) : words("notRecorded");
        if (lot.boughtOn)
            text += "\n" + words.filled("mixes.bought", {{"date", words.tableDate(*lot.boughtOn)}});
        if (lot.openedOn)
            text += "\n" + words.filled("mixes.opened", {{"date", words.tableDate(*lot.openedOn)}});
        return text;
    }

    void add(const InkFacts& ink) {
        for (const InkPart& part : ink.parts)
            if (std::none_of(m_lots.begin(), m_lots.end(),
                             [&](const Lot& lot) { return lot.id == part.lot.id; })) {
                m_lots.push_back(part.lot);
                standAt(m_lots.back(), m_asOf);
            }
    }

    CivilMinute m_asOf;
    std::vector<Lot> m_lots;
    std::map<std::string, int> m_namesakes;
};

std::string rangeText(const Estimate& share, const SheetWords& words) {
    if (printsAsOne(share, decimals) || (share.low <= 0 && share.high >= 1))
        return {};
    return words.percentRange(share, decimals);
}

// As it is printed: two pulls whose inks print alike share their rows.
using PrintedInk = std::vector<std::vector<std::string>>;

class InkTable {
public:
    InkTable(const EditionFacts& facts, const LotList& lots, const SheetWords& words)
        : m_lots(lots), m_words(words) {
        for (const LayerFacts& layer : facts.layers) {
            m_hasRanges = m_hasRanges || (layer.mixInk && hasRanges(*layer.mixInk));
            for (const PullFacts& pull : layer.pulls)
                m_hasRanges = m_hasRanges || (pull.ink && hasRanges(*pull.ink));
        }
        m_table.columns = {{words("mixes.part"), Alignment::left, 1.4, 0},
                           {words("mixes.kind"), Alignment::left, 0, 20},
                           {words("mixes.pigments"), Alignment::left, 1, 0},
                           {words("mixes.share"), Alignment::decimal, 0, 22}};
        if (m_hasRanges)
            m_table.columns.push_back({words("mixes.range"), Alignment::right, 0, 32});
    }

    void addLayer(const LayerFacts& layer) {
        const std::string name = m_words.filled(
            "mixes.layer",
            {{"layer", std::to_string(layer.layer.ordinal)}, {"colour", layer.layer.colourWords}});
        if (layer.pulls.empty()) {
            addHeading(name);
            addLine(m_words("mixes.notPrinted"));
            return;
        }
        std::vector<std::pair<PrintedInk, std::vector<const PullFacts*>>> groups;
        for (const PullFacts& pull : layer.pulls) {
            PrintedInk printed = pull.ink ? printedInk(*pull.ink) : PrintedInk();
            if (groups.empty() || groups.back().first != printed)
                groups.push_back({std::move(printed), {}});
            groups.back().second.push_back(&pull);
        }
        for (const auto& [printed, pulls] : groups)
            addGroup(name, layer, printed, pulls);
    }

    void set(Flow& flow) const { flow.table(m_table); }

    bool hasRanges() const { return m_hasRanges; }

private:
    bool hasRanges(const InkFacts& ink) const {
        return std::any_of(ink.parts.begin(), ink.parts.end(), [this](const InkPart& part) {
            return !rangeText(part.share, m_words).empty();
        });
    }

    PrintedInk printedInk(const InkFacts& ink) const {
        PrintedInk rows;
        for (const InkPart& part : ink.parts) {
            std::vector<std::string> row = {
                m_lots.shortName(part.lot), m_words.of("lotKind", part.lot.lotKind),
                contentText(part.lot, m_words),
                part.share.isKnown() ? m_words.percent(part.share.best, decimals)
                                     : m_words("notKnown")};
            if (m_hasRanges)
                row.push_back(rangeText(part.share, m_words));
            rows.push_back(std::move(row));
        }
        if (ink.unrecorded.high > 0)
            rows.push_back({ink.unrecorded.high >= 1
                                ? m_words("mixes.unrecordedAll")
                                : m_words.filled("mixes.unrecorded",
                                                 {{"share", m_words.percent(ink.unrecorded.high,
                                                                            decimals)}})});
        return rows;
    }

    void addHeading(const std::string& text) {
        TableRow row{{text}};
        row.heading = true;
        m_table.rows.push_back(std::move(row));
    }

    // Words where figures would stand.
    void addLine(const std::string& text) { addCells({text}); }

    void addCells(const std::vector<std::string>& texts) {
        TableRow row;
        for (const std::string& text : texts)
            row.cells.emplace_back(text);
        row.cells.resize(m_table.columns.size());
        m_table.rows.push_back(std::move(row));
    }

    std::string pulledOn(const std::vector<const PullFacts*>& pulls) const {
        std::vector<std::string> days;
        for (const PullFacts* pull : pulls) {
            std::string day = m_words.when(pull->start);
            if (std::find(days.begin(), days.end(), day) == days.end())
                days.push_back(std::move(day));
        }
        return m_words.listed(days);
    }

    // Where a layer was printed from several inks, each says which sheets hold it.
    std::string headingOf(const std::string& name, const LayerFacts& layer,
                          const std::vector<const PullFacts*>& pulls) const {
        const std::string dates = pulledOn(pulls);
        if (pulls.size() == layer.pulls.size())
            return m_words.filled("mixes.pulled", {{"layer", name}, {"dates", dates}});
        std::set<int> numbers;
        std::vector<std::string> portions;
        for (const PullFacts* pull : pulls) {
            numbers.insert(pull->workingNumbers.begin(), pull->workingNumbers.end());
            if (!pull->portion.empty() &&
                std::find(portions.begin(), portions.end(), pull->portion) == portions.end())
                portions.push_back(pull->portion);
        }
        const std::string sheets = numberRanges({numbers.begin(), numbers.end()});
        if (portions.empty())
            return m_words.filled("mixes.pulledOf",
                                  {{"layer", name}, {"dates", dates}, {"numbers", sheets}});
        return m_words.filled("mixes.pulledFrom", {{"layer", name},
                                                   {"dates", dates},
                                                   {"numbers", sheets},
                                                   {"portions", m_words.listed(portions)}});
    }

    void addGroup(const std::string& name, const LayerFacts& layer, const PrintedInk& printed,
                  const std::vector<const PullFacts*>& pulls) {
        const std::size_t begin = m_table.rows.size();
        const std::string heading = headingOf(name, layer, pulls);
        const bool ofMix = printed.empty() && layer.mixInk && !layer.mixInk->parts.empty();
        addHeading(ofMix ? m_words.filled("mixes.ofMix", {{"layer", heading}, {"mix", layer.mix}})
                         : heading);
        const bool remembered = printed.empty() && pulls.front()->isRemembered;
        if (remembered)
            addLine(rememberedText(pulls.front()->extenderShare.best));
        if (printed.empty() && !ofMix && !remembered)
            addLine(m_words("notRecorded"));
        for (const std::vector<std::string>& row : ofMix ? printedInk(*layer.mixInk) : printed)
            addCells(row);
        keepTogether(begin);
    }

    // A group that is short enough stands on one page.
    void keepTogether(std::size_t begin) {
        constexpr std::size_t mostRows = 12;
        if (m_table.rows.size() - begin > mostRows)
            return;
        for (std::size_t i = begin; i + 1 < m_table.rows.size(); ++i)
            m_table.rows[i].keepsWithNext = true;
    }

    std::string rememberedText(double share) const {
        return share <= 0
                   ? m_words("mixes.rememberedNone")
                   : m_words.filled("mixes.remembered", {{"share", m_words.percent(share, 0)}});
    }

    const LotList& m_lots;
    const SheetWords& m_words;
    bool m_hasRanges = false;
    SheetTable m_table;
};

}  // namespace

void addInks(Flow& flow, const EditionFacts& facts, const SheetWords& words) {
    if (facts.layers.empty()) {
        flow.paragraph(words("notRecorded"));
        return;
    }
    const LotList lots(facts);
    InkTable table(facts, lots, words);
    for (const LayerFacts& layer : facts.layers)
        table.addLayer(layer);
    if (!lots.isEmpty())
        flow.paragraph(words("mixes.note"), TextStyle::small);
    table.set(flow);
    if (table.hasRanges())
        flow.paragraph(words("estimate"), TextStyle::small);
    if (!lots.isEmpty())
        lots.set(flow, words);
    if (lots.needsCaution())
        flow.note(NoteKind::caution, words("caution"), words("caution.driers"));
}

}  // namespace rackbook::editionparts
