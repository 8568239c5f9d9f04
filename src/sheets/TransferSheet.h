// The sheet that goes with impressions from one party to another: consignment note, loan, sale,
// gift, return.
#pragma once

#include <string>

#include "sheets/PageModel.h"
#include "sheets/Template.h"
#include "sheets/TextMeasurer.h"
#include "sheets/TransferFacts.h"

namespace rackbook {

TemplateRules transferSheetRules();

// The sections of the template in its order; care points only where the things come back.
// `created` as in DocumentInfo. Throws RenderError for text that cannot be set.
// Pre: the template was read with transferSheetRules().
PageModel transferSheet(const TransferFacts& facts, const SheetTemplate& sheetTemplate,
                        const TextMeasurer& measurer, const std::string& created);

}  // namespace rackbook
