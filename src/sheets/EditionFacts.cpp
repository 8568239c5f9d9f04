#include "sheets/EditionFacts.h"

#include <algorithm>

#include "calc/HistoryOf.h"
#include "calc/PullInk.h"
#include "records/AsItStood.h"
#include "sheets/PublicImpression.h"

namespace rackbook {

namespace {

class FactsMaker {
public:
    FactsMaker(const RecordSet& records, const Edition& edition, CivilMinute asOf)
        : m_records(records),
          m_edition(edition),
          m_asOf(asOf),
          m_rules(records.of<Book>().empty() ? HouseRules()
                                             : HouseRules(records.of<Book>().front().houseRules)),
          m_history(historyOf(records)),
          m_ledger(ledgerByLot(m_history, asOf)),
          m_inks(inkOfPulls(m_history, m_rules)) {}

    EditionFacts make() {
        m_facts.asOf = m_asOf;
        m_facts.edition = m_edition;
        m_facts.knifeTolerance_g = m_rules.value("overdrawTolerance_g");
        if (!m_records.of<Book>().empty()) {
            m_facts.studio = m_records.of<Book>().front().studio;
            m_facts.lengthUnit = m_records.of<Book>().front().lengthUnit;
        }
        addBlocks();
        addLayers();
        addImpressions();
        addParties();
        return std::move(m_facts);
    }

private:
    template <class R>
    std::string nameOf(const std::optional<Ref<R>>& ref) const {
        const R* found = m_records.find(ref);
        return found ? found->name : std::string();
    }

    void addBlocks() {
        for (const Block& record : m_records.of<Block>()) {
            if (record.edition.id != m_edition.id)
                continue;
            Block block = record;
            standAt(block, m_asOf);
            m_facts.blocks.push_back(std::move(block));
        }
    }

    void addLayers() {
        for (const Layer& layer : m_records.of<Layer>())
            if (layer.edition.id == m_edition.id)
                m_facts.layers.push_back(layerFacts(layer));
        std::stable_sort(m_facts.layers.begin(), m_facts.layers.end(),
                         [](const LayerFacts& a, const LayerFacts& b) {
                             return a.layer.ordinal < b.layer.ordinal;
                         });
        if (!m_facts.layers.empty())
            addFirstLayer(m_facts.layers.front().layer.id);
    }

    void addFirstLayer(const std::string& layer) {
        for (const Pull& pull : m_records.of<Pull>())
            if (pull.layer.id == layer && !isAfter(pull.start, m_asOf))
                for (const Ref<Impression>& impression : pull.impressions)
                    m_facts.firstLayer.insert(impression.id);
    }

    LayerFacts layerFacts(const Layer& layer) const {
        LayerFacts facts;
        facts.layer = layer;
        if (const Block* block = m_records.find(layer.block))
            facts.block = *block;
        if (const Reading* reading = m_records.find(layer.reading))
            facts.reading = *reading;
        facts.mix = nameOf(layer.mix);
        std::vector<std::size_t> pulls;
        for (std::size_t i = 0; i < m_records.of<Pull>().size(); ++i) {
            const Pull& pull = m_records.of<Pull>()[i];
            if (pull.layer.id == layer.id && !isAfter(pull.start, m_asOf))
                pulls.push_back(i);
        }
        std::stable_sort(pulls.begin(), pulls.end(), [&](std::size_t a, std::size_t b) {
            return m_history.pulls[a].start.earliest < m_history.pulls[b].start.earliest;
        });
        bool allPortions = true;
        for (const std::size_t i : pulls) {
            facts.pulls.push_back(pullFacts(i));
            allPortions = allPortions && facts.pulls.back().ink.has_value();
        }
        const int mix = layer.mix ? m_records.indexOf<Mix>(layer.mix->id) : -1;
        if (mix >= 0 && !pulls.empty() && !allPortions)
            facts.mixInk = inkFacts(m_ledger.atEnd(static_cast<std::size_t>(mix)));
        facts.filmLaid_gm2 = filmLaid(layer, pulls);
        return facts;
    }

