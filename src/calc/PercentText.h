// Shares as messages print them: exactly enough to show what is wrong with them.
#pragma once

#include <string>

namespace rackbook {

// 0.97 gives "97 %"; up to eight decimals, trailing zeros dropped.
std::string percentText(double share);

}  // namespace rackbook
