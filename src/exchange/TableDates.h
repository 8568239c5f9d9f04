// Dates as the cells of tables write them.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "exchange/TableNumbers.h"
#include "exchange/WrittenTime.h"

namespace rackbook {

struct DateForm {
    std::optional<DateOrder> order;  // left out: only ISO 8601 and EDTF
    std::optional<int> twoDigitYearsFrom;  // 1950: "50" … "99" are 1950 … 1999, "00" … "49" 2000 …
};

// The date in EDTF. Read are EDTF itself; in the order of the form 4.3.2019, 04/03/19, 4-3-2019 and
// 3.2019, a time of day behind the day; months by their German and English names, as 4. März 2019,
// March 4, 2019 or Mar 2019, with which no order is needed; and before any of them words for about
// (ca., um, about …), behind it a question mark.
CellValue<std::string> dateIn(std::string_view text, const DateForm& form);

// Which orders a date of digits can be read in, such as 13.4.2019 in one and 3.4.2019 in two; none
// where it is none.
std::vector<DateOrder> ordersOf(std::string_view text);

}  // namespace rackbook
