#include "calc/ColourDecay.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <set>
#include <string>

#include "base/Error.h"
#include "base/Numbers.h"
#include "calc/Minimum.h"

namespace rackbook {

namespace {

constexpr double within = 0.9;             // the chance of the interval
constexpr double normalReach = 1.6448536;  // of the standard normal distribution, for the same
constexpr double infinite = std::numeric_limits<double>::infinity();

bool isNumber(double value) {
    return value >= 0 && value <= 1e9;
}

void requireUsable(const DecayQuestion& question) {
    for (std::size_t i = 0; i < question.points.size(); ++i) {
        const DecayPoint& point = question.points[i];
        if (!isNumber(point.dose_sunnyDays) || !isNumber(point.fromFinal_dE00))
            throw InputError("reading " + std::to_string(i + 1),
                             "it is " + formatShortest(point.fromFinal_dE00) +
                                 " from the final colour after " +
                                 formatShortest(point.dose_sunnyDays) + " sunny days",
                             "Give two numbers of 0 or more, at most a thousand million.");
    }
    if (!isNumber(question.wanted_dE00) || question.wanted_dE00 == 0)
        throw InputError("wanted difference", "it is " + formatShortest(question.wanted_dE00),
                         "Give one above 0.");
    if (!isNumber(question.noiseFloor_dE00))
        throw InputError("noise of readings", "it is " + formatShortest(question.noiseFloor_dE00),
                         "Give a difference of 0 or more.");
}

// The chance that Student's t with so many degrees of freedom is between −t and t: Abramowitz,
// Stegun 1964, 26.7.3 and 26.7.4.
double studentWithin(double t, std::size_t freedom) {
    const double angle = std::atan(t / std::sqrt(static_cast<double>(freedom)));
    const double cosine = std::cos(angle);
    const bool isOdd = freedom % 2 == 1;
    double term = isOdd ? cosine : 1;
    double sum = 0;
    for (std::size_t k = isOdd ? 1 : 0; k + 2 <= freedom; k += 2) {
        sum += term;
        const auto power = static_cast<double>(k);
        term *= cosine * cosine * (power + 1) / (power + 2);
    }
    sum *= std::sin(angle);
    return isOdd ? (angle + sum) * 2 / 3.14159265358979323846 : sum;
}

double studentReach(std::size_t freedom) {
    double low = 0;
    double high = 10;
    for (int i = 0; i < 60; ++i) {
        const double middle = 0.5 * (low + high);
        (studentWithin(middle, freedom) < within ? low : high) = middle;
    }
    return high;
}

double squared(double value) {
    return value * value;
}

// By the golden section.
template <class Value>
double leastBetween(const Value& value, double low, double high) {
    constexpr double golden = 0.6180339887498949;
    constexpr int rounds = 28;
    for (int i = 0; i < rounds; ++i) {
        const double part = golden * (high - low);
        if (value(high - part) < value(low + part))
            high = low + part;
        else
            low = high - part;
    }
    return value(0.5 * (low + high));
}

class Fit {
public:
    explicit Fit(const DecayQuestion& question) : m_question(question) {
        std::set<double> doses;
        for (const DecayPoint& point : question.points) {
            doses.insert(point.dose_sunnyDays);
            m_mean_dE00 += point.fromFinal_dE00 / static_cast<double>(question.points.size());
            m_most_dE00 = std::max(m_most_dE00, point.fromFinal_dE00);
        }
        m_first = *doses.begin();
        m_last = *doses.rbegin();
        double gap = infinite;
        for (auto dose = doses.begin(); std::next(dose) != doses.end(); ++dose)
            gap = std::min(gap, *std::next(dose) - *dose);
        // A fall faster or slower than this is none that the readings could show.
        const double span = std::max(m_last - m_first, 1e-280);
        m_leastScale_log = std::log(std::max(gap / 30, 1e-6 * span));
        m_greatestScale_log = std::log(1e4 * span);
        findBest();
    }

    double startOfBest_dE00() const { return m_atFirst_dE00 * std::exp(m_first / m_scale); }
    double scaleOfBest() const { return m_scale; }
    double missOfBest() const { return m_miss; }
    double enoughOfBest() const {
        return m_first + m_scale * std::log(m_atFirst_dE00 / m_question.wanted_dE00);
    }

    // How many more squares than the best curve's still do.
    double allowance() const {
        const std::size_t freedom = m_question.points.size() - 2;
        const double spread = m_miss / static_cast<double>(freedom);
        const double t = studentReach(freedom);
        const double noise = normalReach * m_question.noiseFloor_dE00;
        const double rounding = 1e-12 * m_most_dE00 * m_most_dE00;
        return std::max({t * t * spread, noise * noise, rounding});
    }

    // Of readings that stay the same.
    double missOfNoFall() const {
        const double level = std::max(m_mean_dE00, floor());
        double sum = 0;
        for (const DecayPoint& point : m_question.points)
            sum += squared(point.fromFinal_dE00 - level);
        return sum;
    }

