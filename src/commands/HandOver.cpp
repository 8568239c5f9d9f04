#include "commands/HandOver.h"

#include <set>

#include "base/Text.h"
#include "base/TypedNumber.h"
#include "commands/BookAccess.h"
#include "commands/GivenValues.h"
#include "commands/Moving.h"
#include "commands/OptionRows.h"
#include "commands/RecordNamed.h"
#include "commands/StoredEarly.h"
#include "records/TransferMove.h"

namespace rackbook {

namespace {

TransferKind kindGiven(const CommandContext& context) {
    const std::string word = context.arguments.text("kind");
    if (const std::optional<TransferKind> kind = enumFrom<TransferKind>(word))
        return *kind;
    const std::vector<std::string> words = enumNames<TransferKind>();
    const std::optional<std::string> nearest = nearestName(word, words);
    throw UsageError(
        "hand-over: \"" + excerpt(word) + "\" is no kind of transfer",
        nearest ? "Did you mean " + *nearest + "?" : "Use one of " + joined(words, " or ") + ".");
}

// Who has a sheet by its record: its holder, else whoever made it.
Ref<Party> hasIt(const BookFile& book, const Impression& sheet) {
    return sheet.holder ? *sheet.holder : recordNamed<Edition>(book, sheet.edition.id).maker;
}

// --from, else the one party that has all of the sheets.
Ref<Party> giverOf(const CommandContext& context, const BookFile& book,
                   const std::vector<Impression>& sheets) {
    if (const std::optional<Ref<Party>> given = refGiven<Party>(context, book, "from"))
        return *given;
    std::set<std::string> holders;
    for (const Impression& sheet : sheets)
        holders.insert(hasIt(book, sheet).id);
    if (holders.size() > 1)
        throw UsageError(
            "these sheets are with " + joined({holders.begin(), holders.end()}, " and "),
            "Hand them over one party after the other.");
    return {*holders.begin()};
}

// Whether that party may give it: its holder, or, where none is named, whoever made it.
bool mayGive(const BookFile& book, const Impression& sheet, const Ref<Party>& giver) {
    if (sheet.holder)
        return *sheet.holder == giver;
    const Edition edition = recordNamed<Edition>(book, sheet.edition.id);
    return edition.maker == giver || edition.printer == giver || edition.publisher == giver;
}

// Every sheet that cannot go, all of them at once.
void requireAtHand(const BookFile& book, const std::vector<Impression>& sheets,
                   const Ref<Party>& giver) {
    std::string refusals;
    for (const Impression& sheet : sheets) {
        const std::string line = refusals.empty() ? "" : "\n";
        if (sheet.fate != ImpressionFate::kept)
            refusals += line + sheet.id + ": it is " + textOf(sheet.fate) + ". Leave it out.";
        else if (!mayGive(book, sheet, giver))
            refusals += line + sheet.id + ": it is with " + hasIt(book, sheet).id + ", not with " +
                        giver.id + ". Record how it came to " + giver.id + " first, or give " +
                        "--from " + hasIt(book, sheet).id + ".";
    }
    if (!refusals.empty())
        throw UsageError(refusals, {});
}

std::optional<double> priceGiven(const CommandContext& context) {
    const std::optional<std::string> text = context.arguments.value("price");
    if (!text)
        return std::nullopt;
    const std::optional<double> price = parseTypedNumber(*text);
    if (!price || *price < 0)
        throw UsageError("--price is \"" + excerpt(*text) + "\", which is no price",
                         "Write a number with nothing between thousands, such as 900 or 1250,50; "
                         "the currency goes into --currency.");
    return price;
}

std::optional<EdtfDate> dueGiven(const CommandContext& context, TransferKind kind) {
    const std::optional<EdtfDate> due = dateGiven(context, "due");
    if (due && kind != TransferKind::consignment && kind != TransferKind::loan)
        throw UsageError("only a consignment or a loan comes to an end", "Leave --due out.");
    return due;
}

// Whoever made a sheet has it without being named as its holder.
std::vector<MadeRecord> withHolder(const BookFile& book, const std::vector<Impression>& sheets,
                                   const Ref<Party>& receiver, const EdtfDate& on) {
    std::vector<MadeRecord> made;
    for (Impression sheet : sheets) {
        sheet.holder = receiver;
        if (recordNamed<Edition>(book, sheet.edition.id).maker == receiver)
            sheet.holder.reset();
        made.push_back({sheet, on.text()});
    }
    return made;
}

Transfer transferGiven(const CommandContext& context, const BookFile& book,
                       const std::vector<Impression>& sheets, const EdtfDate& on) {
    const Arguments& arguments = context.arguments;
    Transfer transfer;
    transfer.transferKind = kindGiven(context);
    transfer.impressions = refsTo(sheets);
    transfer.receiver = {recordNamed<Party>(book, arguments.text("to")).id};
    transfer.giver = giverOf(context, book, sheets);
    if (transfer.giver == transfer.receiver)
        throw UsageError("the sheets are with " + transfer.receiver.id + " already",
                         "Name another party with --to.");
    transfer.agreedOn = on;
    transfer.id = arguments.value("id").value_or(freshId(Transfer::kind, on));
    if (arguments.has("id"))
        requireNewId<Transfer>(book, transfer.id);
    transfer.dueOn = dueGiven(context, transfer.transferKind);
    transfer.price = priceGiven(context);
    transfer.currency = arguments.value("currency");
    transfer.terms = arguments.value("terms");
    transfer.note = arguments.value("note");
    return transfer;
}

ExitCode run(CommandContext& context) {
    BookFile book = bookToWrite(context);
    const Book studio = bookRecordOf(book);
    const std::vector<Impression> sheets =
        sheetsNamed(book, context.arguments.text("sheets")).sheets;
    const EdtfDate on = dateGiven(context, "on").value_or(dayIn(nowAt(studio)));
    const Transfer transfer = transferGiven(context, book, sheets, on);
    requireAtHand(book, sheets, transfer.giver);
    const std::optional<Ref<Place>> place = refGiven<Place>(context, book, "move-to");
    std::vector<MadeRecord> made = {{transfer}};
    for (MadeRecord& sheet : withHolder(book, sheets, transfer.receiver, on))
        made.push_back(std::move(sheet));
    if (place)
        made.push_back({moveOf(book, sheets, *place, on, moveWhyOf(transfer.transferKind))});
    const ExitCode code = recordMade(context, book, made);
    if (place && !context.arguments.has("dry-run"))
        warnOfStoredEarly(context.console, book, sheets, on.latest());
    return code;
}

}  // namespace

Command handOverCommand() {
    CommandSpec spec;
    spec.name = "hand-over";
    spec.group = toTranslate("group", "At the press");
    spec.summary = toTranslate(
        "summary", "Record that sheets go to someone: consigned, sold, lent, given, returned");
    spec.details =
        "KIND is one of " + joined(enumNames<TransferKind>(), " or ") +
        ". SHEETS is an edition's code for all its kept impressions, a code with working numbers "
        "such as TIDE:1-12,15, or ids of impressions with commas between.\n\n"
        "Records what was agreed, and who has the sheets from then on; with --move-to also that "
        "they went to that place. Refused are sheets that are spoiled or destroyed, and those that "
        "someone else has. Parties are entered with rackbook enter party ID name=NAME.";
    spec.positionals = {{"kind", "What was agreed."}, {"sheets", "Which impressions."}};
    spec.options = {
        required(valueOption("to", "PARTY", "Id of the party who gets them.")),
        valueOption("from", "PARTY", "Id of the party who gives them.",
                    "whoever has all of them: their holder, else the edition's maker"),
        valueOption("on", "DATE", "When it was agreed, as well as it is known.",
                    "today at the studio"),
        valueOption("due", "DATE", "When a consignment or a loan ends."),
        valueOption("price", "NUMBER", "The price for all of them together."),
        valueOption("currency", "CODE", "The currency of the price, such as DKK.", "the book's"),
        valueOption("terms", "TEXT", "The terms in words."),
        valueOption("move-to", "PLACE", "Id of the place they go to; records the move too."),
        valueOption("note", "TEXT", "Anything else worth keeping."),
        valueOption("id", "ID", "An id of your own for the transfer.", "one is made up")};
    spec.writesBook = true;
    spec.examples = {
        {"rackbook hand-over consignment EEL:13 --to skovlomme --due 2026-09 --price 2200 "
         "--move-to skovlomme-store",
         "A sheet goes to a gallery until September."}};
    return {spec, run};
}

}  // namespace rackbook
