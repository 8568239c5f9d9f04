// The lines of a log below its headings. Private to exchange/.
#pragma once

#include <string_view>
#include <vector>

#include "exchange/LogHeading.h"
#include "exchange/LogMoments.h"

namespace rackbook {

// Lines whose time can be read, in the order of the file and without their moments; values are in
// lx or W/m². Everything else that is wrong with the lines is refused.
std::vector<LogLine> logLinesIn(std::string_view text, const LogHeading& heading,
                                const LightLogTerms& terms, LogFindings& findings);

}  // namespace rackbook
