// Reading light logs in tests.
#pragma once

#include <string>

#include "exchange/LightLog.h"
#include "support/MessageOf.h"

namespace rackbook::test {

inline LightLogTerms logTerms(LightUnit unit = LightUnit::lux,
                              const LogClock& clock = LogClock::atShift(0)) {
    LightLogTerms terms;
    terms.unit = unit;
    terms.clock = clock;
    return terms;
}

inline LightLogTerms termsOfColumns(const std::string& time, const std::string& value) {
    LightLogTerms terms = logTerms();
    terms.columns = LightLogColumns{time, {}, value};
    return terms;
}

inline LightLog logOf(const std::string& text, const LightLogTerms& terms = logTerms()) {
    return lightLogIn(text, "log", terms);
}

inline std::string refusalOfLog(const std::string& text, const LightLogTerms& terms = logTerms()) {
    return messageOf([&] { lightLogIn(text, "log", terms); });
}

}  // namespace rackbook::test
