// How a transfer is carried out.
#pragma once

#include "records/Move.h"
#include "records/Transfer.h"

namespace rackbook {

// Why impressions move that were handed over so.
inline MoveWhy moveWhyOf(TransferKind kind) {
    switch (kind) {
        case TransferKind::consignment:
            return MoveWhy::consign;
        case TransferKind::sale:
            return MoveWhy::sell;
        case TransferKind::loan:
            return MoveWhy::lend;
        case TransferKind::gift:
            return MoveWhy::give;
        case TransferKind::giveBack:
            break;
    }
    return MoveWhy::giveBack;
}

}  // namespace rackbook
