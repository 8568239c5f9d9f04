#include "commands/PeopleLeftOut.h"

#include "base/Text.h"
#include "cli/Wrap.h"
#include "commands/OptionRows.h"
#include "records/Personal.h"

namespace rackbook {

namespace {

std::string counted(const std::map<std::string, std::size_t>& leftOut, bool isFreeText) {
    std::vector<std::string> words;
    for (const auto& [field, count] : leftOut) {
        const std::size_t dot = field.find('.');
        const RecordKind kind = *enumFrom<RecordKind>(field.substr(0, dot));
        const bool isText = personalMark(kind, field.substr(dot + 1)) == Personal::mayHold;
        if (isText == isFreeText)
            words.push_back(field + " " + std::to_string(count));
    }
    return joined(words);
}

void say(Console& console, const std::string& text) {
    console.err() << wrappedParagraphs("rackbook: " + text, console.width());
}

}  // namespace

OptionSpec withoutPeopleOption() {
    return flagOption(withoutPeopleName,
                      "Leave out or rename everything that names or describes people, and leave "
                      "out every free text.");
}

std::optional<WithoutPeople> withoutPeopleGiven(const CommandContext& context,
                                                const RecordSet& all) {
    if (!context.arguments.has(withoutPeopleName))
        return std::nullopt;
    if (context.arguments.has("with-contacts"))
        throw UsageError("--with-contacts and --without-people contradict each other",
                         "Give one of them.");
    return WithoutPeople(all);
}

void tellLeftOut(Console& console, const WithoutPeople& people) {
    std::vector<std::string> renamed;
    for (const auto& [kind, count] : people.renamed())
        if (count > 0)
            renamed.push_back(std::string(textOf(kind)) + " " + std::to_string(count));
    const std::string facts = counted(people.leftOut(), false);
    const std::string texts = counted(people.leftOut(), true);
    if (!renamed.empty())
        say(console, "called by kind and number instead of by name: " + joined(renamed) + ".");
    if (!facts.empty())
        say(console, "left out as personal: " + facts + ".");
    if (!texts.empty())
        say(console, "left out unread, since nobody can judge what free text says: " + texts + ".");
    say(console,
        "not judged, and written as it stands: titles, names of ink, mixes and blocks, "
        "designations, dates, and ids other than those above. Whoever knows from elsewhere that "
        "someone got a print on a day can still find it. Read it before you pass it on.");
}

}  // namespace rackbook
