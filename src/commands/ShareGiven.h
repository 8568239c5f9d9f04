// Shares as they are typed.
#pragma once

#include <string>

namespace rackbook {

// 0 … 1, from per cent ("95%", "2,5 %") or from a share below 1 ("0.95"). A bare number of 1 or
// more is refused: it may mean either. `label` names it in messages: "--to". Throws UsageError.
double shareGiven(const std::string& text, const std::string& label);

// The same with no upper end, for what is reckoned on top: "150%" or "0.1".
double markupGiven(const std::string& text, const std::string& label);

// A number with a decimal point or a decimal comma, above 0; `remedy` says what to give instead.
double positiveGiven(const std::string& text, const std::string& label, const std::string& remedy);

}  // namespace rackbook
