#include "commands/ColourModel.h"

#include <algorithm>
#include <cctype>
#include <limits>
#include <map>
#include <memory>

#include "base/Error.h"
#include "base/Text.h"
#include "calc/MixLedger.h"
#include "calc/Spectrum.h"
#include "commands/ColourWords.h"
#include "commands/MixAgainPlan.h"

namespace rackbook {

namespace {

std::optional<std::vector<LotShare>> knownShares(const MixContents& contents) {
    if (!contents.isKnown() || contents.parts.empty())
        return std::nullopt;
    std::vector<LotShare> shares;
    for (const MixPart& part : contents.parts)
        if (part.share.best > 0)
            shares.push_back({part.constituent, part.share.best});
    return shares;
}

// Ledgers of the days on which drawdowns were made, each made once.
class Ledgers {
public:
    explicit Ledgers(const InkBook& ink) : m_ink(ink) {}

    // Nothing where the shares are not known.
    std::optional<std::vector<LotShare>> sharesOf(int mix, CivilMinute asOf) {
        std::unique_ptr<MixLedger>& ledger = m_ledgers[asOf];
        if (!ledger)
            ledger = std::make_unique<MixLedger>(ledgerByLot(m_ink.history, asOf));
        return knownShares(ledger->atEnd(static_cast<std::size_t>(mix)));
    }

    // Of a drawdown, on the day it was made.
    std::optional<std::vector<LotShare>> sharesIn(const Drawdown& drawdown) {
        if (drawdown.lot)
            return std::vector<LotShare>{{m_ink.records.indexOf<Lot>(drawdown.lot->id), 1}};
        return sharesOf(m_ink.records.indexOf<Mix>(drawdown.mix->id),
                        drawdown.madeOn ? drawdown.madeOn->latest() : endOfTime);
    }

private:
    const InkBook& m_ink;
    std::map<CivilMinute, std::unique_ptr<MixLedger>> m_ledgers;
};

bool wasReadEarly(const InkBook& ink, const Drawdown& drawdown, const Reading& reading,
                  const std::vector<LotShare>& shares) {
    if (shareOfKind(ink, shares, LotKind::base) < ink.rules.value("extenderRichShare") ||
        !drawdown.madeOn || !reading.takenOn)
        return false;
    const bool hasDrier =
        shareOfKind(ink, shares, LotKind::drier) >= ink.rules.value("drierLeastShare");
    const auto wanted =
        static_cast<CivilMinute>(ink.rules.value(hasDrier ? "lightDays" : "lightDaysCareful") *
                                 static_cast<double>(minutesPerDay));
    return reading.takenOn->latest() < drawdown.madeOn->earliest() + wanted;
}

class Gathering {
public:
    explicit Gathering(const InkBook& ink)
        : m_ink(ink), m_ledgers(ink), m_surface(surfaceOf(ink.rules)) {}

    ColourModel run() {
        for (const Reading& reading : m_ink.records.of<Reading>())
            if (reading.drawdown)
                m_readings[reading.drawdown->id].push_back(&reading);
        for (const Drawdown& drawdown : m_ink.records.of<Drawdown>())
            if (const auto found = m_readings.find(drawdown.id); found != m_readings.end())
                gather(drawdown, found->second);
        m_model.inks = characterise(m_model.samples, lotKindsOf(m_ink), m_surface);
        return std::move(m_model);
    }

private:
    void leaveOut(const Drawdown& drawdown, const std::vector<const Reading*>& readings,
                  const std::string& why) {
        for (const Reading* reading : readings)
            if (spectrumIn(*reading))
                m_model.unused.push_back({reading->id, drawdown.id, why});
    }

    void gather(const Drawdown& drawdown, const std::vector<const Reading*>& readings) {
        const std::optional<std::vector<LotShare>> shares = m_ledgers.sharesIn(drawdown);
        if (shares && std::any_of(readings.begin(), readings.end(), [&](const Reading* reading) {
                return wasReadEarly(m_ink, drawdown, *reading, *shares);
            }))
            m_model.readEarly.push_back(drawdown.id);
        const bool hasSpectrum =
            std::any_of(readings.begin(), readings.end(),
                        [](const Reading* reading) { return spectrumIn(*reading).has_value(); });
        if (!hasSpectrum)
            return;
        if (!drawdown.filmWeight_gm2) {
            leaveOut(drawdown, readings, "its film weight is not recorded");
            return;
        }
        if (!shares) {
            leaveOut(drawdown, readings,
                     "what " + drawdown.mix->id + " was made of on that day is not known");
            return;
        }
        DrawdownSample sample{drawdown.id, *shares, *drawdown.filmWeight_gm2, {}};
        for (const Reading* reading : readings)
            if (spectrumIn(*reading))
                addReading(drawdown, *reading, sample);
        if (!sample.over.empty())
            m_model.samples.push_back(std::move(sample));
    }

