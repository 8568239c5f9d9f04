#include "calc/ChanceGrid.h"

#include <algorithm>
#include <cmath>

#include "calc/DensitySlice.h"
#include "calc/Minimum.h"

namespace rackbook {

namespace {

// Where the density has fallen by this, in logarithms, the rest is left out.
constexpr double mostFall = 11;
constexpr int nodes = 21;  // in either direction, where the density is asked for
constexpr int parts = 3;   // of the way from node to node, between which it is interpolated
constexpr int fineNodes = parts * (nodes - 1) + 1;

// Through four values one step apart, at so many steps after the first (Lagrange).
double cubicThrough(const std::array<double, 4>& values, double at) {
    const double a = at;
    const double b = at - 1;
    const double c = at - 2;
    const double d = at - 3;
    return -b * c * d / 6 * values[0] + a * c * d / 2 * values[1] - a * b * d / 2 * values[2] +
           a * b * c / 6 * values[3];
}

// `lines` lines of nodes become as many of fine nodes, told the other way round: value i of line j
// becomes value j of line i.
std::vector<double> refinedAcross(const std::vector<double>& values, int lines) {
    std::vector<double> fine(static_cast<std::size_t>(fineNodes * lines));
    for (int line = 0; line < lines; ++line)
        for (int i = 0; i < fineNodes; ++i) {
            const int first = std::clamp(i / parts - 1, 0, nodes - 4);
            std::array<double, 4> four{};
            for (int k = 0; k < 4; ++k)
                four[static_cast<std::size_t>(k)] =
                    values[static_cast<std::size_t>(line * nodes + first + k)];
            fine[static_cast<std::size_t>(i * lines + line)] =
                cubicThrough(four, static_cast<double>(i) / parts - first);
        }
    return fine;
}

// One slice of the distribution after the other.
class Slices {
public:
    explicit Slices(const GridQuestion& question)
        : m_question(question),
          m_least(question.leastSecond),
          m_greatest(question.greatestSecond),
          m_last{question.first, 0, question.firstLength} {
        closeIn();
        for (int i = 0; i < nodes; ++i) {
            const double second = secondAt(i, nodes - 1);
            const LogDensity along = densityAlong(second);
            const DensitySlice slice = sliceAt(second);
            const SliceEnds ends = endsOf(along, slice, mostFall);
            m_low.push_back(ends.low);
            m_high.push_back(ends.high);
            for (int j = 0; j < nodes; ++j)
                m_logs.push_back(along(ends.low + (ends.high - ends.low) * j / (nodes - 1)) +
                                 std::log(ends.high - ends.low));
        }
    }

    // The chances by the density times the slice's length, which stands for the points' distance.
    std::vector<ChanceGrid::Point> points() const {
        const std::vector<double> logs = refinedAcross(refinedAcross(m_logs, nodes), fineNodes);
        const std::vector<double> low = refinedAcross(m_low, 1);
        const std::vector<double> high = refinedAcross(m_high, 1);
        const double top = *std::max_element(logs.begin(), logs.end());
        std::vector<ChanceGrid::Point> points;
        points.reserve(logs.size());
        double sum = 0;
        for (std::size_t i = 0; i < low.size(); ++i)
            for (std::size_t j = 0; j < low.size(); ++j) {
                const double first = low[i] + (high[i] - low[i]) * static_cast<double>(j) /
                                                  static_cast<double>(fineNodes - 1);
                const double chance = std::exp(logs[i * low.size() + j] - top);
                points.push_back({{first, secondAt(static_cast<int>(i), fineNodes - 1)}, chance});
                sum += chance;
            }
        for (ChanceGrid::Point& point : points)
            point.chance /= sum;
        return points;
    }

    Pair peak() const {
        MinimumQuestion search;
        search.value = [this](const std::vector<double>& at) {
            return -m_question.logDensity({at[0], at[1]});
        };
        search.least = {*std::min_element(m_low.begin(), m_low.end()), m_least};
        search.greatest = {*std::max_element(m_high.begin(), m_high.end()), m_greatest};
        search.start = {m_highest.peak, m_highestSecond};
        search.firstStep = {m_highest.length, (m_greatest - m_least) / nodes};
        search.closeEnough = 1e-6;
        // The first search may come to rest on a ridge.
        search.start = minimumNear(search).at;
        const std::vector<double> at = minimumNear(search).at;
        return {at[0], at[1]};
    }

private:
    double secondAt(int i, int of) const { return m_least + (m_greatest - m_least) * i / of; }

    LogDensity densityAlong(double second) const {
        return [this, second](double first) { return m_question.logDensity({first, second}); };
    }

