// What a measurement file holds, for reading.
#pragma once

#include "base/Tree.h"
#include "cli/Console.h"
#include "exchange/MeasurementFile.h"
#include "store/BookFile.h"

namespace rackbook {

// A line for each sample, and what goes by its name in the book.
void printSamples(Console& console, const BookFile& book, const std::string& path,
                  const MeasurementFile& file);

// What the reader passed over.
void printNotes(Console& console, const std::vector<Finding>& notes);

// A sentence for each sample whose CIELAB is further than ΔE00 0.5 from its spectrum or its XYZ,
// and one where the light was assumed.
void printDoubts(Console& console, const std::vector<MeasuredSample>& samples);

Tree treeOf(const BookFile& book, const std::string& path, const MeasurementFile& file);

}  // namespace rackbook
