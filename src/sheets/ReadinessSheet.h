// The readiness report: which impressions may be put away, what to do first, and why.
#pragma once

#include <string>

#include "sheets/PageModel.h"
#include "sheets/ReadinessFacts.h"
#include "sheets/Template.h"
#include "sheets/TextMeasurer.h"

namespace rackbook {

TemplateRules readinessSheetRules();

// The sections of the template in its order. `created` as in DocumentInfo. The reasons are whole
// sentences of calc/Readiness and come in English whatever the template's language.
// Throws RenderError for text that cannot be set.
// Pre: the template was read with readinessSheetRules().
PageModel readinessSheet(const ReadinessFacts& facts, const SheetTemplate& sheetTemplate,
                         const TextMeasurer& measurer, const std::string& created);

}  // namespace rackbook
