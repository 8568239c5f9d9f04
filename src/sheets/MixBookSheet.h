// The mix book: an account for each mix.
#pragma once

#include <string>

#include "sheets/MixBookFacts.h"
#include "sheets/PageModel.h"
#include "sheets/Template.h"
#include "sheets/TextMeasurer.h"

namespace rackbook {

TemplateRules mixBookSheetRules();

// The sections of the template in its order. `created` as in DocumentInfo. Throws RenderError for
// text that cannot be set. Pre: the template was read with mixBookSheetRules().
PageModel mixBookSheet(const MixBookFacts& facts, const SheetTemplate& sheetTemplate,
                       const TextMeasurer& measurer, const std::string& created);

}  // namespace rackbook
