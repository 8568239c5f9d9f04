// Reads the flat history, whole or in part. Private to store/.
#pragma once

#include "records/History.h"
#include "store/HistoryQuery.h"
#include "store/HistoryScope.h"

namespace rackbook {

// Of the impressions that the filter lets through; of all else the rows of the scope, or, without
// one, all. Throws StoreError.
History loadHistory(Database& database, const HistoryFilter& filter, const HistoryScope* scope);

// Without impressions and what happened to them.
History loadInkHistory(Database& database, const HistoryScope* scope);

}  // namespace rackbook