    void addReading(const Drawdown& drawdown, const Reading& reading, DrawdownSample& sample) {
        const Reading* backing = paperReading(m_ink, drawdown.substrate, reading.backing);
        if (!backing) {
            leaveOut(drawdown, {&reading},
                     "no spectrum of its bare paper over the same backing is recorded (" +
                         drawdown.substrate + ")");
            return;
        }
        try {
            sample.over.push_back({bandsIn(*backing, m_surface), bandsIn(reading, m_surface)});
        } catch (const InputError& error) {
            leaveOut(drawdown, {&reading}, error.what());
        }
    }

    const InkBook& m_ink;
    Ledgers m_ledgers;
    FilmSurface m_surface;
    std::map<std::string, std::vector<const Reading*>> m_readings;
    ColourModel m_model;
};

CivilMinute whenTaken(const Reading& reading) {
    return reading.takenOn ? reading.takenOn->latest() : std::numeric_limits<CivilMinute>::min();
}

// Small letters and digits of the geometry: "di8" of "di:8°" or "di/8".
std::string plainGeometry(const Reading& reading) {
    std::string plain;
    for (const char c : reading.geometry.value_or(""))
        if (std::isalnum(static_cast<unsigned char>(c)))
            plain += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    return plain;
}

}  // namespace

FilmSurface surfaceOf(const HouseRules& rules) {
    FilmSurface surface;
    surface.outerReflection = rules.value("surfaceOuterReflection");
    surface.innerReflection = rules.value("surfaceInnerReflection");
    return surface;
}

ColourModel colourModelOf(const InkBook& ink) {
    return Gathering(ink).run();
}

std::string readEarlyWords(const InkBook& ink, const Reading& reading) {
    const Drawdown* drawdown = ink.records.find(reading.drawdown);
    if (!drawdown || !drawdown->mix)
        return {};
    const std::optional<std::vector<LotShare>> shares = Ledgers(ink).sharesIn(*drawdown);
    if (!shares || !wasReadEarly(ink, *drawdown, reading, *shares))
        return {};
    return "Drawdown " + drawdown->id +
           " was read before its days in light were over: ink that is rich in base turns while it "
           "cures, and this may not be its own colour yet.";
}

const Reading* paperReading(const InkBook& ink, const std::string& paper,
                            const std::optional<Backing>& backing) {
    const Reading* best = nullptr;
    const auto isBetter = [&](const Reading& reading) {
        const bool fits = reading.backing == backing;
        const bool bestFits = best->backing == backing;
        return fits != bestFits ? fits : whenTaken(reading) > whenTaken(*best);
    };
    for (const Reading& reading : ink.records.of<Reading>())
        if (reading.paper == paper && spectrumIn(reading) &&
            (!backing || !reading.backing || reading.backing == backing) &&
            (!best || isBetter(reading)))
            best = &reading;
    return best;
}

bool seesGloss(const Reading& reading) {
    const std::string plain = plainGeometry(reading);
    return plain.rfind("di8", 0) == 0 || plain.rfind("8di", 0) == 0 ||
           plain.find("included") != std::string::npos;
}

bool leavesGlossOpen(const Reading& reading) {
    const std::string plain = plainGeometry(reading);
    const bool isLeftOut = plain.rfind("de8", 0) == 0 || plain.rfind("8de", 0) == 0 ||
                           plain.find("excluded") != std::string::npos;
    const bool isSphere = plain.find("sphere") != std::string::npos || plain.rfind("d8", 0) == 0 ||
                          plain.rfind("8d", 0) == 0;
    return isSphere && !isLeftOut && !seesGloss(reading);
}

Bands bandsIn(const Reading& reading, const FilmSurface& surface) {
    const std::optional<Spectrum> spectrum = spectrumIn(reading);
    requireUsable(*spectrum, "reading " + reading.id);
    Bands bands = bandsOf(*spectrum);
    if (seesGloss(reading))
        for (double& band : bands)
            band = std::max(0.0, band - surface.outerReflection);
    return bands;
}

std::string brightenedWords(const Reading& reading, const FilmSurface& surface) {
    const double most = measuredOf(1.0, surface);
    std::size_t beyond = 0;
    for (const double value : bandsIn(reading, surface))
        beyond += value > most ? 1 : 0;
    if (beyond == 0)
        return {};
    return "Reading " + reading.id + " sends back more light than a film can be computed over at " +
           std::to_string(beyond) + " of " + std::to_string(bandCount) +
           " wavelengths, as brightened paper does: counted as white there. Measured without "
           "ultraviolet (M2), it would be right.";
}

std::string learntEarlyWords(const InkBook& ink, const ColourModel& model,
                             const std::vector<LotShare>& shares) {
    std::vector<std::string> lots;
    for (const LotShare& part : shares) {
        const LotOptics* known = model.inks.of(part.lot);
        if (!known || part.share <= 0)
            continue;
        const bool isEarly = std::any_of(
            known->samples.begin(), known->samples.end(), [&](const std::size_t sample) {
                const std::vector<std::string>& early = model.readEarly;
                return std::find(early.begin(), early.end(), model.samples[sample].drawdown) !=
                       early.end();
            });
        if (isEarly)
            lots.push_back(lotAt(ink, part.lot).id);
    }
    return lots.empty() ? ""
                        : "Drawdowns of " + joined(lots) +
                              " were read before their days in light were over; what they teach "
                              "may be too brown.";
}

RecipeFound recipeOfLayer(const InkBook& ink, const RecipeOf& recipes, const Layer& layer) {
    RecipeFound found;
    for (const int pull : byGoodSheets(ink, pullsOfLayer(ink, layer))) {
        found = recipes.atPull(static_cast<std::size_t>(pull));
        if (found.isComputable())
            return found;
    }
    if (const int mix = layer.mix ? ink.records.indexOf<Mix>(layer.mix->id) : -1; mix >= 0)
        found = recipes.atEnd(static_cast<std::size_t>(mix));
    return found;
}

std::vector<LotShare> sharesOfDrawdown(const InkBook& ink, const Drawdown& drawdown) {
    std::optional<std::vector<LotShare>> shares = Ledgers(ink).sharesIn(drawdown);
    if (!shares)
        throw InputError("drawdown " + drawdown.id,
                         "what " + drawdown.mix->id +
                             " was made of when it was drawn down is not "
                             "known",
                         "Record its weighings with their masses and times.");
    return std::move(*shares);
}

bool changedSince(const InkBook& ink, const Reading& reading, CivilMinute asOf) {
    const Drawdown* drawdown = ink.records.find(reading.drawdown);
    if (!drawdown || !drawdown->mix || !drawdown->madeOn)
        return false;
    const int mix = ink.records.indexOf<Mix>(drawdown->mix->id);
    const TimeSpan made{drawdown->madeOn->earliest(), drawdown->madeOn->latest()};
    // On the day itself, what was taken out last may be what was drawn down.
    CivilMinute takenOut = made.latest;
    for (const HistoryWeighing& weighing : ink.history.weighings)
        if (weighing.mix == mix && weighing.act == WeighingAct::withdraw &&
            weighing.at.latest >= made.earliest && weighing.at.latest <= made.latest)
            takenOut = std::min(takenOut, weighing.at.latest);
    return std::any_of(ink.history.weighings.begin(), ink.history.weighings.end(),
                       [&](const HistoryWeighing& weighing) {
                           return weighing.mix == mix && weighing.act == WeighingAct::add &&
                                  weighing.at.earliest > takenOut && weighing.at.earliest <= asOf;
                       });
}

std::vector<LotShare> sharesOfMix(const InkBook& ink, int mix, CivilMinute asOf) {
    std::optional<std::vector<LotShare>> shares = Ledgers(ink).sharesOf(mix, asOf);
    if (!shares)
        throw InputError("mix " + mixAt(ink, mix).id, "what it is made of is not known in full",
                         "Record the masses that are missing.");
    return std::move(*shares);
}

}  // namespace rackbook
