#include "commands/Meter.h"

#include <algorithm>
#include <cmath>

#include "base/Clock.h"
#include "base/Numbers.h"
#include "base/Text.h"
#include "base/TypedNumber.h"
#include "checks/MeteringDoubts.h"
#include "commands/BookAccess.h"
#include "commands/GivenValues.h"
#include "commands/OptionRows.h"
#include "commands/Paragraph.h"
#include "commands/RecordNamed.h"
#include "commands/Recording.h"
#include "commands/ShareGiven.h"

namespace rackbook {

namespace {

std::optional<double> amountGiven(const CommandContext& context, const std::string& option,
                                  const std::string& unit) {
    const std::optional<std::string> text = context.arguments.value(option);
    if (!text)
        return std::nullopt;
    const std::optional<double> value = parseTypedNumber(*text);
    if (!value || *value < 0)
        throw UsageError("meter: --" + option + " is \"" + excerpt(*text) + "\"",
                         "Give " + unit + ", 0 or more.");
    return value;
}

// A millionth is far below what is measured; it keeps 0.1 lx over 3 hours from being written as
// 0.30000000000000004.
double rounded(double value) {
    constexpr double perMillionth = 1e6;
    return std::round(value * perMillionth) / perMillionth;
}

// The instant of a time on the studio's clocks; nothing where they showed it twice and no shift
// behind it says which is meant.
std::optional<CivilMinute> utcOf(const EdtfDate& date, const Book& studio) {
    if (const std::optional<int> east_min = date.utcOffset_min())
        return date.earliest() - *east_min;
    if (shiftsShowing_min(date.earliest(), studio.timeZone).size() > 1)
        return std::nullopt;
    return zoneShiftsOf(studio.timeZone).utcOf(date.earliest());
}

// Hours that went by, whatever was done to the clocks meanwhile.
std::optional<double> passed_h(const Book& studio, const Metering& metering) {
    const std::optional<CivilMinute> from = utcOf(metering.from, studio);
    const std::optional<CivilMinute> to = utcOf(metering.to, studio);
    if (!from || !to)
        return std::nullopt;
    return std::max(0.0, static_cast<double>(*to - *from) / 60);
}

[[noreturn]] void refuseTwice(const CommandContext& context, const Book& studio,
                              const Metering& metering) {
    const bool isStart = !utcOf(metering.from, studio);
    const EdtfDate& date = isStart ? metering.from : metering.to;
    const std::string option = isStart ? "from" : "to";
    throw UsageError("meter: --" + option + " is \"" + excerpt(context.arguments.text(option)) +
                         "\", which the studio's clocks showed twice",
                     "Write the date with the shift that they had, as " +
                         formatMinute(date.earliest()) +
                         offsetText(date.earliest(), studio.timeZone) + ", or give --lux-hours.");
}

void setCovered(const CommandContext& context, const Book& studio, Metering& metering) {
    const std::optional<std::string> covered = context.arguments.value("covered");
    if (!covered)
        return;
    // What is longer than the clock's own time is refused with the record.
    const double onTheClock_h = seen_h(metering);
    metering.covered_h =
        positiveGiven(*covered, "meter: --covered", "Give hours, such as 2.5 or 2,5.");
    const std::optional<double> most_h = passed_h(studio, metering);
    if (most_h && *metering.covered_h > *most_h && *metering.covered_h <= onTheClock_h)
        throw UsageError("meter: --covered is " + formatShortest(*metering.covered_h) + ", and " +
                             formatShortest(rounded(*most_h)) +
                             " h went by; the clocks were put forward",
                         "Give hours that went by.");
}

void setAmounts(const CommandContext& context, const Book& studio, Metering& metering) {
    const std::optional<double> mean_lx = amountGiven(context, "lux", "lux");
    metering.exposure_lxh = amountGiven(context, "lux-hours", "lux hours");
    metering.nearUltraviolet_Whm2 = amountGiven(context, "uv", "watt hours per square metre");
    if (mean_lx && *mean_lx > highestPossible_lx)
        throw UsageError("meter: --lux is " + formatShortest(*mean_lx) + "; full sun stays below " +
                             formatFixed(highestPossible_lx, 0) + " lx",
                         "Give the mean in lux; what the instrument added up goes with "
                         "--lux-hours.");
    if (mean_lx && metering.exposure_lxh)
        throw UsageError("--lux and --lux-hours say the same in two ways", "Give one of them.");
    setCovered(context, studio, metering);
    if (mean_lx) {
        const std::optional<double> hours =
            metering.covered_h ? metering.covered_h : passed_h(studio, metering);
        if (!hours)
            refuseTwice(context, studio, metering);
        metering.exposure_lxh = rounded(*mean_lx * *hours);
    }
    if (!metering.exposure_lxh && !metering.nearUltraviolet_Whm2)
        throw UsageError("nothing is said of how much light there was",
                         "Give --lux, --lux-hours or --uv.");
}

void requireNotAhead(const CommandContext& context, const Book& studio, const Metering& metering) {
    const char* option = metering.from.earliest() > nowAt(studio).latest() ? "from" : "to";
    if (metering.from.earliest() > nowAt(studio).latest() ||
        metering.to.earliest() > nowAt(studio).latest())
        throw UsageError(
            "meter: --" + std::string(option) + " is \"" + excerpt(context.arguments.text(option)) +
                "\", which is still to come; it is " + nowAt(studio).text() + " at the studio",
            "Record what was measured once it is over.");
}

Metering meteringGiven(const CommandContext& context, const BookFile& book, const Book& studio) {
    Metering metering;
    metering.place = {recordNamed<Place>(book, context.arguments.text("place")).id};
    metering.from = *momentGiven(context, studio, "from");
    metering.to = *momentGivenOn(context, metering.from.earliest(), "to");
    requireNotAhead(context, studio, metering);
    setAmounts(context, studio, metering);
    metering.instrument = context.arguments.value("instrument");
    metering.note = context.arguments.value("note");
    metering.id = freshId(Metering::kind, metering.from);
    return metering;
}

void printOverlaps(CommandContext& context, const BookFile& book, const Metering& metering) {
    for (const Metering& other : allOf<Metering>(book))
        if (other.id != metering.id && measureTheSame(other, metering))
            printParagraph(context.console,
                           "Metering " + other.id + " measured the same at this place from " +
                               other.from.text() + " to " + other.to.text() +
                               ". Where one of the two was typed twice, strike it out.");
}

void warnOfDoubts(CommandContext& context, const BookFile& book, const Book& studio,
                  const Metering& metering) {
    const std::vector<Place> places = allOf<Place>(book);
    std::vector<Metering> meterings = allOf<Metering>(book);
    meterings.push_back(metering);  // also where it was only tried
    const MeteringDoubts doubts(places, meterings, &studio);
    const auto say = [&](const std::optional<MeteringDoubt>& doubt) {
        if (doubt)
            context.console.err() << "rackbook: " << printable(doubt->what + ". " + doubt->remedy)
                                  << "\n";
    };
    say(doubts.darkPlace(metering));
    say(doubts.beyondSun(metering));
    // The ultraviolet may have been recorded before the light.
    for (const Metering& other : meterings)
        if (&other == &meterings.back() ||
            (other.id != metering.id && areOfOneTime(other, metering)))
            say(doubts.beyondItsLight(other));
}

ExitCode run(CommandContext& context) {
    BookFile book = bookToWrite(context);
    const Book studio = bookRecordOf(book);
    const Metering metering = meteringGiven(context, book, studio);
    const ExitCode code = recordMade(context, book, {{metering}});
    printOverlaps(context, book, metering);
    warnOfDoubts(context, book, studio, metering);
    return code;
}

}  // namespace

Command meterCommand() {
    CommandSpec spec;
    spec.name = "meter";
    spec.group = toTranslate("group", "At the press");
    spec.summary =
        toTranslate("summary", "Record light measured at a place over some time of a day");
    spec.details =
        "The instrument lies or hangs where the sheets do and faces as they do. What it showed is "
        "typed as it is: a mean in lux, or lux hours where it adds up by itself, or watt hours per "
        "square metre of near ultraviolet (UV-A, 315 to 400 nm); light and ultraviolet may be "
        "given together.\n\n"
        "A mean in lux is multiplied by the hours from --from to --to, or by --covered where the "
        "instrument saw only a part of that time. Times are those of the wall clock; hours that "
        "went by are counted also in a night in which the clocks are changed. What is more than "
        "the sun over the studio can give in that time is pointed out.";
    spec.positionals = {{"place", "Id of the place."}};
    spec.options = {
        required(valueOption("from", "DATE",
                             "When it began: a date with a time, or a time of "
                             "today.")),
        required(valueOption("to", "DATE",
                             "When it ended: a date with a time, or a time of the "
                             "same day.")),
        valueOption("lux", "LUX", "The mean level of light over that time."),
        valueOption("lux-hours", "LUXHOURS", "The light of all that time together."),
        valueOption("uv", "WATTHOURS", "Near ultraviolet of all that time together, in Wh/m²."),
        valueOption("covered", "HOURS", "How much of that time the instrument saw.", "all of it"),
        valueOption("instrument", "TEXT", "The instrument in words."),
        valueOption("note", "TEXT", "Anything else worth keeping.")};
    spec.writesBook = true;
    spec.examples = {{"rackbook meter south-rack --from 2026-03-18T09:00 --to 17:00 --lux 850",
                      "A mean of 850 lx over eight hours, which is 6800 lx·h."},
                     {"rackbook meter south-rack --from 2026-03-18T09:00 --to 17:00 --uv 3,2",
                      "3.2 Wh/m² of near ultraviolet in the same time."}};
    return {spec, run};
}

}  // namespace rackbook
