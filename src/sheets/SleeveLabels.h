// Labels for the sleeves and folders that impressions lie in.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/CivilTime.h"
#include "records/RecordSet.h"
#include "sheets/PageModel.h"
#include "sheets/Template.h"
#include "sheets/TextMeasurer.h"

namespace rackbook {

struct SleevePrint {
    std::string id;
    int workingNumber = 0;
    std::string designation;  // empty where none was given yet
};

struct SleeveLabelsFacts {
    std::string studio;
    LengthUnit lengthUnit = LengthUnit::mm;
    Edition edition;
    std::vector<SleevePrint> prints;
};

// A designation given after asOf is left out. Pre: the impressions are of that edition.
SleeveLabelsFacts sleeveLabelsFactsOf(const RecordSet& records, const Edition& edition,
                                      const std::vector<Impression>& impressions, CivilMinute asOf);

TemplateRules sleeveLabelsRules();

// One label an impression, in their order. Its sections are the lines of a label; "code" is a QR
// code that says "rackbook CODE DESIGNATION ID", with #WORKINGNUMBER where there is no designation.
// `created` as in DocumentInfo. Throws RenderError as labelPages().
// Pre: at least one impression; the template was read with sleeveLabelsRules().
PageModel sleeveLabels(const SleeveLabelsFacts& facts, const SheetTemplate& sheetTemplate,
                       const TextMeasurer& measurer, const std::string& created);

}  // namespace rackbook
