#include "commands/Suggestions.h"

#include <algorithm>

#include "base/Numbers.h"
#include "base/Ranges.h"
#include "base/Text.h"
#include "commands/AnswerKind.h"
#include "commands/BookAccess.h"
#include "commands/GivenValues.h"
#include "commands/LayerNamed.h"
#include "commands/MassGiven.h"
#include "commands/RecordNamed.h"
#include "commands/SheetSelection.h"

namespace rackbook {

namespace {

std::optional<Edition> editionAnswered(const AnswersSoFar& soFar) {
    const std::optional<std::string> code = soFar.answers.of("edition");
    return code ? std::optional(editionNamed(soFar.book, *code)) : std::nullopt;
}

std::vector<Choice> editions(const AnswersSoFar& soFar) {
    std::vector<Choice> choices;
    for (const Edition& edition : allOf<Edition>(soFar.book))
        choices.push_back({edition.code, edition.title});
    std::reverse(choices.begin(), choices.end());
    return choices;
}

std::vector<Choice> layers(const AnswersSoFar& soFar) {
    const std::optional<Edition> edition = editionAnswered(soFar);
    if (!edition)
        return {};
    std::vector<Choice> choices;
    for (const Layer& layer : layersOf(soFar.book, *edition))
        choices.push_back({std::to_string(layer.ordinal), layer.colourWords});
    return choices;
}

// Those of the edition that was answered, portions alone where a portion is wanted and there are
// any; the newest first.
std::vector<Choice> mixes(const AnswersSoFar& soFar, const std::string& name) {
    const std::optional<Edition> edition = editionAnswered(soFar);
    const bool wantsPortion = name == "portion";
    std::vector<Choice> all;
    std::vector<Choice> portions;
    for (const Mix& mix : allOf<Mix>(soFar.book)) {
        if (mix.finishedOn || (edition && mix.edition && mix.edition->id != edition->id))
            continue;
        all.push_back({mix.id, mix.name});
        if (mix.purpose == MixPurpose::portion)
            portions.push_back(all.back());
    }
    std::vector<Choice>& choices = wantsPortion && !portions.empty() ? portions : all;
    std::reverse(choices.begin(), choices.end());
    return choices;
}

std::vector<Choice> lots(const AnswersSoFar& soFar) {
    std::vector<Choice> choices;
    for (const Lot& lot : allOf<Lot>(soFar.book))
        if (!lot.finishedOn)
            choices.push_back({lot.id, lot.colourWords});
    return choices;
}

std::vector<Choice> blocks(const AnswersSoFar& soFar) {
    const std::optional<Edition> edition = editionAnswered(soFar);
    std::vector<Choice> choices;
    for (const Block& block : allOf<Block>(soFar.book))
        if (!edition || block.edition.id == edition->id)
            choices.push_back({block.id, block.name});
    return choices;
}

template <class R>
std::vector<Choice> byName(const AnswersSoFar& soFar) {
    std::vector<Choice> choices;
    for (const R& record : allOf<R>(soFar.book))
        choices.push_back({record.id, record.name});
    return choices;
}

template <class E>
std::vector<Choice> wordsOf() {
    std::vector<Choice> choices;
    for (const std::string& word : enumNames<E>())
        choices.push_back({word, {}});
    return choices;
}

std::vector<Choice> namedInDescription(const CommandSpec& spec, const std::string& name) {
    std::vector<Choice> choices;
    for (const OptionSpec& option : spec.options)
        if (option.name == name)
            for (const std::string& choice : option.choices)
                choices.push_back({choice, {}});
    return choices;
}

void checkDate(const std::string& answer) {
    try {
        EdtfDate::parse(answer, "the answer");
    } catch (const InputError& error) {
        throw UsageError(error);
    }
}

void checkRange(const AnswersSoFar& soFar, const std::string& answer) {
    const std::optional<Edition> edition = editionAnswered(soFar);
    if (!edition || soFar.spec.name == "impressions")
        parseRanges(answer);
    else
        sheetsNumbered(sheetsOf(soFar.book, *edition), *edition, answer);
}

void checkNumber(const std::string& answer) {
    if (!parseNumber(answer))
        throw UsageError("\"" + excerpt(answer) + "\" is no number",
                         "Write digits, with a point before decimals, such as 21.5.");
}

void checkWord(const std::vector<Choice>& choices, const std::string& answer) {
    std::vector<std::string> known;
    for (const Choice& choice : choices)
        known.push_back(choice.value);
    if (std::count(known.begin(), known.end(), answer) > 0)
        return;
    const std::optional<std::string> nearest = nearestName(answer, known);
    throw UsageError(
        "\"" + excerpt(answer) + "\" is none of these",
        nearest ? "Did you mean " + *nearest + "?" : "It is one of " + joined(known, " or ") + ".");
}

}  // namespace

std::vector<Choice> choicesFor(const AnswersSoFar& soFar, const std::string& name) {
    switch (answerKindOf(soFar.spec, name)) {
        case AnswerKind::edition:
            return editions(soFar);
        case AnswerKind::layer:
            return layers(soFar);
        case AnswerKind::place:
            return byName<Place>(soFar);
        case AnswerKind::mix:
            return mixes(soFar, name);
        case AnswerKind::lot:
            return lots(soFar);
        case AnswerKind::party:
            return byName<Party>(soFar);
        case AnswerKind::balance:
            return byName<Balance>(soFar);
        case AnswerKind::block:
            return blocks(soFar);
        case AnswerKind::recordKind:
            return wordsOf<RecordKind>();
        case AnswerKind::transferKind:
            return wordsOf<TransferKind>();
        case AnswerKind::sky:
            return wordsOf<Sky>();
        default:
            return namedInDescription(soFar.spec, name);
    }
}

void checkAnswer(const AnswersSoFar& soFar, const std::string& name, const std::string& answer) {
    switch (answerKindOf(soFar.spec, name)) {
        case AnswerKind::edition:
            editionNamed(soFar.book, answer);
            break;
        case AnswerKind::layer:
            if (const std::optional<Edition> edition = editionAnswered(soFar))
                layerOf(soFar.book, *edition, answer);
            break;
        case AnswerKind::range:
            checkRange(soFar, answer);
            break;
        case AnswerKind::sheets:
            sheetsNamed(soFar.book, answer);
            break;
        case AnswerKind::place:
            recordNamed<Place>(soFar.book, answer);
            break;
        case AnswerKind::mix:
            recordNamed<Mix>(soFar.book, answer);
            break;
        case AnswerKind::lot:
            recordNamed<Lot>(soFar.book, answer);
            break;
        case AnswerKind::party:
            recordNamed<Party>(soFar.book, answer);
            break;
        case AnswerKind::balance:
            recordNamed<Balance>(soFar.book, answer);
            break;
        case AnswerKind::block:
            recordNamed<Block>(soFar.book, answer);
            break;
        case AnswerKind::moment:
            checkDate(withDay(answer, nowAt(soFar.studio).earliest()));
            break;
        case AnswerKind::date:
            // The sky may be told of a first and a last day.
            if (answer.find('/') == std::string::npos)
                checkDate(answer);
            break;
        case AnswerKind::mass:
            if (answer != "unknown" && answer.find("ml") == std::string::npos)
                massGiven(answer, "the mass", {nullptr, true});
            break;
        case AnswerKind::number:
            checkNumber(answer);
            break;
        case AnswerKind::recordKind:
        case AnswerKind::transferKind:
            checkWord(choicesFor(soFar, name), answer);
            break;
        case AnswerKind::sky:
        case AnswerKind::flag:
        case AnswerKind::text:
            if (const auto words = namedInDescription(soFar.spec, name); !words.empty())
                checkWord(words, answer);
            break;
    }
}

}  // namespace rackbook
