#include "commands/PredictPlan.h"

#include <algorithm>
#include <cmath>

#include "base/Error.h"
#include "base/Numbers.h"
#include "base/Text.h"
#include "calc/ColourMatch.h"
#include "calc/ReadingColour.h"
#include "calc/RecipeOf.h"
#include "commands/BookAccess.h"
#include "commands/ColourAim.h"
#include "commands/LayerNamed.h"
#include "commands/MixAgainPlan.h"
#include "commands/Obstacles.h"
#include "commands/RecordedWeighing.h"

namespace rackbook {

namespace {

std::vector<LotShare> eachOnce(std::vector<LotShare> shares) {
    std::sort(shares.begin(), shares.end(),
              [](const LotShare& a, const LotShare& b) { return a.lot < b.lot; });
    shares.erase(std::unique(shares.begin(), shares.end(),
                             [](const LotShare& a, const LotShare& b) { return a.lot == b.lot; }),
                 shares.end());
    return shares;
}

struct LaidFilm {
    InkOptics ink;
    double weight_gm2 = 0;
    double uncertainty_share = 0;
};

class Predicting {
public:
    explicit Predicting(const PredictWanted& wanted)
        : m_wanted(wanted), m_recipes(wanted.ink.history, recipeMixesOf(wanted.ink), wanted.asOf) {}

    Prediction ofMix(int mix) {
        const Mix& record = mixAt(ink(), mix);
        m_made.words = "mix " + record.id + " (" + record.name + ")";
        const ColourAim aim = aimOfMix(record.id);
        PredictedFilm film = newFilm("mix " + record.id);
        takeRecipe(m_recipes.atEnd(static_cast<std::size_t>(mix)), film);
        film.film = filmGiven(m_wanted.context, ink(), aim.filmWeight_gm2, -1);
        takePaper(aim.paper);
        compareWith(aim, film);
        add(std::move(film));
        return finished(true);
    }

    Prediction ofLayer(const Layer& layer) {
        const Edition* edition = ink().records.find(layer.edition);
        m_made.words = layerWords(ink(), layer);
        takePaper({edition ? edition->paper : std::nullopt, Backing::white});
        addLayer(layer);
        return finished(true);
    }

    Prediction ofEdition(const Edition& edition) {
        m_made.words = "all layers of " + edition.code;
        takePaper({edition.paper, Backing::white});
        std::vector<const Layer*> layers;
        for (const Layer& layer : ink().records.of<Layer>())
            if (layer.edition.id == edition.id)
                layers.push_back(&layer);
        std::stable_sort(layers.begin(), layers.end(),
                         [](const Layer* a, const Layer* b) { return a->ordinal < b->ordinal; });
        if (layers.empty())
            throw UsageError(edition.code + " has no layers",
                             "Plan them with rackbook layer " + edition.code + " 1 COLOUR.");
        for (const Layer* layer : layers)
            addLayer(*layer);
        if (m_isKnownBelow)
            m_made.notes.push_back(
                "Where all layers lie on one another, each dry before the next; they are taken to "
                "cover the paper wholly.");
        comparePrints(edition);
        return finished(false);
    }

private:
    const InkBook& ink() const { return m_wanted.ink; }

    static PredictedFilm newFilm(std::string words) {
        PredictedFilm film;
        film.words = std::move(words);
        return film;
    }

    void takePaper(const PaperWanted& paper) {
        m_made.paper = paperGiven(m_wanted.context, ink(), paper);
    }

    // Of the latest drawdown of the mix; nothing set where it was never measured.
    ColourAim aimOfMix(const std::string& mix) const {
        const Reading* reading = readingOfMix(ink(), mix);
        if (!reading)
            return {};
        ColourAim aim = aimAt(reading->id);
        // What was read is another colour than what the mix has become.
        if (changedSince(ink(), *reading, m_wanted.asOf))
            aim.target.reset();
        return aim;
    }

