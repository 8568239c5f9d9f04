// Shares in an ink that was weighed in stages, and how uncertain its weighings make them.
//
// With W_s the share of the product of stage s in the final ink, M_s its mass, x_{s,l} the share of
// constituent l in it and x_{k,l} that in what weighing k adds,
//     dX_l/dm_k = W_s (x_{k,l} − x_{s,l}) / M_s,
//     u²(X_l) = Σ_k (dX_l/dm_k)² u²(m_k)      (JCGM 100:2008, equation 10)
// for weighings that are independent of one another. Of first order: good while the uncertainty of
// each mass is small against the mass. A stage's heap is held to be evenly mixed, and what sticks
// to the knife to have the composition of the rest.
#pragma once

#include <cstddef>
#include <vector>

namespace rackbook {

// Exactly one of constituent and stage is set.
struct WeighedPart {
    int constituent = -1;
    int stage = -1;  // earlier than the one it goes into
    double mass_g = 0;
};

struct WeighedStage {
    std::vector<WeighedPart> parts;
    double total_g = 0;  // the sum of its parts
    double taken_g = 0;  // goes into later stages; of the last stage: what is wanted
};

class ShareAnalysis {
public:
    // counted[i] tells whether constituent i counts to the joint column, which comes after the
    // columns of the constituents. Pre: every total is the sum of its parts; the last is above 0.
    ShareAnalysis(const std::vector<WeighedStage>& stages, const std::vector<bool>& counted);

    std::size_t columns() const { return m_counted.size() + 1; }
    std::size_t jointColumn() const { return m_counted.size(); }

    double share(std::size_t column) const { return shareIn(m_weight.size() - 1, column); }
    double shareIn(std::size_t stage, std::size_t column) const {
        return m_share[stage * columns() + column];
    }
    // Of the product of a stage in the final ink, along all ways.
    double weight(std::size_t stage) const { return m_weight[stage]; }

    // dX/dm, per g.
    double sensitivity(std::size_t stage, const WeighedPart& part, std::size_t column) const;
    // Σ (dX/dm)² over the weighings of one stage, per g².
    double squaredSensitivity(std::size_t stage, std::size_t column) const;
    // Standard uncertainty of a share, where each weighing has that of u_g.
    double uncertainty(std::size_t column, double u_g) const;

private:
    double contentOf(const WeighedPart& part, std::size_t column) const;

    const std::vector<WeighedStage>& m_stages;  // must outlive the analysis
    std::vector<bool> m_counted;
    std::vector<double> m_share;   // stage by stage, columns within
    std::vector<double> m_weight;  // by stage
};

}  // namespace rackbook
