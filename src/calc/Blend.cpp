#include "calc/Blend.h"

#include <algorithm>

namespace rackbook {

namespace {

void takeFrom(CompensatedSum& sum, double mass_g) {
    sum.add(-mass_g);
    if (sum.value() < 0)
        sum = CompensatedSum(0);
}

double blendOne(double old, double added, double weight) {
    if (old == added)
        return old;
    return weight == 1 ? added : old + weight * (added - old);
}

}  // namespace

void MixTotal::add(const Estimate& mass) {
    m_low.add(mass.low);
    m_best.add(mass.best);
    m_high.add(mass.high);
}

void MixTotal::take(const Estimate& mass) {
    takeFrom(m_low, mass.high);
    takeFrom(m_best, mass.best);
    takeFrom(m_high, mass.low);
}

Estimate weightOf(const Estimate& mass, const Estimate& total) {
    if (total.high <= 0)
        return Estimate::exactly(1);
    Estimate weight;
    weight.low = std::isinf(total.high) ? 0 : mass.low / (total.high + mass.low);
    weight.best = mass.best == 0 ? 0 : mass.best / (total.best + mass.best);
    weight.high = 1;
    if (mass.high <= 0)
        weight.high = 0;
    else if (!std::isinf(mass.high))
        weight.high = mass.high / (total.low + mass.high);
    return weight;
}

Estimate blend(const Estimate& old, const Estimate& added, const Estimate& weight) {
    Estimate share;
    share.low = blendOne(old.low, added.low, added.low < old.low ? weight.high : weight.low);
    share.best = blendOne(old.best, added.best, weight.best);
    share.high = blendOne(old.high, added.high, added.high > old.high ? weight.high : weight.low);
    if (share.isKnown()) {
        // Rounding alone could put the best value outside.
        share.low = std::min(share.low, share.best);
        share.high = std::max(share.high, share.best);
    }
    return share;
}

}  // namespace rackbook
