#include "commands/FilmGiven.h"

#include <algorithm>
#include <cmath>

#include "base/Error.h"
#include "base/Numbers.h"
#include "base/Text.h"
#include "calc/Wording.h"
#include "commands/LayerFilm.h"
#include "commands/OptionRows.h"
#include "commands/ShareGiven.h"

namespace rackbook {

namespace {

const char* const filmRemedy = "Give 0.1 to 1000 g/m², such as 5.5.";
// Between the quartiles of a normal distribution lie 1.349 standard deviations.
constexpr double quartilesInDeviations = 1.349;
constexpr double thinnest_gm2 = 0.1;
constexpr double thickest_gm2 = 1000;

FilmGiven fixedAt(double weight_gm2, double uncertainty_share, const std::string& from) {
    return {weight_gm2, weight_gm2, uncertainty_share,
            formatShortest(std::round(weight_gm2 * 100) / 100) + " g/m², " + from +
                ", taken to be known to " + formatFixed(uncertainty_share * 100, 0) + " %"};
}

double filmIn(const std::string& text) {
    const double weight_gm2 = positiveGiven(text, "--film", filmRemedy);
    if (weight_gm2 < thinnest_gm2 || weight_gm2 > thickest_gm2)
        throw UsageError("--film is \"" + excerpt(text) + "\"", filmRemedy);
    return weight_gm2;
}

FilmGiven givenFilm(const std::string& text, double uncertainty_share, bool mayRange) {
    const std::size_t dash = text.find('-', 1);
    const bool isRange = dash != std::string::npos && dash + 1 < text.size() &&
                         text.find_first_of("eE") == std::string::npos;
    if (!isRange || !mayRange)
        return fixedAt(filmIn(text), uncertainty_share, "as given");
    const double least_gm2 = filmIn(text.substr(0, dash));
    const double greatest_gm2 = filmIn(text.substr(dash + 1));
    if (!(greatest_gm2 > least_gm2))
        throw UsageError("--film is \"" + excerpt(text) + "\"",
                         "Give the smaller film weight first, such as 4-7.");
    return {least_gm2, greatest_gm2, uncertainty_share,
            formatShortest(least_gm2) + " to " + formatShortest(greatest_gm2) + " g/m², as given"};
}

}  // namespace

OptionSpec filmOption(bool mayRange) {
    return valueOption("film", "G/M2",
                       mayRange ? "The film weight, wet, such as 5.5, or 4-7 to leave it open."
                                : "The film weight, wet, such as 5.5.",
                       "that of what is asked for, else what the studio prints with");
}

FilmGiven filmGiven(const CommandContext& context, const InkBook& ink,
                    const std::optional<double>& recorded_gm2, int layer, bool mayRange) {
    const double usual = ink.rules.value("filmWeightUncertainty");
    if (const std::optional<std::string> text = context.arguments.value("film"))
        return givenFilm(*text, usual, mayRange);
    if (recorded_gm2)
        return fixedAt(*recorded_gm2, usual, "as recorded");
    const LayerFilm film = layerFilm(ink, layer, true);
    if (!film.weight_gm2.isKnown())
        throw UsageError("it is not known how thick the ink is printed",
                         "Give --film, such as 5.5 (g/m²); hand relief printing lies between 3 "
                         "and 15: common practice, no source.");
    if (film.from == WeightSource::aimed)
        return fixedAt(film.weight_gm2.best, usual, filmSourceWords(film));
    const double deviation_gm2 =
        (film.weight_gm2.high - film.weight_gm2.low) / quartilesInDeviations;
    // Pulls that happen to agree do not make the film better known than a weighed one.
    const double share = std::max(usual, deviation_gm2 / film.weight_gm2.best);
    return fixedAt(
        film.weight_gm2.best, share,
        "what " + filmSourceWords(film) + " put out (what lies on the paper is somewhat less)");
}

}  // namespace rackbook
