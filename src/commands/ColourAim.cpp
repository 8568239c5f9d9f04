#include "commands/ColourAim.h"

#include <algorithm>

#include "base/Error.h"
#include "base/Text.h"
#include "calc/ColourMatch.h"
#include "calc/ReadingColour.h"
#include "commands/BookAccess.h"
#include "commands/ColourFacts.h"
#include "commands/LayerFilm.h"
#include "commands/LayerNamed.h"

namespace rackbook {

namespace {

// The latest reading for which `belongs` holds; spectra before typed values.
template <class Belongs>
const Reading* latestReading(const InkBook& ink, Belongs belongs) {
    const Reading* best = nullptr;
    const auto rank = [](const Reading& reading) {
        return std::make_pair(spectrumIn(reading).has_value(),
                              reading.takenOn ? reading.takenOn->latest() : 0);
    };
    for (const Reading& reading : ink.records.of<Reading>())
        if (belongs(reading) && (!best || rank(reading) > rank(*best)))
            best = &reading;
    return best;
}

const Reading* readingOfDrawdown(const InkBook& ink, const std::string& drawdown) {
    return latestReading(ink, [&](const Reading& reading) {
        return reading.drawdown && reading.drawdown->id == drawdown;
    });
}

class Aiming {
public:
    Aiming(const ColourBook& colours, CivilMinute asOf)
        : m_book(colours.book), m_ink(colours.ink), m_model(colours.model), m_asOf(asOf) {}

    ColourAim atReading(const Reading& reading, const std::string& words) {
        ColourAim aim;
        aim.words = words;
        aim.reading = reading.id;
        aim.target =
            colourRead(reading, m_model.inks.surface, "Measure it again, or name another reading.");
        if (!aim.target->reflectance)
            aim.warnings.push_back("Reading " + reading.id +
                                   " holds CIELAB only: nothing can be said about other light "
                                   "than D50.");
        addCircumstances(reading, aim);
        return aim;
    }

    ColourAim atLayer(const Layer& layer) {
        const Reading* reading = m_ink.records.find(layer.reading);
        if (!reading && layer.mix)
            reading = readingOfMix(m_ink, layer.mix->id);
        ColourAim aim;
        if (reading) {
            aim = atReading(*reading, layerWords(m_ink, layer));
        } else {
            aim.words = layerWords(m_ink, layer);
            if (const Edition* edition = m_ink.records.find(layer.edition))
                aim.paper.paper = edition->paper;
            predictFrom(sharesOfRecipe(layer), aim);
            const Estimate film =
                layerFilm(m_ink, m_ink.records.indexOf<Layer>(layer.id), true).weight_gm2;
            if (film.isKnown())
                aim.filmWeight_gm2 = film.best;
        }
        aim.layer = m_ink.records.indexOf<Layer>(layer.id);
        return aim;
    }

    // As its latest drawdown was read, where the mix is still as it was then.
    ColourAim atMix(int mix) {
        const std::string words =
            "mix " + mixAt(m_ink, mix).id + " (" + mixAt(m_ink, mix).name + ")";
        const Reading* reading = readingOfMix(m_ink, mixAt(m_ink, mix).id);
        if (reading && !changedSince(m_ink, *reading, m_asOf))
            return atReading(*reading, words);
        ColourAim aim;
        aim.words = words;
        predictFrom(sharesOfMix(m_ink, mix, m_asOf), aim);
        return aim;
    }

private:
    std::optional<std::vector<LotShare>> sharesOfRecipe(const Layer& layer) const {
        const RecipeFound found =
            recipeOfLayer(m_ink, RecipeOf(m_ink.history, recipeMixesOf(m_ink), m_asOf), layer);
        if (!found.isComputable() || found.recipe.stages.empty())
            return std::nullopt;
        return flattened(found.recipe);
    }

    void predictFrom(std::optional<std::vector<LotShare>> shares, ColourAim& aim) const {
        if (!shares) {
            aim.noColour = "no colour is recorded for it, and what it is made of is not known";
            return;
        }
        const std::vector<std::string> unknown = unknownInks(m_ink, m_model, *shares);
        if (unknown.empty())
            aim.shares = std::move(*shares);
        else
            aim.noColour = "no colour is recorded for it, and what " + joined(unknown) +
                           " does to light is not known by drawdowns";
    }

    void addCircumstances(const Reading& reading, ColourAim& aim) {
        aim.paper = {reading.paper, reading.backing};
        if (leavesGlossOpen(reading))
            aim.warnings.push_back("Reading " + reading.id + " was taken with a sphere (" +
                                   *reading.geometry +
                                   "), and it is not said whether with the gloss: taken as "
                                   "without. Write di:8 or de:8.");
        if (seesGloss(reading))
            aim.warnings.push_back("Reading " + reading.id + " was taken with the gloss (" +
                                   *reading.geometry +
                                   "): what the surface sends back at once, by the house rule, is "
                                   "taken off.");
        if (const Drawdown* drawdown = m_ink.records.find(reading.drawdown)) {
            aim.paper.paper = drawdown->substrate;
            aim.filmWeight_gm2 = drawdown->filmWeight_gm2;
            if (std::string words = readEarlyWords(m_ink, reading); !words.empty())
                aim.warnings.push_back(std::move(words));
        }
        if (const Impression* sheet = m_ink.records.find(reading.impression)) {
            if (const Edition* edition = m_ink.records.find(sheet->edition))
                aim.paper.paper = edition->paper;
            if (std::string words = notReturnedWords(m_book, reading); !words.empty())
                aim.warnings.push_back(std::move(words));
            aim.ofPrint = true;
        }
    }

