// Faults of records that a command line made, told by what the person wrote.
#pragma once

#include <vector>

#include "base/Finding.h"
#include "cli/Arguments.h"
#include "records/RecordKind.h"

namespace rackbook {

// In place of the path inside a record: the option or argument that the field was given by
// ("--mass", "MASS"), the field as it was written for rackbook enter, else the field in plain
// words. The record is named where it is of another kind than `kind`, or was not made up by the
// verb.
std::vector<Finding> namedByOptions(std::vector<Finding> findings, const Arguments& arguments,
                                    RecordKind kind);

}  // namespace rackbook
