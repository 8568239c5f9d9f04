#include "commands/BookAccess.h"

#include <QString>

#include "base/Clock.h"
#include "base/Text.h"
#include "commands/GivenValues.h"
#include "exchange/RecordCodec.h"
#include "store/BookAsSaid.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

// The moment at which a zone's clocks showed that minute, as the journal writes it; the first of
// two, and an hour on where they were put forward over it.
std::string utcAt(CivilMinute civil, const std::string& timeZone) {
    const std::vector<int> shifts = shiftsShowing_min(civil, timeZone);
    if (shifts.empty())
        return utcAt(civil + 60, timeZone);
    return formatMinute(civil - shifts.front()) + ":00Z";
}

}  // namespace

BookOptions bookOptionsOf(const CommandContext& context) {
    BookOptions options;
    options.path = bookPath(context.arguments);
    // To SQLite a name that begins with a colon means no file.
    if (options.path.front() == ':')
        options.path = "./" + options.path;
    options.schemaFolder = context.folders.schema;
    options.onlyTries = context.arguments.has("dry-run");
    if (const std::optional<long long> wait_s = context.arguments.whole("wait")) {
        if (*wait_s < 0 || *wait_s > 3600)
            throw UsageError("--wait takes 0 to 3600 seconds", "Give a number in that range.");
        options.wait_s = static_cast<int>(*wait_s);
    }
    return options;
}

BookFile bookToRead(const CommandContext& context) {
    if (context.jointBook)
        return context.jointBook->sameBook();
    BookFile book = BookFile::openToRead(bookOptionsOf(context));
    if (!context.arguments.has("said-on"))
        return book;
    const EdtfDate day = dateFrom(context.arguments.text("said-on"), "said-on");
    if (day.isBadlyKnown() || day.hasTime())
        throw UsageError("--said-on takes one day", "Write it as 2026-03-20.");
    return bookAsSaid(book, utcAt(day.latest() + 1, bookRecordOf(book).timeZone), decodeRecord);
}

BookFile bookToWrite(const CommandContext& context) {
    return context.jointBook ? context.jointBook->sameBook()
                             : BookFile::openToWrite(bookOptionsOf(context));
}

std::string recorderOf(const CommandContext& context) {
    if (const std::optional<std::string> name = context.arguments.value("by"))
        return *name;
    for (const char* variable : {"RACKBOOK_BY", "LOGNAME", "USER"}) {
        const QString name = qEnvironmentVariable(variable);
        if (!name.isEmpty())
            return name.toStdString();
    }
    return nobodyNamed;
}

RecordKind recordKindNamed(const std::string& name) {
    if (const std::optional<RecordKind> kind = enumFrom<RecordKind>(name))
        return *kind;
    const std::vector<std::string> known = enumNames<RecordKind>();
    const std::optional<std::string> nearest = nearestName(name, known);
    throw UsageError(
        "there is no kind of record \"" + excerpt(name) + "\"",
        nearest ? "Did you mean " + *nearest + "?" : "It is one of " + joined(known, " or ") + ".");
}

Edition editionNamed(const BookFile& book, const std::string& idOrCode) {
    if (std::optional<Edition> edition = findIn<Edition>(book, idOrCode))
        return std::move(*edition);
    std::vector<Edition> coded = thoseOf<Edition>(book, "code", idOrCode);
    if (!coded.empty())
        return std::move(coded.front());
    std::vector<std::string> codes;
    for (const Edition& edition : allOf<Edition>(book))
        codes.push_back(edition.code);
    const std::optional<std::string> nearest = nearestName(idOrCode, codes);
    throw UsageError("the book has no edition \"" + excerpt(idOrCode) + "\"",
                     nearest         ? "Did you mean " + *nearest + "?"
                     : codes.empty() ? "Record one with rackbook edition."
                                     : "It has " + joined(codes) + ".");
}

CivilMinute asOfDay(const CommandContext& context, const Book& studio) {
    const std::optional<std::string> on = context.arguments.value("on");
    if (!on)
        return EdtfDate::ofDay(civilMinuteAt(nowEpoch_s(), studio.timeZone)).latest();
    const EdtfDate day = dateFrom(*on, "on");
    if (day.isBadlyKnown() || day.hasTime())
        throw UsageError("--on takes one day", "Write it as 2026-03-20.");
    return day.latest();
}

EdtfDate nowAt(const Book& studio) {
    return EdtfDate::ofMinute(civilMinuteAt(nowEpoch_s(), studio.timeZone));
}

}  // namespace rackbook
