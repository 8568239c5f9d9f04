#include "commands/ColourFacts.h"

#include <cmath>

#include "base/Error.h"
#include "base/Numbers.h"
#include "base/Text.h"
#include "calc/Wording.h"
#include "cli/Table.h"
#include "commands/ColourModel.h"
#include "commands/Paragraph.h"
#include "records/RefsTo.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

constexpr ViewingLight lights[] = {ViewingLight::D50, ViewingLight::D65, ViewingLight::A,
                                   ViewingLight::FL11};
// Typed values that are further from their spectrum than this were rounded or belong to another
// light. Rounding to a tenth makes no more than about 0.1.
constexpr double worthAWord_dE00 = 0.5;

bool speaksOf(const Look& look, const std::string& impression) {
    return look.colour &&
           (isAmong(look.impressions, impression) || isAmong(look.standsFor, impression));
}

const Lab* labUnder(const ReadingFacts& facts, ViewingLight light) {
    for (const ColourInLight& colour : facts.colours)
        if (colour.light == light)
            return &colour.colour.lab;
    return nullptr;
}

const Lab& underD50(const ReadingFacts& facts) {
    const Lab* lab = labUnder(facts, ViewingLight::D50);
    if (!lab)
        throw InputError("reading " + facts.reading.id, "it holds no colour under D50 and 2°",
                         "Readings without a spectrum can only be compared where both were typed "
                         "for D50.");
    return *lab;
}

}  // namespace

std::string notReturnedWords(const BookFile& book, const Reading& reading) {
    if (!reading.impression)
        return {};
    const Look* last = nullptr;
    const std::vector<Look> looks = allOf<Look>(book);
    for (const Look& look : looks) {
        const bool later = reading.takenOn && certainlyBefore(*reading.takenOn, look.at);
        if (!later && speaksOf(look, reading.impression->id) &&
            (!last || !certainlyBefore(look.at, last->at)))
            last = &look;
    }
    if (!last)
        return "No look had found its colour true when reading " + reading.id +
               " was taken: ink that is rich in base turns while it cures, and this may not be its "
               "own colour yet.";
    if (last->colour == LookColour::trueColour)
        return {};
    return "The last look before reading " + reading.id + ", on " + last->at.text() +
           ", found the colour " + textOf(*last->colour) +
           ": this is not its own colour yet. Read it again when it is true.";
}

ReadingFacts readingFactsOf(const BookFile& book, const Reading& reading) {
    ReadingFacts facts;
    facts.reading = reading;
    for (const ViewingLight light : lights) {
        const std::optional<ReadingColour> colour = colourOf(reading, light, Observer::deg2);
        if (!colour)
            continue;
        const Xyz xyz = xyzOf(colour->lab, whiteOf(light, Observer::deg2));
        facts.colours.push_back({light, *colour, xyz.y > 0 ? visualDensity(xyz) : NAN});
    }
    facts.typedOff_dE00 = typedAgainstSpectrum(reading);
    facts.notReturned = reading.drawdown ? readEarlyWords(inkBookOf(book), reading)
                                         : notReturnedWords(book, reading);
    return facts;
}

Difference differenceOf(const ReadingFacts& first, const ReadingFacts& second) {
    Difference difference;
    difference.asMeasured_dE00 = deltaE00(underD50(first), underD50(second));
    difference.unlike = unlikeConditions(first.reading, second.reading);
    const std::optional<Spectrum> a = spectrumIn(first.reading);
    const std::optional<Spectrum> b = spectrumIn(second.reading);
    if (!a || !b)
        return difference;
    for (const ViewingLight light : {ViewingLight::A, ViewingLight::FL11})
        difference.metameric_dE00.emplace_back(
            light, metamerismOf(*a, *b, ViewingLight::D50, light, Observer::deg2,
                                MatchCorrection::multiplicative)
                       .testE00);
    return difference;
}

