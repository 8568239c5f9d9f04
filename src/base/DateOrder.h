// Which way round a date is written.
#pragma once

namespace rackbook {

// Nothing in a date tells day.month from month/day for certain, so that whoever wrote it says it.
enum class DateOrder { yearMonthDay, dayMonthYear, monthDayYear };

}  // namespace rackbook
