#include "commands/Weigh.h"

#include <algorithm>

#include "base/Numbers.h"
#include "commands/BookAccess.h"
#include "commands/Cautions.h"
#include "commands/GivenValues.h"
#include "commands/MassGiven.h"
#include "commands/OptionRows.h"
#include "commands/Paragraph.h"
#include "commands/RecordNamed.h"
#include "commands/Recording.h"
#include "commands/ShowMix.h"
#include "commands/WeighWarnings.h"
#include "store/HistoryPart.h"

namespace rackbook {

namespace {

void setSource(const CommandContext& context, const BookFile& book, Weighing& weighing) {
    int given = 0;
    for (const char* name : {"lot", "from-mix", "withdraw", "discard"})
        given += context.arguments.has(name) ? 1 : 0;
    if (given != 1)
        throw UsageError(given == 0 ? "it is not said where the mass comes from or goes"
                                    : "the mass cannot come from or go to two places at once",
                         "Give one of --lot, --from-mix, --withdraw and --discard.");
    weighing.lot = refGiven<Lot>(context, book, "lot");
    weighing.fromMix = refGiven<Mix>(context, book, "from-mix");
    if (context.arguments.has("withdraw"))
        weighing.act = WeighingAct::withdraw;
    if (context.arguments.has("discard"))
        weighing.act = WeighingAct::discard;
}

// Pre: the source is set.
void setMass(const CommandContext& context, const BookFile& book, Weighing& weighing) {
    const std::optional<Lot> lot =
        weighing.lot ? findIn<Lot>(book, weighing.lot->id) : std::nullopt;
    MassTerms terms;
    terms.lot = lot ? &*lot : nullptr;
    const std::string text = context.arguments.text("mass");
    if (text != "unknown")
        weighing.mass_g = massGiven(text, "weigh: MASS", terms);
    terms.mayBeNothing = true;
    weighing.massLow_g = massOption(context, "weigh", "low", terms);
    weighing.massHigh_g = massOption(context, "weigh", "high", terms);
}

// Numbers beyond this are part of somebody's own way of naming, not counted on from.
constexpr long long mostWeighings = 1'000'000;

// The next number after those of the mix, and the next place among weighings of the same time.
void setOrder(const BookFile& book, Weighing& weighing) {
    const std::string beginning = weighing.mix.id + "/";
    long long highest = 0;
    for (const Weighing& other : thoseOf<Weighing>(book, "at", weighing.at.text()))
        weighing.sequence = std::max(weighing.sequence, other.sequence + 1);
    for (const std::string& id : idsBeginning(book, Weighing::kind, beginning)) {
        const long long number = parseWhole(id.substr(beginning.size())).value_or(0);
        if (number <= mostWeighings)
            highest = std::max(highest, number);
    }
    do {
        weighing.id = beginning + std::to_string(++highest);
    } while (wasStruck(book, Weighing::kind, weighing.id));
}

// As the history would hold it, were it recorded last.
HistoryWeighing rowOf(const PartOfInk& part, const Weighing& weighing) {
    HistoryWeighing row;
    row.mix = static_cast<int>(positionIn(part.mixes, weighing.mix.id));
    row.act = weighing.act;
    row.lot = weighing.lot ? static_cast<int>(positionIn(part.lots, weighing.lot->id)) : -1;
    row.fromMix =
        weighing.fromMix ? static_cast<int>(positionIn(part.mixes, weighing.fromMix->id)) : -1;
    row.at = {weighing.at.earliest(), weighing.at.latest()};
    row.sequence = weighing.sequence;
    row.mass_g = weighing.mass_g.value_or(notKnown);
    row.massLow_g = weighing.massLow_g.value_or(notKnown);
    row.massHigh_g = weighing.massHigh_g.value_or(notKnown);
    return row;
}

bool bringsDrierIntoDrierFree(const BookFile& book, const Weighing& weighing, const Mix& mix) {
    return mix.drierFree && weighing.lot &&
           recordNamed<Lot>(book, weighing.lot->id).lotKind == LotKind::drier;
}

ExitCode run(CommandContext& context) {
    BookFile book = bookToWrite(context);
    const Book studio = bookRecordOf(book);
    const Mix mix = recordNamed<Mix>(book, context.arguments.text("mix"));
    Weighing weighing;
    weighing.mix = {mix.id};
    setSource(context, book, weighing);
    setMass(context, book, weighing);
    weighing.at = momentGivenOrNow(context, studio, "at");
    weighing.balance = refGiven<Balance>(context, book, "balance");
    weighing.note = context.arguments.value("note");
    setOrder(book, weighing);
    const ExitCode code = recordMade(context, book, {{weighing, std::nullopt}});
    const bool tried = context.arguments.has("dry-run");
    if (!tried)
        MixShowing::ofMix(book, mix).print(context.console);
    if (bringsDrierIntoDrierFree(book, weighing, mix))
        context.console.out() << "\nThis mix was declared free of drier, and "
                              << (tried ? "would then hold" : "now holds") << " some.\n";
    PartOfInk part = inkPartOf(book, inkPartBehind({weighing}));
    if (tried)
        part.history.weighings.push_back(rowOf(part, weighing));
    warnOfWeighings(context.console, book, part, part.history.weighings.size() - 1);
    return code;
}

}  // namespace

Command weighCommand() {
    CommandSpec spec;
    spec.name = "weigh";
    spec.group = toTranslate("group", "At the press");
    spec.summary =
        toTranslate("summary", "Record one weighing: into a mix, out of it, or thrown away");
    spec.details =
        "Each weighing adds to a mix from a lot or from another mix, takes out of it, or discards "
        "from it. What the mix holds follows from all of them, and is printed. An addition from "
        "another mix takes the same mass out of that one. The mix itself is entered first, with "
        "rackbook enter mix.\n\n" +
        std::string(massHelp);
    spec.positionals = {{"mix", "Id of the mix that gains or loses."},
                        {"mass", "What was weighed, such as 4.5g, or the word unknown."}};
    spec.options = {
        valueOption("lot", "LOT", "Id of the tin, tube or bottle it comes from."),
        valueOption("from-mix", "MIX", "Id of the mix it comes from."),
        flagOption("withdraw", "Taken out, to be used without a portion of its own."),
        flagOption("discard", "Thrown away."),
        valueOption("low", "MASS", "The least it can have been, where it is badly known."),
        valueOption("high", "MASS", "The most it can have been."),
        valueOption("balance", "BALANCE", "Id of the balance it was weighed on."),
        valueOption("at", "DATE", "When: a date, a date with a time, or a time of today.", "now"),
        valueOption("note", "TEXT", "Anything else worth keeping.")};
    spec.writesBook = true;
    spec.caution = inkCaution;
    spec.examples = {
        {"rackbook weigh eel-stock-dusk 4.25 --lot plum-violet-1", "4.25 g out of a tin."},
        {"rackbook weigh eel-stock-dusk 3,5ml --lot bottle-green-1",
         "By the measure, where the density of the lot is recorded."},
        {"rackbook weigh eel-l8-b 12 --from-mix eel-l8-letdown --at 18:40",
         "Take a portion off the let-down, at twenty to seven this evening."},
        {"rackbook weigh eel-l8-b unknown --discard --low 1 --high 3",
         "What was scraped off the slab and not weighed."}};
    return {spec, run};
}

}  // namespace rackbook
