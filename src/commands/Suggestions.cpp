#include "commands/Suggestions.h"

#include <algorithm>

#include "base/Numbers.h"
#include "base/Ranges.h"
#include "base/Text.h"
#include "base/Translated.h"
#include "commands/AnswerKind.h"
#include "commands/AnswerLimits.h"
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

// Those of the edition that was answered, the newest first; where a portion is wanted, portions
// alone, else what was let down and may have been printed from as it is.
std::vector<Choice> mixes(const AnswersSoFar& soFar, const std::string& name) {
    const std::optional<Edition> edition = editionAnswered(soFar);
    const bool wantsPortion = name == "portion";
    std::vector<Choice> all;
    std::vector<Choice> portions;
    std::vector<Choice> letDowns;
    for (const Mix& mix : allOf<Mix>(soFar.book)) {
        if (mix.finishedOn || (edition && mix.edition && mix.edition->id != edition->id))
            continue;
        all.push_back({mix.id, mix.name});
        if (mix.purpose == MixPurpose::portion)
            portions.push_back(all.back());
        else if (mix.purpose == MixPurpose::letDown)
            letDowns.push_back(all.back());
    }
    std::vector<Choice>& choices = !wantsPortion ? all : portions.empty() ? letDowns : portions;
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

// What a word of the records means in the language in use; nothing where that is the same.
std::string choiceWords(const std::string& word) {
    const std::string words = translated("choice", word);
    return words == word ? std::string() : words;
}

template <class E>
std::vector<Choice> wordsOf() {
    std::vector<Choice> choices;
    for (const std::string& word : enumNames<E>())
        choices.push_back({word, choiceWords(word)});
    return choices;
}

std::vector<Choice> namedInDescription(const CommandSpec& spec, const std::string& name) {
    std::vector<Choice> choices;
    for (const OptionSpec& option : spec.options)
        if (option.name == name)
            for (const std::string& choice : option.choices)
                choices.push_back({choice, choiceWords(choice)});
    return choices;
}

void checkDate(const std::string& answer, const std::string& time) {
    try {
        EdtfDate::parse(answer);
    } catch (const InputError&) {
        throw UsageError(
            filledIn(translated("mistake", "\"%1\" is no date"), {excerpt(answer)}),
            filledIn(translated("mistake",
                                "Write today, yesterday, 26.11.2026 with the day first, or "
                                "2026-11-26%1; what is badly known as 2026-11, 2026 or 2026~."),
                     {time}));
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
        throw UsageError(
            filledIn(translated("mistake", "\"%1\" is no number"), {excerpt(answer)}),
            translated("mistake", "Write digits, with a point before decimals, such as 21.5."));
}

void checkWord(const std::vector<Choice>& choices, const std::string& answer) {
    std::vector<std::string> known;
    for (const Choice& choice : choices)
        known.push_back(choice.value);
    if (std::count(known.begin(), known.end(), answer) > 0)
        return;
    const std::optional<std::string> nearest = nearestName(answer, known);
    throw UsageError(filledIn(translated("mistake", "\"%1\" is none of these"), {excerpt(answer)}),
                     nearest ? filledIn(translated("mistake", "Did you mean %1?"), {*nearest})
                             : filledIn(translated("mistake", "It is one of %1."),
                                        {joined(known, translated("mistake", " or "))}));
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
            checkDate(withDay(answer, nowAt(soFar.studio).earliest()),
                      translated("mistake",
                                 ", and a time behind it or alone, such as 14:30, 14.30 or 1430"));
            break;
        case AnswerKind::date:
            // The sky may be told of a first and a last day.
            if (answer.find('/') == std::string::npos)
                checkDate(answer, {});
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
    checkLimits(soFar, name, answer);
}

}  // namespace rackbook