    // Begins where the slice before had its peak.
    DensitySlice sliceAt(double second) {
        const LogDensity along = densityAlong(second);
        const bool isFinite = std::isfinite(along(m_last.peak));
        m_last = sliceFrom(along, isFinite ? m_last.peak : m_question.first, m_last.length);
        if (m_last.top > m_highest.top) {
            m_highest = m_last;
            m_highestSecond = second;
        }
        return m_last;
    }

    // Narrows the range of the second quantity to where the slices reach up to the highest one's
    // top, less the fall.
    void closeIn() {
        constexpr int looks = 8;
        constexpr int mostRounds = 40;
        for (int round = 0; round < mostRounds; ++round) {
            std::vector<double> tops;
            for (int i = 0; i <= looks; ++i)
                tops.push_back(sliceAt(secondAt(i, looks)).top);
            const auto isHigh = [&](double top) { return top > m_highest.top - mostFall; };
            const auto from =
                static_cast<int>(std::find_if(tops.begin(), tops.end(), isHigh) - tops.begin());
            const auto to =
                looks -
                static_cast<int>(std::find_if(tops.rbegin(), tops.rend(), isHigh) - tops.rbegin());
            const double least = secondAt(std::max(0, from - 1), looks);
            const double greatest = secondAt(std::min(looks, to + 1), looks);
            // Between two looks, as far as the highest may be narrower than that.
            m_least = std::min(least, m_highestSecond);
            m_greatest = std::max(greatest, m_highestSecond);
            if (to - from + 2 > looks / 2)
                break;
        }
    }

    const GridQuestion& m_question;
    double m_least;
    double m_greatest;
    DensitySlice m_last;
    DensitySlice m_highest{0, -INFINITY, 1};
    double m_highestSecond = 0;
    std::vector<double> m_low;   // ends of the slices
    std::vector<double> m_high;  // ends of the slices
    std::vector<double> m_logs;  // slice by slice
};

}  // namespace

ChanceGrid::ChanceGrid(const GridQuestion& question) {
    Slices slices(question);
    m_points = slices.points();
    m_peak = slices.peak();
}

std::vector<ChanceGrid::Ramp> ChanceGrid::rampsOf(const std::vector<double>& values) const {
    // All of the points below it together hold less than 1e-5 of the chance.
    constexpr double negligible = 1e-9;
    std::vector<Ramp> ramps;
    for (std::size_t i = 0; i < values.size(); ++i)
        if (m_points[i].chance > negligible) {
            const double halfWidth = halfWidthAt(values, i);
            ramps.push_back({values[i] - halfWidth, 2 * halfWidth, m_points[i].chance});
        }
    return ramps;
}

double ChanceGrid::chanceBelow(double value, const std::vector<Ramp>& ramps) {
    double sum = 0;
    for (const Ramp& ramp : ramps) {
        const double above = value - ramp.from;
        if (above > 0)
            sum += above < ramp.length ? ramp.chance * above / ramp.length : ramp.chance;
    }
    return sum;
}

// Of the even spread with the variance that the function has over the cell of a point.
double ChanceGrid::halfWidthAt(const std::vector<double>& values, std::size_t index) const {
    constexpr auto line = static_cast<std::size_t>(fineNodes);
    double squares = 0;
    for (const auto& [place, stride] :
         {std::pair(index / line, line), {index % line, std::size_t{1}}}) {
        const std::size_t before = place > 0 ? index - stride : index;
        const std::size_t after = place + 1 < line ? index + stride : index;
        const double steps = static_cast<double>(after - before) / static_cast<double>(stride);
        squares += std::pow(0.5 * (values[after] - values[before]) / steps, 2);
    }
    return std::sqrt(squares);
}

std::vector<double> ChanceGrid::quantilesOf(const std::vector<double>& values,
                                            const std::vector<double>& shares) const {
    const std::vector<Ramp> ramps = rampsOf(values);
    double least = INFINITY;
    double greatest = -INFINITY;
    for (const Ramp& ramp : ramps) {
        least = std::min(least, ramp.from);
        greatest = std::max(greatest, ramp.from + ramp.length);
    }
    std::vector<double> quantiles;
    for (const double share : shares) {
        double low = least;
        double high = greatest;
        for (int i = 0; i < 36; ++i) {
            const double middle = 0.5 * (low + high);
            (chanceBelow(middle, ramps) < share ? low : high) = middle;
        }
        quantiles.push_back(0.5 * (low + high));
    }
    return quantiles;
}

}  // namespace rackbook