    PullFacts pullFacts(std::size_t position) const {
        const Pull& pull = m_records.of<Pull>()[position];
        PullFacts facts;
        facts.id = pull.id;
        facts.workingNumbers = workingNumbersOf(pull);
        facts.start = pull.start;
        facts.end = pull.end;
        facts.portion = nameOf(pull.portion);
        facts.sheets = static_cast<int>(pull.impressions.size());
        facts.spoiled = static_cast<int>(pull.spoiled.size());
        facts.extenderShare = m_inks[position].extenderShare;
        facts.drierShare = m_inks[position].drierShare;
        facts.isRemembered = m_inks[position].remembered;
        if (m_history.pulls[position].portion >= 0)
            facts.ink = inkFacts(m_ledger.atPull(position));
        return facts;
    }

    std::vector<int> workingNumbersOf(const Pull& pull) const {
        std::set<int> numbers;
        for (const Ref<Impression>& ref : pull.impressions)
            if (const Impression* impression = m_records.find(std::optional(ref)))
                numbers.insert(impression->workingNumber);
        return {numbers.begin(), numbers.end()};
    }

    InkFacts inkFacts(const MixContents& contents) const {
        return inkFactsOf(contents, m_records.of<Lot>());
    }

    Estimate filmLaid(const Layer& layer, const std::vector<std::size_t>& pulls) const {
        double used_g = 0;
        double sheets = 0;
        for (const std::size_t i : pulls) {
            used_g += m_history.pulls[i].inkUsed_g;
            sheets += static_cast<double>(m_records.of<Pull>()[i].impressions.size());
        }
        const double inked_m2 = m_edition.imageHeight_mm.value_or(0) *
                                m_edition.imageWidth_mm.value_or(0) * 1e-6 *
                                layer.coverage.value_or(0) * sheets;
        if (std::isnan(used_g) || inked_m2 <= 0)
            return Estimate::anyMass();
        const double spread_g =
            m_rules.value("overdrawTolerance_g") * static_cast<double>(pulls.size());
        return {std::max(0.0, used_g - spread_g) / inked_m2, used_g / inked_m2,
                (used_g + spread_g) / inked_m2};
    }

    void addImpressions() {
        for (const Impression& record : m_records.of<Impression>()) {
            if (record.edition.id != m_edition.id)
                continue;
            m_facts.impressions.push_back(publicImpression(record, m_asOf));
        }
        std::stable_sort(m_facts.impressions.begin(), m_facts.impressions.end(),
                         [](const Impression& a, const Impression& b) {
                             return a.workingNumber < b.workingNumber;
                         });
    }

    void addParties() {
        m_facts.maker = nameOf(std::optional(m_edition.maker));
        m_facts.publisher = nameOf(m_edition.publisher);
        if (m_edition.printer) {
            m_facts.printers.push_back(nameOf(m_edition.printer));
            return;
        }
        for (const Pull& pull : m_records.of<Pull>()) {
            const Layer* layer = m_records.find(pull.layer);
            const std::string name = nameOf(pull.printer);
            std::vector<std::string>& all = m_facts.printers;
            if (layer && layer->edition.id == m_edition.id && !name.empty() &&
                !isAfter(pull.start, m_asOf) &&
                std::find(all.begin(), all.end(), name) == all.end())
                all.push_back(name);
        }
    }

    const RecordSet& m_records;
    const Edition& m_edition;
    CivilMinute m_asOf;
    HouseRules m_rules;
    History m_history;
    MixLedger m_ledger;
    std::vector<PullInk> m_inks;
    EditionFacts m_facts;
};

}  // namespace

InkFacts inkFactsOf(const MixContents& contents, const std::vector<Lot>& lots) {
    InkFacts ink;
    ink.unrecorded = contents.unrecorded;
    for (const MixPart& part : contents.parts)
        if (part.share.high > 0)
            ink.parts.push_back({lots[static_cast<std::size_t>(part.constituent)], part.share});
    const auto weight = [](const InkPart& part) {
        return part.share.isKnown() ? part.share.best : part.share.high;
    };
    std::stable_sort(ink.parts.begin(), ink.parts.end(),
                     [&](const InkPart& a, const InkPart& b) { return weight(a) > weight(b); });
    return ink;
}

EditionFacts editionFactsOf(const RecordSet& records, const Edition& edition, CivilMinute asOf) {
    return FactsMaker(records, edition, asOf).make();
}

}  // namespace rackbook
