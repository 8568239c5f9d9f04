#include "FaultMatrix.h"

#include <algorithm>
#include <filesystem>
#include <optional>
#include <set>

#include "BookState.h"
#include "Durability.h"
#include "FaultRun.h"
#include "Script.h"
#include "Studio.h"

namespace rackbook::faults {

namespace {

namespace fs = std::filesystem;

// Which faults make sense at which call.
std::vector<std::string> kindsFor(const std::string& call) {
    std::vector<std::string> kinds = {"once", "dead", "killBefore", "killAfter"};
    const std::string what = call.substr(0, call.find(' '));
    if (what != "sync" && what != "rename" && what != "unlink" && what != "rmdir")
        kinds.push_back("full");
    if (what == "write")
        kinds.insert(kinds.end(), {"part", "torn"});
    return kinds;
}

struct Fault {
    std::string kind;
    std::size_t at = 0;
    std::string call;
};

// Copies that restore keeps of what was there are never too many.
std::set<std::string> namesIn(const FolderImage& image) {
    std::set<std::string> names;
    for (const auto& [name, bytes] : image)
        if (name.find(".before-") == std::string::npos)
            names.insert(name);
    return names;
}

std::string listed(const std::set<std::string>& names) {
    std::string text;
    for (const std::string& name : names)
        text += (text.empty() ? "" : " ") + name;
    return text;
}

class CommandMatrix {
public:
    CommandMatrix(const WritingCommand& command, std::size_t bound)
        : m_command(command), m_words(splitWords(command.line)), m_bound(bound) {}

    MatrixCounts run() {
        m_counts.commands = 1;
        prepareStudio(m_command);
        m_image = imageOfFolder();
        m_before = stateOfBook(m_command.book);
        const Run clean = runProgramWith(m_words);
        if (clean.outcome != Outcome::ended || clean.exitCode > 1) {
            complain("without a fault: " + clean.said);
            return m_counts;
        }
        for (const std::string& what : notDurable(clean.calls))
            complain("without a fault: " + what);
        m_after = stateOfBook(m_command.book);
        m_cleanImage = imageOfFolder();
        m_exitCode = clean.exitCode;
        m_counts.calls = clean.calls.size();
        for (const Fault& fault : chosenFaults(clean.calls))
            runCase(fault);
        return m_counts;
    }

private:
    void complain(const std::string& what) {
        m_counts.failures.push_back(m_command.line + "\n    " + what);
    }

    std::vector<Fault> chosenFaults(const std::vector<std::string>& calls) const {
        std::vector<Fault> all;
        for (std::size_t i = 0; i < calls.size(); ++i)
            for (const std::string& kind : kindsFor(calls[i]))
                all.push_back({kind, i + 1, calls[i]});
        if (m_bound == 0 || all.size() <= m_bound)
            return all;
        // Every command begins somewhere else, so that together they see all kinds.
        const std::size_t shift = std::hash<std::string>()(m_command.line) % 97;
        std::vector<Fault> chosen;
        for (std::size_t i = 0; i < m_bound; ++i)
            chosen.push_back(all[(i * all.size() / m_bound + shift) % all.size()]);
        return chosen;
    }

    void runCase(const Fault& fault) {
        restoreFolder(m_image);
        const Run run = runProgramWith(m_words, fault.kind, fault.at);
        ++m_counts.cases;
        const std::size_t before = m_counts.failures.size();
        if (run.outcome == Outcome::hung)
            complain("it hung");
        else if (run.outcome == Outcome::killed)
            ++m_counts.killed;
        else if (run.exitCode == m_exitCode)
            ++m_counts.acknowledged;
        else
            ++m_counts.refused;
        const bool isThere = checkBook(run);
        const bool isMade = checkFiles(run);
        checkNextCommand(isThere, isMade);
        for (std::size_t i = before; i < m_counts.failures.size(); ++i)
            m_counts.failures[i] += "\n    (" + fault.kind + " at call " +
                                    std::to_string(fault.at) + ": " + fault.call +
                                    ")\n    said: " + run.said;
    }

    static bool isAcknowledged(const Run& run, int exitCode) {
        return run.outcome == Outcome::ended && run.exitCode == exitCode;
    }

