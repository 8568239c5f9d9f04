#include "sheets/MixBookFacts.h"

#include <algorithm>
#include <map>
#include <set>

#include "calc/EstimateMath.h"
#include "calc/EventMass.h"
#include "calc/HistoryOf.h"
#include "calc/MixLedger.h"
#include "records/AsItStood.h"

namespace rackbook {

namespace {

std::string dayIn(const EdtfDate& date) {
    return date.text().substr(0, date.text().find('T'));
}

// Of one mass among others: corner values, since it rises with itself and falls with the rest.
Estimate shareAmong(const Estimate& one, const std::vector<Estimate>& all, std::size_t position) {
    Estimate rest = Estimate::exactly(0);
    for (std::size_t i = 0; i < all.size(); ++i)
        if (i != position)
            rest = sumOf(rest, all[i]);
    const auto share = [](double mass, double others) {
        return mass > 0 ? 1 / (1 + others / mass) : 0.0;
    };
    Estimate result = Estimate::anyShare();
    result.low = share(one.low, rest.high);
    if (std::isinf(one.high))
        result.high = 1;
    else
        result.high = share(one.high, rest.low);
    if (one.isKnown() && rest.isKnown() && one.best + rest.best > 0)
        result.best = share(one.best, rest.best);
    return result;
}

class FactsMaker {
public:
    FactsMaker(const RecordSet& records, CivilMinute asOf)
        : m_records(records),
          m_asOf(asOf),
          m_history(historyOf(records)),
          m_byLot(ledgerByLot(m_history, asOf)),
          m_byKind(ledgerByKind(m_history, asOf)),
          m_accounts(records.of<Mix>().size()),
          m_layers(records.of<Mix>().size()) {
        for (std::size_t i = 0; i < m_accounts.size(); ++i)
            m_accounts[i].mix = records.of<Mix>()[i];
        addWeighings();
        addPulls();
        addPlannedLayers();
        carryLayersBack();
        for (std::size_t i = 0; i < m_accounts.size(); ++i)
            finish(i);
    }

    MixBookFacts facts(const std::optional<std::string>& edition) {
        MixBookFacts facts;
        facts.asOf = m_asOf;
        if (!m_records.of<Book>().empty())
            facts.studio = m_records.of<Book>().front().studio;
        if (const Edition* about = edition ? m_records.find<Edition>(*edition) : nullptr)
            facts.edition = about->title;
        const std::vector<Edition>& editions = m_records.of<Edition>();
        // By position of the edition; the last bucket is of mixes of none.
        std::vector<std::vector<std::size_t>> buckets(editions.size() + 1);
        for (std::size_t i = 0; i < m_accounts.size(); ++i) {
            const std::optional<Ref<Edition>>& of = m_accounts[i].mix.edition;
            const int at = of ? m_records.indexOf<Edition>(of->id) : -1;
            buckets[at < 0 ? editions.size() : static_cast<std::size_t>(at)].push_back(i);
        }
        for (std::size_t i = 0; i < buckets.size(); ++i)
            addGroup(facts, edition, i < editions.size() ? &editions[i] : nullptr, buckets[i]);
        return facts;
    }

private:
    MixAccount& account(int mix) { return m_accounts[static_cast<std::size_t>(mix)]; }

    bool happened(const EdtfDate& at) const { return at.earliest() <= m_asOf; }

    void addWeighings() {
        for (std::size_t i = 0; i < m_records.of<Weighing>().size(); ++i) {
            const Weighing& weighing = m_records.of<Weighing>()[i];
            const HistoryWeighing& row = m_history.weighings[i];
            if (row.mix < 0 || !happened(weighing.at))
                continue;
            const Estimate mass_g = massOf(row);
            if (weighing.act == WeighingAct::add) {
                addInput(weighing, row, mass_g);
                continue;
            }
            MixOutput out;
            out.kind = weighing.act == WeighingAct::discard ? MixOutputKind::discarded
                                                            : MixOutputKind::withdrawn;
            out.at = weighing.at;
            out.mass_g = mass_g;
            account(row.mix).out.push_back(std::move(out));
        }
    }

    void addInput(const Weighing& weighing, const HistoryWeighing& row, const Estimate& mass_g) {
        MixInput input;
        input.at = weighing.at;
        input.mass_g = mass_g;
        if (const Lot* lot = m_records.find(weighing.lot)) {
            input.name = lot->colourWords;
            input.id = lot->id;
        }
        if (row.fromMix >= 0) {
            const Mix& from = m_records.of<Mix>()[static_cast<std::size_t>(row.fromMix)];
            input.isMix = true;
            input.name = from.name;
            input.id = from.id;
            MixOutput out;
            out.kind = MixOutputKind::intoMix;
            out.name = m_records.of<Mix>()[static_cast<std::size_t>(row.mix)].name;
            out.at = weighing.at;
            out.mass_g = mass_g;
            account(row.fromMix).out.push_back(std::move(out));
            m_sources[static_cast<std::size_t>(row.mix)].insert(
                static_cast<std::size_t>(row.fromMix));
        }
        std::vector<MixInput>& all = account(row.mix).in;
        const auto same = std::find_if(all.begin(), all.end(), [&](const MixInput& other) {
            return other.id == input.id && other.isMix == input.isMix && !input.id.empty() &&
                   dayIn(other.at) == dayIn(input.at);
        });
        if (same == all.end())
            all.push_back(std::move(input));
        else
            same->mass_g = sumOf(same->mass_g, input.mass_g);
    }

