#include "commands/PredictPlan.h"

#include <algorithm>
#include <cmath>

#include "base/Error.h"
#include "base/Text.h"
#include "calc/ColourMatch.h"
#include "calc/RecipeOf.h"
#include "commands/BookAccess.h"
#include "commands/ColourAim.h"
#include "commands/LayerNamed.h"
#include "commands/MixAgainPlan.h"
#include "commands/Obstacles.h"
#include "commands/RecordedWeighing.h"

namespace rackbook {

namespace {

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
        m_made.words = "layer " + std::to_string(layer.ordinal) + " of " +
                       (edition ? edition->code : layer.edition.id) + " (" + layer.colourWords +
                       ")";
        takePaper(edition ? edition->paper : std::nullopt);
        addLayer(layer);
        return finished(true);
    }

    Prediction ofEdition(const Edition& edition) {
        m_made.words = "all layers of " + edition.code;
        takePaper(edition.paper);
        std::vector<const Layer*> layers;
        for (const Layer& layer : ink().records.of<Layer>())
            if (layer.edition.id == edition.id)
                layers.push_back(&layer);
        std::stable_sort(layers.begin(), layers.end(),
                         [](const Layer* a, const Layer* b) { return a->ordinal < b->ordinal; });
        for (const Layer* layer : layers)
            addLayer(*layer);
        m_made.notes.push_back(
            "Where all layers lie on one another, each dry before the next; they are taken to "
            "cover the paper wholly.");
        return finished(false);
    }

private:
    const InkBook& ink() const { return m_wanted.ink; }

    static PredictedFilm newFilm(std::string words) {
        PredictedFilm film;
        film.words = std::move(words);
        return film;
    }

    void takePaper(const std::optional<std::string>& paper) {
        m_made.paper = paperGiven(m_wanted.context, ink(), paper);
    }

    // Of the latest drawdown of the mix; nothing set where it was never measured.
    ColourAim aimOfMix(const std::string& mix) const {
        const Reading* reading = readingOfMix(ink(), mix);
        return reading ? aimAt(reading->id) : ColourAim{};
    }

    ColourAim aimAt(const std::string& reading) const {
        return colourAimNamed({m_wanted.book, ink(), m_wanted.model}, reading, std::nullopt,
                              m_wanted.asOf);
    }

    void addLayer(const Layer& layer) {
        PredictedFilm film =
            newFilm("layer " + std::to_string(layer.ordinal) + ", " + layer.colourWords);
        takeRecipe(recipeOfLayer(layer), film);
        if (film.unknown.empty())
            film.film = filmGiven(m_wanted.context, ink(), std::nullopt,
                                  ink().records.indexOf<Layer>(layer.id));
        if (layer.reading) {
            const ColourAim aim = aimAt(layer.reading->id);
            compareWith(aim, film);
        }
        add(std::move(film));
    }

    void compareWith(const ColourAim& aim, PredictedFilm& film) const {
        if (!aim.target || aim.paper != m_made.paper.words)
            return;
        film.reading = aim.reading;
        film.recorded_D50 = aim.target->lab_D50;
    }

    // Of the pull with most good sheets of which it is known, else of the layer's mix as it is
    // then.
    RecipeFound recipeOfLayer(const Layer& layer) const {
        RecipeFound found;
        for (const int pull : byGoodSheets(ink(), pullsOfLayer(ink(), layer))) {
            found = m_recipes.atPull(static_cast<std::size_t>(pull));
            if (found.isComputable())
                return found;
        }
        if (const int mix = layer.mix ? ink().records.indexOf<Mix>(layer.mix->id) : -1; mix >= 0)
            found = m_recipes.atEnd(static_cast<std::size_t>(mix));
        return found;
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
        m_made.films.push_back(std::move(film));
    }

    void predict(PredictedFilm& film) {
        const Characterisation& inks = m_wanted.model.inks;
        const double weight_gm2 = film.film.least_gm2;
        film.alone = predictedOver(m_made.paper.bands, film.shares, weight_gm2, inks);
        m_stack.push_back(
            {mixedOf(film.shares, inks.optics), weight_gm2, film.film.uncertainty_share});
        film.onTop = stacked(m_stack);
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

    // Each film of the stack in its turn made thicker by its uncertainty, the others as they are.
    double filmVariance() const {
        const Lab now = labOf(stacked(m_stack), ViewingLight::D50);
        double sum = 0;
        for (std::size_t i = 0; i < m_stack.size(); ++i) {
            std::vector<LaidFilm> moved = m_stack;
            moved[i].weight_gm2 *= 1 + moved[i].uncertainty_share;
            const double off = deltaE00(now, labOf(stacked(moved), ViewingLight::D50));
            sum += off * off;
        }
        return sum;
    }

    // Where one of several layers is not known, no colour on top of it is either.
    Prediction finished(bool mustBeKnown) {
        bool isKnownBelow = true;
        for (const PredictedFilm& film : m_made.films) {
            isKnownBelow = isKnownBelow && film.unknown.empty();
            if (mustBeKnown && !film.unknown.empty())
                throw InputError(m_made.words, film.unknown,
                                 "Name a mix whose weighings and inks are recorded.");
        }
        if (!isKnownBelow)
            m_made.notes.push_back(
                "Layers that are not known are left out of the colours in printing order, which "
                "are too light for that.");
        return std::move(m_made);
    }

    const PredictWanted& m_wanted;
    RecipeOf m_recipes;
    Prediction m_made;
    std::vector<LaidFilm> m_stack;
    // Of the stack, from weighing and inks: as each film alone over paper has it, which is more
    // than what is left of it under the others.
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
    return predicting.ofEdition(editionNamed(wanted.book, words));
}

}  // namespace rackbook
