#include "calc/Characterisation.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/Error.h"
#include "base/Numbers.h"
#include "calc/InkFit.h"

namespace rackbook {

namespace {

// Later ones are learnt over earlier ones.
constexpr LotKind inOrder[] = {LotKind::base, LotKind::modifier, LotKind::drier, LotKind::ink};

constexpr double leastEffect_dE00 = 1;

int rankOf(LotKind kind) {
    return static_cast<int>(std::find(std::begin(inOrder), std::end(inOrder), kind) -
                            std::begin(inOrder));
}

void requireUsable(const DrawdownSample& sample, std::size_t lots) {
    const std::string where = "drawdown " + sample.drawdown;
    if (!(sample.filmWeight_gm2 > 0) || !std::isfinite(sample.filmWeight_gm2))
        throw InputError(where, "the film weight is " + formatShortest(sample.filmWeight_gm2),
                         "Give one above 0 g/m².");
    double sum = 0;
    for (const LotShare& part : sample.shares) {
        if (part.lot < 0 || static_cast<std::size_t>(part.lot) >= lots || !(part.share >= 0))
            throw InputError(where, "a share of its ink is wrong", "Check its weighings.");
        sum += part.share;
    }
    if (!(std::abs(sum - 1) < 1e-6))
        throw InputError(where, "the shares of its ink add up to " + formatShortest(sum),
                         "Check its weighings.");
}

// Each lot once.
std::vector<LotShare> merged(const std::vector<LotShare>& shares) {
    std::map<int, double> byLot;
    for (const LotShare& part : shares)
        byLot[part.lot] += part.share;
    std::vector<LotShare> once;
    for (const auto& [lot, share] : byLot)
        once.push_back({lot, share});
    return once;
}

// One reading a backing: the mean of those over it.
std::vector<ReadingOver> meansOver(const std::vector<ReadingOver>& all) {
    std::vector<ReadingOver> means;
    std::vector<double> counts;
    for (const ReadingOver& over : all) {
        const auto same = std::find_if(means.begin(), means.end(), [&](const ReadingOver& mean) {
            return mean.backing == over.backing;
        });
        if (same == means.end()) {
            means.push_back(over);
            counts.push_back(1);
            continue;
        }
        double& count = counts[static_cast<std::size_t>(same - means.begin())];
        count += 1;
        for (std::size_t band = 0; band < bandCount; ++band)
            same->film[band] += (over.film[band] - same->film[band]) / count;
    }
    return means;
}

// The lot that a sample tells of; -1 where there is none such.
int subjectOf(const DrawdownSample& sample, const std::vector<LotKind>& kinds) {
    int subject = -1;
    int rank = -1;
    bool isAlone = true;
    for (const LotShare& part : sample.shares) {
        if (part.share <= 0)
            continue;
        const int its = rankOf(kinds[static_cast<std::size_t>(part.lot)]);
        if (its < rank)
            continue;
        isAlone = its > rank;
        subject = part.lot;
        rank = its;
    }
    return isAlone ? subject : -1;
}

// Position of the reading over the lightest backing.
std::size_t lightestOf(const DrawdownSample& sample) {
    const auto lightness = [](const ReadingOver& over) {
        return xyzOf(over.backing, ViewingLight::D50).y;
    };
    return static_cast<std::size_t>(
        std::max_element(sample.over.begin(), sample.over.end(),
                         [&](const ReadingOver& a, const ReadingOver& b) {
                             return lightness(a) < lightness(b);
                         }) -
        sample.over.begin());
}

double rootMeanSquare(const std::vector<double>& values) {
    double sum = 0;
    for (const double value : values)
        sum += value * value;
    return std::sqrt(sum / static_cast<double>(values.size()));
}

class Learning {
public:
    Learning(const std::vector<DrawdownSample>& samples, const std::vector<LotKind>& kinds,
             const FilmSurface& surface)
        : m_samples(samples), m_kinds(kinds), m_isKnown(kinds.size(), false) {
        m_made.surface = surface;
        m_made.optics.resize(kinds.size());
    }

