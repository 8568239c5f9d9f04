#include "commands/DayTalk.h"

#include <algorithm>
#include <sstream>

#include "base/Text.h"
#include "base/Translated.h"
#include "cli/Interrupts.h"
#include "cli/Wrap.h"
#include "commands/BookAccess.h"
#include "commands/Cautions.h"
#include "commands/CommandLine.h"
#include "commands/CommandTable.h"
#include "commands/DayDraft.h"
#include "commands/GuidedEntry.h"
#include "commands/Paragraph.h"
#include "store/JointIntake.h"

namespace rackbook {

namespace {

std::string recordQuestion(std::size_t entries) {
    return entries == 1
               ? translated("day", "Record 1 entry")
               : filledIn(translated("day", "Record %1 entries"), {std::to_string(entries)});
}

std::string recordedWords(std::size_t entries, const std::string& book) {
    return entries == 1 ? filledIn(translated("day", "Recorded 1 entry in %1."), {book})
                        : filledIn(translated("day", "Recorded %1 entries in %2."),
                                   {std::to_string(entries), book});
}

std::string leftOutWords(std::size_t kept) {
    if (kept == 0)
        return translated(
            "day", "That entry was left out; none is kept so far. Ctrl-C again leaves the day.");
    if (kept == 1)
        return translated("day",
                          "That entry was left out; 1 is kept so far. Ctrl-C again leaves the day; "
                          "the draft is kept.");
    return filledIn(translated("day",
                               "That entry was left out; %1 are kept so far. Ctrl-C again leaves "
                               "the day; the draft is kept."),
                    {std::to_string(kept)});
}

class DayTalk {
public:
    explicit DayTalk(CommandContext& context)
        : m_context(context),
          m_conversation(context.conversation),
          m_console(context.console),
          m_draft(bookOptionsOf(context).path) {}

    ExitCode talk() {
        const InterruptsHeld held;
        printWrapped(m_console, translated("caution", inkCaution));
        printWrapped(m_console,
                     translated("day",
                                "Enter takes what stands in brackets, ? says more. Ctrl-C leaves "
                                "out the entry that is being told. Nothing is recorded before the "
                                "end."));
        try {
            takeUpDraft();
            while (askForOne()) {
            }
            return record();
        } catch (const GaveUp&) {
            sayWhatIsKept();
            throw;
        }
    }

private:
    void takeUpDraft() {
        if (m_draft.entries().empty())
            return;
        if (m_draft.wasRecorded(BookFile::openToRead(bookOptionsOf(m_context)))) {
            m_console.out() << "\n"
                            << translated(
                                   "day",
                                   "What was told in an earlier conversation is in the book.")
                            << "\n";
            m_draft.clear();
            return;
        }
        m_console.out() << "\n"
                        << translated("day", "Not recorded yet, from an earlier conversation:")
                        << "\n";
        list();
        if (m_conversation.confirm(translated("day", "Go on with them")))
            return;
        if (!m_conversation.confirm(translated("day", "Throw them away"), false))
            throw GaveUp();
        m_draft.clear();
    }

    void list() const {
        for (const EntryWords& entry : m_draft.entries())
            m_console.out() << "  " << printable(lineOf(entry)) << "\n";
    }

    std::optional<std::string> whatHappened() {
        Question question;
        question.text = m_draft.entries().empty()
                            ? translated("day", "What happened")
                            : translated("day", "What else happened, or Enter where that is all");
        question.help = translated(
            "day",
            "One of the verbs below. The word drop takes back the entry told last; Enter alone "
            "ends the day.");
        for (const char* verb : {"pull", "weigh", "hang", "look", "move"})
            question.choices.push_back(
                {verb, translated("summary", commandNamed(verb).spec.summary)});
        for (const Command& command : commandTable()) {
            const bool isThere =
                std::any_of(question.choices.begin(), question.choices.end(),
                            [&](const Choice& one) { return one.value == command.spec.name; });
            if (isEntryVerb(command.spec) && !isThere)
                question.choices.push_back(
                    {command.spec.name, translated("summary", command.spec.summary)});
        }
        question.isOptional = true;
        question.check = [](const std::string& answer) {
            if (answer != "drop")
                entryVerb({answer});
        };
        return m_conversation.ask(question);
    }