    bool isHeldTo(const Reading& reading) const {
        const std::vector<Layer>& layers = ink().records.of<Layer>();
        return std::any_of(layers.begin(), layers.end(), [&](const Layer& layer) {
            return layer.reading && layer.reading->id == reading.id;
        });
    }

    // Readings on its prints that no layer is held to, beside all layers on one another.
    void comparePrints(const Edition& edition) {
        if (!m_isKnownBelow || m_made.films.empty())
            return;
        const Lab top = labOf(m_made.films.back().onTop, ViewingLight::D50);
        for (const Reading& reading : ink().records.of<Reading>()) {
            const Impression* sheet = ink().records.find(reading.impression);
            if (!sheet || sheet->edition.id != edition.id || isHeldTo(reading) ||
                !colourOf(reading, ViewingLight::D50, Observer::deg2))
                continue;
            const ColourAim aim = aimAt(reading.id);
            m_made.notes.push_back(
                "Reading " + reading.id + ", on " + sheet->id + ", is ΔE00 " +
                formatFixed(deltaE00(top, aim.target->lab_D50), 2) +
                " from all layers on one another, where it was taken on such a place.");
        }
    }

    ColourAim aimAt(const std::string& reading) const {
        return colourAimNamed({m_wanted.book, ink(), m_wanted.model}, reading, std::nullopt,
                              m_wanted.asOf);
    }

    void addLayer(const Layer& layer) {
        PredictedFilm film =
            newFilm("layer " + std::to_string(layer.ordinal) + ", " + layer.colourWords);
        takeRecipe(recipeOfLayer(ink(), m_recipes, layer), film);
        if (film.unknown.empty())
            film.film = filmGiven(m_wanted.context, ink(), std::nullopt,
                                  ink().records.indexOf<Layer>(layer.id));
        film.isFirst = layer.ordinal == 1;
        if (layer.reading && film.unknown.empty()) {
            const ColourAim aim = aimAt(layer.reading->id);
            compareWith(aim, film);
        }
        add(std::move(film));
    }

    void compareWith(const ColourAim& aim, PredictedFilm& film) const {
        // A print shows all its layers, and another film weight another colour.
        const bool isOfThisFilmAlone = !aim.ofPrint || film.isFirst;
        const bool isOfThisWeight =
            !aim.filmWeight_gm2 ||
            std::abs(*aim.filmWeight_gm2 / film.film.least_gm2 - 1) <= film.film.uncertainty_share;
        if (!aim.target || aim.paper.paper != m_made.paper.words || !isOfThisFilmAlone ||
            !isOfThisWeight)
            return;
        film.reading = aim.reading;
        film.recorded_D50 = aim.target->lab_D50;
    }

    void takeRecipe(const RecipeFound& found, PredictedFilm& film) const {
        if (!found.isComputable())
            film.unknown =
                "what it is made of cannot be computed: " + obstacleWords(ink(), found.problems) +
                ".";
        else if (found.recipe.stages.empty())
            film.unknown = "what it is made of is not recorded.";
        else
            film.shares = flattened(found.recipe);
        if (film.unknown.empty())
            film.shareUncertainties = recordedUncertainties(ink(), found, film.shares);
    }

    void add(PredictedFilm film) {
        if (film.unknown.empty()) {
            try {
                requireKnownInks(ink(), m_wanted.model, film.shares, film.words);
                predict(film);
            } catch (const InputError& error) {
                film.unknown = error.what();
            }
        }
        m_isKnownBelow = m_isKnownBelow && film.unknown.empty();
        m_made.films.push_back(std::move(film));
    }

