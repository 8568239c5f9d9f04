#include "commands/LayerFilm.h"

#include <algorithm>

namespace rackbook {

namespace {

constexpr double mm2PerM2 = 1e6;

// `wholeFor` is the layer for which the whole image counts where no coverage is recorded; others
// without one teach nothing.
std::vector<PulledFilm> filmsOf(const InkBook& ink, int wholeFor) {
    const std::vector<Pull>& pulls = ink.records.of<Pull>();
    std::vector<PulledFilm> films;
    for (std::size_t i = 0; i < pulls.size(); ++i) {
        const HistoryPull& row = ink.history.pulls[i];
        if (row.layer < 0)
            continue;
        const Layer& layer = ink.records.of<Layer>()[static_cast<std::size_t>(row.layer)];
        const Edition* edition = ink.records.find(layer.edition);
        PulledFilm film;
        film.edition = ink.records.indexOf<Edition>(layer.edition.id);
        film.layer = row.layer;
        film.inkUsed_g = row.inkUsed_g;
        film.sheets = static_cast<int>(pulls[i].impressions.size());
        film.coverage = layer.coverage.value_or(row.layer == wholeFor ? 1 : notKnown);
        if (edition)
            film.area_m2 = recordedAreaOf_m2(*edition).value_or(notKnown);
        films.push_back(film);
    }
    return films;
}

WeightSource sourceOf(FilmWeightFrom from) {
    switch (from) {
        case FilmWeightFrom::layer:
            return WeightSource::layer;
        case FilmWeightFrom::edition:
            return WeightSource::edition;
        case FilmWeightFrom::studio:
            return WeightSource::studio;
        case FilmWeightFrom::commonPractice:
            break;
    }
    return WeightSource::commonPractice;
}

FilmWeight learntFor(const InkBook& ink, int edition, int layer) {
    const FilmWeight ofLayer = filmWeightFor(filmsOf(ink, layer), edition, layer);
    return ofLayer.from == FilmWeightFrom::layer ? ofLayer
                                                 : filmWeightFor(filmsOf(ink, -1), edition, -1);
}

}  // namespace

std::optional<double> recordedAreaOf_m2(const Edition& edition) {
    if (!edition.imageHeight_mm || !edition.imageWidth_mm)
        return std::nullopt;
    return *edition.imageHeight_mm * *edition.imageWidth_mm / mm2PerM2;
}

LayerFilm layerFilm(const InkBook& ink, int position, bool aimedFirst) {
    const Layer* layer =
        position < 0 ? nullptr : &ink.records.of<Layer>()[static_cast<std::size_t>(position)];
    const int edition = layer ? ink.records.indexOf<Edition>(layer->edition.id) : -1;
    const FilmWeight learnt = learntFor(ink, edition, position);
    LayerFilm film{learnt.weight_gm2, sourceOf(learnt.from), learnt.pulls};
    const bool nothingLearnt = learnt.from == FilmWeightFrom::commonPractice;
    if (!layer || !layer->filmWeight_gm2 || !(aimedFirst || nothingLearnt))
        return film;
    const double aim_gm2 = *layer->filmWeight_gm2;
    film.weight_gm2 = {std::min(learnt.weight_gm2.low, aim_gm2), aim_gm2,
                       std::max(learnt.weight_gm2.high, aim_gm2)};
    film.from = WeightSource::aimed;
    return film;
}

std::string filmSourceWords(const LayerFilm& film) {
    const std::string pulls = std::to_string(film.pulls) + " pulls of ";
    switch (film.from) {
        case WeightSource::given:
            return "as given";
        case WeightSource::aimed:
            return "aimed at";
        case WeightSource::layer:
            return pulls + "this layer";
        case WeightSource::edition:
            return pulls + "this edition";
        case WeightSource::studio:
            return pulls + "all editions";
        case WeightSource::commonPractice:
            break;
    }
    return "common practice";
}

}  // namespace rackbook
