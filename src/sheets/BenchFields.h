// What is filled in on a bench sheet.
#pragma once

#include <string>
#include <vector>

#include "sheets/FillIn.h"

namespace rackbook {

enum class FieldKind { date, time, number, words, choice, lines, tick };

// Names are words of the records that the sheet becomes: "pull.start" is a field of the pull.
struct BenchField {
    const char* name;  // of impressions its last part only, see benchFieldName()
    FieldKind kind;
    const char* label;  // its key in the template
    int row;            // of boxes, within the section that the label names before its point
    double share;       // of the width of that row
};

// In reading order.
const std::vector<BenchField>& benchFields();

// Those whose label begins with the section, row by row.
std::vector<std::vector<BenchField>> benchRows(const std::string& section);

bool isOfImpressions(const BenchField& field);
// Of the portion that is let down for the run.
bool isOfPortion(const BenchField& field);

// The field of one impression: "sheet.EEL-12.spoiled". A point in the code becomes a hyphen.
std::string benchFieldName(const BenchField& field, const std::string& code, int workingNumber);

// The box to tick where every impression that is listed was printed.
extern const char* const everyPrinted;

// The field that a name belongs to; nothing for a name that is none of a bench sheet.
const BenchField* findBenchField(const std::string& name);

// The field that a place belongs to. Pre: the place is one of a bench sheet.
const BenchField& benchFieldAt(const FieldPlace& place);

}  // namespace rackbook
