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
    // Natural logarithm of the density, up to a constant; smooth, with one peak.
    std::function<double(const Pair&)> logDensity;
    Pair peak{};
    Pair usualStep{};  // above 0: some length of the distribution in each direction, however rough
};

// The grid lies along the axes of the distribution as it is around its peak, and reaches as far as
// the density is above e⁻¹¹ of the peak's; between the places where the density is asked for, its
// logarithm is interpolated. Sums over it are integrals by the rule of trapezoids,
// which for smooth densities that fall to nothing at the ends is far better than its name.
class ChanceGrid {
public:
    ChanceGrid() = default;  // without points
    explicit ChanceGrid(const GridQuestion& question);

    struct Point {
        Pair at{};
        double chance = 0;  // of all points they add up to 1
    };
    const std::vector<Point>& points() const { return m_points; }

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

    std::vector<Point> m_points;  // line by line
};

}  // namespace rackbook
