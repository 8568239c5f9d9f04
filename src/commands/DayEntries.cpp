#include "commands/DayEntries.h"

#include "base/Text.h"
#include "commands/BookAccess.h"
#include "commands/CommandTable.h"

namespace rackbook {

bool isEntryVerb(const CommandSpec& spec) {
    return spec.group == "At the press" && spec.writesBook && spec.name != "day" &&
           spec.name != "undo";
}

const Command& entryVerb(const EntryWords& words) {
    const Command& command = commandNamed(words.front());
    if (!isEntryVerb(command.spec))
        throw UsageError(command.spec.name + " is no entry of a day",
                         "Give it as a command of its own.");
    return command;
}

void runEntry(const CommandContext& context, const BookFile& book, const EntryWords& words,
              Console& console) {
    const Command& command = entryVerb(words);
    EntryWords given(words.begin() + 1, words.end());
    Arguments arguments = parseArguments(command.spec, given);
    for (const char* ofTheDay : {"book", "dry-run", "wait"})
        if (arguments.has(ofTheDay))
            throw UsageError(command.spec.name + ": --" + ofTheDay +
                                 " belongs to the whole day, not to one entry",
                             "Give it to rackbook day.");
    if (!arguments.has("by")) {
        given.insert(given.begin(), "--by=" + recorderOf(context));
        arguments = parseArguments(command.spec, given);
    }
    CommandContext entry{arguments, console, context.folders, context.conversation, &book};
    command.run(entry);
}

}  // namespace rackbook
