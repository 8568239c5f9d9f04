#include "commands/Guided.h"

#include <sstream>

#include "base/Translated.h"
#include "commands/BookAccess.h"
#include "commands/CommandLine.h"
#include "commands/GuidedEntry.h"
#include "commands/Paragraph.h"

namespace rackbook {

namespace {

// The verb with these words, its reports thrown away and nothing kept.
void tryVerb(const Command& command, std::vector<std::string> words, const DataFolders& folders,
             Conversation& conversation) {
    if (!parseArguments(command.spec, words).has("dry-run"))
        words.insert(words.begin(), "--dry-run");
    const Arguments arguments = parseArguments(command.spec, words);
    std::ostringstream unread;
    Console console(unread, unread);
    CommandContext context{arguments, console, folders, conversation};
    command.run(context);
}

// The whole words, once they stand. The book is let go before the verb runs, since a reader would
// keep alive what the verb overwrites.
std::vector<std::string> settledWords(const Command& command, const std::vector<std::string>& words,
                                      const DataFolders& folders, Conversation& conversation) {
    Console& console = conversation.console();
    const Arguments given = parseWhatIsThere(command.spec, words);
    const BookFile book = bookToRead(CommandContext{given, console, folders, conversation});
    if (!command.spec.caution.empty())
        printWrapped(console, translated("caution", command.spec.caution));
    console.out() << translated("conversation",
                                "Enter takes what stands in brackets, ? says more, Ctrl-C records "
                                "nothing.")
                  << "\n";
    GuidedEntry entry(command.spec, words, book, folders, conversation);
    const bool isSettled = entry.settle([&](const std::vector<std::string>& whole) {
        tryVerb(command, whole, folders, conversation);
    });
    if (!isSettled)
        throw GaveUp();
    return entry.words();
}

}  // namespace

ExitCode runGuided(const Command& command, const std::vector<std::string>& words,
                   const DataFolders& folders, Conversation& conversation) {
    Console& console = conversation.console();
    const std::vector<std::string> whole = settledWords(command, words, folders, conversation);
    console.out() << "\n";
    const Arguments arguments = parseArguments(command.spec, whole);
    CommandContext context{arguments, console, folders, conversation};
    const ExitCode code = command.run(context);
    printParagraph(console, filledIn(translated("conversation", "The same without questions: %1"),
                                     {shellLine(command.spec.name, whole)}));
    return code;
}

}  // namespace rackbook
