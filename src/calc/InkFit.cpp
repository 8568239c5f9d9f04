#include "calc/InkFit.h"

#include <cmath>
#include <optional>
#include <vector>

#include "calc/Minimum.h"

namespace rackbook {

namespace {

// What stands for nothing on a scale of logarithms, and more than any ink does, in m²/g.
constexpr double least_m2g = 1e-7;
constexpr double greatest_m2g = 30;
// A factor of e away from the usual costs as much as one reading 1e-3 off in its cube root, about
// what instruments repeat to.
constexpr double pullToUsual = 1e-6;

// What is asked of one band; what does not change from trial to trial is reckoned once.
class BandFit {
public:
    BandFit(const std::vector<FilmReading>& readings, const FilmSurface& surface,
            double usualScattering_m2g, std::size_t band)
        : m_readings(readings),
          m_surface(surface),
          m_logUsual(std::log(usualScattering_m2g)),
          m_band(band) {
        for (const FilmReading& reading : readings)
            m_aims.push_back(std::cbrt(measuredOf(reading.film[band], surface)));
    }

    // Sum of squares with the optics exp(…).
    double missAt(double logAbsorption, double logScattering) const {
        const double k = std::exp(logAbsorption);
        const double s = std::exp(logScattering);
        double sum = 0;
        for (std::size_t i = 0; i < m_readings.size(); ++i) {
            const FilmReading& reading = m_readings[i];
            const FilmOptics film{reading.rest.absorption_m2g[m_band] + reading.share * k,
                                  reading.rest.scattering_m2g[m_band] + reading.share * s};
            const double inside = std::min(
                1.0, reflectanceOver(reading.backing[m_band], film, reading.filmWeight_gm2));
            const double off = std::cbrt(measuredOf(inside, m_surface)) - m_aims[i];
            sum += off * off;
        }
        const double fromUsual = logScattering - m_logUsual;
        return sum + pullToUsual * fromUsual * fromUsual;
    }

private:
    const std::vector<FilmReading>& m_readings;
    const FilmSurface& m_surface;
    double m_logUsual;
    std::size_t m_band;
    std::vector<double> m_aims;  // cube roots of the reflectances as measured
};

// Every factor of about 5 is tried, so that the search begins in the right valley.
std::vector<double> roughStart(const BandFit& fit, const std::optional<double>& heldLogScattering) {
    constexpr int tries = 12;
    const double from = std::log(least_m2g);
    const double step = (std::log(greatest_m2g) - from) / tries;
    std::vector<double> best;
    double bestMiss = INFINITY;
    for (int i = 0; i <= tries; ++i)
        for (int j = 0; j <= (heldLogScattering ? 0 : tries); ++j) {
            const double logK = from + i * step;
            const double logS = heldLogScattering.value_or(from + j * step);
            const double miss = fit.missAt(logK, logS);
            if (miss < bestMiss) {
                bestMiss = miss;
                best = {logK, logS};
            }
        }
    return best;
}

FilmOptics fittedAt(const BandFit& fit, const std::optional<double>& heldLogScattering) {
    MinimumQuestion question;
    question.start = roughStart(fit, heldLogScattering);
    question.value = [&](const std::vector<double>& at) {
        return fit.missAt(at[0], heldLogScattering ? *heldLogScattering : at[1]);
    };
    const std::size_t count = heldLogScattering ? 1 : 2;
    question.start.resize(count);
    question.least.assign(count, std::log(least_m2g) - 1);
    question.greatest.assign(count, std::log(greatest_m2g) + 1);
    question.firstStep.assign(count, 0.5);
    const std::vector<double> at = minimumNear(question).at;
    return {std::exp(at[0]), std::exp(heldLogScattering ? *heldLogScattering : at[1])};
}

}  // namespace

InkOptics fittedOptics(const std::vector<FilmReading>& readings, const FilmSurface& surface,
                       double usualScattering_m2g) {
    std::optional<double> held;
    if (readings.size() == 1)
        held = std::log(usualScattering_m2g);
    InkOptics optics;
    for (std::size_t band = 0; band < bandCount; ++band) {
        const FilmOptics found = fittedAt({readings, surface, usualScattering_m2g, band}, held);
        optics.absorption_m2g[band] = found.absorption;
        optics.scattering_m2g[band] = found.scattering;
    }
    return optics;
}

}  // namespace rackbook
