// What a guarded process answered, read as what it is: as little to be trusted as the file.
#pragma once

#include <string>
#include <vector>

#include "pdf/CarriedFiles.h"
#include "pdf/FormValues.h"

namespace rackbook {

// Of an answer without its first word (see CarriedFilesAnswer.h, FormValuesParser.h). `path` is for
// messages. Throw InputError where the answer is cut short, or says what no file may say.
CarriedFiles carriedFilesIn(const std::string& answer, const std::string& path);
std::vector<FormValue> formValuesIn(const std::string& answer, const std::string& path);

}  // namespace rackbook
