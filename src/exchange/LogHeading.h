// Where the headings of a log stand and which columns matter. Private to exchange/.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "exchange/LightLog.h"
#include "exchange/LogFindings.h"

namespace rackbook {

struct LogHeading {
    int line = 0;
    std::size_t offset = 0;  // of the line in the text
    char separator = ',';
    std::vector<std::string> names;
    std::size_t time = 0;  // columns, from 0
    std::optional<std::size_t> date;
    std::size_t value = 0;
};

// As lightLogIn describes it. Throws InputError. A choice is noted.
LogHeading logHeadingIn(std::string_view text, const LightLogTerms& terms, LogFindings& findings);

}  // namespace rackbook