    const BookFile& m_book;
    const InkBook& m_ink;
    const ColourModel& m_model;
    CivilMinute m_asOf;
};

[[noreturn]] void refuseUnknown(const InkBook& ink, const std::string& words) {
    std::vector<std::string> ids;
    addIdsOf<Reading>(ink, ids);
    addIdsOf<Drawdown>(ink, ids);
    addIdsOf<Layer>(ink, ids);
    addIdsOf<Mix>(ink, ids);
    const std::optional<std::string> nearest = nearestName(words, ids);
    throw UsageError("the book has no reading, drawdown, layer or mix \"" + excerpt(words) + "\"",
                     nearest ? "Did you mean " + *nearest + "?"
                             : "rackbook list reading shows the readings; a layer is named by the "
                               "edition's code and its place, such as EEL 1.");
}

}  // namespace

std::vector<PositionalSpec> aimPositionals() {
    return {{"what", "Id of a reading, a drawdown, a layer or a mix, or the code of an edition."},
            {"layer", "With an edition: the layer's place in the printing order.", false}};
}

ColourTarget colourRead(const Reading& reading, const FilmSurface& surface,
                        const std::string& remedy) {
    const std::optional<ReadingColour> colour =
        colourOf(reading, ViewingLight::D50, Observer::deg2);
    if (!colour)
        throw InputError("reading " + reading.id, "it holds no colour under D50 and 2°", remedy);
    return spectrumIn(reading) ? targetOf(bandsIn(reading, surface))
                               : ColourTarget{colour->lab, std::nullopt};
}

const Reading* readingOfMix(const InkBook& ink, const std::string& mix) {
    return latestReading(ink, [&](const Reading& reading) {
        const Drawdown* drawdown = ink.records.find(reading.drawdown);
        return drawdown && drawdown->mix && drawdown->mix->id == mix;
    });
}

ColourAim colourAimNamed(const ColourBook& colours, const std::string& words,
                         const std::optional<std::string>& layer, CivilMinute asOf) {
    const InkBook& ink = colours.ink;
    Aiming aiming(colours, asOf);
    if (layer)
        return aiming.atLayer(layerOf(colours.book, editionNamed(colours.book, words), *layer));
    if (const Reading* reading = ink.records.find<Reading>(words))
        return aiming.atReading(*reading, "reading " + reading->id);
    if (ink.records.find<Drawdown>(words)) {
        const Reading* reading = readingOfDrawdown(ink, words);
        if (!reading)
            throw InputError("drawdown " + words, "it was never measured",
                             "Record a reading of it.");
        return aiming.atReading(*reading, "drawdown " + words);
    }
    if (const Layer* named = ink.records.find<Layer>(words))
        return aiming.atLayer(*named);
    if (const int mix = ink.records.indexOf<Mix>(words); mix >= 0)
        return aiming.atMix(mix);
    for (const Edition& edition : ink.records.of<Edition>())
        if (edition.code == words || edition.id == words)
            throw UsageError(
                "it is not said which layer of " + edition.code,
                "Give its place in the printing order, such as " + edition.code + " 1.");
    refuseUnknown(ink, words);
}

ColourTarget targetOver(const ColourModel& model, const ColourAim& aim, const PaperGiven& paper,
                        double filmWeight_gm2) {
    if (!aim.noColour.empty())
        throw InputError(aim.words, aim.noColour,
                         "Measure a print or a drawdown of it, and record the reading.");
    return aim.target
               ? *aim.target
               : targetOf(predictedOver(paper.bands, aim.shares,
                                        aim.filmWeight_gm2.value_or(filmWeight_gm2), model.inks));
}

std::vector<std::string> unknownInks(const InkBook& ink, const ColourModel& model,
                                     const std::vector<LotShare>& shares) {
    std::vector<std::string> unknown;
    for (const LotShare& part : shares)
        if (part.share > 0 && !model.inks.of(part.lot))
            unknown.push_back(lotAt(ink, part.lot).id);
    return unknown;
}

void requireKnownInks(const InkBook& ink, const ColourModel& model,
                      const std::vector<LotShare>& shares, const std::string& where) {
    const std::vector<std::string> unknown = unknownInks(ink, model, shares);
    if (!unknown.empty())
        throw InputError(where, "what " + joined(unknown) + " does to light is not known",
                         "Make drawdowns of it, full strength and let down, and measure them.");
}

}  // namespace rackbook
