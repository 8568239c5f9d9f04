// Opening the book that the arguments name.
#pragma once

#include <optional>
#include <string>

#include "commands/Command.h"
#include "records/RecordSet.h"
#include "store/BookFile.h"
#include "store/Intake.h"

namespace rackbook {

BookOptions bookOptionsOf(const CommandContext& context);
BookFile bookToRead(const CommandContext& context);
BookFile bookToWrite(const CommandContext& context);

// Who records: --by, else the name the system knows the user by.
// What it is where the system knows no name either.
constexpr const char* nobodyNamed = "not named";
std::string recorderOf(const CommandContext& context);

// Throws UsageError with the nearest kind where there is none of that name.
RecordKind recordKindNamed(const std::string& name);

// The edition of that id or code. Throws UsageError naming the nearest.
Edition editionNamed(const BookFile& book, const std::string& idOrCode);

// The day to judge by: --on where it was given, else today at the studio. The last minute of it.
CivilMinute asOfDay(const CommandContext& context, const Book& studio);

// The studio's wall clock now, to the minute.
EdtfDate nowAt(const Book& studio);

}  // namespace rackbook
