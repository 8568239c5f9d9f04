#include "commands/PutRightReport.h"

#include <algorithm>
#include <cmath>

#include "base/Numbers.h"
#include "base/Text.h"
#include "calc/Wording.h"
#include "cli/Table.h"
#include "commands/InkWords.h"
#include "commands/Paragraph.h"

namespace rackbook {

namespace {

class Report {
public:
    Report(Console& console, const InkBook& ink, const PutRight& plan,
           const std::optional<BalanceGiven>& balance)
        : m_console(console), m_ink(ink), m_plan(plan), m_balance(balance) {}

    void print() {
        m_console.out() << m_console.emphasis(printable("To put right by " + m_plan.recipe.words))
                        << "\n";
        printWrapped(m_console, balanceSentence(m_balance));
        if (!m_plan.correction.notInRecipe.empty()) {
            sayNotInRecipe();
        } else {
            printAdditions();
            sayOutcome();
            sayHowWell();
            sayCapacity();
            sayShortfalls();
        }
        if (m_plan.wanted_g && (m_plan.correction.startAgain || !m_plan.correction.isPossible()))
            printFresh();
        sayDrier();
        sayLeft();
    }

private:
    void say(const std::string& text) { printParagraph(m_console, text); }
    std::string grams(double mass_g) const { return gramsShown(mass_g, m_balance); }
    std::string id(std::size_t part) const { return idOf(m_ink, m_plan.parts[part].source); }

    void sayNotInRecipe() {
        std::vector<std::string> ids;
        for (const std::size_t part : m_plan.correction.notInRecipe)
            ids.push_back(id(part));
        say("In the dish but not in the recipe: " + joined(ids) +
            ". No addition takes that out again. Start again, and keep what is in the dish as an "
            "ink of its own.");
    }

    void printAdditions() {
        m_console.out() << "\n";
        std::vector<Column> columns = {{""},
                                       {"of"},
                                       {"in the dish g", Align::decimal},
                                       {"add g", Align::decimal},
                                       {"then g", Align::decimal},
                                       {"then %", Align::decimal},
                                       {"recipe %", Align::decimal}};
        if (m_balance)
            columns.push_back({"give or take", Align::right});
        Table table(columns);
        for (std::size_t i = 0; i < m_plan.order.size(); ++i)
            addRow(table, std::to_string(i + 1), m_plan.parts[m_plan.order[i]]);
        for (const PutRightPart& part : m_plan.parts)
            if (part.add_g <= 0)
                addRow(table, "", part);
        std::vector<std::string> sum = {"", "in all", grams(m_plan.total_g - m_plan.added_g),
                                        grams(m_plan.added_g), grams(m_plan.total_g)};
        sum.resize(columns.size());
        table.addRow(sum);
        m_console.out() << table.text(m_console.width(), "");
        if (m_balance)
            m_console.out() << "Give or take: twice the standard uncertainty from the balance "
                               "alone, of the share itself.\n";
    }

    void addRow(Table& table, const std::string& turn, const PutRightPart& part) const {
        std::vector<std::string> cells = {turn,
                                          sourceWords(m_ink, part.source),
                                          grams(part.inDish_g),
                                          part.add_g > 0 ? grams(part.add_g) : "",
                                          grams(part.then_g),
                                          formatFixed(part.thenShare * 100, 2),
                                          formatFixed(part.share * 100, 2)};
        if (m_balance)
            cells.push_back(part.then_g > 0 ? formatFixed(part.giveOrTake * 100, 2) + " %" : "");
        table.addRow(cells);
    }

    void sayOutcome() {
        if (m_plan.order.empty()) {
            if (!sayTooSmall())
                say("The shares in the dish are those of the recipe: there is nothing to add.");
            return;
        }
        sayTooSmall();
        const bool isEnough = m_plan.correction.shortfalls.empty();
        std::string words = (isEnough ? "Add in the order given and tare before each. Then there "
                                        "are "
                                      : "It would come to ") +
                            grams(m_plan.total_g) + " g";
        if (!m_plan.wanted_g) {
            say(words + ".");
            return;
        }
        const double beyond_g = m_plan.total_g - *m_plan.wanted_g;
        if (grams(beyond_g) != grams(0) && beyond_g > 0)
            words += ", " + grams(beyond_g) + " g more than the " + grams(*m_plan.wanted_g) +
                     " g that are wanted";
        words += ". Putting it right takes " + grams(m_plan.added_g) + " g of ink, a fresh batch " +
                 grams(*m_plan.wanted_g) + " g";
        say(words + (m_plan.correction.startAgain ? ": it is better to start again." : "."));
    }