    void predict(PredictedFilm& film) {
        const Characterisation& inks = m_wanted.model.inks;
        const double weight_gm2 = film.film.least_gm2;
        film.alone = predictedOver(m_made.paper.bands, film.shares, weight_gm2, inks);
        m_stack.push_back(
            {mixedOf(film.shares, inks.optics), weight_gm2, film.film.uncertainty_share});
        film.onTop = stacked(m_stack);
        film.hasOnTop = m_isKnownBelow;
        film.spread = spreadOf({inks, film.shares, film.shareUncertainties, weight_gm2,
                                weight_gm2 * film.film.uncertainty_share, m_made.paper.bands},
                               lotKindsOf(ink()));
        m_variance += film.spread.weighing_dE00 * film.spread.weighing_dE00 +
                      film.spread.inks_dE00.value_or(0) * film.spread.inks_dE00.value_or(0);
        film.onTop_dE00 = std::sqrt(m_variance + filmVariance());
        if (film.recorded_D50)
            film.recorded_dE00 = deltaE00(*film.recorded_D50, labOf(film.alone, ViewingLight::D50));
    }

    Bands stacked(const std::vector<LaidFilm>& films) const {
        Bands inside = insideOf(m_made.paper.bands, m_wanted.model.inks.surface);
        for (const LaidFilm& film : films)
            inside = filmOver(inside, film.ink, film.weight_gm2);
        return measuredOf(inside, m_wanted.model.inks.surface);
    }

    // Each film of the stack in its turn moved by its uncertainty, the others as they are.
    double filmVariance() const {
        const Lab now = labOf(stacked(m_stack), ViewingLight::D50);
        double sum = 0;
        for (std::size_t i = 0; i < m_stack.size(); ++i) {
            double off = 0;
            for (const double sign : {1.0, -1.0}) {
                std::vector<LaidFilm> moved = m_stack;
                moved[i].weight_gm2 *= std::max(0.0, 1 + sign * moved[i].uncertainty_share);
                off = std::max(off, deltaE00(now, labOf(stacked(moved), ViewingLight::D50)));
            }
            sum += off * off;
        }
        return sum;
    }

    // Where one of several layers is not known, no colour on top of it is either.
    Prediction finished(bool mustBeKnown) {
        for (const PredictedFilm& film : m_made.films)
            if (mustBeKnown && !film.unknown.empty())
                throw InputError(m_made.words, film.unknown,
                                 "Name a mix whose weighings and inks are recorded.");
        if (!m_isKnownBelow)
            m_made.notes.push_back("Over a layer that is not known, no colour is known either.");
        std::vector<LotShare> all;
        for (const PredictedFilm& film : m_made.films)
            all.insert(all.end(), film.shares.begin(), film.shares.end());
        for (std::string& words : std::vector<std::string>{
                 m_made.paper.warning, learntEarlyWords(ink(), m_wanted.model, eachOnce(all))})
            if (!words.empty())
                m_made.notes.push_back(std::move(words));
        return std::move(m_made);
    }

    const PredictWanted& m_wanted;
    RecipeOf m_recipes;
    Prediction m_made;
    std::vector<LaidFilm> m_stack;
    bool m_isKnownBelow = true;
    // Of the stack, from weighing and inks: taken to be as each film has it alone over the paper.
    double m_variance = 0;
};

}  // namespace

Prediction predictionOf(const PredictWanted& wanted, const std::string& words,
                        const std::optional<std::string>& layer) {
    Predicting predicting(wanted);
    if (layer)
        return predicting.ofLayer(layerOf(wanted.book, editionNamed(wanted.book, words), *layer));
    if (const int mix = wanted.ink.records.indexOf<Mix>(words); mix >= 0)
        return predicting.ofMix(mix);
    if (const Layer* named = wanted.ink.records.find<Layer>(words))
        return predicting.ofLayer(*named);
    if (wanted.ink.records.find<Reading>(words) || wanted.ink.records.find<Drawdown>(words) ||
        wanted.ink.records.find<Lot>(words))
        throw UsageError(words + " is no mix, layer or edition",
                         "What a reading says, rackbook colour tells; what a lot does to light, "
                         "rackbook characterise.");
    return predicting.ofEdition(editionNamed(wanted.book, words));
}

}  // namespace rackbook
