#include "commands/RecipeFactsOf.h"

#include <algorithm>

#include "calc/MixLedger.h"
#include "calc/ReadingColour.h"
#include "commands/BalanceGiven.h"
#include "commands/BalanceToUse.h"
#include "commands/ColourAim.h"
#include "commands/MassGiven.h"
#include "commands/MixAgainPlan.h"
#include "records/AsItStood.h"

namespace rackbook {

namespace {

constexpr double usualMass_g = 60;

class FactsMaker {
public:
    explicit FactsMaker(const SheetRequest& request)
        : m_request(request),
          m_ink(inkBookOf(recordsAsOf(request.records, request.asOf))),
          m_ledger(ledgerByLot(m_ink.history, request.asOf)) {}

    RecipeFacts make() {
        m_facts.asOf = m_request.asOf;
        m_facts.studio = m_ink.studio.studio;
        m_facts.lots = m_ink.records.of<Lot>();
        if (const Mix* mix = m_ink.records.find<Mix>(mixId()))
            m_facts.mix = *mix;
        if (m_request.subject.mix && m_facts.mix && m_facts.mix->edition)
            if (const Edition* edition = m_ink.records.find(m_facts.mix->edition))
                m_facts.edition = *edition;
        if (m_request.subject.layer) {
            m_facts.edition = m_request.subject.edition;
            m_facts.layer = m_request.subject.layer;
            addFilm();
        }
        const std::optional<WantedInk> wanted = wantedInk();
        if (wanted)
            m_facts.whyNot = obstaclesTo(m_ink, *wanted);
        m_facts.namesNoMix = !wanted;
        if (wanted && m_facts.whyNot.empty())
            addWeighing(*wanted);
        else if (wanted)
            addInk(wanted->pulls.empty() ? -1 : byGoodSheets(m_ink, wanted->pulls).front());
        addColour();
        return std::move(m_facts);
    }

private:
    std::string mixId() const {
        if (m_request.subject.mix)
            return m_request.subject.mix->id;
        const std::optional<Ref<Mix>>& mix = m_request.subject.layer->mix;
        return mix ? mix->id : std::string();
    }

    // Nothing where the layer has neither a run nor a mix.
    std::optional<WantedInk> wantedInk() const {
        if (m_request.subject.mix)
            return wantedMix(m_ink, m_ink.records.indexOf<Mix>(mixId()));
        const Layer& layer = *m_request.subject.layer;
        const int pull = m_ink.records.indexOf<Pull>(m_request.subject.words);
        if (pull >= 0 && m_request.subject.words != layer.id)
            return wantedPull(m_ink, pull);
        if (pullsOfLayer(m_ink, layer).empty() && !m_facts.mix)
            return std::nullopt;
        return wantedLayer(m_ink, layer);
    }

    PlanRequest planRequest(const BalanceToUse& balance) const {
        PlanRequest plan;
        plan.wanted_g = massOption(m_request.arguments, "sheet", "mass").value_or(usualMass_g);
        plan.balance = balance.figures;
        plan.limit = colourLimitGiven(m_request.arguments, m_ink.rules);
        return plan;
    }

    void addWeighing(const WantedInk& wanted) {
        const BalanceToUse balance = balanceToUse(m_request.arguments, "sheet", m_ink);
        const MixAgain again = mixAgain(m_ink, wanted, planRequest(balance),
                                        {m_request.asOf - minutesPerDay + 1, m_request.asOf});
        RecipeWeighing weighing;
        weighing.request = again.weighing.request;
        weighing.plans = again.weighing.plans;
        weighing.plan = again.weighing.plan();
        weighing.balance = {balance.name, balance.figures, balance.repeatabilityAssumed,
                            balance.capacity_g, decimalsOf(balance.figures)};
        weighing.limitRule = m_ink.rules.rule("colourMostUncertainty");
        weighing.services = again.services;
        for (const LotShortage& shortage : again.shortages)
            weighing.shortages.push_back({shortage.lot, shortage.needed_g, shortage.left_g});
        for (const StageInJar& jar : again.inJars)
            weighing.jars.push_back({weighing.request.recipe.stages[jar.stage].name, jar.left_g,
                                     jar.needed_g, jar.isEnough()});
        weighing.drierWasEarlier = again.found.drierWasEarlier;
        m_facts.weighing = std::move(weighing);
        addRuns(again);
        addInk(again.fromPull);
    }