    // A copy of the book with all that was told so far.
    const BookFile& bookSoFar() {
        if (!m_book) {
            m_book = BookFile::openToTry(bookOptionsOf(m_context));
            for (const EntryWords& entry : m_draft.entries())
                quietly(*m_book, entry);
        }
        return *m_book;
    }

    void quietly(const BookFile& book, const EntryWords& entry) {
        std::ostringstream unread;
        Console console(unread, unread);
        runEntry(m_context, book, entry, console);
    }

    // False where there is nothing more.
    bool askForOne() {
        m_console.out() << "\n";
        const std::optional<std::string> verb = whatHappened();
        if (!verb)
            return false;
        if (*verb == "drop") {
            dropLast();
            return true;
        }
        try {
            tell(commandNamed(*verb).spec);
        } catch (const Interrupted&) {
            leftOut();
        }
        return true;
    }

    void leftOut() { printParagraph(m_console, leftOutWords(m_draft.entries().size())); }

    void sayWhatIsKept() {
        if (!m_draft.entries().empty())
            printParagraph(
                m_console,
                filledIn(
                    translated("day",
                               "What was told before is kept: %1. rackbook day goes on with it."),
                    {m_draft.path()}));
    }

    void dropLast() {
        if (m_draft.entries().empty()) {
            m_console.out() << "  " << translated("day", "There is none to take back.") << "\n";
            return;
        }
        m_console.out() << "  "
                        << filledIn(translated("day", "Taken back: %1"),
                                    {printable(lineOf(m_draft.entries().back()))})
                        << "\n";
        m_draft.removeLast();
        m_book.reset();
    }

    void tell(const CommandSpec& spec) {
        const BookFile& book = bookSoFar();
        GuidedEntry entry(spec, {}, book, m_context.folders, m_conversation);
        const auto whole = [&](const std::vector<std::string>& words) {
            EntryWords all = {spec.name};
            all.insert(all.end(), words.begin(), words.end());
            return all;
        };
        const bool isSettled = entry.settle([&](const std::vector<std::string>& words) {
            const JointIntake trial(book);
            quietly(book, whole(words));
        });
        if (!isSettled) {
            m_console.out() << "  " << translated("day", "That entry was given up.") << "\n";
            return;
        }
        m_draft.add(whole(entry.words()));
        quietly(book, m_draft.entries().back());
    }

    ExitCode record() {
        if (m_draft.entries().empty()) {
            m_console.out() << "\n" << translated("day", "Nothing was recorded.") << "\n";
            return ExitCode::success;
        }
        const BookFile book = bookToWrite(m_context);
        JointIntake together(book);
        for (const EntryWords& entry : m_draft.entries()) {
            m_console.out() << "\n" << m_console.emphasis(printable(lineOf(entry))) << "\n";
            runEntry(m_context, book, entry, m_console);
        }
        if (m_context.arguments.has("dry-run")) {
            m_console.out() << "\n"
                            << translated("day", "Tried only: nothing was recorded.") << "\n";
            return ExitCode::success;
        }
        m_console.out() << "\n";
        if (!m_conversation.confirm(recordQuestion(m_draft.entries().size()))) {
            m_console.out() << translated("day",
                                          "Nothing was recorded; rackbook day offers it again.")
                            << "\n";
            return ExitCode::success;
        }
        m_draft.willEndAt(journalEndOf(book));
        together.keep();
        m_console.out() << recordedWords(m_draft.entries().size(), book.path()) << "\n";
        m_draft.clear();
        return ExitCode::success;
    }

    CommandContext& m_context;
    Conversation& m_conversation;
    Console& m_console;
    DayDraft m_draft;
    std::optional<BookFile> m_book;  // once an entry is told
};

}  // namespace

ExitCode talkOfTheDay(CommandContext& context) {
    return DayTalk(context).talk();
}

}  // namespace rackbook
