#include "calc/ChanceGrid.h"

#include <algorithm>
#include <cmath>

namespace rackbook {

namespace {

// Where the density has fallen to this, the rest is left out.
constexpr double leastLog = -11;
constexpr int nodes = 25;  // in either direction, where the density is asked for
constexpr int parts = 4;   // of the way from node to node, between which it is interpolated
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

std::vector<double> refined(const std::vector<double>& values) {
    return refinedAcross(refinedAcross(values, nodes), fineNodes);
}

class Grid {
public:
    explicit Grid(const GridQuestion& question)
        : m_question(question), m_top(question.logDensity(question.peak)) {
        layAxes();
        reachOut();
    }

    std::vector<ChanceGrid::Point> points() const {
        std::vector<ChanceGrid::Point> points;
        points.reserve(fineNodes * fineNodes);
        const std::vector<double> falls = refined(fallsAtNodes());
        double sum = 0;
        for (int i = 0; i < fineNodes; ++i)
            for (int j = 0; j < fineNodes; ++j) {
                const double chance = std::exp(falls[static_cast<std::size_t>(i * fineNodes + j)]);
                sum += chance;
                points.push_back(
                    {placeOf({between(0, i, fineNodes - 1), between(1, j, fineNodes - 1)}),
                     chance});
            }
        for (ChanceGrid::Point& point : points)
            point.chance /= sum;
        return points;
    }

private:
    double fallAt(const Pair& along) const { return m_question.logDensity(placeOf(along)) - m_top; }

    Pair placeOf(const Pair& along) const {
        return {m_question.peak[0] + m_first[0] * along[0],
                m_question.peak[1] + m_first[1] * along[0] + m_second * along[1]};
    }

    std::vector<double> fallsAtNodes() const {
        // Cubic curves cannot go on from no density at all.
        constexpr double deepest = -60;
        std::vector<double> falls;
        for (int i = 0; i < nodes; ++i)
            for (int j = 0; j < nodes; ++j)
                falls.push_back(std::max(
                    deepest, fallAt({between(0, i, nodes - 1), between(1, j, nodes - 1)})));
        return falls;
    }

    double between(std::size_t axis, int i, int of) const {
        return m_low[axis] + (m_high[axis] - m_low[axis]) * i / of;
    }

    // The fall of the density's logarithm over the step, as an average over both directions.
    double meanFall(const Pair& step) const {
        const Pair& peak = m_question.peak;
        const double up = m_question.logDensity({peak[0] + step[0], peak[1] + step[1]});
        const double down = m_question.logDensity({peak[0] - step[0], peak[1] - step[1]});
        return m_top - 0.5 * (up + down);
    }

    // A step along one quantity over which the logarithm falls by about 0.5, as it does over the
    // standard deviation of a normal distribution.
    double stepOf(std::size_t quantity) const {
        Pair step{};
        double least = 0;
        double greatest = INFINITY;
        step[quantity] = m_question.usualStep[quantity];
        for (int i = 0; i < 60; ++i) {
            const double fall = meanFall(step);
            if (fall > 0.4 && fall < 0.6)
                break;
            (fall < 0.5 ? least : greatest) = step[quantity];
            step[quantity] = std::isinf(greatest) ? 2 * least : 0.5 * (least + greatest);
        }
        return step[quantity];
    }

    // The axes of the normal distribution with the same curvature: the covariance's root by
    // Cholesky.
    void layAxes() {
        const Pair step = {stepOf(0), stepOf(1)};
        // With both steps the fall is 0.5 + 0.5 + rho, with rho of the inverse covariance.
        constexpr double mostRho = 0.995;
        const double rho = std::clamp(
            meanFall(step) - meanFall({step[0], 0}) - meanFall({0, step[1]}), -mostRho, mostRho);
        const double widened = 1 / std::sqrt(1 - rho * rho);
        m_first = {step[0] * widened, -rho * step[1] * widened};
        m_second = step[1];
    }

    double highestOnSide(std::size_t axis, double end) const {
        constexpr int tries = 12;
        double highest = -INFINITY;
        for (int i = 0; i <= tries; ++i) {
            Pair along{};
            along[axis] = end;
            along[1 - axis] = between(1 - axis, i, tries);
            highest = std::max(highest, fallAt(along));
        }
        return highest;
    }

    // Moves the four sides out until the density is low all along them.
    void reachOut() {
        constexpr int mostRounds = 60;
        bool isMoving = true;
        for (int round = 0; round < mostRounds && isMoving; ++round) {
            isMoving = false;
            for (std::size_t axis = 0; axis < 2; ++axis)
                for (double* end : {&m_low[axis], &m_high[axis]})
                    if (highestOnSide(axis, *end) > leastLog) {
                        *end *= 1.15;
                        isMoving = true;
                    }
        }
    }

    const GridQuestion& m_question;
    double m_top;
    Pair m_first{};
    double m_second = 1;
    Pair m_low = {-3, -3};
    Pair m_high = {3, 3};
};

}  // namespace

ChanceGrid::ChanceGrid(const GridQuestion& question) : m_points(Grid(question).points()) {}

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
