// A bench sheet that came back, and what the book says of that which it lists.
#pragma once

#include <string>
#include <vector>

#include "pdf/FormValues.h"
#include "records/Edition.h"
#include "records/Impression.h"
#include "records/Layer.h"
#include "records/RecordSet.h"
#include "store/BookFile.h"

namespace rackbook {

struct ReturnedSheet {
    std::string path;
    std::string identity;  // of the record inside it, 16 hexadecimal digits
    std::string language;  // of its words
    Edition edition;
    Layer layer;
    std::vector<Impression> listed;  // by working number
    std::vector<FormValue> values;

    int taking = 1;  // from 1; what earlier ones recorded was struck out again

    // Ids of the records that it becomes: "pull-0123456789abcdef", of the second taking
    // "pull-0123456789abcdef-2".
    std::string idOf(RecordKind kind) const;
};

// Throws InputError where the file cannot be read (see FormValues.h), is no bench sheet or one
// whose boxes are gone, was taken already, or was made from something else than the book says now
// of the layer, the impressions and whether they were printed with it.
ReturnedSheet returnedSheet(const std::string& path, const BookFile& book,
                            const RecordSet& records);

}  // namespace rackbook
