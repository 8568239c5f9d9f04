// The ink stock: every tin, tube and bottle.
#pragma once

#include <string>

#include "sheets/PageModel.h"
#include "sheets/StockSheetFacts.h"
#include "sheets/Template.h"
#include "sheets/TextMeasurer.h"

namespace rackbook {

TemplateRules stockSheetRules();

// The sections of the template in its order. `created` as in DocumentInfo. Prices and suppliers
// stand on no part of it. Throws RenderError for text that cannot be set.
// Pre: the template was read with stockSheetRules().
PageModel stockSheet(const StockSheetFacts& facts, const SheetTemplate& sheetTemplate,
                     const TextMeasurer& measurer, const std::string& created);

}  // namespace rackbook
