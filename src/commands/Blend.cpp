#include "commands/Blend.h"

#include "base/Numbers.h"
#include "base/Text.h"
#include "calc/PercentText.h"
#include "calc/Wording.h"
#include "cli/Table.h"
#include "commands/BlendPlan.h"
#include "commands/BookAccess.h"
#include "commands/Cautions.h"
#include "commands/InkWords.h"
#include "commands/JsonReport.h"
#include "commands/MassGiven.h"
#include "commands/OptionRows.h"
#include "commands/Paragraph.h"
#include "commands/RecordNamed.h"
#include "commands/ShareGiven.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

int mixOf(const CommandContext& context, const BookFile& book, const InkBook& ink,
          const std::string& name) {
    return ink.records.indexOf<Mix>(recordNamed<Mix>(book, context.arguments.text(name)).id);
}

BlendWanted wantedIn(const CommandContext& context, const BookFile& book, const InkBook& ink) {
    BlendWanted wanted;
    wanted.first = mixOf(context, book, ink, "first");
    wanted.second = mixOf(context, book, ink, "second");
    if (wanted.first == wanted.second)
        throw UsageError("both mixes are " + mixAt(ink, wanted.first).id, "Name two mixes.");
    wanted.thing = sharedThingNamed(ink, context.arguments.text("of"));
    wanted.target = shareGiven(context.arguments.text("to"), "--to");
    if (context.arguments.has("make") == context.arguments.has("into"))
        throw UsageError(context.arguments.has("make") ? "--make and --into cannot both be kept to"
                                                       : "it is not said how much",
                         "Give --make MASS for both together, or --into MASS for what is there of "
                         "the first.");
    wanted.make_g = massOption(context, "blend", "make");
    wanted.into_g = massOption(context, "blend", "into");
    return wanted;
}

std::string percentsIn(const Estimate& share) {
    return percentsOf(share, 2);
}

class Report {
public:
    Report(Console& console, const InkBook& ink, const BlendWanted& wanted, const Blend& blend,
           const std::optional<BalanceGiven>& balance)
        : m_console(console), m_ink(ink), m_wanted(wanted), m_blend(blend), m_balance(balance) {}

    void print() {
        m_console.out() << m_console.emphasis(printable("A blend that holds " +
                                                        percentText(m_blend.target) + " " +
                                                        m_blend.thing.words))
                        << "\n";
        printWrapped(m_console, balanceSentence(m_balance));
        m_console.out() << "\n";
        Table table({{"g", Align::decimal},
                     {"of"},
                     {"% " + m_blend.thing.words, Align::decimal},
                     {"there by the book g", Align::decimal}});
        addRow(table, m_blend.first);
        addRow(table, m_blend.second);
        table.addRow({grams(m_blend.total_g), "in all", percentsIn(m_blend.share), ""});
        m_console.out() << table.text(m_console.width(), "");
        sayHowToWeigh();
        sayStock(m_blend.first);
        sayStock(m_blend.second);
        printKinds();
        sayDrier();
    }

private:
    void say(const std::string& text) { printParagraph(m_console, text); }
    std::string grams(double mass_g) const { return gramsShown(mass_g, m_balance); }
    std::string there(const MixToBlend& mix) const {
        constexpr int decimalsWithoutBalance = 3;
        return estimateWords(mix.there_g,
                             m_balance ? decimalsOf(m_balance->figures) : decimalsWithoutBalance);
    }
    const std::string& id(const MixToBlend& mix) const { return mixAt(m_ink, mix.mix).id; }

    void addRow(Table& table, const MixToBlend& mix) const {
        table.addRow({grams(mix.mass_g), id(mix) + ", " + mixAt(m_ink, mix.mix).name,
                      percentsIn(mix.share), there(mix)});
    }

    void sayHowToWeigh() {
        if (m_wanted.into_g)
            say(m_blend.second.mass_g > 0
                    ? "Add " + grams(m_blend.second.mass_g) + " g of " + id(m_blend.second) +
                          " to the " + grams(m_blend.first.mass_g) + " g of " + id(m_blend.first) +
                          "."
                    : id(m_blend.first) + " holds that share already: add nothing.");
        else if (m_blend.first.mass_g <= 0 || m_blend.second.mass_g <= 0)
            say((m_blend.first.mass_g > 0 ? id(m_blend.first) : id(m_blend.second)) +
                " holds that share already: nothing of the other goes in.");
        if (m_blend.share.high - m_blend.share.low > 1e-9)
            say("What the blend holds is known between the two bounds only, because masses in its "
                "mixes are badly known.");
    }

    void sayStock(const MixToBlend& mix) {
        if (mix.mass_g <= 0)
            return;
        if (!mix.holdsEnough)
            say("By the book " + id(mix) + " holds " + there(mix) + " g, less than " +
                grams(mix.mass_g) + " g. Weigh what is there, or ask for less.");
        else if (!mix.there_g.isKnown())
            say("How much there is of " + id(mix) + " is not known; look before you begin.");
    }

