#include "commands/StockTake.h"

#include <algorithm>
#include <cmath>

#include "base/Numbers.h"
#include "base/Text.h"
#include "commands/BookAccess.h"
#include "commands/Cautions.h"
#include "commands/GivenValues.h"
#include "commands/InkBookPart.h"
#include "commands/InkWords.h"
#include "commands/MassGiven.h"
#include "commands/OptionRows.h"
#include "commands/Paragraph.h"
#include "commands/RecordNamed.h"
#include "commands/Recording.h"
#include "commands/StockWords.h"

namespace rackbook {

namespace {

// Numbers beyond this are part of somebody's own way of naming, not counted on from.
constexpr long long mostStockTakes = 1'000'000;

std::string nextId(const BookFile& book, const Lot& lot) {
    const std::string beginning = lot.id + "/stock-";
    long long highest = 0;
    for (const StockTake& other : allOf<StockTake>(book)) {
        if (other.id.rfind(beginning, 0) != 0)
            continue;
        const long long number = parseWhole(other.id.substr(beginning.size())).value_or(0);
        if (number <= mostStockTakes)
            highest = std::max(highest, number);
    }
    std::string id;
    do {
        id = beginning + std::to_string(++highest);
    } while (wasStruck(book, StockTake::kind, id));
    return id;
}

// Of the ink alone. A millionth of a gram is far below what is weighed; it keeps 312.4 − 62.4 from
// being written as 249.99999999999997.
double netMass_g(const CommandContext& context, const Lot& lot) {
    MassTerms terms;
    terms.lot = &lot;
    terms.mayBeNothing = true;
    const double gross_g = massGiven(context.arguments.text("mass"), "stock-take: MASS", terms);
    const double tare_g = massOption(context, "stock-take", "tare", terms).value_or(0);
    if (tare_g > gross_g)
        throw UsageError("the empty container (" + formatShortest(tare_g) +
                             " g) weighs more than what was weighed (" + formatShortest(gross_g) +
                             " g)",
                         "MASS with --tare is the container with what is in it; weigh again.");
    constexpr double perMillionth = 1e6;
    return std::round((gross_g - tare_g) * perMillionth) / perMillionth;
}

StockTake stockTakeGiven(const CommandContext& context, const BookFile& book, const Book& studio,
                         const Lot& lot) {
    StockTake take;
    take.lot = {lot.id};
    take.mass_g = netMass_g(context, lot);
    take.at = momentGivenOrNow(context, studio, "at");
    take.balance = refGiven<Balance>(context, book, "balance");
    take.note = context.arguments.value("note");
    take.id = nextId(book, lot);
    return take;
}

// What the book makes of a stock-take that it holds, or that is only tried.
StockDifference differenceOf(const BookFile& book, const StockTake& take) {
    InkBook ink = inkBookWith(book, {RecordKind::book, RecordKind::lot, RecordKind::stockTake});
    if (ink.records.find<StockTake>(take.id) == nullptr)
        ink.records.add(take);
    const auto lot = static_cast<std::size_t>(ink.records.indexOf<Lot>(take.lot.id));
    const auto position = static_cast<std::size_t>(ink.records.indexOf<StockTake>(take.id));
    const std::vector<LotUse> uses = lotUseOf(ink, take.at.latest());
    for (const StockDifference& difference : uses[lot].differences)
        if (difference.stockTake == position)
            return difference;
    return {position, Estimate::anyMass(), Estimate::anyMass()};
}

void printDifference(Console& console, const StockTake& take, const StockDifference& difference) {
    if (std::isinf(difference.expected_g.high)) {
        printParagraph(console,
                       "The book cannot tell how much was to be expected: no net mass of "
                       "lot " +
                           take.lot.id +
                           " is recorded and no earlier stock-take. It counts from this "
                           "one on.");
        return;
    }
    std::string text = "Expected by the book: " + gramsWords(difference.expected_g, 2) +
                       ". Found: " + formatFixed(take.mass_g, 2) + " g, " +
                       differenceWords(difference.difference_g) + ". ";
    if (difference.difference_g.high < 0)
        text +=
            "More went than was recorded: what stuck to lid and knife, or a weighing that was "
            "left out. ";
    else if (difference.difference_g.low > 0)
        text +=
            "Less went than was recorded: look for a weighing recorded twice, or one that came "
            "from another lot. ";
    printParagraph(console, text + "From here on the book counts from what was found.");
}

void printRemarks(Console& console, const StockTake& take, const Lot& lot) {
    if (lot.netMass_g && take.mass_g > *lot.netMass_g)
        printParagraph(console, "That is more than lot " + lot.id + " held when it was new (" +
                                    formatShortest(*lot.netMass_g) +
                                    " g). Was the container on the balance too? --tare takes it "
                                    "off.");
    if (lot.finishedOn && certainlyBefore(*lot.finishedOn, take.at))
        printParagraph(console, "The book has lot " + lot.id + " as finished on " +
                                    lot.finishedOn->text() + ".");
    const std::string day = formatDay(take.at.earliest());
    if (take.mass_g == 0 && !lot.finishedOn)
        printParagraph(console,
                       "It is empty. That the lot is finished is recorded with rackbook "
                       "enter lot " +
                           lot.id + " finishedOn=" + day + " --changed-on " + day + ".");
}

ExitCode run(CommandContext& context) {
    BookFile book = bookToWrite(context);
    const Book studio = bookRecordOf(book);
    const Lot lot = recordNamed<Lot>(book, context.arguments.text("lot"));
    const StockTake take = stockTakeGiven(context, book, studio, lot);
    const ExitCode code = recordMade(context, book, {{take, std::nullopt}});
    printDifference(context.console, take, differenceOf(book, take));
    printRemarks(context.console, take, lot);
    return code;
}

}  // namespace

Command stockTakeCommand() {
    CommandSpec spec;
    spec.name = "stock-take";
    spec.group = toTranslate("group", "At the press");
    spec.summary =
        toTranslate("summary", "Record what a tin, tube or bottle still holds, weighed again");
    spec.details =
        "Weigh the container and give what is in it, or give both masses and let "
        "--tare take the container off. The difference from what the weighings leave "
        "is printed; from then on the book counts from what was found. Nothing left "
        "is 0.\n\n" +
        std::string(massHelp);
    spec.positionals = {{"lot", "Id of the tin, tube or bottle."},
                        {"mass", "What was weighed; 0 where nothing usable is left."}};
    spec.options = {
        valueOption("tare", "MASS", "Of the empty container, where it was weighed too."),
        valueOption("at", "DATE", "When: a date, a date with a time, or a time of today.", "now"),
        valueOption("balance", "BALANCE", "Id of the balance it was weighed on."),
        valueOption("note", "TEXT", "Anything else worth keeping.")};
    spec.writesBook = true;
    spec.caution = inkCaution;
    spec.examples = {
        {"rackbook stock-take straw-ochre-1 231.5 --tare 48", "The tin and its ink, less the tin."},
        {"rackbook stock-take field-rose-1 0 --note \"squeezed out\"", "An empty tube."}};
    return {spec, run};
}

}  // namespace rackbook