    Characterisation run() {
        std::vector<std::vector<std::size_t>> samplesOf(m_kinds.size());
        for (std::size_t i = 0; i < m_samples.size(); ++i)
            if (const int lot = subjectOf(m_samples[i], m_kinds); lot >= 0)
                samplesOf[static_cast<std::size_t>(lot)].push_back(i);
        for (const LotKind kind : inOrder)
            for (std::size_t lot = 0; lot < m_kinds.size(); ++lot)
                if (m_kinds[lot] == kind)
                    learn(static_cast<int>(lot), samplesOf[lot]);
        std::sort(m_made.lots.begin(), m_made.lots.end(),
                  [](const LotOptics& a, const LotOptics& b) { return a.lot < b.lot; });
        checkMixes();
        return std::move(m_made);
    }

private:
    void learn(int lot, const std::vector<std::size_t>& samples) {
        LotOptics found;
        found.lot = lot;
        found.samples = samples;
        for (const std::size_t sample : samples)
            found.readings += m_samples[sample].over.size();
        if (samples.empty()) {
            if (m_kinds[static_cast<std::size_t>(lot)] == LotKind::ink)
                return;
            found.source = OpticsSource::takenAsClear;
        } else {
            found.source = found.readings == 1 ? OpticsSource::oneReading : OpticsSource::fitted;
            found.optics = fitted(lot, samples);
        }
        m_isKnown[static_cast<std::size_t>(lot)] = true;
        m_made.optics[static_cast<std::size_t>(lot)] = found.optics;
        std::vector<double> off_dE00;
        for (const std::size_t sample : samples)
            compare(sample, off_dE00);
        found.fit = checkOf(off_dE00);
        found.isScatteringSeen = isScatteringSeen(samples);
        checkLeftOut(found);
        m_made.lots.push_back(std::move(found));
    }

    // What the other lots of a sample add, each by its share.
    InkOptics restOf(const DrawdownSample& sample, int lot) const {
        std::vector<LotShare> rest;
        for (const LotShare& part : sample.shares)
            if (part.lot != lot)
                rest.push_back(part);
        return mixedOf(rest, m_made.optics);
    }

    InkOptics fitted(int lot, const std::vector<std::size_t>& samples) const {
        std::vector<FilmReading> readings;
        for (const std::size_t at : samples) {
            const DrawdownSample& sample = m_samples[at];
            for (const ReadingOver& over : sample.over)
                readings.push_back({sample.filmWeight_gm2, shareOf(sample.shares, lot),
                                    restOf(sample, lot), insideOf(over.backing, m_made.surface),
                                    insideOf(over.film, m_made.surface)});
        }
        const bool isInk = m_kinds[static_cast<std::size_t>(lot)] == LotKind::ink;
        return fittedOptics(readings, m_made.surface,
                            isInk ? usualScatteringOfInk_m2g : usualScatteringOfRest_m2g);
    }

    // Over a backing that sends back less than a tenth, or in a film that would hide half of it.
    bool isScatteringSeen(const std::vector<std::size_t>& samples) const {
        constexpr double dark = 10;
        constexpr double hiding = 0.5;
        for (const std::size_t at : samples)
            for (const ReadingOver& over : m_samples[at].over) {
                if (xyzOf(over.backing, ViewingLight::D50).y < dark)
                    return true;
                const Bands overBlack =
                    measuredOf(filmOver(Bands{}, mixedOf(m_samples[at].shares, m_made.optics),
                                        m_samples[at].filmWeight_gm2),
                               m_made.surface);
                if (xyzOf(overBlack, ViewingLight::D50).y >
                    hiding * xyzOf(over.film, ViewingLight::D50).y)
                    return true;
            }
        return false;
    }

    void compare(std::size_t at, std::vector<double>& off_dE00) const {
        const DrawdownSample& sample = m_samples[at];
        const InkOptics ink = mixedOf(sample.shares, m_made.optics);
        for (const ReadingOver& over : sample.over) {
            const Bands predicted = measuredOf(
                filmOver(insideOf(over.backing, m_made.surface), ink, sample.filmWeight_gm2),
                m_made.surface);
            off_dE00.push_back(
                deltaE00(labOf(predicted, ViewingLight::D50), labOf(over.film, ViewingLight::D50)));
        }
    }

    static PredictionCheck checkOf(const std::vector<double>& off_dE00) {
        PredictionCheck check;
        check.readings = off_dE00.size();
        for (const double off : off_dE00) {
            check.mean_dE00 += off / static_cast<double>(off_dE00.size());
            check.most_dE00 = std::max(check.most_dE00, off);
        }
        return check;
    }

