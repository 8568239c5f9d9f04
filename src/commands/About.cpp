#include "commands/About.h"

#include "base/Clock.h"
#include "cli/Help.h"
#include "commands/CommandTable.h"

namespace rackbook {

namespace {

ExitCode runManualPage(CommandContext& context) {
    const std::string day = utcText(nowEpoch_s()).substr(0, 10);
    context.console.out() << manualPage(commandSpecs(), programVersion, day);
    return ExitCode::success;
}

ExitCode runCompletion(CommandContext& context) {
    context.console.out() << completionScript(context.arguments.text("shell"), commandSpecs());
    return ExitCode::success;
}

}  // namespace

Command manualPageCommand() {
    CommandSpec spec;
    spec.name = "manual-page";
    spec.group = toTranslate("group", "The program");
    spec.summary = toTranslate("summary", "Print the manual page");
    spec.details = "Prints the source of the manual page, for man or groff.";
    spec.needsBook = false;
    spec.examples = {{"rackbook manual-page > rackbook.1", "Keep it as a file."}};
    return {spec, runManualPage};
}

Command completionCommand() {
    CommandSpec spec;
    spec.name = "completion";
    spec.group = toTranslate("group", "The program");
    spec.summary = toTranslate("summary", "Print a completion script for a shell");
    spec.positionals = {{"shell", "bash, zsh or fish."}};
    spec.needsBook = false;
    spec.examples = {{"rackbook completion bash", "For bash; load it with source."}};
    return {spec, runCompletion};
}

}  // namespace rackbook