    // Whether there was anything to say.
    bool sayTooSmall() {
        bool said = false;
        for (std::size_t i = 0; i < m_plan.parts.size(); ++i) {
            const PutRightPart& part = m_plan.parts[i];
            const double missing_g = m_plan.correction.add_g[i];
            constexpr double nothing_g = 1e-9;
            if (part.add_g > 0 || missing_g <= nothing_g)
                continue;
            said = true;
            const bool canBeLeft = missing_g < m_ink.rules.value("colourMostUncertainty") *
                                                   part.share * m_plan.correction.total_g;
            say("Of " + id(i) + " " + formatFixed(missing_g, 4) +
                " g are missing, less than the balance can show" +
                (canBeLeft ? "; it can be left so."
                           : ". Weigh it on a finer one, or let some of it down and add of that."));
        }
        return said;
    }

    // What carries colour and is off or uncertain by more than the house rule wants.
    void sayHowWell() {
        const RuleInForce& rule = m_ink.rules.rule("colourMostUncertainty");
        std::vector<std::string> worse;
        for (std::size_t i = 0; m_balance && i < m_plan.parts.size(); ++i) {
            const PutRightPart& part = m_plan.parts[i];
            if (part.share <= 0 || part.then_g <= 0 || !carriesColour(part.source))
                continue;
            const double off = std::abs(part.thenShare - part.share) / part.share + part.giveOrTake;
            if (off > rule.value)
                worse.push_back(id(i) + " to " + formatFixed(off * 100, 0) + " %");
        }
        if (!worse.empty())
            say("On this balance a share is known only so well: " + joined(worse) + " of it; " +
                formatShortest(rule.value * 100) + " % is wanted (" + originWords(rule) +
                "). A larger batch or a finer balance does better.");
    }

    bool carriesColour(const InkSource& source) const {
        return source.lot < 0 ||
               m_ink.records.of<Lot>()[static_cast<std::size_t>(source.lot)].lotKind ==
                   LotKind::ink;
    }

    void sayCapacity() {
        const bool isKnown = m_balance && m_balance->record && m_balance->record->capacity_g;
        if (isKnown && m_plan.total_g > *m_balance->record->capacity_g)
            say("The balance carries " + formatShortest(*m_balance->record->capacity_g) +
                " g with the dish: weigh it in parts.");
    }

    std::string shortWords(const Correction& correction) const {
        std::vector<std::string> parts;
        for (const StockShortfall& shortfall : correction.shortfalls)
            parts.push_back(grams(shortfall.missing_g) + " g of " + id(shortfall.part) + " (" +
                            grams(m_plan.parts[shortfall.part].left_g.best) + " g are left)");
        return joined(parts);
    }

    void sayShortfalls() {
        if (!m_plan.correction.shortfalls.empty())
            say("By the book there is not enough to put it right. Missing: " +
                shortWords(m_plan.correction) +
                ". Weigh what is left; take another tin of the kind, or make more of the mix.");
    }

    void printFresh() {
        m_console.out() << "\n"
                        << m_console.emphasis("A fresh batch of " + grams(*m_plan.wanted_g) + " g")
                        << "\n";
        Table table({{"g", Align::decimal}, {"of"}});
        for (const std::size_t part : m_plan.freshOrder)
            table.addRow(
                {grams(m_plan.parts[part].fresh_g), sourceWords(m_ink, m_plan.parts[part].source)});
        m_console.out() << table.text(m_console.width(), "");
        if (m_plan.fresh.shortfalls.empty())
            return;
        const bool canPutRight = m_plan.correction.isPossible();
        say(std::string("For that there is not enough") + (canPutRight ? "" : " either") +
            ". Missing: " + shortWords(m_plan.fresh) + "." +
            (canPutRight ? " Put right what is in the dish." : ""));
    }

