// What is filled in on a bench sheet.
#pragma once

#include <string>
#include <vector>

#include "sheets/FillIn.h"

namespace rackbook {

enum class FieldKind { date, time, number, words, tick };

struct BenchField {
    const char* name;  // of its place; those of impressions are followed by ".7", a working number
    FieldKind kind;
    const char* label;  // its key in the template
    int row;            // of boxes, within the section that the label names before its point
    double share;       // of the width of that row
};

// In reading order.
const std::vector<BenchField>& benchFields();

// Those whose label begins with the section, row by row.
std::vector<std::vector<BenchField>> benchRows(const std::string& section);

// The fields of one impression.
std::string benchFieldName(const BenchField& field, int workingNumber);

// The field that a place belongs to. Pre: the place is one of a bench sheet.
const BenchField& benchFieldAt(const FieldPlace& place);

}  // namespace rackbook
