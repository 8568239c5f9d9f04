#include "Script.h"

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <regex>
#include <sstream>
#include <stdexcept>

#include "commands/Run.h"
#include "exchange/RecordCodec.h"
#include "store/Verification.h"

namespace rackbook {

namespace {

constexpr const char* bookName = "studio.rackbook";

void addLine(std::vector<ScriptStep>& steps, const std::string& path, const std::string& line,
             int number) {
    if (line.rfind("#", 0) == 0)
        return;
    if (line.rfind("@ ", 0) == 0) {
        const std::filesystem::path other =
            std::filesystem::path(path).parent_path() / (line.substr(2) + ".txt");
        for (ScriptStep& step : readScript(other.string()))
            steps.push_back(std::move(step));
        return;
    }
    if (line.rfind("$ ", 0) == 0) {
        steps.push_back({number, splitWords(line.substr(2)), {}});
        return;
    }
    if (steps.empty())
        throw std::runtime_error(path + ":" + std::to_string(number) + ": no command before it");
    steps.back().expected += line + "\n";
}

std::string masked(const std::string& text) {
    static const std::regex madeUp(
        "((?:pull|move|look|metering|transfer|attachment|issue)-[0-9]{4}-[0-9]{2}-[0-9]{2}-)[a-z0-"
        "9]{6}");
    // Salted, so another one each time.
    static const std::regex lastHash("(Hash of the last entry: )[0-9a-f]{64}");
    // Of a PDF, whose bytes go with the fonts of the machine.
    static const std::regex fileHash("((?:fileSha256|hash of the file)\\s+)[0-9a-f]{64}");
    // Of what came from a bench sheet, the hash of the record inside it.
    static const std::regex identity("((?:pull|move|portion)-)[0-9a-f]{16}");
    std::string known = text;
    for (const std::regex* changing : {&madeUp, &lastHash, &fileHash, &identity})
        known = std::regex_replace(known, *changing, "$1******");
    return known;
}

std::string withoutEmptyLinesAtEnd(std::string text) {
    while (!text.empty() && text.back() == '\n')
        text.pop_back();
    return text.empty() ? text : text + "\n";
}

}  // namespace

std::vector<ScriptStep> readScript(const std::string& path) {
    std::ifstream file(path);
    if (!file)
        throw std::runtime_error(path + ": cannot be read");
    std::vector<ScriptStep> steps;
    std::string line;
    for (int number = 1; std::getline(file, line); ++number)
        addLine(steps, path, line, number);
    for (ScriptStep& step : steps)
        step.expected = withoutEmptyLinesAtEnd(step.expected);
    return steps;
}

std::vector<std::string> splitWords(const std::string& line) {
    std::vector<std::string> words;
    std::string word;
    bool open = false;
    char quote = 0;
    for (const char c : line) {
        if (quote != 0 ? c == quote : c == '"' || c == '\'') {
            quote = quote != 0 ? char{0} : c;
            open = true;
        } else if (c == ' ' && quote == 0) {
            if (open)
                words.push_back(word);
            word.clear();
            open = false;
        } else {
            word += c;
            open = true;
        }
    }
    if (open)
        words.push_back(word);
    return words;
}

std::string transcriptOf(const std::vector<std::string>& words) {
    std::ostringstream out;
    std::ostringstream err;
    const int code = runProgram({words.begin() + 1, words.end()}, out, err);
    std::string text = withoutEmptyLinesAtEnd(masked(out.str() + err.str()));
    if (code != 0)
        text += "[" + std::to_string(code) + "]\n";
    return text;
}

void runScript(const std::string& name) {
    for (const ScriptStep& step : readScript(std::string(RACKBOOK_SCRIPTS) + "/" + name + ".txt"))
        transcriptOf(step.words);
}

FreshFolder::FreshFolder() : m_before(std::filesystem::current_path().string()) {
    std::string pattern =
        (std::filesystem::temp_directory_path() / "rackbook-commands-XXXXXX").string();
    if (mkdtemp(pattern.data()) == nullptr)
        throw std::runtime_error("no temporary folder can be made");
    m_path = pattern;
    std::filesystem::current_path(m_path);
    setenv("SOURCE_DATE_EPOCH", "1774720800", 1);
    setenv("RACKBOOK_DATA", RACKBOOK_SOURCE, 1);
    setenv("RACKBOOK_BY", "a test", 1);
    setenv("RACKBOOK_LANGUAGE", "en", 1);
    unsetenv("RACKBOOK_BOOK");
}

FreshFolder::~FreshFolder() {
    std::error_code ignored;
    std::filesystem::current_path(m_before, ignored);
    std::filesystem::remove_all(m_path, ignored);
}

std::string stateOfBook() {
    if (!std::filesystem::exists(bookName))
        return {};
    BookOptions options;
    options.path = bookName;
    options.schemaFolder = std::string(RACKBOOK_SOURCE) + "/schema";
    const Verification found = verify(BookFile::openToRead(options), decodeRecord);
    return found.lastHash + (found.findings.empty() ? " sound" : " broken");
}

}  // namespace rackbook
