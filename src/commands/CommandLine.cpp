#include "commands/CommandLine.h"

#include <QProcess>

#include "base/Error.h"
#include "base/Text.h"
#include "cli/Completion.h"

namespace rackbook {

namespace {

bool isPlain(const std::string& word) {
    static const std::string plain =
        "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_./:,=+@%";
    return !word.empty() && word.find_first_not_of(plain) == std::string::npos;
}

}  // namespace

std::string shellLine(const std::string& verb, const std::vector<std::string>& words) {
    std::string line = "rackbook " + verb;
    for (const std::string& word : words)
        line += " " + (isPlain(word) ? word : singleQuoted(word));
    return line;
}

std::vector<std::string> wordsOfLine(const std::string& line) {
    std::vector<std::string> words;
    for (const QString& word : QProcess::splitCommand(QString::fromStdString(line))) {
        words.push_back(word.toStdString());
        if (words.back().front() == '\'')
            throw UsageError(
                "single quotes do not hold words together here (" + excerpt(words.back()) + ")",
                "Use double quotes.");
    }
    return words;
}

std::string lineOf(const std::vector<std::string>& words) {
    std::string line;
    for (const std::string& word : words) {
        std::string written;
        for (const char letter : word)
            written += letter == '"' ? "\"\"\"" : std::string(1, letter);
        line += (line.empty() ? "" : " ") + (isPlain(word) ? word : "\"" + written + "\"");
    }
    return line;
}

}  // namespace rackbook
