#include "calc/ChanceGrid.h"

#include <algorithm>
#include <cmath>

namespace rackbook {

namespace {

// Where the density has fallen to this, the rest is left out.
constexpr double leastLog = -11;
constexpr int nodes = 25;  // in either direction

class Grid {
public:
    explicit Grid(const GridQuestion& question)
        : m_question(question), m_top(question.logDensity(question.peak)) {
        layAxes();
        reachOut();
    }

    std::vector<ChanceGrid::Point> points() const {
        std::vector<ChanceGrid::Point> points;
        double sum = 0;
        for (int i = 0; i < nodes; ++i)
            for (int j = 0; j < nodes; ++j) {
                const Pair along = {between(0, i, nodes - 1), between(1, j, nodes - 1)};
                const double chance = std::exp(fallAt(along));
                sum += chance;
                points.push_back({placeOf(along), chance});
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

// Of the even spread with the variance that the function has over the cell of a point.
double ChanceGrid::halfWidthAt(const std::vector<double>& values, std::size_t index) const {
    constexpr auto line = static_cast<std::size_t>(nodes);
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
    std::vector<double> halfWidths;
    double least = INFINITY;
    double greatest = -INFINITY;
    for (std::size_t i = 0; i < values.size(); ++i) {
        halfWidths.push_back(halfWidthAt(values, i));
        least = std::min(least, values[i] - halfWidths[i]);
        greatest = std::max(greatest, values[i] + halfWidths[i]);
    }
    const auto chanceBelow = [&](double value) {
        double sum = 0;
        for (std::size_t i = 0; i < values.size(); ++i) {
            const double above = value - (values[i] - halfWidths[i]);
            if (above > 0)
                sum += m_points[i].chance * std::min(1.0, above / (2 * halfWidths[i]));
        }
        return sum;
    };
    std::vector<double> quantiles;
    for (const double share : shares) {
        double low = least;
        double high = greatest;
        for (int i = 0; i < 45; ++i) {
            const double middle = 0.5 * (low + high);
            (chanceBelow(middle) < share ? low : high) = middle;
        }
        quantiles.push_back(0.5 * (low + high));
    }
    return quantiles;
}

}  // namespace rackbook
