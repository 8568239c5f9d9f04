// A distribution of two quantities, known by the logarithm of its density alone, as points on a
// grid that follows it.
#pragma once

#include <array>
#include <cstddef>
#include <functional>
#include <vector>

namespace rackbook {

using Pair = std::array<double, 2>;

struct GridQuestion {
    // Natural logarithm of the density, up to a constant; concave in the first quantity wherever
    // the second is held.
    std::function<double(const Pair&)> logDensity;
    // Where the logarithm is finite whatever the second is, and about how far from there to look.
    double first = 0;
    double firstLength = 1;  // above 0
    // Beyond these the second is not sought.
    double leastSecond = 0;
    double greatestSecond = 1;
};

// The grid is laid slice by slice of the second quantity, each as far as the density is above e⁻¹¹
// of the slice's peak, as distributions may be narrow in one slice and wide in the next. Between
// the places where the density is asked for, its logarithm is interpolated. Sums over the points
// are integrals by the rule of trapezoids, which for smooth densities that fall to nothing at the
// ends is far better than its name.
class ChanceGrid {
public:
    ChanceGrid() = default;  // without points
    explicit ChanceGrid(const GridQuestion& question);

    struct Point {
        Pair at{};
        double chance = 0;  // of all points they add up to 1
    };
    const std::vector<Point>& points() const { return m_points; }

    // Where the density is greatest.
    const Pair& peak() const { return m_peak; }

    // The values below which the shares of the chance lie, each 0 … 1, of a smooth function of both
    // quantities that has these finite values at the points. The chance of a point is spread over
    // the values that the function takes around it.
    std::vector<double> quantilesOf(const std::vector<double>& values,
                                    const std::vector<double>& shares) const;

private:
    // The chance of one point, spread evenly over values.
    struct Ramp {
        double from = 0;
        double length = 0;
        double chance = 0;
    };
    std::vector<Ramp> rampsOf(const std::vector<double>& values) const;
    static double chanceBelow(double value, const std::vector<Ramp>& ramps);
    double halfWidthAt(const std::vector<double>& values, std::size_t index) const;

    std::vector<Point> m_points;  // slice by slice
    Pair m_peak{};
};

}  // namespace rackbook
