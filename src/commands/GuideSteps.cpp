#include "commands/GuideSteps.h"

#include <map>

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
         {{"file", "Which file"},
          {"edition", "Which edition does it show"},
          {"impression", "Which impression, such as EEL:7"},
          {"caption", "What it shows, in words"},
          {"taken-on", "When it was taken"}}},
        {"edition",
         {{"code", "A short code for the edition"},
          {"title", "The title, as it stands on the prints"},
          {"maker", "Who made the image"},
          {"printer", "Who prints it"},
          {"year", "The year"},
          {"paper", "The paper, in words"},
          {"image", "Height and width of the image in mm, such as 300x200"},
          {"sheet", "Height and width of the sheet in mm"},
          {"numbered", "How many numbered impressions are declared"},
          {"proofs", "Proofs declared beside them, such as AP=3"}}},
        {"enter",
         {{"kind", "What kind of record"},
          {"id", "Its id: letters, digits and . _ - / only"},
          {"field", "A field and what it is, such as note=\"seen at noon\""},
          {"reason", "Why the book was wrong, where it says otherwise already"}}},
        {"hand-over",
         {{"kind", "What was agreed"},
          {"sheets", "Which sheets, such as EEL:1-12,15"},
          {"to", "Who gets them"},
          {"on", "When it was agreed"},
          {"due", "When it ends", mayFallDue},
          {"price", "The price of all of them together", hasAPrice},
          {"terms", "The terms, in words"},
          {"move-to", "Where they went, if they are gone already"}}},
        {"hang",
         {{"sheets", "Which sheets, such as EEL:1-12,15"},
          {"place", "Where do they hang"},
          {"at", "When"},
          {"interleaved", "Under interleaving, so that no light reaches the face"}}},
        {"impressions",
         {{"edition", "Which edition"}, {"range", "Their working numbers, such as 1-24"}}},
        {"layer",
         {{"edition", "Which edition"},
          {"ordinal", "Its place in the printing order"},
          {"colour", "The colour, in words"},
          {"block", "Which block it is printed from"},
          {"mix", "Which stock mix or let-down it is printed from"},
          {"coverage", "The inked share of the image, 0 to 1"},
          {"film-weight", "Wet ink aimed at, in g/m²"}}},
        {"look",
         {{"sheets", "Which sheets were looked at, such as EEL:4"},
          {"touch", "How does the ink feel"},
          {"colour", "How does the colour look beside what it should be"},
          {"stands-for", "Which other sheets do they speak for"},
          {"at", "When"},
          {"note", "Anything else worth keeping"}}},
        {"meter",
         {{"place", "At which place"},
          {"from", "When did it begin, such as 09:30"},
          {"to", "When did it end"},
          {"lux", "The mean level of light in lux"},
          {"lux-hours", "Or the light of all that time, in lux hours", wantsLuxHours},
          {"uv", "Near ultraviolet of all that time, in Wh/m²"}}},
        {"move",
         {{"sheets", "Which sheets, such as EEL:1-12,15"},
          {"place", "Where do they go"},
          {"why", "Why"},
          {"at", "When"},
          {"interleaved", "Interleaved or stacked, so that no light reaches the face"}}},
        {"pull",
         {{"edition", "Which edition"},
          {"layer", "Which layer was printed"},
          {"range", "Which sheets were pulled, by working number"},
          {"spoiled", "Which of them were spoiled"},
          {"portion", "Which portion of ink was it"},
          {"start", "When did it begin"},
          {"end", "When was the last sheet off the block"},
          {"hang", "Where do the good ones hang now"},
          {"press", "On which press, or by hand and with what"},
          {"printer", "Who printed"},
          {"temperature", "Temperature of the room in degrees Celsius"},
          {"humidity", "Relative humidity of the room in percent"},
          {"ink-before", "Ink on the slab before the first sheet, in g"},
          {"ink-after", "Ink left on the slab after the last, in g", hasInkBefore},
          {"note", "Anything else worth keeping"}}},
        {"sign",
         {{"edition", "Which edition"},
          {"assignment", "Working numbers = what is written, such as 5-24=1/20"},
          {"on", "The day of signing"}}},
        {"sky",
         {{"day", "Which day"}, {"sky", "How was the sky, or how many eighths were covered"}}},
        {"stock-take",
         {{"lot", "Which tin, tube or bottle"},
          {"mass", "What was weighed, in g; 0 where nothing is left"},
          {"tare", "Of that the empty container, in g"},
          {"at", "When"}}},
        {"strike",
         {{"kind", "What kind of record"},
          {"id", "Its id"},
          {"reason", "Why it should not be there"}}},
        {"weigh",
         {{"mix", "Which mix gains or loses"},
          {"lot", "From which tin, tube or bottle"},
          {"from-mix", "Or from which other mix", wantsOtherSource},
          {"withdraw", "Then it was taken out to be used", hasNoSource},
          {"discard", "Then it was thrown away", isStillInHouse},
          {"mass", "How much, in g, or the word unknown"},
          {"balance", "On which balance"},
          {"at", "When"},
          {"note", "Anything else worth keeping"}}}};
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
