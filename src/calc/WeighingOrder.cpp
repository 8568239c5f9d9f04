#include "calc/WeighingOrder.h"

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

}  // namespace rackbook
