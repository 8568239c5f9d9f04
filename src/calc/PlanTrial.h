// A layout weighed out, on paper, and what comes of it. Part of WeighingPlan.
#pragma once

#include <vector>

#include "calc/PlanLayout.h"
#include "calc/ShareAnalysis.h"

namespace rackbook {

// exact: as if the balance showed every mass; the uncertainty of a weighing stays what it is.
enum class Rounding { exact, toReadability };

class PlanTrial {
public:
    // Both must outlive the trial.
    PlanTrial(const Layout& layout, const PlanCase& planCase, Rounding rounding);
    PlanTrial(const PlanTrial&) = delete;
    PlanTrial& operator=(const PlanTrial&) = delete;

    // Every limited share keeps the limit, no mass shows as 0, no stage is larger than allowed.
    bool isWithin() const;
    bool keepsLimit(std::size_t column) const;
    bool showsAsZero(std::size_t stage, std::size_t part) const;

    double uncertainty(std::size_t column) const {
        return m_analysis.uncertainty(column, m_case.u_g);
    }
    const std::vector<WeighedStage>& stages() const { return m_stages; }
    const ShareAnalysis& analysis() const { return m_analysis; }
    double leftOver_g(std::size_t stage) const;
    double waste_g() const;

    // Σ (dX/dm)² u² of a stage, relative to the worst limited share, times the square of the
    // stage's mass: what does not change when only that stage is made larger.
    double weakness(std::size_t stage) const;

private:
    const PlanCase& m_case;
    std::vector<WeighedStage> m_stages;
    ShareAnalysis m_analysis;
};

}  // namespace rackbook
