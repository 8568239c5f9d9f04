#include "calc/ShareAnalysis.h"

#include <cmath>

namespace rackbook {

ShareAnalysis::ShareAnalysis(const std::vector<WeighedStage>& stages,
                             const std::vector<bool>& counted)
    : m_stages(stages),
      m_counted(counted),
      m_share(stages.size() * (counted.size() + 1)),
      m_weight(stages.size()) {
    for (std::size_t stage = 0; stage < stages.size(); ++stage) {
        if (stages[stage].total_g <= 0)
            continue;
        double* const row = &m_share[stage * columns()];
        for (const WeighedPart& part : stages[stage].parts)
            for (std::size_t column = 0; column < columns(); ++column)
                row[column] += part.mass_g / stages[stage].total_g * contentOf(part, column);
    }
    m_weight.back() = 1;
    for (std::size_t stage = stages.size(); stage-- > 0;)
        for (const WeighedPart& part : stages[stage].parts)
            if (part.stage >= 0 && stages[stage].total_g > 0)
                m_weight[static_cast<std::size_t>(part.stage)] +=
                    m_weight[stage] * part.mass_g / stages[stage].total_g;
}

double ShareAnalysis::contentOf(const WeighedPart& part, std::size_t column) const {
    if (part.stage >= 0)
        return shareIn(static_cast<std::size_t>(part.stage), column);
    const auto constituent = static_cast<std::size_t>(part.constituent);
    const bool holds = column == jointColumn() ? m_counted[constituent] : column == constituent;
    return holds ? 1 : 0;
}

double ShareAnalysis::sensitivity(std::size_t stage, const WeighedPart& part,
                                  std::size_t column) const {
    const double total_g = m_stages[stage].total_g;
    if (total_g <= 0)
        return 0;
    return m_weight[stage] * (contentOf(part, column) - shareIn(stage, column)) / total_g;
}

double ShareAnalysis::squaredSensitivity(std::size_t stage, std::size_t column) const {
    double sum = 0;
    for (const WeighedPart& part : m_stages[stage].parts) {
        const double derivative = sensitivity(stage, part, column);
        sum += derivative * derivative;
    }
    return sum;
}

double ShareAnalysis::uncertainty(std::size_t column, double u_g) const {
    double sum = 0;
    for (std::size_t stage = 0; stage < m_stages.size(); ++stage)
        sum += squaredSensitivity(stage, column);
    return u_g * std::sqrt(sum);
}

}  // namespace rackbook
