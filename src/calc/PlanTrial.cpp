#include "calc/PlanTrial.h"

#include <algorithm>
#include <cmath>

namespace rackbook {

namespace {

constexpr double hair = 1e-12;

// Of parts that are equally large a base, where a little more or less shows least.
std::size_t largestPart(const std::vector<LayoutPart>& parts, const PlanCase& planCase) {
    const auto isBase = [&](const LayoutPart& part) {
        return part.constituent >= 0 &&
               planCase.kinds[static_cast<std::size_t>(part.constituent)] == LotKind::base;
    };
    const auto isSmaller = [&](const LayoutPart& a, const LayoutPart& b) {
        const bool isEqual = std::fabs(a.share - b.share) < hair;
        return isEqual ? !isBase(a) && isBase(b) : a.share < b.share;
    };
    return static_cast<std::size_t>(std::max_element(parts.begin(), parts.end(), isSmaller) -
                                    parts.begin());
}

// The largest part takes what rounding the others leaves, so that the total is what was meant.
void weighRounded(const LayoutStage& stage, double total_g, const PlanCase& planCase,
                  WeighedStage& weighed) {
    const BalanceFigures& balance = planCase.balance;
    const std::size_t largest = largestPart(stage.parts, planCase);
    double rest_g = 0;
    for (std::size_t i = 0; i < stage.parts.size(); ++i) {
        if (i == largest)
            continue;
        weighed.parts[i].mass_g = roundedToReadability_g(stage.parts[i].share * total_g, balance);
        rest_g += weighed.parts[i].mass_g;
    }
    weighed.parts[largest].mass_g =
        roundedToReadability_g(std::max(0.0, total_g - rest_g), balance);
    weighed.total_g = roundedToReadability_g(rest_g + weighed.parts[largest].mass_g, balance);
}

void weighExactly(const LayoutStage& stage, double total_g, WeighedStage& weighed) {
    for (std::size_t i = 0; i < stage.parts.size(); ++i)
        weighed.parts[i].mass_g = stage.parts[i].share * total_g;
    weighed.total_g = total_g;
}

std::vector<WeighedStage> weigh(const Layout& layout, const PlanCase& planCase, Rounding rounding) {
    std::vector<WeighedStage> stages(layout.size());
    stages.back().taken_g = planCase.wanted_g;
    for (std::size_t i = layout.size(); i-- > 0;) {
        WeighedStage& weighed = stages[i];
        for (const LayoutPart& part : layout[i].parts)
            weighed.parts.push_back({part.constituent, part.stage, 0});
        const double total_g = std::max(weighed.taken_g, layout[i].least_g);
        if (rounding == Rounding::exact)
            weighExactly(layout[i], total_g, weighed);
        else
            weighRounded(layout[i], raisedToReadability_g(total_g, planCase.balance), planCase,
                         weighed);
        for (const WeighedPart& part : weighed.parts)
            if (part.stage >= 0)
                stages[static_cast<std::size_t>(part.stage)].taken_g += part.mass_g;
    }
    return stages;
}

}  // namespace

PlanTrial::PlanTrial(const Layout& layout, const PlanCase& planCase, Rounding rounding)
    : m_case(planCase),
      m_stages(weigh(layout, planCase, rounding)),
      m_analysis(m_stages, planCase.isInk) {}

bool PlanTrial::keepsLimit(std::size_t column) const {
    const double deviation = std::fabs(m_analysis.share(column) - m_case.recipe[column]);
    return deviation + coverageFactor * uncertainty(column) <=
           m_case.limit * m_case.recipe[column] + hair;
}

bool PlanTrial::showsAsZero(std::size_t stage, std::size_t part) const {
    return m_stages[stage].parts[part].mass_g <= 0;
}

bool PlanTrial::isWithin() const {
    for (std::size_t i = 0; i < m_stages.size(); ++i) {
        if (m_stages[i].total_g > m_case.most_g * (1 + hair) + m_case.balance.readability_g)
            return false;
        for (std::size_t part = 0; part < m_stages[i].parts.size(); ++part)
            if (showsAsZero(i, part))
                return false;
    }
    for (std::size_t column = 0; column < m_case.isLimited.size(); ++column)
        if (m_case.isLimited[column] && !keepsLimit(column))
            return false;
    return true;
}

double PlanTrial::leftOver_g(std::size_t stage) const {
    return std::max(0.0, m_stages[stage].total_g - m_stages[stage].taken_g);
}

double PlanTrial::waste_g() const {
    double sum_g = 0;
    for (std::size_t i = 0; i < m_stages.size(); ++i)
        sum_g += leftOver_g(i);
    return sum_g;
}

double PlanTrial::weakness(std::size_t stage) const {
    double worst = 0;
    for (std::size_t column = 0; column < m_case.isLimited.size(); ++column)
        if (m_case.isLimited[column]) {
            const double relative = m_stages[stage].total_g * m_case.u_g / m_case.recipe[column];
            worst =
                std::max(worst, m_analysis.squaredSensitivity(stage, column) * relative * relative);
        }
    return worst;
}

}  // namespace rackbook
