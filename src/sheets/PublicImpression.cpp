#include "sheets/PublicImpression.h"

namespace rackbook {

Impression publicImpression(Impression impression, CivilMinute asOf) {
    impression.holder.reset();
    impression.note.reset();
    if (impression.signedOn && impression.signedOn->earliest() > asOf) {
        impression.designation.reset();
        impression.designationKind.reset();
        impression.signedOn.reset();
    }
    if (impression.fateOn && impression.fateOn->earliest() > asOf) {
        impression.fate = ImpressionFate::kept;
        impression.fateOn.reset();
    }
    return impression;
}

}  // namespace rackbook
