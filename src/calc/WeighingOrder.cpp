#include "calc/WeighingOrder.h"

#include <string>

#include "base/Error.h"
#include "calc/Correction.h"

namespace rackbook {

bool isWeighedBefore(const TurnAndMass& a, const TurnAndMass& b) {
    return a.turn != b.turn ? a.turn < b.turn : a.mass_g < b.mass_g;
}

WeighingTurn turnOf(LotKind kind) {
    switch (kind) {
        case LotKind::drier:
            return WeighingTurn::drier;
        case LotKind::base:
            return WeighingTurn::base;
        case LotKind::ink:
        case LotKind::modifier:
            break;
    }
    return WeighingTurn::colour;
}

RescaledStage rescaled(const PlanStage& stage, const std::vector<double>& weighed_g,
                       const BalanceFigures& balance) {
    if (weighed_g.size() > stage.parts.size())
        throw InputError("stage",
                         std::to_string(weighed_g.size()) + " masses are given for " +
                             std::to_string(stage.parts.size()) + " parts",
                         "Give the masses of the parts that were weighed so far.");
    CorrectionQuestion question;
    for (const PlanPart& part : stage.parts)
        question.shares.push_back(part.mass_g / stage.total_g);
    question.inDish_g = weighed_g;
    question.inDish_g.resize(stage.parts.size());
    question.atLeast_g = stage.total_g;
    const Correction correction = correctionFor(question);
    const WeighedCorrection weighed = weighedOn(balance, question, correction);
    return {correction.total_g / stage.total_g, weighed.add_g, weighed.total_g};
}

}  // namespace rackbook
