#include <algorithm>
#include <map>
#include <set>

#include "base/Ranges.h"
#include "commands/AnswerKind.h"
#include "commands/BookAccess.h"
#include "commands/LayerNamed.h"
#include "commands/SheetSelection.h"
#include "commands/Suggestions.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

using Preset = std::optional<std::string>;

std::optional<Layer> layerOfLastPull(const AnswersSoFar& soFar) {
    const std::optional<Pull> pull = latestOf<Pull>(soFar.book, "start");
    return pull ? findIn<Layer>(soFar.book, pull->layer.id) : std::nullopt;
}

Preset editionLastWorkedOn(const AnswersSoFar& soFar) {
    if (const std::optional<Layer> layer = layerOfLastPull(soFar))
        if (const std::optional<Edition> edition = findIn<Edition>(soFar.book, layer->edition.id))
            return edition->code;
    const std::vector<Edition> editions = allOf<Edition>(soFar.book);
    return editions.empty() ? std::nullopt : Preset(editions.back().code);
}

std::vector<Pull> pullsOf(const AnswersSoFar& soFar, const Layer& layer) {
    return thoseOf<Pull>(soFar.book, "layer", layer.id);
}

// The layer that is being printed today, else the first that no sheet went through.
Preset layerAtPress(const AnswersSoFar& soFar) {
    const Edition edition = editionNamed(soFar.book, soFar.answers.text("edition"));
    const std::vector<Layer> layers = layersOf(soFar.book, edition);
    std::set<std::string> pulled;
    std::set<std::string> pulledToday;
    const std::string today = formatDay(nowAt(soFar.studio).earliest());
    for (const Layer& layer : layers)
        for (const Pull& pull : pullsOf(soFar, layer)) {
            pulled.insert(layer.id);
            if (formatDay(pull.start.earliest()) == today)
                pulledToday.insert(layer.id);
        }
    for (const Layer& layer : layers)
        if (pulledToday.count(layer.id) > 0)
            return std::to_string(layer.ordinal);
    for (const Layer& layer : layers)
        if (pulled.count(layer.id) == 0)
            return std::to_string(layer.ordinal);
    return std::nullopt;
}

// Kept sheets that have not been through the layer yet.
Preset sheetsForLayer(const AnswersSoFar& soFar) {
    const Edition edition = editionNamed(soFar.book, soFar.answers.text("edition"));
    const Layer layer = layerOf(soFar.book, edition, soFar.answers.text("layer"));
    std::set<std::string> done;
    for (const Pull& pull : pullsOf(soFar, layer))
        for (const Ref<Impression>& sheet : pull.impressions)
            done.insert(sheet.id);
    std::vector<Impression> left;
    for (Impression& sheet : sheetsOf(soFar.book, edition))
        if (sheet.fate == ImpressionFate::kept && done.count(sheet.id) == 0)
            left.push_back(std::move(sheet));
    return left.empty() ? std::nullopt : Preset(numbersOf(left));
}

Preset portionOfLayer(const AnswersSoFar& soFar) {
    const Edition edition = editionNamed(soFar.book, soFar.answers.text("edition"));
    const Layer layer = layerOf(soFar.book, edition, soFar.answers.text("layer"));
    const std::vector<Pull> pulls = pullsOf(soFar, layer);
    const bool has = !pulls.empty() && pulls.back().portion;
    return has ? Preset(pulls.back().portion->id) : std::nullopt;
}

// The good sheets of the last pull.
Preset sheetsLastPulled(const AnswersSoFar& soFar) {
    const std::optional<Pull> pull = latestOf<Pull>(soFar.book, "start");
    if (!pull)
        return std::nullopt;
    std::set<std::string> spoiled;
    for (const Ref<Impression>& sheet : pull->spoiled)
        spoiled.insert(sheet.id);
    std::vector<Impression> good;
    std::string code;
    for (const Ref<Impression>& ref : pull->impressions) {
        const std::optional<Impression> sheet = findIn<Impression>(soFar.book, ref.id);
        if (!sheet || spoiled.count(ref.id) > 0)
            continue;
        if (code.empty())
            code = editionNamed(soFar.book, sheet->edition.id).code;
        good.push_back(*sheet);
    }
    return good.empty() ? std::nullopt : Preset(code + ":" + numbersOf(good));
}

