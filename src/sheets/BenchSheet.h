// The bench sheet: one printing day of one layer, to be filled in by hand at the press.
#pragma once

#include <string>
#include <vector>

#include "sheets/BenchFacts.h"
#include "sheets/FillIn.h"
#include "sheets/PageModel.h"
#include "sheets/Template.h"
#include "sheets/TextMeasurer.h"

namespace rackbook {

struct BenchSheet {
    PageModel model;
    std::vector<FieldPlace> fields;  // of the names in BenchFields.h
};

TemplateRules benchSheetRules();

// The sections of the template in its order. `created` as in DocumentInfo.
// Throws RenderError for text that cannot be set.
// Pre: the template was read with benchSheetRules().
BenchSheet benchSheet(const BenchFacts& facts, const SheetTemplate& sheetTemplate,
                      const TextMeasurer& measurer, const std::string& created);

}  // namespace rackbook
