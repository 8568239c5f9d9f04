#include "sheets/PublicImpression.h"

#include "records/AsItStood.h"

namespace rackbook {

Impression publicImpression(Impression impression, CivilMinute asOf) {
    impression.holder.reset();
    impression.note.reset();
    standAt(impression, asOf);
    return impression;
}

}  // namespace rackbook
