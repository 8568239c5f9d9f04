#include "commands/Meter.h"

#include <algorithm>
#include <cmath>

#include "base/TypedNumber.h"
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

// Hours by the wall clock; 0 or less where the record will be refused.
double hoursOf(const Metering& metering) {
    return static_cast<double>(metering.to.earliest() - metering.from.earliest()) / 60;
}

// A millionth is far below what is measured; it keeps 0.1 lx over 3 hours from being written as
// 0.30000000000000004.
double rounded(double value) {
    constexpr double perMillionth = 1e6;
    return std::round(value * perMillionth) / perMillionth;
}

void setAmounts(const CommandContext& context, Metering& metering) {
    const std::optional<double> mean_lx = amountGiven(context, "lux", "lux");
    metering.exposure_lxh = amountGiven(context, "lux-hours", "lux hours");
    metering.nearUltraviolet_Whm2 = amountGiven(context, "uv", "watt hours per square metre");
    if (mean_lx && metering.exposure_lxh)
        throw UsageError("--lux and --lux-hours say the same in two ways", "Give one of them.");
    if (const std::optional<std::string> covered = context.arguments.value("covered"))
        metering.covered_h =
            positiveGiven(*covered, "meter: --covered", "Give hours, such as 2.5 or 2,5.");
    if (mean_lx)
        metering.exposure_lxh =
            rounded(*mean_lx * metering.covered_h.value_or(std::max(0.0, hoursOf(metering))));
    if (!metering.exposure_lxh && !metering.nearUltraviolet_Whm2)
        throw UsageError("nothing is said of how much light there was",
                         "Give --lux, --lux-hours or --uv.");
}

Metering meteringGiven(const CommandContext& context, const BookFile& book, const Book& studio) {
    Metering metering;
    metering.place = {recordNamed<Place>(book, context.arguments.text("place")).id};
    metering.from = *momentGiven(context, studio, "from");
    metering.to = *momentGivenOn(context, metering.from.earliest(), "to");
    setAmounts(context, metering);
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

ExitCode run(CommandContext& context) {
    BookFile book = bookToWrite(context);
    const Book studio = bookRecordOf(book);
    const Metering metering = meteringGiven(context, book, studio);
    const ExitCode code = recordMade(context, book, {{metering}});
    printOverlaps(context, book, metering);
    return code;
}

}  // namespace

Command meterCommand() {
    CommandSpec spec;
    spec.name = "meter";
    spec.group = "At the press";
    spec.summary = "Record light measured at a place over some time of a day";
    spec.details =
        "The instrument lies or hangs where the sheets do and faces as they do. What it showed is "
        "typed as it is: a mean in lux, or lux hours where it adds up by itself, or watt hours per "
        "square metre of near ultraviolet (UV-A, 315 to 400 nm); light and ultraviolet may be "
        "given together.\n\n"
        "A mean in lux is multiplied by the hours from --from to --to, or by --covered where the "
        "instrument saw only a part of that time. Times are those of the wall clock.";
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