    void addRuns(const MixAgain& again) {
        for (const int position : again.wanted.pulls) {
            const Pull& pull = m_ink.records.of<Pull>()[static_cast<std::size_t>(position)];
            RecipeRun run = runOf(pull);
            run.isSource = position == again.fromPull;
            for (const OtherPull& other : again.others)
                if (other.pull == pull.id) {
                    run.isComputable = other.isComputable;
                    run.mostDifference = other.mostDifference;
                }
            m_facts.runs.push_back(std::move(run));
        }
        sortRuns();
    }

    RecipeRun runOf(const Pull& pull) const {
        RecipeRun run;
        run.start = pull.start;
        run.goodSheets = static_cast<int>(pull.impressions.size() - pull.spoiled.size());
        if (const Mix* portion = m_ink.records.find(pull.portion))
            run.portion = portion->name;
        return run;
    }

    void sortRuns() {
        std::stable_sort(m_facts.runs.begin(), m_facts.runs.end(),
                         [](const RecipeRun& a, const RecipeRun& b) {
                             return a.start.earliest() < b.start.earliest();
                         });
    }

    // What the pull laid down; -1: what the mix holds.
    void addInk(int pull) {
        if (pull >= 0)
            m_facts.ink = inkFactsOf(m_ledger.atPull(static_cast<std::size_t>(pull)), m_facts.lots);
        else if (m_facts.mix)
            m_facts.ink = inkFactsOf(m_ledger.atEnd(static_cast<std::size_t>(
                                         m_ink.records.indexOf<Mix>(m_facts.mix->id))),
                                     m_facts.lots);
        if (m_facts.weighing || !m_facts.layer)
            return;
        for (const int position : pullsOfLayer(m_ink, *m_facts.layer)) {
            RecipeRun run = runOf(m_ink.records.of<Pull>()[static_cast<std::size_t>(position)]);
            run.isComputable = false;
            m_facts.runs.push_back(std::move(run));
        }
        sortRuns();
    }

    void addFilm() {
        for (const LayerFacts& layer :
             editionFactsOf(m_ink.records, *m_facts.edition, m_request.asOf).layers)
            if (layer.layer.id == m_facts.layer->id)
                m_facts.filmLaid_gm2 = layer.filmLaid_gm2;
    }

    void addColour() {
        const Reading* reading =
            m_facts.layer ? m_ink.records.find(m_facts.layer->reading) : nullptr;
        RecipeColour colour;
        colour.isAim = reading != nullptr;
        if (!reading && m_facts.mix)
            reading = readingOfMix(m_ink, m_facts.mix->id);
        if (!reading)
            return;
        colour.reading = *reading;
        if (const Drawdown* drawdown = m_ink.records.find(reading->drawdown))
            colour.drawdown = *drawdown;
        if (const std::optional<ReadingColour> read =
                colourOf(*reading, ViewingLight::D50, Observer::deg2))
            colour.lab = LabColour{read->lab.l, read->lab.a, read->lab.b};
        if (const std::optional<Spectrum> spectrum = spectrumIn(*reading))
            for (std::size_t i = 0; i < spectrum->values.size(); ++i)
                colour.curve.push_back({spectrum->wavelength_nm(i), spectrum->values[i]});
        m_facts.colour = std::move(colour);
    }

    const SheetRequest& m_request;
    InkBook m_ink;
    MixLedger m_ledger;
    RecipeFacts m_facts;
};

}  // namespace

RecipeFacts recipeFactsOf(const SheetRequest& request) {
    return FactsMaker(request).make();
}

}  // namespace rackbook
