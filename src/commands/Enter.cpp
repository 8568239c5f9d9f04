#include "commands/Enter.h"

#include <algorithm>
#include <set>

#include "base/Text.h"
#include "cli/Table.h"
#include "commands/BookAccess.h"
#include "commands/Cautions.h"
#include "commands/FieldChanges.h"
#include "commands/FieldWords.h"
#include "commands/GivenValues.h"
#include "commands/KindFields.h"
#include "commands/OptionRows.h"
#include "commands/RecordNamed.h"
#include "commands/Recording.h"

namespace rackbook {

namespace {

ExitCode showFields(CommandContext& context, RecordKind kind) {
    Table table({{"field"}, {"needed"}, {"meaning"}});
    for (const FieldMeaning& field : fieldsOfKind(context.folders.schema, kind))
        table.addRow({field.name, field.needed ? "yes" : "", field.meaning});
    context.console.out() << table.text(context.console.width(), "It has no fields.");
    return ExitCode::success;
}

std::vector<FieldWords> wordsGiven(const CommandContext& context, const std::string& name) {
    std::vector<FieldWords> words;
    std::set<std::string> seen;
    for (const std::string& one : context.arguments.values("field")) {
        words.push_back(fieldWordsFrom(one));
        if (!seen.insert(words.back().path).second)
            throw UsageError(excerpt(words.back().path) + " is set twice", "Set it once.");
    }
    if (words.empty())
        throw UsageError("nothing is said about " + name, "Add FIELD=VALUE.");
    return words;
}

// A new record must say what it cannot do without; its type would fill in something else.
void requireNeeded(const CommandContext& context, RecordKind kind,
                   const std::vector<FieldWords>& words) {
    std::vector<std::string> missing;
    std::string meanings;
    for (const FieldMeaning& field : fieldsOfKind(context.folders.schema, kind)) {
        const bool isPart = field.name.find('.') != std::string::npos;
        const bool given = std::any_of(words.begin(), words.end(), [&](const FieldWords& one) {
            return one.field() == field.name && !one.value.empty();
        });
        if (!field.needed || isPart || given)
            continue;
        missing.push_back(field.name);
        meanings += "\n" + field.name + ": " + field.meaning;
    }
    if (!missing.empty())
        throw UsageError(
            "a new " + std::string(textOf(kind)) + " needs " + joined(missing) + "." + meanings,
            {});
}

// What the book holds of it; nothing where it is new.
std::optional<Record> standing(const BookFile& book, RecordKind kind, const std::string& id) {
    std::optional<Record> found;
    withRecordType(kind, [&](auto tag) {
        if (auto record = findIn<typename decltype(tag)::Type>(book, id))
            found = std::move(*record);
    });
    return found;
}

Record blank(RecordKind kind, const std::string& id) {
    Record record;
    withRecordType(kind, [&](auto tag) {
        typename decltype(tag)::Type made{};
        made.id = id;
        record = std::move(made);
    });
    return record;
}

void requireTerms(const CommandContext& context, bool isKnown, const std::string& name) {
    const bool reason = context.arguments.has("reason");
    const bool changedOn = context.arguments.has("changed-on");
    if (reason && changedOn)
        throw UsageError("--reason and --changed-on cannot both be true",
                         "Give --reason where the book was wrong, --changed-on where the thing "
                         "itself changed.");
    if (isKnown && !reason && !changedOn)
        throw UsageError(name + " is in the book already",
                         "Add --reason TEXT where the book was wrong, or --changed-on DATE where "
                         "the thing itself changed.");
    if (!isKnown && (reason || changedOn))
        throw UsageError("the book has no " + name + " to change",
                         "Check the id, or leave out --reason and --changed-on to enter it new.");
}

void printChanges(Console& console, const Record& before, const Record& after) {
    Table table({{"field"}, {"before"}, {"after"}});
    for (const FieldChange& change : changesBetween(before, after))
        table.addRow({change.field, change.before, change.after});
    if (!table.isEmpty())
        console.out() << "\n" << table.text(console.width(), {});
}

ExitCode run(CommandContext& context) {
    const RecordKind kind = recordKindNamed(context.arguments.text("kind"));
    const std::optional<std::string> id = context.arguments.value("id");
    if (!id)
        return showFields(context, kind);
    const std::string name = nameOf(kind, *id);
    const std::vector<FieldWords> words = wordsGiven(context, name);
    BookFile book = bookToWrite(context);
    const std::optional<Record> before = standing(book, kind, *id);
    requireTerms(context, before.has_value(), name);
    Record after = before ? *before : blank(kind, *id);
    for (const FieldWords& one : words)
        setField(book, after, one);
    if (!before)
        requireNeeded(context, kind, words);
    std::optional<std::string> changedOn;
    if (const std::optional<EdtfDate> date = dateGiven(context, "changed-on"))
        changedOn = date->text();
    const ExitCode code =
        recordMade(context, book, {{after, changedOn}}, context.arguments.value("reason"));
    if (before)
        printChanges(context.console, *before, after);
    return code;
}

std::vector<Example> enterExamples() {
    return {
        {"rackbook enter lot", "List the fields of a lot."},
        {"rackbook enter party tove name=\"Tove\" roles=maker,printer", "A new party."},
        {"rackbook enter place west-line name=\"Line by the west window\" placeKind=rack "
         "light.lightKind=daylight light.windowAzimuth_deg=270",
         "A new place and its light."},
        {"rackbook enter mix eel-l9-a name=\"Lamplight, portion a\" purpose=portion edition=EEL",
         "A mix, before anything is weighed into it."},
        {"rackbook enter lot base-2 finishedOn=2026-03-20 --changed-on 2026-03-20",
         "A tin that was finished."},
        {"rackbook enter edition EEL paper=\"Kozo, 40 g/m2\" --reason \"the label says so\"",
         "Correct the book."}};
}

}  // namespace

Command enterCommand() {
    CommandSpec spec;
    spec.name = "enter";
    spec.group = toTranslate("group", "At the press");
    spec.summary = toTranslate("summary", "Enter or change any record, field by field");
    spec.details =
        "For what has no verb of its own: parties, places, lots, blocks, mixes, drawdowns, "
        "readings, transfers, and for changing any record. With a kind alone it lists the fields "
        "of that kind and writes nothing.\n\n"
        "Dates are written as well as they are known; yes and no for what is either so or not; "
        "another record by its id. A list takes its items with commas between, a list of "
        "impressions also CODE or CODE:1-12,15. A part of a list has its number: "
        "light.1.lightKind=daylight light.1.from=2026-03-01, or light.lightKind where there is one "
        "part at most. FIELD= with nothing behind it takes out what was there.\n\n"
        "A record that the book holds changes only with --reason, where the book was wrong, or "
        "--changed-on, where the thing itself changed: a tin was finished, a block was cancelled. "
        "The journal keeps what stood before.";
    spec.positionals = {{"kind", "The kind of record, such as party, place, lot or mix."},
                        {"id", "Its id: letters, digits and . _ - / only.", false},
                        {"field", "FIELD=VALUE.", false, true}};
    spec.options = {valueOption("reason", "TEXT", "Why the book was wrong."),
                    valueOption("changed-on", "DATE", "When the thing itself changed.")};
    spec.writesBook = true;
    spec.caution = inkCaution;
    spec.examples = enterExamples();
    return {spec, run};
}

}  // namespace rackbook