    // Whether the book is as after the command.
    bool checkBook(const Run& run) {
        const BookState now = stateOfBook(m_command.book);
        if (!now.trouble.empty())
            complain("the book: " + now.trouble);
        if (!m_command.goesBack && !now.beginsLike(m_before))
            complain("the book lost entries that it held before");
        const bool isAsBefore =
            now.entries.size() == m_before.entries.size() && now.isThere == m_before.isThere;
        const bool isAsAfter =
            now.entries.size() == m_after.entries.size() && now.isThere == m_after.isThere;
        if (!isAsBefore && !isAsAfter)
            complain("half of it is in the book: " + std::to_string(now.entries.size()) +
                     " entries, neither " + std::to_string(m_before.entries.size()) + " nor " +
                     std::to_string(m_after.entries.size()));
        if (isAcknowledged(run, m_exitCode) && !isAsAfter)
            complain("what was acknowledged is not in the book");
        const bool saysUnchanged =
            run.outcome == Outcome::ended && run.said.find("is unchanged") != std::string::npos;
        if (saysUnchanged && !isAsBefore)
            complain("it says that the book is unchanged, and it is not");
        return isAsAfter && !isAsBefore;
    }

    // Files other than the book's own: each as before, or as after. Whether all are as after, and
    // there are any.
    bool checkFiles(const Run& run) {
        const FolderImage now = imageOfFolder();
        bool areAsAfter = true;
        bool hasAny = false;
        for (const auto& [name, bytes] : m_cleanImage) {
            const auto old = m_image.find(name);
            const bool isNew = old == m_image.end();
            if (name.rfind(m_command.book, 0) == 0 || (!isNew && old->second == bytes))
                continue;
            hasAny = true;
            const auto found = now.find(name);
            const bool isAsAfter = found != now.end() && found->second == bytes;
            const bool isAsBefore =
                isNew ? found == now.end() : found != now.end() && found->second == old->second;
            if (!isAsAfter && !isAsBefore)
                complain(name + " is neither what it was nor what it was to be");
            areAsAfter = areAsAfter && isAsAfter;
        }
        if (isAcknowledged(run, m_exitCode) && !areAsAfter)
            complain("what was acknowledged is not in its file");
        return hasAny && areAsAfter;
    }

    // Where nothing was done, the same command now does it; else another one works. Both clear
    // what was left lying.
    void checkNextCommand(bool isInBook, bool isInFile) {
        const bool isDone = isInBook || isInFile;
        const std::vector<std::string> other = {"enter",  "party",  "after",
                                                "name=A", "--book", m_command.book};
        const Run again = runProgramWith(isDone ? other : m_words);
        if (again.outcome != Outcome::ended || again.exitCode != (isDone ? 0 : m_exitCode)) {
            complain(std::string(isDone ? "another" : "the same") +
                     " command fails afterwards: " + again.said);
            return;
        }
        const BookState now = stateOfBook(m_command.book);
        if (!now.trouble.empty())
            complain("the book after the next command: " + now.trouble);
        const std::size_t wanted = m_after.entries.size() + (isDone ? 1 : 0);
        if (now.entries.size() != wanted)
            complain("the next command left " + std::to_string(now.entries.size()) +
                     " entries where there should be " + std::to_string(wanted));
        checkNames(isDone);
    }

    // Nothing lies there that would not without the fault; where the command was not given again,
    // what it came to last may be missing, or not yet removed.
    void checkNames(bool isDone) {
        const std::set<std::string> names = namesIn(imageOfFolder());
        std::set<std::string> wanted = namesIn(m_cleanImage);
        const bool isRight = isDone ? std::all_of(names.begin(), names.end(),
                                                  [&](const std::string& name) {
                                                      return wanted.count(name) > 0 ||
                                                             m_image.count(name) > 0 ||
                                                             m_command.mayLeave.count(name) > 0;
                                                  })
                                    : names == wanted;
        if (!isRight)
            complain("it leaves these files: " + listed(names));
    }

    const WritingCommand& m_command;
    std::vector<std::string> m_words;
    std::size_t m_bound;
    FolderImage m_image;
    FolderImage m_cleanImage;
    BookState m_before;
    BookState m_after;
    int m_exitCode = 0;
    MatrixCounts m_counts;
};

}  // namespace

void MatrixCounts::add(const MatrixCounts& other) {
    commands += other.commands;
    calls += other.calls;
    cases += other.cases;
    killed += other.killed;
    refused += other.refused;
    acknowledged += other.acknowledged;
    failures.insert(failures.end(), other.failures.begin(), other.failures.end());
}

MatrixCounts runMatrix(const WritingCommand& command, std::size_t bound) {
    const FreshFolder folder;
    return CommandMatrix(command, bound).run();
}

}  // namespace rackbook::faults
