// Labels for drawers, boxes and shelves.
#pragma once

#include <string>
#include <vector>

#include "records/Place.h"
#include "sheets/PageModel.h"
#include "sheets/Template.h"
#include "sheets/TextMeasurer.h"

namespace rackbook {

struct DrawerLabelsFacts {
    std::string studio;
    std::vector<Place> places;  // drawers, boxes and shelves
};

TemplateRules drawerLabelsRules();

// One label a place, in their order. Its sections are the lines of a label; "code" is a QR code
// that says "rackbook place ID". `created` as in DocumentInfo. Throws RenderError as labelPages().
// Pre: at least one place; the template was read with drawerLabelsRules().
PageModel drawerLabels(const DrawerLabelsFacts& facts, const SheetTemplate& sheetTemplate,
                       const TextMeasurer& measurer, const std::string& created);

}  // namespace rackbook
