// What a field of a form looks like. Private to pdf/.
#pragma once

#include <podofo/podofo.h>

#include "pdf/FontsInUse.h"
#include "sheets/PageModel.h"

namespace rackbook {

// The appearance as a dictionary: its normal one, of a tick one for each state.
PoDoFo::PdfDictionary appearanceOf(PoDoFo::PdfMemDocument& document, const FormField& field,
                                   FontsInUse& fonts);

}  // namespace rackbook