    void sayDrier() {
        bool isIn = false;
        bool goesIn = false;
        for (const PutRightPart& part : m_plan.parts) {
            isIn = isIn || (part.mayHoldDrier && part.inDish_g > 0);
            goesIn = goesIn || (part.mayHoldDrier && part.add_g > 0);
        }
        const RuleInForce& rule = m_ink.rules.rule("heapLifeWithDrier_h");
        const std::string life = "such a heap can be printed from for about " +
                                 formatShortest(rule.value) + " h at 20 °C (" + originWords(rule) +
                                 ")";
        if (isIn)
            say("There is drier in the dish, so the clock has been running since it went in: " +
                life + ". Adding ink does not set it back.");
        else if (goesIn)
            say("Drier goes in last, when you are ready to print; it starts the clock: " + life +
                ".");
    }

    void sayLeft() {
        std::vector<std::string> unknown;
        for (std::size_t i = 0; i < m_plan.parts.size(); ++i)
            if (m_plan.parts[i].share > 0 && !m_plan.parts[i].left_g.isKnown())
                unknown.push_back(id(i));
        say("What is left of tins and mixes is as the book has it, without weighings that are not "
            "recorded yet." +
            (unknown.empty() ? ""
                             : " How much is left of " + joined(unknown) +
                                   " is not known; look before you begin."));
    }

    Console& m_console;
    const InkBook& m_ink;
    const PutRight& m_plan;
    const std::optional<BalanceGiven>& m_balance;
};

Tree sourceTree(const InkBook& ink, const InkSource& source) {
    Tree tree = Tree::object();
    tree.set(source.lot >= 0 ? "lot" : "mix", idOf(ink, source));
    return tree;
}

Tree shortfallsTree(const InkBook& ink, const PutRight& plan, const Correction& correction) {
    Tree list = Tree::array();
    for (const StockShortfall& shortfall : correction.shortfalls) {
        Tree one = sourceTree(ink, plan.parts[shortfall.part].source);
        one.set("missing_g", shortfall.missing_g);
        list.add(std::move(one));
    }
    return list;
}

}  // namespace

void printPutRight(Console& console, const InkBook& ink, const PutRight& plan,
                   const std::optional<BalanceGiven>& balance) {
    Report(console, ink, plan, balance).print();
}

void addPutRight(Tree& report, const InkBook& ink, const PutRight& plan,
                 const std::optional<BalanceGiven>& balance) {
    const bool canBeAddedTo = plan.correction.notInRecipe.empty();
    report.set("recipe", plan.recipe.words).set("balance", treeOf(balance));
    report.set("wanted_g", plan.wanted_g.value_or(notKnown));
    report.set("isPossible", plan.correction.isPossible());
    report.set("startAgain", plan.correction.startAgain);
    Tree parts = Tree::array();
    for (const PutRightPart& part : plan.parts) {
        Tree one = sourceTree(ink, part.source);
        one.set("recipeShare", part.share).set("inDish_g", part.inDish_g);
        one.set("left_g", treeOf(part.left_g));
        if (canBeAddedTo) {
            one.set("add_g", part.add_g).set("then_g", part.then_g);
            one.set("thenShare", part.thenShare).set("expandedUncertainty", part.giveOrTake);
        }
        one.set("fresh_g", part.fresh_g);
        parts.add(std::move(one));
    }
    report.set("parts", std::move(parts));
    Tree order = Tree::array();
    for (const std::size_t part : plan.order)
        order.add(sourceTree(ink, plan.parts[part].source));
    report.set("order", std::move(order));
    if (canBeAddedTo)
        report.set("added_g", plan.added_g).set("total_g", plan.total_g);
    report.set("shortfalls", shortfallsTree(ink, plan, plan.correction));
    report.set("freshShortfalls", shortfallsTree(ink, plan, plan.fresh));
}

}  // namespace rackbook
