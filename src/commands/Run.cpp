#include "commands/Run.h"

#include "base/Text.h"
#include "cli/Help.h"
#include "commands/CommandTable.h"
#include "commands/DataFolders.h"

namespace rackbook {

namespace {

ExitCode dispatch(const std::vector<std::string>& words, Console& console) {
    if (words.empty() || words.front() == "--help" || words.front() == "help") {
        if (words.size() > 1)
            console.out() << helpText(commandNamed(words[1]).spec, console.width());
        else
            console.out() << programHelp(commandSpecs(), programVersion, console.width());
        return words.empty() ? ExitCode::usage : ExitCode::success;
    }
    if (words.front() == "--version") {
        console.out() << "rackbook " << programVersion << "\n";
        return ExitCode::success;
    }
    const Command& command = commandNamed(words.front());
    const Arguments arguments = parseArguments(command.spec, {words.begin() + 1, words.end()});
    if (arguments.has("help")) {
        console.out() << helpText(command.spec, console.width());
        return ExitCode::success;
    }
    const DataFolders folders = findDataFolders();
    CommandContext context{arguments, console, folders};
    return command.run(context);
}

// Lines of a message are kept; nothing in it can steer the terminal.
void report(Console& console, const std::string& message) {
    std::size_t at = 0;
    while (at <= message.size()) {
        const std::size_t end = std::min(message.find('\n', at), message.size());
        console.err() << "rackbook: " << printable(message.substr(at, end - at)) << "\n";
        at = end + 1;
    }
}

}  // namespace

int runProgram(const std::vector<std::string>& words, std::ostream& out, std::ostream& err) {
    Console console(out, err);
    ExitCode code = ExitCode::failure;
    try {
        code = dispatch(words, console);
        out.flush();
        if (!out)
            throw StoreError("standard output", "it cannot be written",
                             "The command itself was done, only its report is lost; check the disk "
                             "or the program it is piped to.");
    } catch (const Error& error) {
        report(console, error.what());
        code = error.exitCode();
    } catch (const std::exception& error) {
        report(console, std::string("an unexpected failure: ") + error.what() +
                            ". Please report it with the command you gave.");
        code = ExitCode::failure;
    }
    return static_cast<int>(code);
}

}  // namespace rackbook
