#include <algorithm>
#include <cmath>

#include "sheets/EstimateText.h"
#include "sheets/LotText.h"
#include "sheets/RecipeParts.h"

namespace rackbook::recipeparts {

namespace {

bool needsCare(const RecipeFacts& facts) {
    const auto isToCareFor = [&](int lot) {
        return lot >= 0 && needsCaution(facts.lots[static_cast<std::size_t>(lot)]);
    };
    if (std::any_of(facts.ink.parts.begin(), facts.ink.parts.end(),
                    [](const InkPart& part) { return needsCaution(part.lot); }))
        return true;
    return facts.weighing &&
           std::any_of(facts.weighing->plan.lots.begin(), facts.weighing->plan.lots.end(),
                       [&](const PlannedShare& share) { return isToCareFor(share.lot); });
}

std::string replacedText(const RecipeFacts& facts, const LotService& service,
                         const SheetWords& words) {
    std::vector<std::string> sentences = {words.filled(
        "before.replaced",
        {{"lot", lotText(facts, service.need.lot)}, {"other", lotText(facts, service.by)}})};
    if (facts.lots[static_cast<std::size_t>(service.by)].lotKind == LotKind::ink)
        sentences.push_back(words("before.strengthDiffers"));
    if (service.baseDiffers)
        sentences.push_back(words("before.baseDiffers"));
    if (service.metalsDiffer)
        sentences.push_back(words("before.metalsDiffer"));
    if (service.contentNotStated)
        sentences.push_back(words("before.gramForGram"));
    else if (service.factor != 1)
        sentences.push_back(
            words.filled("before.factor", {{"mass", words.figure(service.factor, 2)}}));
    if (service.leftNotKnown)
        sentences.push_back(
            words.filled("before.leftNotKnown", {{"lots", lotText(facts, service.by)}}));
    return words.sentences(sentences);
}

std::string serviceText(const RecipeFacts& facts, const LotService& service,
                        const SheetWords& words) {
    const std::string lot = lotText(facts, service.need.lot);
    switch (service.answer) {
        case LotAnswer::replaced:
            return replacedText(facts, service, words);
        case LotAnswer::tooLittle: {
            std::vector<std::string> others;
            for (const int other : service.together)
                others.push_back(lotText(facts, other));
            const bool isEnough = service.shortTogether_g <= 0;
            return words.filled(isEnough ? "before.tooLittleTogether" : "before.tooLittle",
                                {{"lot", lot},
                                 {"mass", words.figure(service.short_g, 1)},
                                 {"lots", words.listed(others)}});
        }
        case LotAnswer::needsColourMatching:
            return words.filled("before.needsMatching", {{"lot", lot}});
        case LotAnswer::noneAlike:
            return words.filled("before.noneAlike", {{"lot", lot}});
        default:
            return {};
    }
}

std::vector<std::string> lotTexts(const RecipeFacts& facts, const SheetWords& words) {
    std::vector<std::string> texts;
    std::vector<std::string> leftNotKnown;
    for (const LotService& service : facts.weighing->services) {
        if (service.answer != LotAnswer::serves)
            texts.push_back(serviceText(facts, service, words));
        else if (service.leftNotKnown)
            leftNotKnown.push_back(lotText(facts, service.need.lot));
    }
    if (!leftNotKnown.empty())
        texts.push_back(
            words.filled("before.leftNotKnown", {{"lots", words.listed(leftNotKnown)}}));
    for (const RecipeShortage& shortage : facts.weighing->shortages)
        texts.push_back(words.filled(
            "before.holdsLess",
            {{"lot", lotText(facts, shortage.lot)},
             {"left", estimateText(shortage.left_g, 1, words)},
             {"needed", words.figure(shortage.needed_g, facts.weighing->balance.decimals)}}));
    return texts;
}

std::string jarText(const RecipeJar& jar, const SheetWords& words) {
    constexpr int decimals = 2;  // as in the mix book
    const char* label = std::isnan(jar.needed_g) ? "before.jarThere"
                        : jar.isEnough           ? "before.jarEnough"
                                                 : "before.jarShort";
    return words.filled(label,
                        {{"mass", words.figure(jar.left_g.best, decimals)},
                         {"mix", jar.name},
                         {"needed", words.figure(jar.needed_g, decimals)},
                         {"missing", words.figure(jar.needed_g - jar.left_g.best, decimals)}});
}

std::vector<std::string> noteTexts(const RecipeFacts& facts, const SheetWords& words) {
    if (!facts.weighing)
        return {};
    std::vector<std::string> texts = lotTexts(facts, words);
    if (facts.weighing->drierWasEarlier)
        texts.push_back(words("before.drierWasEarlier"));
    for (const RecipeJar& jar : facts.weighing->jars)
        if (jar.left_g.best > 0)
            texts.push_back(jarText(jar, words));
    return texts;
}

bool hasNotes(const RecipeWeighing& weighing) {
    return !weighing.shortages.empty() || weighing.drierWasEarlier ||
           std::any_of(weighing.jars.begin(), weighing.jars.end(),
                       [](const RecipeJar& jar) { return jar.left_g.best > 0; }) ||
           std::any_of(weighing.services.begin(), weighing.services.end(),
                       [](const LotService& service) {
                           return service.answer != LotAnswer::serves || service.leftNotKnown;
                       });
}

}  // namespace

std::string lotText(const RecipeFacts& facts, int position) {
    const Lot& lot = facts.lots[static_cast<std::size_t>(position)];
    return shortWords(lot.colourWords) + " (" + lot.id + ")";
}

bool hasBefore(const RecipeFacts& facts) {
    return needsCare(facts) || (facts.weighing && hasNotes(*facts.weighing));
}

void addBefore(Flow& flow, const RecipeFacts& facts, const SheetWords& words) {
    if (needsCare(facts))
        flow.note(NoteKind::caution, words("caution"), words("caution.driers"));
    for (const std::string& text : noteTexts(facts, words))
        flow.paragraph(text);
}

}  // namespace rackbook::recipeparts
