#include "commands/Run.h"

#include <algorithm>
#include <iostream>
#include <sstream>

#include "base/Text.h"
#include "cli/HarmlessStream.h"
#include "cli/Help.h"
#include "cli/Pager.h"
#include "commands/CommandTable.h"
#include "commands/DataFolders.h"
#include "commands/Guided.h"
#include "commands/GuidedEntry.h"

namespace rackbook {

namespace {

ExitCode runVerb(const Command& command, const std::vector<std::string>& words,
                 Conversation& conversation) {
    const DataFolders folders = findDataFolders();
    if (conversation.mayTalk() && leavesOpen(command.spec, words))
        return runGuided(command, words, folders, conversation);
    const Arguments arguments = parseArguments(command.spec, words);
    if (arguments.has("help")) {
        conversation.console().out() << helpText(command.spec, conversation.console().width());
        return ExitCode::success;
    }
    CommandContext context{arguments, conversation.console(), folders, conversation};
    return command.run(context);
}

ExitCode dispatch(const std::vector<std::string>& words, Conversation& conversation) {
    Console& console = conversation.console();
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
    return runVerb(commandNamed(words.front()), {words.begin() + 1, words.end()}, conversation);
}

// Help, and verbs that neither write the book nor files: what they print may be shown in pages.
bool onlyReports(const std::vector<std::string>& words) {
    if (std::find(words.begin(), words.end(), "--help") != words.end() || words.empty() ||
        words.front() == "help")
        return true;
    for (const Command& command : commandTable())
        if (command.spec.name == words.front())
            return !command.spec.writesBook && command.spec.reportsJson;
    return false;
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
    const ConsoleTraits traits = consoleTraits(out, err);
    const bool coloursOut = traits.allowsColour && traits.outIsTerminal;
    HarmlessStream harmlessErr(err, traits.allowsColour && traits.errIsTerminal);
    if (traits.outIsTerminal && onlyReports(words)) {
        std::ostringstream report;
        HarmlessStream harmlessReport(report, coloursOut);
        Console console(harmlessReport, harmlessErr, traits);
        Conversation conversation(std::cin, console, false);
        const int code = runProgram(words, conversation);
        showPaged(report.str(), out);
        return code;
    }
    HarmlessStream harmlessOut(out, coloursOut);
    Console console(harmlessOut, harmlessErr, traits);
    Conversation conversation(std::cin, console);
    return runProgram(words, conversation);
}

int runProgram(const std::vector<std::string>& words, Conversation& conversation) {
    Console& console = conversation.console();
    std::ostream& out = console.out();
    ExitCode code = ExitCode::failure;
    try {
        code = dispatch(words, conversation);
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
