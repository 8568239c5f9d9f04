#include "commands/MixAgainLots.h"

#include "base/Numbers.h"
#include "base/Text.h"
#include "commands/BalanceGiven.h"

namespace rackbook {

namespace {

std::string replacementWords(const InkBook& ink, const LotService& service,
                             const std::string& name) {
    const Lot& by = lotAt(ink, service.by);
    std::string words =
        "In place of " + name + ", which is not there on that day, stands " + lotWords(by) + ".";
    if (by.lotKind == LotKind::ink)
        words += " The same pigments may be stronger or weaker in another tin: compare a drawdown.";
    if (service.baseDiffers)
        words += " Another base may be paler or thicker: try a drawdown first.";
    if (service.metalsDiffer)
        words += " Its metals are mixed otherwise; their sum is kept.";
    if (service.contentNotStated)
        words += " Its content is not stated, so it is taken gram for gram, which is a guess.";
    else if (service.factor != 1)
        words += " Of it " + formatFixed(service.factor, 2) + " g go for each gram.";
    if (service.leftNotKnown)
        words += " How much is left of it is not known; look before you begin.";
    return words;
}

std::string shortageWords(const InkBook& ink, const LotService& service, const std::string& name) {
    const std::string words = "There is too little of " + name + ": " +
                              formatFixed(service.short_g, 1) + " g are missing";
    if (service.shortTogether_g > 0)
        return words + " and no other tin makes up for it.";
    std::vector<std::string> ids;
    for (const int position : service.together)
        ids.push_back(lotAt(ink, position).id);
    return words + "; together with others like it there is enough: " + joined(ids) + ".";
}

std::string answerWords(const InkBook& ink, const LotService& service) {
    constexpr const char* asIf = " The steps below name it as if it were there.";
    const std::string name = lotWords(lotAt(ink, service.need.lot));
    switch (service.answer) {
        case LotAnswer::replaced:
            return replacementWords(ink, service, name);
        case LotAnswer::tooLittle:
            return shortageWords(ink, service, name);
        case LotAnswer::needsColourMatching:
            return name +
                   " is not there on that day, and no other lot has the same pigments: this needs "
                   "colour matching." +
                   asIf;
        case LotAnswer::noneAlike:
            return name + " is not there on that day, nor anything of its kind." + asIf;
        default:
            return {};
    }
}

}  // namespace

std::vector<std::string> lotSentences(const InkBook& ink, const MixAgain& again) {
    std::vector<std::string> sentences;
    std::vector<std::string> leftNotKnown;
    for (const LotService& service : again.services) {
        if (service.answer != LotAnswer::serves)
            sentences.push_back(answerWords(ink, service));
        else if (service.leftNotKnown)
            leftNotKnown.push_back(lotAt(ink, service.need.lot).id);
    }
    if (!leftNotKnown.empty())
        sentences.push_back("How much is left of " + joined(leftNotKnown) +
                            " is not known; look before you begin.");
    const int decimals = decimalsOf(again.weighing.request.balance);
    for (const LotShortage& shortage : again.shortages)
        sentences.push_back("By the book " + lotAt(ink, shortage.lot).id + " holds " +
                            formatFixed(shortage.left_g.best, 1) + " g, and this takes " +
                            formatFixed(shortage.needed_g, decimals) +
                            " g. Weigh what is in it, or mix less.");
    if (again.found.drierWasEarlier)
        sentences.push_back(
            "Drier had gone into an earlier step then. Here it goes into the last one only.");
    return sentences;
}

}  // namespace rackbook
