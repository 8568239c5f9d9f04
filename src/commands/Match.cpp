#include "commands/Match.h"

#include "base/Error.h"
#include "base/Numbers.h"
#include "base/Text.h"
#include "commands/BookAccess.h"
#include "commands/Cautions.h"
#include "commands/InkSource.h"
#include "commands/JsonReport.h"
#include "commands/MassGiven.h"
#include "commands/MatchPlan.h"
#include "commands/MatchReport.h"
#include "commands/MixAgain.h"
#include "commands/MixAgainReport.h"
#include "commands/OptionRows.h"
#include "commands/Paragraph.h"
#include "commands/RecordNamed.h"
#include "commands/ShareGiven.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

constexpr long long mostColoursAllowed = 8;

std::size_t countGiven(const CommandContext& context, const std::string& option, long long least,
                       long long most, std::size_t otherwise) {
    const std::optional<std::string> text = context.arguments.value(option);
    if (!text)
        return otherwise;
    const std::optional<long long> count = parseWhole(*text);
    if (!count || *count < least || *count > most)
        throw UsageError("--" + option + " is \"" + excerpt(*text) + "\"",
                         "Give a whole number from " + std::to_string(least) + " to " +
                             std::to_string(most) + ".");
    return static_cast<std::size_t>(*count);
}

int lotOf(const BookFile& book, const InkBook& ink, const std::string& id) {
    return ink.records.indexOf<Lot>(recordNamed<Lot>(book, id).id);
}

int lotOfKind(const BookFile& book, const InkBook& ink, const std::string& id, LotKind kind,
              const std::string& option) {
    const int lot = lotOf(book, ink, id);
    if (lotAt(ink, lot).lotKind != kind)
        throw UsageError(option + " names " + id + ", which is " + textOf(lotAt(ink, lot).lotKind) +
                             ", not " + textOf(kind),
                         "Name a lot of the right kind.");
    return lot;
}

int baseGiven(const CommandContext& context, const ColourBook& colours, const MatchWanted& wanted) {
    const std::optional<std::string> id = context.arguments.value("base");
    if (id == "none")
        return -1;
    if (id)
        return lotOfKind(colours.book, colours.ink, *id, LotKind::base, "--base");
    const int base =
        usualBase(colours.ink, colours.model, wanted.shelf, wanted.without, wanted.asOf);
    if (base < 0)
        throw UsageError("no base that was on the shelf then, and was measured, may be taken",
                         "Name one with --base, or --base none for ink without.");
    return base;
}

std::vector<LotShare> drierGiven(const CommandContext& context, const BookFile& book,
                                 const InkBook& ink) {
    const std::optional<std::string> text = context.arguments.value("drier");
    if (!text)
        return {};
    const auto [id, share] = assignmentIn(*text, "drier", "LOT=SHARE");
    return {{lotOfKind(book, ink, id, LotKind::drier, "--drier"), shareGiven(share, "--drier")}};
}

MatchWanted wantedIn(const CommandContext& context, const ColourBook& colours, ColourAim aim) {
    const InkBook& ink = colours.ink;
    const BookFile& book = colours.book;
    MatchWanted wanted;
    wanted.asOf = asOfDay(context, ink.studio);
    wanted.shelf = shelfOf(ink, wanted.asOf);
    wanted.aim = std::move(aim);
    wanted.paper = paperGiven(context, ink, wanted.aim.paper);
    wanted.film = filmGiven(context, ink,
                            wanted.aim.reading.empty() ? std::nullopt : wanted.aim.filmWeight_gm2,
                            wanted.aim.layer, true);
    wanted.mostColours = countGiven(context, "colours", 1, mostColoursAllowed, wanted.mostColours);
    for (const std::string& id : context.arguments.values("without"))
        wanted.without.push_back(lotOf(book, ink, id));
    wanted.base = baseGiven(context, colours, wanted);
    wanted.held = drierGiven(context, book, ink);
    if (const std::optional<std::string> share = context.arguments.value("extender")) {
        if (wanted.base < 0)
            throw UsageError("--extender says nothing with --base none", "Leave one of them out.");
        wanted.baseShare = shareGiven(*share, "--extender");
    }
    wanted.recipe = countGiven(context, "recipe", 1, 99, 1) - 1;
    wanted.mass_g = massOption(context, "match", "mass");
    if (wanted.mass_g) {
        wanted.balance = balanceToUse(context, "match", ink);
        wanted.limit = colourLimitGiven(context, ink.rules);
    }
    return wanted;
}