    void printKinds() {
        m_console.out() << "\n" << m_console.emphasis("What it holds then, in per cent") << "\n";
        Table table({{"kind"},
                     {id(m_blend.first), Align::decimal},
                     {id(m_blend.second), Align::decimal},
                     {"the blend", Align::decimal}});
        for (const KindShares& kind : m_blend.kinds)
            table.addRow({textOf(kind.lotKind), percentsIn(kind.first), percentsIn(kind.second),
                          percentsIn(kind.blend)});
        m_console.out() << table.text(m_console.width(), "Nothing is recorded.");
    }

    void sayDrier() {
        if (!m_blend.mayHoldDrier)
            return;
        const RuleInForce& rule = m_ink.rules.rule("heapLifeWithDrier_h");
        say("There is drier in it, so it does not keep: about " + formatShortest(rule.value) +
            " h at 20 °C from when the drier went in (" + originWords(rule) + ").");
    }

    Console& m_console;
    const InkBook& m_ink;
    const BlendWanted& m_wanted;
    const Blend& m_blend;
    const std::optional<BalanceGiven>& m_balance;
};

Tree treeOf(const InkBook& ink, const MixToBlend& mix) {
    Tree tree = Tree::object();
    tree.set("mix", mixAt(ink, mix.mix).id).set("mass_g", mix.mass_g);
    tree.set("share", treeOf(mix.share)).set("there_g", treeOf(mix.there_g));
    tree.set("holdsEnough", mix.holdsEnough);
    return tree;
}

Tree reportOf(const InkBook& ink, const Blend& blend, const std::optional<BalanceGiven>& balance) {
    Tree report = newReport("blend");
    if (blend.thing.lotKind)
        report.set("lotKind", textOf(*blend.thing.lotKind));
    else
        report.set("lot", blend.thing.words);
    report.set("wantedShare", blend.target).set("balance", treeOf(balance));
    report.set("first", treeOf(ink, blend.first)).set("second", treeOf(ink, blend.second));
    report.set("total_g", blend.total_g).set("share", treeOf(blend.share));
    Tree kinds = Tree::array();
    for (const KindShares& kind : blend.kinds) {
        Tree one = Tree::object();
        one.set("lotKind", textOf(kind.lotKind)).set("share", treeOf(kind.blend));
        kinds.add(std::move(one));
    }
    report.set("kinds", std::move(kinds));
    return report;
}

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const InkBook ink = inkBookOf(book);
    const BlendWanted wanted = wantedIn(context, book, ink);
    const std::optional<BalanceGiven> balance = balanceGiven(context, ink.records);
    const Blend blend = blendOf(ink, wanted, balance, nowAt(ink.studio).latest());
    if (context.arguments.has("json"))
        context.console.out() << jsonText(reportOf(ink, blend, balance));
    else
        Report(context.console, ink, wanted, blend, balance).print();
    return blend.first.holdsEnough && blend.second.holdsEnough ? ExitCode::success
                                                               : ExitCode::findings;
}

}  // namespace

Command blendCommand() {
    CommandSpec spec;
    spec.name = "blend";
    spec.group = toTranslate("group", "At the press");
    spec.summary =
        toTranslate("summary", "How much of two mixes to blend for a share between the two");
    spec.details =
        "Both mixes are taken as they are now by their weighings. The share is that of a kind of "
        "tin (base, ink, drier, modifier) or of one lot. Either both masses are asked for "
        "(--make), or the first mix is in the dish already and the mass of the second is asked for "
        "(--into). Nothing is recorded. Exit code 1 where a mix holds less than is needed.\n\n" +
        std::string(massHelp);
    spec.positionals = {{"first", "Id of one mix."}, {"second", "Id of the other."}};
    spec.options = {
        required(valueOption("of", "WHAT",
                             "base, ink, drier or modifier, or the id of a lot; lot:ID where a lot "
                             "bears one of these words.")),
        required(valueOption("to", "SHARE", "The share that is wanted, such as 95%.")),
        valueOption("make", "MASS", "How much is wanted of both together."),
        valueOption("into", "MASS", "How much of the first there is, into which the second goes."),
        balanceOption()};
    spec.reportsJson = true;
    spec.caution = inkCaution;
    spec.examples = {
        {"rackbook blend eel-l4-letdown eel-stock-straw --of base --to 90% --make 20 --balance "
         "pocket-balance",
         "20 g of a stronger let-down."},
        {"rackbook blend eel-l4-letdown eel-stock-straw --of straw-ochre-1 --to 5% --into 12g "
         "--balance pocket-balance",
         "12 g are on the slab; how much of the stock mix goes in."}};
    return {spec, run};
}

}  // namespace rackbook
