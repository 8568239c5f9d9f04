#include "commands/GuideSteps.h"

#include <map>

#include "base/Translated.h"
#include "cli/Completion.h"

namespace rackbook {

namespace {

bool wantsOtherSource(const Answers& answers) {
    return !answers.has("lot");
}

bool hasNoSource(const Answers& answers) {
    return !answers.has("lot") && !answers.has("from-mix");
}

bool isStillInHouse(const Answers& answers) {
    return hasNoSource(answers) && !answers.has("withdraw");
}

bool hasInkBefore(const Answers& answers) {
    return answers.has("ink-before");
}

bool hasAPress(const Answers& answers) {
    return answers.has("press");
}

std::string noPortion(const AnswersSoFar& soFar) {
    if (!choicesFor(soFar, "portion").empty())
        return {};
    const std::string edition = soFar.answers.text("edition");
    return filledIn(
        translated(
            "question",
            "No portion of ink is recorded for this edition, so none is asked for; the run is "
            "recorded all the same. For its ink to be in the book another time: %1, then "
            "%2 for each thing that goes into it."),
        {"rackbook enter mix " + edition +
             "-a name=\"Portion a\" purpose=portion edition=" + edition,
         "rackbook weigh " + edition + "-a"});
}

bool mayFallDue(const Answers& answers) {
    return answers.text("kind") == "consignment" || answers.text("kind") == "loan";
}

bool hasAPrice(const Answers& answers) {
    return answers.text("kind") == "consignment" || answers.text("kind") == "sale";
}

bool wantsLuxHours(const Answers& answers) {
    return !answers.has("lux");
}

const std::map<std::string, std::vector<GuideStep>>& guides() {
    static const std::map<std::string, std::vector<GuideStep>> table = {
        {"attach",
         {{"file", toTranslate("question", "Which file")},
          {"edition", toTranslate("question", "Which edition does it show")},
          {"impression", toTranslate("question", "Which impression, such as EEL:7")},
          {"caption", toTranslate("question", "What it shows, in words")},
          {"taken-on", toTranslate("question", "When it was taken")}}},
        {"edition",
         {{"code", toTranslate("question", "A short code for the edition")},
          {"title", toTranslate("question", "The title, as it stands on the prints")},
          {"maker", toTranslate("question", "Who made the image")},
          {"printer", toTranslate("question", "Who prints it")},
          {"year", toTranslate("question", "The year")},
          {"paper", toTranslate("question", "The paper, in words")},
          {"image",
           toTranslate("question", "Height and width of the image in mm, such as 300x200")},
          {"sheet", toTranslate("question", "Height and width of the sheet in mm")},
          {"numbered", toTranslate("question", "How many numbered impressions are declared")},
          {"proofs", toTranslate("question", "Proofs declared beside them, such as AP=3")}}},
        {"enter",
         {{"kind", toTranslate("question", "What kind of record")},
          {"id", toTranslate("question", "Its id: letters, digits and . _ - / only")},
          {"field",
           toTranslate("question", "A field and what it is, such as note=\"seen at noon\"")},
          {"reason",
           toTranslate("question", "Why the book was wrong, where it says otherwise already")}}},
        {"forget",
         {{"party", toTranslate("question", "Who is to be forgotten")},
          {"reason", toTranslate("question", "Why, without the name: the journal keeps it")}}},
        {"hand-over",
         {{"kind", toTranslate("question", "What was agreed")},
          {"sheets", toTranslate("question", "Which sheets, such as EEL:1-12,15")},
          {"to", toTranslate("question", "Who gets them")},
          {"on", toTranslate("question", "When it was agreed")},
          {"due", toTranslate("question", "When it ends"), mayFallDue},
          {"price", toTranslate("question", "The price of all of them together"), hasAPrice},
          {"terms", toTranslate("question", "The terms, in words")},
          {"move-to", toTranslate("question", "Where they went, if they are gone already")}}},
        {"hang",
         {{"sheets", toTranslate("question", "Which sheets, such as EEL:1-12,15")},
          {"place", toTranslate("question", "Where do they hang")},
          {"at", toTranslate("question", "When")},
          {"interleaved",
           toTranslate("question", "Under interleaving, so that no light reaches the face")}}},
        {"impressions",
         {{"edition", toTranslate("question", "Which edition")},
          {"range", toTranslate("question", "Their working numbers, such as 1-24")}}},
        {"layer",
         {{"edition", toTranslate("question", "Which edition")},
          {"ordinal", toTranslate("question", "Its place in the printing order")},
          {"colour", toTranslate("question", "The colour, in words")},
          {"block", toTranslate("question", "Which block it is printed from")},
          {"mix", toTranslate("question", "Which stock mix or let-down it is printed from")},
          {"coverage", toTranslate("question", "The inked share of the image, 0 to 1")},
          {"film-weight", toTranslate("question", "Wet ink aimed at, in g/m²")}}},
        {"look",
         {{"sheets", toTranslate("question", "Which sheets were looked at, such as EEL:4")},
          {"touch", toTranslate("question", "How does the ink feel")},
          {"colour", toTranslate("question", "How does the colour look beside what it should be")},
          {"stands-for", toTranslate("question", "Which other sheets do they speak for")},
          {"at", toTranslate("question", "When")},
          {"note", toTranslate("question", "Anything else worth keeping")}}},
        {"meter",
         {{"place", toTranslate("question", "At which place")},
          {"from", toTranslate("question", "When did it begin, such as 09:30")},
          {"to", toTranslate("question", "When did it end")},
          {"lux", toTranslate("question", "The mean level of light in lux")},
          {"lux-hours", toTranslate("question", "Or the light of all that time, in lux hours"),
           wantsLuxHours},
          {"uv", toTranslate("question", "Near ultraviolet of all that time, in Wh/m²")}}},
        {"move",
         {{"sheets", toTranslate("question", "Which sheets, such as EEL:1-12,15")},
          {"place", toTranslate("question", "Where do they go")},
          {"why", toTranslate("question", "Why")},
          {"at", toTranslate("question", "When")},
          {"interleaved",
           toTranslate("question", "Interleaved or stacked, so that no light reaches the face")}}},
        {"pull",
         {{"edition", toTranslate("question", "Which edition")},
          {"layer", toTranslate("question", "Which layer was printed")},
          {"range", toTranslate("question", "Which sheets were pulled, by working number")},
          {"spoiled", toTranslate("question", "Which of them were spoiled")},
          {"portion", toTranslate("question", "Which portion of ink was it"), nullptr, noPortion},
          {"start", toTranslate("question", "When did it begin")},
          {"end", toTranslate("question", "When was the last sheet off the block")},
          {"hang", toTranslate("question", "Where do the good ones hang now")},
          {"press", toTranslate("question", "On which press, or by hand and with what")},
          {"packing", toTranslate("question", "What lay behind the sheet, as packing"), hasAPress},
          {"printer", toTranslate("question", "Who printed")},
          {"temperature", toTranslate("question", "Temperature of the room in degrees Celsius")},
          {"humidity", toTranslate("question", "Relative humidity of the room in percent")},
          {"ink-before", toTranslate("question", "Ink on the slab before the first sheet, in g")},
          {"ink-after", toTranslate("question", "Ink left on the slab after the last, in g"),
           hasInkBefore},
          {"note", toTranslate("question", "Anything else worth keeping")}}},
        {"sign",
         {{"edition", toTranslate("question", "Which edition")},
          {"assignment",
           toTranslate("question", "Working numbers = what is written, such as 5-24=1/20")},
          {"on", toTranslate("question", "The day of signing")}}},
        {"sky",
         {{"day", toTranslate("question", "Which day")},
          {"sky", toTranslate("question", "How was the sky, or how many eighths were covered")}}},
        {"stock-take",
         {{"lot", toTranslate("question", "Which tin, tube or bottle")},
          {"mass", toTranslate("question", "What was weighed, in g; 0 where nothing is left")},
          {"tare", toTranslate("question", "Of that the empty container, in g")},
          {"at", toTranslate("question", "When")}}},
        {"strike",
         {{"kind", toTranslate("question", "What kind of record")},
          {"id", toTranslate("question", "Its id")},
          {"reason", toTranslate("question", "Why it should not be there")}}},
        {"weigh",
         {{"mix", toTranslate("question", "Which mix gains or loses")},
          {"lot", toTranslate("question", "From which tin, tube or bottle")},
          {"from-mix", toTranslate("question", "Or from which other mix"), wantsOtherSource},
          {"withdraw", toTranslate("question", "Then it was taken out to be used"), hasNoSource},
          {"discard", toTranslate("question", "Then it was thrown away"), isStillInHouse},
          {"mass", toTranslate("question", "How much, in g, or the word unknown")},
          {"balance", toTranslate("question", "On which balance")},
          {"at", toTranslate("question", "When")},
          {"note", toTranslate("question", "Anything else worth keeping")}}}};
    return table;
}

}  // namespace

std::vector<GuideStep> guideSteps(const CommandSpec& spec) {
    const auto found = guides().find(spec.name);
    if (found != guides().end())
        return found->second;
    const auto question = [](const std::string& help) {
        const std::string sentence = firstSentence(help);
        return sentence.empty() || sentence.back() != '.' ? sentence
                                                          : sentence.substr(0, sentence.size() - 1);
    };
    std::vector<GuideStep> steps;
    for (const PositionalSpec& positional : spec.positionals)
        if (positional.required)
            steps.push_back({positional.name, question(positional.help)});
    for (const OptionSpec& option : spec.options)
        if (option.required)
            steps.push_back({option.name, question(option.help)});
    return steps;
}

std::vector<std::string> guidedVerbs() {
    std::vector<std::string> names;
    for (const auto& [name, steps] : guides())
        names.push_back(name);
    return names;
}

}  // namespace rackbook