    void checkLeftOut(LotOptics& found) {
        InkOptics& inForce = m_made.optics[static_cast<std::size_t>(found.lot)];
        std::vector<double> off_dE00;
        for (const std::size_t out : found.samples) {
            std::vector<std::size_t> others;
            std::size_t readings = 0;
            for (const std::size_t sample : found.samples)
                if (sample != out) {
                    others.push_back(sample);
                    readings += m_samples[sample].over.size();
                }
            // With one reading left, S would be assumed, which is another model.
            if (readings < 2)
                continue;
            inForce = fitted(found.lot, others);
            std::vector<double> its_dE00;
            compare(out, its_dE00);
            found.leftOutOf.push_back(
                {out, shareOf(m_samples[out].shares, found.lot) * m_samples[out].filmWeight_gm2,
                 checkOf(its_dE00).mean_dE00, rootMeanSquare(its_dE00),
                 rootMeanSquare(effectsIn(m_samples[out], found.lot))});
            off_dE00.insert(off_dE00.end(), its_dE00.begin(), its_dE00.end());
        }
        inForce = found.optics;
        if (!off_dE00.empty())
            found.leftOut = checkOf(off_dE00);
    }

    // How far the lot moves the colour of each film that was read, beside the rest of it alone.
    std::vector<double> effectsIn(const DrawdownSample& sample, int lot) const {
        std::vector<double> effects;
        for (const ReadingOver& over : sample.over) {
            const Bands without = measuredOf(filmOver(insideOf(over.backing, m_made.surface),
                                                      restOf(sample, lot), sample.filmWeight_gm2),
                                             m_made.surface);
            effects.push_back(
                deltaE00(labOf(without, ViewingLight::D50), labOf(over.film, ViewingLight::D50)));
        }
        return effects;
    }

    void checkMixes() {
        for (std::size_t i = 0; i < m_samples.size(); ++i) {
            const std::vector<LotShare>& shares = m_samples[i].shares;
            const bool allKnown =
                std::all_of(shares.begin(), shares.end(), [&](const LotShare& part) {
                    return m_isKnown[static_cast<std::size_t>(part.lot)];
                });
            const auto inks =
                std::count_if(shares.begin(), shares.end(), [&](const LotShare& part) {
                    return part.share > 0 &&
                           m_kinds[static_cast<std::size_t>(part.lot)] == LotKind::ink;
                });
            if (!allKnown || inks < 2)
                continue;
            std::vector<double> off_dE00;
            compare(i, off_dE00);
            const ReadingOver& over = m_samples[i].over[lightestOf(m_samples[i])];
            const double effect = deltaE00(labOf(over.backing, ViewingLight::D50),
                                           labOf(over.film, ViewingLight::D50));
            m_made.mixes.push_back({i, checkOf(off_dE00), effect});
        }
        double sum = 0;
        for (const MixCheck& mix : m_made.mixes)
            sum += std::pow(mix.check.mean_dE00 / std::max(mix.effect_dE00, leastEffect_dE00), 2);
        if (!m_made.mixes.empty())
            m_made.mixRelativeError = std::sqrt(sum / static_cast<double>(m_made.mixes.size()));
    }

    const std::vector<DrawdownSample>& m_samples;
    const std::vector<LotKind>& m_kinds;
    std::vector<bool> m_isKnown;
    Characterisation m_made;
};

}  // namespace

std::optional<double> LotOptics::relativeError() const {
    if (leftOutOf.empty())
        return std::nullopt;
    double errors = 0;
    double effects = 0;
    for (const LeftOutDrawdown& one : leftOutOf) {
        errors += one.error_dE00 * one.error_dE00;
        effects += one.effect_dE00 * one.effect_dE00;
    }
    return std::sqrt(errors / std::max(effects, leastEffect_dE00 * leastEffect_dE00));
}

const LotOptics* Characterisation::of(int lot) const {
    const auto found = std::find_if(lots.begin(), lots.end(),
                                    [&](const LotOptics& known) { return known.lot == lot; });
    return found == lots.end() ? nullptr : &*found;
}

Characterisation characterise(const std::vector<DrawdownSample>& samples,
                              const std::vector<LotKind>& lotKinds, const FilmSurface& surface) {
    for (const DrawdownSample& sample : samples)
        requireUsable(sample, lotKinds.size());
    std::vector<DrawdownSample> once = samples;
    for (DrawdownSample& sample : once) {
        sample.shares = merged(sample.shares);
        sample.over = meansOver(sample.over);
    }
    return Learning(once, lotKinds, surface).run();
}

}  // namespace rackbook