// Where nothing is known of its colour: what was weighed then, from lots like those of then.
ExitCode byProportions(CommandContext& context, const ColourBook& colours, const ColourAim& aim) {
    if (!context.arguments.has("mass"))
        throw InputError(
            aim.words, aim.noColour,
            "Measure a print or a drawdown of it. Where its weighings are recorded, --mass "
            "lays it out by those.");
    for (const char* idle :
         {"paper", "film", "colours", "base", "extender", "drier", "without", "recipe"})
        if (context.arguments.has(idle))
            throw UsageError(std::string("--") + idle +
                                 " says nothing where an ink is laid out by "
                                 "recorded proportions (" +
                                 aim.noColour + ")",
                             "Leave it out.");
    const InkBook& ink = colours.ink;
    const BalanceToUse balance = balanceToUse(context, "match", ink);
    const MixAgain again = mixAgainAsked(context, "match", {colours.book, ink}, balance);
    if (context.arguments.has("json")) {
        Tree report = newReport("match");
        report.set("target", aim.words);
        report.set("by", "recordedProportions").set("why", aim.noColour);
        addMixAgain(report, ink, again);
        context.console.out() << jsonText(report);
    } else {
        printWrapped(context.console,
                     "By recorded proportions, not by colour: " + aim.noColour +
                         ". Lots that are gone are replaced by those of the same pigments where "
                         "there are any; how near that comes nobody can say before a drawdown.");
        context.console.out() << "\n";
        printMixAgain(context.console, ink, again, balance.words, balance.capacity_g);
    }
    return ExitCode::findings;
}

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const InkBook ink = inkBookOf(book);
    const ColourModel model = colourModelOf(ink);
    const ColourBook colours{book, ink, model};
    ColourAim aim = colourAimNamed(colours, context.arguments.text("what"),
                                   context.arguments.value("layer"), asOfDay(context, ink.studio));
    if (!aim.noColour.empty())
        return byProportions(context, colours, aim);
    const Match match = matchFor(ink, model, wantedIn(context, colours, std::move(aim)));
    if (context.arguments.has("json")) {
        Tree report = newReport("match");
        addMatch(report, ink, match);
        context.console.out() << jsonText(report);
    } else {
        printMatch(context.console, ink, match);
    }
    const bool isOutOfReach =
        match.laidOut.miss.underD50_dE00 > ink.rules.value("colourTolerance_dE00");
    const bool cannotBeWeighed = match.weighing && !match.weighing->plans.chosen;
    return isOutOfReach || cannotBeWeighed || !match.shortages.empty() ? ExitCode::findings
                                                                       : ExitCode::success;
}

}  // namespace

Command matchCommand() {
    CommandSpec spec;
    spec.name = "match";
    spec.group = toTranslate("group", "Questions");
    spec.summary = toTranslate(
        "summary", "Find recipes for a recorded colour from the lots that are on the shelf");
    spec.details =
        "For a colour whose ink is gone: the recipes from the lots that are there and were "
        "characterised that come nearest to it under D50, over a measured paper at a film weight; "
        "of those that come as near, the ones that hold in other light. For each:\n"
        "  ΔE00, under A, FL11  how far it is from the colour in daylight (D50), by a filament\n"
        "                       lamp and a fluorescent one; below 1 is hard to see (common\n"
        "                       practice, no source)\n"
        "  give or take         how far the prediction may be off, an estimate: twice the root of\n"
        "                       the sum of squares of what the film weight's uncertainty does and\n"
        "                       of each ink's part in the colour times how well its drawdowns\n"
        "                       predict one another; an ink that could not be checked counts as\n"
        "                       the worst known\n"
        "  opacity              how light it is over black, of what it is over white; 0 % for a\n"
        "                       perfect glaze, 100 % for a film that hides\n"
        "  100 g                what that costs by the price of the tins\n\n"
        "With --mass, how it is weighed. Where the target holds CIELAB only, it is matched by "
        "that; "
        "of a layer without a reading, the colour is predicted from what was laid down; where that "
        "is not known either, the ink is laid out by recorded proportions, and the report says so. "
        "Exit code 1 where the colour is out of reach of the studio's tolerance, the recipe cannot "
        "be weighed so, or it is laid out by recorded proportions.";
    spec.positionals = aimPositionals();
    spec.options = {
        paperOption(),
        filmOption(true),
        valueOption("colours", "NUMBER", "How many inks a recipe may have at most.", "4"),
        valueOption("base", "LOT", "What they are let down in; none for ink without base.",
                    "the measured base of which most is left"),
        valueOption("extender", "SHARE", "Share of base in the whole ink, such as 97%.",
                    "whatever comes nearest"),
        valueOption("drier", "LOT=SHARE", "Drier in the portion, such as drier-1=2%."),
        repeatable(valueOption("without", "LOT", "A lot not to be taken.")),
        valueOption("recipe", "NUMBER", "Which of the recipes is laid out.", "1"),
        valueOption("mass", "MASS", "How much is wanted of it, for the weighing.")};
    for (OptionSpec& option : balanceToUseOptions())
        spec.options.push_back(std::move(option));
    spec.options.push_back(valueOption("on", "DATE", "With the lots that are there on this day.",
                                       "today at the studio"));
    spec.reportsJson = true;
    spec.caution = inkCaution;
    spec.examples = {
        {"rackbook match FER 1 --film 8 --colours 3",
         "A layer of an old edition, with three inks at most."},
        {"rackbook match eel-straw-d50 --drier drier-1=2% --mass 60 --balance pocket-balance",
         "60 g with drier, and how to weigh it."}};
    return {spec, run};
}

}  // namespace rackbook
