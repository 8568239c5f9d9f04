// The ledger of editions: every impression, what became of it, and where it is.
#pragma once

#include <string>

#include "sheets/LedgerFacts.h"
#include "sheets/PageModel.h"
#include "sheets/Template.h"
#include "sheets/TextMeasurer.h"

namespace rackbook {

TemplateRules ledgerSheetRules();

// One edition after the other, each with the sections of the template in its order. `created` as in
// DocumentInfo. Notes and contacts stand on no part of it.
// Throws RenderError for text that cannot be set.
// Pre: the template was read with ledgerSheetRules().
PageModel ledgerSheet(const LedgerFacts& facts, const SheetTemplate& sheetTemplate,
                      const TextMeasurer& measurer, const std::string& created);

}  // namespace rackbook
