// The colour that a reading stands for, and whether two readings may be compared.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "calc/Colorimetry.h"
#include "records/Reading.h"

namespace rackbook {

struct ReadingColour {
    Lab lab;
    bool isTyped = false;  // as it was typed in; else computed from the spectrum
};

// From the spectrum where there is one. Typed values stand for the light and observer that the
// reading states, D50 and 2° where it states none; under another they say nothing. Throws
// InputError naming the reading where its spectrum cannot be used.
std::optional<ReadingColour> colourOf(const Reading& reading, ViewingLight light,
                                      Observer observer);

// How far the typed values are from those of the spectrum, in ΔE00, under the light and observer
// that the reading states; nothing where it holds only one of the two. Throws as colourOf.
std::optional<double> typedAgainstSpectrum(const Reading& reading);

// What was different when the two were taken: "condition (M0 and M1)", "backing (black and
// white)". What is stated by one of the two only counts as different: "not stated".
std::vector<std::string> unlikeConditions(const Reading& first, const Reading& second);

}  // namespace rackbook
