#include "commands/ReadingTargets.h"

#include <algorithm>
#include <map>

#include "base/Text.h"
#include "commands/RecordNamed.h"
#include "commands/SheetSelection.h"

namespace rackbook {

namespace {

const char* const targetHelp =
    "Write --of SAMPLE=drawdown:ID, SAMPLE=impression:EEL:2 or SAMPLE=paper:WORDS.";

std::vector<std::string> namesOf(const MeasurementFile& file) {
    std::vector<std::string> names;
    for (const MeasuredSample& sample : file.samples)
        names.push_back(sample.name);
    return names;
}

std::optional<ReadingTarget> targetFrom(const BookFile& book, const std::string& words) {
    const std::size_t colon = words.find(':');
    const std::string kind = words.substr(0, colon);
    const std::string rest = colon == std::string::npos ? "" : words.substr(colon + 1);
    if (rest.empty())
        return std::nullopt;
    ReadingTarget target;
    if (kind == "drawdown")
        target.drawdown = Ref<Drawdown>{recordNamed<Drawdown>(book, rest).id};
    else if (kind == "paper")
        target.paper = rest;
    else if (kind == "impression") {
        const SheetSelection selection = sheetsNamed(book, rest);
        if (selection.sheets.size() != 1)
            throw UsageError(excerpt(rest) + " names more than one impression", "Name one.");
        target.impression = Ref<Impression>{selection.sheets.front().id};
    } else
        return std::nullopt;
    return target;
}

bool beginsTarget(const std::string& words) {
    return words.rfind("drawdown:", 0) == 0 || words.rfind("impression:", 0) == 0 ||
           words.rfind("paper:", 0) == 0;
}

// A sample's name may hold equals signs: the one is meant that ends a name of the file and is
// followed by a target.
std::size_t equalsSignIn(const std::string& words, const std::vector<std::string>& names) {
    std::vector<std::string> tried;
    std::optional<std::size_t> found;
    for (std::size_t at = words.find('='); at != std::string::npos; at = words.find('=', at + 1)) {
        if (!beginsTarget(words.substr(at + 1)))
            continue;
        const std::string name = words.substr(0, at);
        if (std::find(names.begin(), names.end(), name) == names.end()) {
            tried.push_back(name);
            continue;
        }
        if (found)
            throw UsageError("--of " + excerpt(words) + " can be read in two ways",
                             "Give these samples other names in the file.");
        found = at;
    }
    if (found)
        return *found;
    if (tried.empty())
        throw UsageError("--of " + excerpt(words) + " does not say what the sample is of",
                         targetHelp);
    const std::optional<std::string> nearest = nearestName(tried.front(), names);
    throw UsageError(
        "the file has no sample \"" + excerpt(tried.front()) + "\"",
        nearest ? "Did you mean " + *nearest + "?" : "Leave --of out to see which it has.");
}

std::map<std::string, ReadingTarget> namedTargets(const CommandContext& context,
                                                  const BookFile& book,
                                                  const std::vector<std::string>& names) {
    std::map<std::string, ReadingTarget> targets;
    for (const std::string& words : context.arguments.values("of")) {
        const std::size_t at = equalsSignIn(words, names);
        const std::optional<ReadingTarget> target = targetFrom(book, words.substr(at + 1));
        if (!target)
            throw UsageError("--of " + excerpt(words) + " does not say what the sample is of",
                             targetHelp);
        if (!targets.emplace(words.substr(0, at), *target).second)
            throw UsageError("sample " + excerpt(words.substr(0, at)) + " is named twice",
                             "Say once what it is of.");
    }
    return targets;
}

// Names of a few, and how many there are beside them.
std::string fewOf(const std::vector<std::string>& names) {
    constexpr std::size_t most = 10;
    std::vector<std::string> few;
    for (std::size_t i = 0; i < std::min(most, names.size()); ++i)
        few.push_back(excerpt(names[i]));
    if (names.size() > most)
        few.push_back(std::to_string(names.size() - most) + " more");
    return joined(few);
}

}  // namespace

bool choosesSamples(const CommandContext& context) {
    return context.arguments.has("of") || context.arguments.has("drawdowns-by-name");
}

std::vector<ChosenSample> chosenSamples(const CommandContext& context, const BookFile& book,
                                        const MeasurementFile& file) {
    const std::map<std::string, ReadingTarget> targets = namedTargets(context, book, namesOf(file));
    const bool byName = context.arguments.has("drawdowns-by-name");
    std::vector<ChosenSample> chosen;
    std::vector<std::string> strangers;
    for (const MeasuredSample& sample : file.samples) {
        const auto named = targets.find(sample.name);
        ReadingTarget target;
        if (named != targets.end())
            target = named->second;
        else if (!byName)
            continue;
        else if (findIn<Drawdown>(book, sample.name))
            target.drawdown = Ref<Drawdown>{sample.name};
        else
            strangers.push_back(sample.name);
        chosen.push_back({sample, target});
    }
    if (!strangers.empty())
        throw UsageError("the book has no drawdown named " + fewOf(strangers),
                         "Say with --of what these are, enter the drawdowns first, or take the "
                         "samples out of the file.");
    return chosen;
}

std::string nameInBook(const BookFile& book, const std::string& name) {
    if (findIn<Drawdown>(book, name))
        return "drawdown";
    if (findIn<Impression>(book, name))
        return "impression";
    const std::vector<Reading> readings = allOf<Reading>(book);
    if (std::any_of(readings.begin(), readings.end(),
                    [&](const Reading& reading) { return reading.paper == name; }))
        return "paper";
    return findIn<Reading>(book, name) ? "reading" : "";
}

}  // namespace rackbook
