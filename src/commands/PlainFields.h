// Names of fields and words of records as a person says them: "working number" of workingNumber,
// "mass … g" of mass_g, "let down" of letDown. Record files, rackbook list, show and enter keep the
// names.
#pragma once

#include <string>

#include "records/RecordKind.h"

namespace rackbook {

// Without its unit: "ink before" of inkBefore_g.
std::string plainField(const std::string& name);

// With a space before it: " g" of inkBefore_g; empty where it has none.
std::string unitOfField(const std::string& name);

// Of an enumerator.
std::string plainWord(const std::string& word);

// "3 mixes", "1 pull"
std::string countedKind(RecordKind kind, std::size_t count);

}  // namespace rackbook