void printReading(Console& console, const ReadingFacts& facts) {
    console.out() << console.emphasis(printable("reading " + facts.reading.id)) << "\n";
    Table table({{"light"},
                 {"L*", Align::decimal},
                 {"a*", Align::decimal},
                 {"b*", Align::decimal},
                 {"chroma", Align::decimal},
                 {"hue", Align::decimal},
                 {"visual density", Align::decimal},
                 {"from"}});
    for (const ColourInLight& one : facts.colours) {
        const Lab& lab = one.colour.lab;
        const std::optional<double> hue_deg = hueOf_deg(lab);
        table.addRow({nameOf(one.light), formatFixed(lab.l, 2), formatFixed(lab.a, 2),
                      formatFixed(lab.b, 2), formatFixed(chromaOf(lab), 2),
                      hue_deg ? formatFixed(*hue_deg, 1) + "°" : "grey",
                      std::isnan(one.density) ? "" : formatFixed(one.density, 2),
                      one.colour.isTyped ? "as typed" : "the spectrum"});
    }
    console.out() << table.text(
        console.width(), "It holds no colour for the 2° observer under D50, D65, A or FL11.");
    if (facts.typedOff_dE00 && *facts.typedOff_dE00 > worthAWord_dE00)
        printParagraph(console, "The typed values are ΔE00 " +
                                    formatFixed(*facts.typedOff_dE00, 2) +
                                    " from what the spectrum gives; the spectrum is used.");
    if (!facts.notReturned.empty())
        printParagraph(console, facts.notReturned);
}

void printDifference(Console& console, const ReadingFacts& first, const ReadingFacts& second,
                     const Difference& difference, const HouseRules& rules) {
    const Lab& a = underD50(first);
    const Lab& b = underD50(second);
    const RuleInForce& rule = rules.rule("colourTolerance_dE00");
    const bool isSame = difference.asMeasured_dE00 <= rule.value;
    console.out() << "\n" << console.emphasis("From the first to the second, under D50") << "\n";
    Table table({{"ΔE00", Align::decimal},
                 {"lightness", Align::decimal},
                 {"chroma", Align::decimal},
                 {"a*", Align::decimal},
                 {"b*", Align::decimal}});
    table.addRow({formatFixed(difference.asMeasured_dE00, 2), formatFixed(b.l - a.l, 2),
                  formatFixed(chromaOf(b) - chromaOf(a), 2), formatFixed(b.a - a.a, 2),
                  formatFixed(b.b - a.b, 2)});
    console.out() << table.text(console.width(), "");
    printParagraph(console, std::string(isSame ? "The same colour" : "Another colour") +
                                " by the studio's tolerance of ΔE00 " + formatShortest(rule.value) +
                                " (" + originWords(rule) + ").");
    if (!difference.unlike.empty())
        printParagraph(console, "They were not taken alike: " + joined(difference.unlike) +
                                    ". Part of the difference may be the measuring.");
    for (const auto& [light, off_dE00] : difference.metameric_dE00)
        printParagraph(console, std::string("Were they equal under D50, they would be ΔE00 ") +
                                    formatFixed(off_dE00, 2) + " apart under " + nameOf(light) +
                                    (light == ViewingLight::A ? ", a filament lamp."
                                                              : ", a fluorescent lamp."));
}

Tree treeOf(const ReadingFacts& facts) {
    Tree tree = Tree::object();
    tree.set("reading", facts.reading.id);
    Tree colours = Tree::array();
    for (const ColourInLight& one : facts.colours) {
        Tree colour = Tree::object();
        const Lab& lab = one.colour.lab;
        const std::optional<double> hue_deg = hueOf_deg(lab);
        colour.set("light", nameOf(one.light)).set("observer", "2deg");
        colour.set("l", lab.l).set("a", lab.a).set("b", lab.b);
        colour.set("chroma", chromaOf(lab)).set("hue_deg", hue_deg ? Tree(*hue_deg) : Tree());
        colour.set("visualDensity", one.density).set("isTyped", one.colour.isTyped);
        colours.add(std::move(colour));
    }
    tree.set("colours", std::move(colours));
    tree.set("typedOff_dE00", facts.typedOff_dE00 ? Tree(*facts.typedOff_dE00) : Tree());
    tree.set("hasReturned", facts.notReturned.empty());
    return tree;
}

Tree treeOf(const Difference& difference) {
    Tree tree = Tree::object();
    tree.set("dE00", difference.asMeasured_dE00);
    Tree unlike = Tree::array();
    for (const std::string& what : difference.unlike)
        unlike.add(what);
    tree.set("unlikeConditions", std::move(unlike));
    Tree metamerism = Tree::array();
    for (const auto& [light, off_dE00] : difference.metameric_dE00)
        metamerism.add(Tree::object().set("light", nameOf(light)).set("dE00", off_dE00));
    tree.set("metamerism", std::move(metamerism));
    return tree;
}

}  // namespace rackbook
