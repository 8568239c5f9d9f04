// The form over the boxes of a bench sheet.
#pragma once

#include <string>
#include <vector>

#include "base/TypedDate.h"
#include "sheets/BenchFacts.h"
#include "sheets/BenchFields.h"
#include "sheets/FillIn.h"
#include "sheets/PageModel.h"
#include "sheets/SheetWords.h"

namespace rackbook {

// As the words write a day with its month in letters.
DateOrder dateOrderOf(const SheetWords& words);

// What is printed beside the box, on one line.
std::string benchFieldLabel(const BenchField& field, const SheetWords& words);

struct BenchFormTerms {
    const SheetWords& words;
    const TextMeasurer& measurer;
    double size_pt = 0;  // of what is filled in
    std::string where;   // for messages
};

// A field for each place, with what goes in and what is usual there. Throws RenderError where that
// cannot be set.
std::vector<FormField> benchForm(const BenchFacts& facts, const std::vector<FieldPlace>& places,
                                 const BenchFormTerms& terms);

}  // namespace rackbook
