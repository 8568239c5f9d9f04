// Words that head columns in old lists, in English and German, and what they mean. Private to
// exchange/.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rackbook {

// A heading without its unit: "Höhe (cm)" is "höhe" and "cm", "Netto g" is "netto" and "g".
struct HeadingWords {
    std::string words;  // to be compared
    std::string unit;
};
HeadingWords headingWordsOf(const std::string& heading);

// The fields that the words can mean, likeliest first: "nr" is designation or workingNumber.
// imageSize and sheetSize stand for height and width in one cell.
std::vector<std::string> fieldsHeaded(const std::string& words);

// What a word of a cell means among `words`, the words of a field; nothing where it is not plain.
std::optional<std::string> wordMeant(const std::string& cell,
                                     const std::vector<std::string>& words);

// Whether the text, as comparedText() gives it, is a unit that tables write beside numbers.
bool isKnownUnit(std::string_view unit);

// What a number in `unit` is multiplied by to be in the unit of the field's name: 10 for cm and
// imageHeight_mm. 1 where nothing is known.
double factorFor(const std::string& unit, const std::string& field);

}  // namespace rackbook
