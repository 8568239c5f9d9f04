#include "commands/ReadingsMade.h"

#include <algorithm>

#include "base/Numbers.h"
#include "base/Text.h"
#include "commands/GivenValues.h"
#include "commands/OptionRows.h"
#include "commands/RecordNamed.h"
#include "commands/SampleColour.h"

namespace rackbook {

namespace {

std::string textOfField(const std::string& value) {
    return value;
}

template <class E>
std::string textOfField(E value) {
    return textOf(value);
}

// Sets a field of every sample that does not state it.
template <class T>
void fill(std::vector<ChosenSample>& chosen, std::optional<T> Reading::*field,
          const std::optional<T>& given, const char* option, bool onlyComputed) {
    if (!given)
        return;
    bool isUsed = false;
    for (ChosenSample& one : chosen) {
        Reading& reading = one.sample.reading;
        if (onlyComputed && !reading.labL && !one.sample.xyz)
            continue;
        isUsed = true;
        if (reading.*field && *(reading.*field) != *given)
            throw UsageError("--" + std::string(option) + " says " + textOfField(*given) +
                                 ", and the file says " + excerpt(textOfField(*(reading.*field))) +
                                 " of sample " + excerpt(one.sample.name) + " (line " +
                                 std::to_string(one.sample.line) + ")",
                             "Leave the option out where the file is right.");
        reading.*field = given;
    }
    if (!isUsed)
        throw UsageError("--" + std::string(option) +
                             " is given, and the samples hold spectra "
                             "only",
                         "Leave it out: a spectrum is taken under no illuminant of its own.");
}

template <class E>
std::optional<E> choiceGiven(const CommandContext& context, const char* option) {
    const std::optional<std::string> word = context.arguments.value(option);
    return word ? enumFrom<E>(*word) : std::nullopt;
}

void fillTakenOn(const CommandContext& context, std::vector<ChosenSample>& chosen) {
    const std::optional<EdtfDate> given = dateGiven(context, "taken-on");
    if (!given)
        return;
    for (ChosenSample& one : chosen) {
        std::optional<EdtfDate>& takenOn = one.sample.reading.takenOn;
        if (takenOn && certainlyBefore(*takenOn, *given))
            throw UsageError("--taken-on says " + given->text() + ", and the file was made on " +
                                 takenOn->text() + " (sample " + excerpt(one.sample.name) + ")",
                             "Give a day that is no later.");
        takenOn = given;
    }
}

// Small letters and digits of the words, hyphens for all between them; at most 40 characters.
std::string idFromWords(const std::string& words) {
    std::string id;
    for (const char c : words) {
        const char letter = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        if ((letter >= 'a' && letter <= 'z') || (letter >= '0' && letter <= '9'))
            id += letter;
        else if (!id.empty() && id.back() != '-')
            id += '-';
    }
    constexpr std::size_t longest = 40;
    id.resize(std::min(id.size(), longest));
    while (!id.empty() && id.back() == '-')
        id.pop_back();
    return id.empty() ? "paper" : id;
}

std::string beginningOf(const ReadingTarget& target) {
    const std::string of = target.drawdown     ? target.drawdown->id
                           : target.impression ? target.impression->id
                                               : idFromWords(*target.paper);
    return of + "/reading-";
}

class IdGiver {
public:
    explicit IdGiver(const BookFile& book) : m_book(book), m_known(allOf<Reading>(book)) {}

    void give(Reading& reading, const std::string& beginning) {
        for (const Reading& known : m_known) {
            reading.id = known.id;
            if (sameFacts(Record(reading), Record(known)))
                return;
        }
        long long highest = 0;
        for (const Reading& known : m_known)
            if (known.id.rfind(beginning, 0) == 0)
                highest = std::max(highest, numberBehind(known.id.substr(beginning.size())));
        do
            reading.id = beginning + std::to_string(++highest);
        while (wasStruck(m_book, Reading::kind, reading.id));
        m_known.push_back(reading);
    }

private:
    // Numbers beyond this are part of somebody's own way of naming, not counted on from.
    static long long numberBehind(const std::string& text) {
        constexpr long long most = 1'000'000;
        const long long number = parseWhole(text).value_or(0);
        return number <= most ? number : 0;
    }

    const BookFile& m_book;
    std::vector<Reading> m_known;
};

}  // namespace

std::vector<OptionSpec> conditionOptions() {
    return {
        choiceOption("illuminant", "LIGHT", "What CIELAB or XYZ was computed for.",
                     enumNames<Illuminant>()),
        choiceOption("observer", "ANGLE", "The standard observer it was computed for.",
                     enumNames<Observer>()),
        choiceOption("condition", "M", "Measurement condition of ISO 13655.",
                     enumNames<MeasurementCondition>()),
        choiceOption("backing", "BACKING", "What lay under the samples.", enumNames<Backing>()),
        valueOption("geometry", "WORDS", "The measuring geometry, such as 45:0."),
        valueOption("instrument", "WORDS", "The instrument in words."),
        valueOption("taken-on", "DATE", "When the samples were measured.", "what the file says")};
}

void fillConditions(const CommandContext& context, std::vector<ChosenSample>& chosen) {
    fill(chosen, &Reading::illuminant, choiceGiven<Illuminant>(context, "illuminant"), "illuminant",
         true);
    fill(chosen, &Reading::observer, choiceGiven<Observer>(context, "observer"), "observer", true);
    fill(chosen, &Reading::condition, choiceGiven<MeasurementCondition>(context, "condition"),
         "condition", false);
    fill(chosen, &Reading::backing, choiceGiven<Backing>(context, "backing"), "backing", false);
    fill(chosen, &Reading::geometry, context.arguments.value("geometry"), "geometry", false);
    fill(chosen, &Reading::instrument, context.arguments.value("instrument"), "instrument", false);
    fillTakenOn(context, chosen);
}

std::vector<Reading> readingsMade(const CommandContext& context, const BookFile& book,
                                  const std::vector<ChosenSample>& chosen) {
    const std::optional<std::string> id = context.arguments.value("id");
    if (id && chosen.size() != 1)
        throw UsageError(
            "--id is given, and there are " + std::to_string(chosen.size()) + " samples to record",
            "Give it with one sample only; ids of several are made up.");
    IdGiver ids(book);
    std::vector<Reading> readings;
    for (const ChosenSample& one : chosen) {
        Reading reading = readingWithLab(one.sample);
        reading.drawdown = one.target.drawdown;
        reading.impression = one.target.impression;
        reading.paper = one.target.paper;
        if (id)
            reading.id = *id;
        else
            ids.give(reading, beginningOf(one.target));
        readings.push_back(std::move(reading));
    }
    return readings;
}

}  // namespace rackbook
