// What rackbook colour says about one reading or two.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/Tree.h"
#include "calc/ReadingColour.h"
#include "cli/Console.h"
#include "records/HouseRules.h"
#include "store/BookFile.h"

namespace rackbook {

struct ColourInLight {
    ViewingLight light = ViewingLight::D50;
    ReadingColour colour;
    double density = 0;  // visual
};

struct ReadingFacts {
    Reading reading;
    std::vector<ColourInLight> colours;   // under every light in which it has one; 2° observer
    std::optional<double> typedOff_dE00;  // typed values against the spectrum
    // Of an impression: why the colour may not be its own yet; empty where a look found it true.
    std::string notReturned;
};

struct Difference {
    double asMeasured_dE00 = 0;  // under D50
    std::vector<std::string> unlike;
    // Under another light once the two are made equal under D50; only of two spectra.
    std::vector<std::pair<ViewingLight, double>> metameric_dE00;
};

// Why a reading of an impression may not be its own colour yet: ink that is rich in base turns
// brown while it cures. Empty where the last look before found it true, or it is of no impression.
std::string notReturnedWords(const BookFile& book, const Reading& reading);

// Throws InputError where the spectrum of the reading cannot be used.
ReadingFacts readingFactsOf(const BookFile& book, const Reading& reading);

// Throws InputError where one of the two has no colour under D50.
Difference differenceOf(const ReadingFacts& first, const ReadingFacts& second);

void printReading(Console& console, const ReadingFacts& facts);
void printDifference(Console& console, const ReadingFacts& first, const ReadingFacts& second,
                     const Difference& difference, const HouseRules& rules);

Tree treeOf(const ReadingFacts& facts);
Tree treeOf(const Difference& difference);

}  // namespace rackbook