Preset placeLastHungAt(const AnswersSoFar& soFar) {
    const std::optional<Move> move = latestOf<Move>(soFar.book, "at");
    return move && move->why == MoveWhy::hang ? Preset(move->to.id) : std::nullopt;
}

Preset nextOrdinal(const AnswersSoFar& soFar) {
    const Edition edition = editionNamed(soFar.book, soFar.answers.text("edition"));
    const std::vector<Layer> layers = layersOf(soFar.book, edition);
    return std::to_string(layers.empty() ? 1 : layers.back().ordinal + 1);
}

Preset mixLastWeighed(const AnswersSoFar& soFar) {
    const std::optional<Weighing> weighing = latestOf<Weighing>(soFar.book, "at");
    return weighing ? Preset(weighing->mix.id) : std::nullopt;
}

Preset balanceLastUsed(const AnswersSoFar& soFar) {
    const std::optional<Weighing> weighing = latestOf<Weighing>(soFar.book, "at");
    return weighing && weighing->balance ? Preset(weighing->balance->id) : std::nullopt;
}

Preset pressLastUsed(const AnswersSoFar& soFar) {
    const std::optional<Pull> pull = latestOf<Pull>(soFar.book, "start");
    return pull ? pull->press : std::nullopt;
}

Preset printerLast(const AnswersSoFar& soFar) {
    const std::optional<Pull> pull = latestOf<Pull>(soFar.book, "start");
    if (pull && pull->printer)
        return pull->printer->id;
    const Edition edition = editionNamed(soFar.book, soFar.answers.text("edition"));
    return edition.printer ? Preset(edition.printer->id) : std::nullopt;
}

Preset presetByKind(const AnswersSoFar& soFar, const std::string& name) {
    switch (answerKindOf(soFar.spec, name)) {
        case AnswerKind::edition:
            return soFar.spec.name == "attach" ? std::nullopt : editionLastWorkedOn(soFar);
        case AnswerKind::date:
        case AnswerKind::moment:
            break;
        default:
            return std::nullopt;
    }
    for (const OptionSpec& option : soFar.spec.options)
        if (option.name == name && option.defaultText == "now")
            return nowAt(soFar.studio).text();
    static const std::set<std::string> ofToday = {"day", "on"};
    return ofToday.count(name) > 0 ? Preset(formatDay(nowAt(soFar.studio).earliest()))
                                   : std::nullopt;
}

}  // namespace

std::optional<std::string> presetFor(const AnswersSoFar& soFar, const std::string& name) {
    using Find = Preset (*)(const AnswersSoFar&);
    static const std::map<std::pair<std::string, std::string>, Find> finds = {
        {{"hang", "place"}, placeLastHungAt},    {{"hang", "sheets"}, sheetsLastPulled},
        {{"layer", "ordinal"}, nextOrdinal},     {{"look", "sheets"}, sheetsLastPulled},
        {{"pull", "hang"}, placeLastHungAt},     {{"pull", "layer"}, layerAtPress},
        {{"pull", "portion"}, portionOfLayer},   {{"pull", "press"}, pressLastUsed},
        {{"pull", "printer"}, printerLast},      {{"pull", "range"}, sheetsForLayer},
        {{"weigh", "balance"}, balanceLastUsed}, {{"weigh", "mix"}, mixLastWeighed}};
    const auto found = finds.find({soFar.spec.name, name});
    return found == finds.end() ? presetByKind(soFar, name) : found->second(soFar);
}

}  // namespace rackbook
