// Scripts of commands with what they are to print, one readable file each.
//
//   # A comment.
//   @ studio                    runs every command of studio.txt first; all must succeed
//   $ rackbook list place       a command; the lines below it are its whole output,
//   ...                         standard output before standard error
//   [2]                         the exit code, where it is not 0
//
// The folder measured/ beside a script's book is tests/commands/measured.
// Beside it lie pictures/ (tests/exchange/pictures), tables/ (tests/exchange/tables) and
// broken-pictures/ (tests/broken/files/pictures).
//
// Words are split at spaces; single and double quotes keep them together. Ids that the program
// makes up are compared with their random end as ******, and so is the hash of the last entry.
#pragma once

#include <string>
#include <vector>

namespace rackbook {

struct ScriptStep {
    int line = 0;  // of the command, from 1
    std::vector<std::string> words;
    std::string expected;  // output, then "[code]\n" where the code is not 0
};

// Throws std::runtime_error for a file that cannot be read or does not begin with a command.
std::vector<ScriptStep> readScript(const std::string& path);

// The words of a line as a shell would split it.
std::vector<std::string> splitWords(const std::string& line);

// Runs a command in this process, in the current folder, and writes down what it printed.
std::string transcriptOf(const std::vector<std::string>& words);

// Runs every command of a script beside the others, whatever they print: "studio".
void runScript(const std::string& name);

// An empty folder of its own that is the current one until the object goes, with the environment
// that makes runs repeatable: 2026-03-28T18:00Z, the source tree's schema and templates.
class FreshFolder {
public:
    FreshFolder();
    ~FreshFolder();
    FreshFolder(const FreshFolder&) = delete;
    FreshFolder& operator=(const FreshFolder&) = delete;

private:
    std::string m_before;
    std::string m_path;
};

// Stands for all that the book in the current folder says: the hash of its last journal entry, and
// whether its tables agree with the journal. Empty where there is no book.
std::string stateOfBook();

}  // namespace rackbook