    void addPulls() {
        for (std::size_t i = 0; i < m_records.of<Pull>().size(); ++i) {
            const Pull& pull = m_records.of<Pull>()[i];
            const int portion = m_history.pulls[i].portion;
            const Layer* layer = m_records.find(pull.layer);
            if (portion < 0 || !layer || !happened(pull.start))
                continue;
            MixOutput out;
            out.kind = MixOutputKind::printed;
            out.code = codeOf(*layer);
            out.layer = layer->ordinal;
            out.sheets = static_cast<int>(pull.impressions.size());
            out.at = pull.start;
            out.mass_g = massOf(m_history.pulls[i]);
            account(portion).out.push_back(std::move(out));
            m_layers[static_cast<std::size_t>(portion)].insert(layer);
        }
    }

    // A layer that names its mix is printed from it, pulled already or not.
    void addPlannedLayers() {
        for (const Layer& layer : m_records.of<Layer>()) {
            const int mix = layer.mix ? m_records.indexOf<Mix>(layer.mix->id) : -1;
            if (mix >= 0)
                m_layers[static_cast<std::size_t>(mix)].insert(&layer);
        }
    }

    // To the mixes that others were made from, until nothing is new: mixes may form a ring.
    void carryLayersBack() {
        bool isNew = true;
        while (isNew) {
            isNew = false;
            for (const auto& [mix, sources] : m_sources)
                for (const std::size_t source : sources)
                    for (const Layer* layer : m_layers[mix])
                        isNew = m_layers[source].insert(layer).second || isNew;
        }
    }

    std::string codeOf(const Layer& layer) const {
        const Edition* edition = m_records.find(layer.edition);
        return edition ? edition->code : layer.edition.id;
    }

    void finish(std::size_t position) {
        MixAccount& account = m_accounts[position];
        if (isAfter(account.mix.finishedOn, m_asOf))
            account.mix.finishedOn.reset();
        const auto earlier = [](const auto& a, const auto& b) {
            return a.at.earliest() < b.at.earliest();
        };
        std::stable_sort(account.in.begin(), account.in.end(), earlier);
        std::stable_sort(account.out.begin(), account.out.end(), earlier);
        std::vector<Estimate> masses;
        account.in_g = Estimate::exactly(0);
        for (const MixInput& input : account.in) {
            masses.push_back(input.mass_g);
            account.in_g = sumOf(account.in_g, input.mass_g);
        }
        account.out_g = Estimate::exactly(0);
        for (const MixOutput& out : account.out)
            account.out_g = sumOf(account.out_g, out.mass_g);
        for (std::size_t i = 0; i < masses.size(); ++i)
            account.in[i].share = shareAmong(masses[i], masses, i);
        account.left_g =
            account.mix.finishedOn ? Estimate::exactly(0) : m_byLot.atEnd(position).total_g;
        account.drierShare = m_byKind.shareAtEnd(position, static_cast<int>(LotKind::drier));
        account.drier = drierIn(account);
        std::map<std::string, std::set<int>> byCode;
        for (const Layer* layer : m_layers[position])
            byCode[codeOf(*layer)].insert(layer->ordinal);
        for (const auto& [code, layers] : byCode)
            account.usedIn.push_back({code, {layers.begin(), layers.end()}});
    }

    static DrierIn drierIn(const MixAccount& account) {
        if (account.drierShare.low > 0)
            return account.mix.drierFree ? DrierIn::broken : DrierIn::some;
        if (account.mix.drierFree)
            return DrierIn::declaredFree;
        return account.drierShare.high <= 0 ? DrierIn::none : DrierIn::unclear;
    }

    // With one edition asked for, whatever it was printed from is listed under the edition that
    // it was made for.
    void addGroup(MixBookFacts& facts, const std::optional<std::string>& asked, const Edition* own,
                  const std::vector<std::size_t>& mixes) const {
        MixesOfEdition group;
        if (own) {
            group.code = own->code;
            group.title = own->title;
        }
        for (const std::size_t i : mixes) {
            if (isAfter(m_accounts[i].mix.madeOn, m_asOf))
                continue;
            const bool isPrintedFrom = std::any_of(
                m_layers[i].begin(), m_layers[i].end(),
                [&](const Layer* layer) { return asked && layer->edition.id == *asked; });
            if (!asked || (own && own->id == *asked) || isPrintedFrom)
                group.mixes.push_back(m_accounts[i]);
        }
        std::stable_sort(
            group.mixes.begin(), group.mixes.end(),
            [](const MixAccount& a, const MixAccount& b) { return beganAt(a) < beganAt(b); });
        if (!group.mixes.empty())
            facts.editions.push_back(std::move(group));
    }

    static CivilMinute beganAt(const MixAccount& account) {
        if (account.mix.madeOn)
            return account.mix.madeOn->earliest();
        return account.in.empty() ? endOfTime : account.in.front().at.earliest();
    }

    const RecordSet& m_records;
    CivilMinute m_asOf;
    History m_history;
    MixLedger m_byLot;
    MixLedger m_byKind;
    std::vector<MixAccount> m_accounts;                      // by position of the mix
    std::vector<std::set<const Layer*>> m_layers;            // by position of the mix
    std::map<std::size_t, std::set<std::size_t>> m_sources;  // mixes that a mix took from
};

}  // namespace

MixBookFacts mixBookFactsOf(const RecordSet& records, const std::optional<std::string>& edition,
                            CivilMinute asOf) {
    return FactsMaker(records, asOf).facts(edition);
}

}  // namespace rackbook