    // Of the best curve that has come down to what is wanted at the dose.
    double missThrough(double dose) const {
        constexpr int steps = 70;
        const auto at = [&](double scale_log) {
            return missOf(m_question.wanted_dE00, dose, std::exp(scale_log));
        };
        const double step = (m_greatestScale_log - m_leastScale_log) / steps;
        double best_log = m_leastScale_log;
        double least = at(best_log);
        for (int i = 1; i <= steps; ++i) {
            const double scale_log = m_leastScale_log + i * step;
            const double miss = at(scale_log);
            if (miss < least) {
                least = miss;
                best_log = scale_log;
            }
        }
        return std::min(least, leastBetween(at, best_log - step, best_log + step));
    }

    double last() const { return m_last; }

private:
    double floor() const { return m_question.noiseFloor_dE00; }

    // Of the curve that is so far from the final colour at the dose.
    double missOf(double fromFinal_dE00, double dose, double scale) const {
        double sum = 0;
        for (const DecayPoint& point : m_question.points) {
            const double left = fromFinal_dE00 * std::exp((dose - point.dose_sunnyDays) / scale);
            sum += squared(point.fromFinal_dE00 - std::sqrt(left * left + floor() * floor()));
        }
        return sum;
    }

    void findBest() {
        constexpr int tries = 24;
        const double most_log = std::log(m_most_dE00);
        MinimumQuestion search;
        search.value = [this](const std::vector<double>& at) {
            return missOf(std::exp(at[0]), m_first, std::exp(at[1]));
        };
        search.least = {most_log - 12, m_leastScale_log};
        search.greatest = {most_log + 2, m_greatestScale_log};
        search.start = search.least;
        for (int i = 0; i <= tries; ++i)
            for (int j = 0; j <= tries; ++j) {
                const std::vector<double> at = {
                    most_log + 1 - 4.0 * i / tries,
                    std::min(
                        m_greatestScale_log,
                        m_leastScale_log + (m_greatestScale_log - m_leastScale_log) * j / tries)};
                if (search.value(at) < search.value(search.start))
                    search.start = at;
            }
        search.closeEnough = 1e-9;
        search.firstStep = {0.3, 0.3};
        for (int again = 0; again < 4; ++again) {
            search.start = minimumNear(search).at;
            search.firstStep = {0.01, 0.01};
        }
        m_atFirst_dE00 = std::exp(search.start[0]);
        m_scale = std::exp(search.start[1]);
        m_miss = search.value(search.start);
    }

    const DecayQuestion& m_question;
    double m_mean_dE00 = 0;
    double m_most_dE00 = 0;
    double m_first = 0;  // dose
    double m_last = 0;   // dose
    double m_leastScale_log = 0;
    double m_greatestScale_log = 0;
    double m_atFirst_dE00 = 0;
    double m_scale = 1;
    double m_miss = 0;
};

// Where between a dose that does and one that does not the line lies.
double edgeBetween(const Fit& fit, double inside, double outside, double most) {
    for (int i = 0; i < 34; ++i) {
        const double middle = 0.5 * (inside + outside);
        (fit.missThrough(middle) <= most ? inside : outside) = middle;
    }
    return inside;
}

// Pre: the best dose is above 0, and the readings fall.
Estimate enoughBy(const Fit& fit) {
    const double most = fit.missOfBest() + fit.allowance();
    Estimate enough;
    enough.best = fit.enoughOfBest();
    enough.low = fit.missThrough(0) <= most ? 0 : edgeBetween(fit, enough.best, 0, most);
    // There is an end to it, as readings that stay the same would not do; the search for it has
    // one too.
    constexpr double farthest = 1e5;  // times the last reading's dose
    for (double step = 0.1 * enough.best; enough.best + step < farthest * fit.last(); step *= 2)
        if (fit.missThrough(enough.best + step) > most) {
            enough.high = edgeBetween(fit, enough.best, enough.best + step, most);
            break;
        }
    return enough;
}

}  // namespace

ColourDecay colourDecay(const DecayQuestion& question) {
    requireUsable(question);
    const std::vector<DecayPoint>& points = question.points;
    ColourDecay decay;
    decay.points = points.size();
    std::set<double> doses;
    bool isAllBelow = true;
    for (const DecayPoint& point : points) {
        doses.insert(point.dose_sunnyDays);
        isAllBelow = isAllBelow && point.fromFinal_dE00 <= question.wanted_dE00;
    }
    if (doses.size() < 3) {
        decay.answer = DecayAnswer::tooFewDoses;
        return decay;
    }
    if (isAllBelow) {
        decay.answer = DecayAnswer::alreadyBelow;
        return decay;
    }
    const Fit fit(question);
    decay.start_dE00 = fit.startOfBest_dE00();
    decay.scale_sunnyDays = fit.scaleOfBest();
    decay.residualSpread_dE00 =
        std::sqrt(fit.missOfBest() / static_cast<double>(points.size() - 2));
    if (question.wanted_dE00 < question.noiseFloor_dE00)
        decay.answer = DecayAnswer::wantedIsNoise;
    else if (decay.start_dE00 <= question.wanted_dE00)
        decay.answer = DecayAnswer::alreadyBelow;
    else if (fit.missOfNoFall() <= fit.missOfBest() + fit.allowance())
        decay.answer = DecayAnswer::noFall;
    else
        decay.enough_sunnyDays = enoughBy(fit);
    return decay;
}

}  // namespace rackbook
