#include "commands/Stock.h"

#include <algorithm>

#include "commands/BookAccess.h"
#include "commands/InkBook.h"
#include "commands/InkBookPart.h"
#include "commands/LotsWanted.h"
#include "commands/OptionRows.h"
#include "commands/RecordNamed.h"
#include "commands/StockLot.h"
#include "commands/StockReport.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

// Those named, in the order given; else those not finished by then, or all.
std::vector<std::size_t> lotsAsked(const CommandContext& context, const InkBook& ink,
                                   CivilMinute asOf) {
    const std::vector<Lot>& all = ink.records.of<Lot>();
    std::vector<std::size_t> asked;
    std::vector<std::string> ids;
    for (const Lot& lot : all)
        ids.push_back(lot.id);
    for (const std::string& id : context.arguments.values("lot")) {
        const int position = ink.records.indexOf<Lot>(id);
        if (position < 0)
            refuseUnknownRecord(RecordKind::lot, id, ids);
        const auto lot = static_cast<std::size_t>(position);
        if (std::find(asked.begin(), asked.end(), lot) == asked.end())
            asked.push_back(lot);
    }
    if (!asked.empty())
        return asked;
    for (std::size_t lot = 0; lot < all.size(); ++lot) {
        const bool finished = all[lot].finishedOn && all[lot].finishedOn->latest() <= asOf;
        if (!finished || context.arguments.has("all"))
            asked.push_back(lot);
    }
    return asked;
}

// Of a lot's weighings, and of what lots are of, more is told and asked than of the shelf.
InkBook inkBookFor(const CommandContext& context, const BookFile& book) {
    const Arguments& arguments = context.arguments;
    const bool isOfShelf = arguments.values("lot").empty() && !arguments.has("edition") &&
                           !arguments.has("place") && !arguments.has("during");
    return isOfShelf ? inkBookWith(book, {RecordKind::book, RecordKind::lot, RecordKind::stockTake})
                     : inkBookOf(book);
}

ExitCode run(CommandContext& context) {
    const std::vector<NamedOffer> offers = offersFrom(context.arguments.values("offer"));
    const bool details = context.arguments.values("lot").size() == 1;
    if (!offers.empty() && !details)
        throw UsageError("--offer is compared with the use of one lot", "Name one lot.");
    const BookFile book = bookToRead(context);
    const InkBook ink = inkBookFor(context, book);
    const CivilMinute asOf = asOfDay(context, ink.studio);
    std::vector<std::size_t> asked = lotsAsked(context, ink, asOf);
    keepLotsWanted(context, ink, asked);
    const StockFacts facts{ink, asOf, lotUseOf(ink, asOf), std::move(asked)};
    if (context.arguments.has("json")) {
        Tree report = treeOf(facts);
        if (details)
            addLotDetails(report, facts, offers);
        context.console.out() << jsonText(report);
    } else if (details) {
        printLot(context.console, facts, offers);
    } else {
        printStock(context.console, facts);
    }
    return ExitCode::success;
}

}  // namespace

Command stockCommand() {
    CommandSpec spec;
    spec.name = "stock";
    spec.group = toTranslate("group", "Questions");
    spec.summary = toTranslate(
        "summary", "Say what is left in the tins, how long it lasts and what a gram costs");
    spec.details =
        "For each lot that is not finished: what the weighings and the last stock-take leave, the "
        "use in a month, when it runs out and whether that is before it no longer keeps, and what "
        "a gram that is really used costs. Lots that are old, nearly out or were never weighed "
        "are pointed out. One lot alone is shown with all that was taken from it and every "
        "stock-take, and can be compared with other containers: a big tin is dear when it "
        "outlasts its ink.\n\n"
        "--edition, --place and --during choose among the lots; --holder and --verdict do not "
        "apply, since they are about prints.";
    spec.positionals = {{"lot", "Ids of tins, tubes or bottles.", false, true}};
    spec.options = {
        valueOption("on", "DATE", "As of this day.", "today at the studio"),
        flagOption("all", "Also lots that are finished."),
        repeatable(valueOption("offer", "PRICE:MASS[:DAYS]",
                               "A container on offer: price, net mass, and how many days it keeps "
                               "once opened. Twice or more, with one lot."))};
    for (OptionSpec& filter : lotFilters())
        spec.options.push_back(std::move(filter));
    spec.reportsJson = true;
    spec.examples = {{"rackbook stock", "All that is open."},
                     {"rackbook stock field-rose-1 --offer 96:60:1825 --offer 290:250:730",
                      "Would the tin be cheaper than the tube, at the use there is?"}};
    return {spec, run};
}

}  // namespace rackbook
