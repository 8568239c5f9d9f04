// Why impressions stand as they do, in sentences of the sheet's language. Private to sheets/.
#pragma once

#include <string>
#include <vector>

#include "sheets/ReadinessFacts.h"
#include "sheets/SheetWords.h"

namespace rackbook {

// What reasonsFor says on the console, worded so that it holds of one impression and of many.
std::vector<std::string> whySentences(const ReadinessRow& row, const ReadinessFacts& facts,
                                      const SheetWords& words);

void addWhyLabels(std::vector<std::string>& keys);

}  // namespace rackbook
