#include "commands/ShadeReport.h"

#include "base/Numbers.h"
#include "base/Text.h"
#include "calc/Wording.h"
#include "cli/Table.h"
#include "commands/Cautions.h"
#include "commands/ColourWords.h"
#include "commands/JsonReport.h"
#include "commands/Paragraph.h"

namespace rackbook {

namespace {

std::string gramsOf(double mass_g) {
    return formatFixed(mass_g, mass_g >= 10 ? 1 : mass_g >= 1 ? 2 : 3);
}

class Report {
public:
    Report(Console& console, const InkBook& ink, const Shade& shade)
        : m_console(console), m_ink(ink), m_shade(shade) {}

    void print() {
        const Mix& mix = mixAt(m_ink, m_shade.mix);
        printHeading(m_console, "To bring " + gramsOf(m_shade.mass_g) + " g of mix " + mix.id +
                                    " (" + mix.name + ") to the colour of " + m_shade.aim.words);
        m_console.out() << "\n";
        colours();
        const RuleInForce& rule = m_ink.rules.rule("colourTolerance_dE00");
        say("The test lies on " + m_shade.paper.words + ", at " + m_shade.filmWords +
            ". It is ΔE00 " + formatFixed(m_shade.before_dE00, 2) + " off" + directionWords() +
            ", " + (m_shade.before_dE00 <= rule.value ? "within" : "outside") +
            " the studio's tolerance of " + formatShortest(rule.value) + " (" + originWords(rule) +
            ").");
        for (const std::string& warning : m_shade.warnings)
            say(warning);
        if (m_shade.found.empty()) {
            say(std::string(
                    "No addition of what may go in brings it nearer by ΔE00 0.1 or more. ") +
                (m_shade.before_dE00 <= rule.value ? "Leave it as it is."
                                                   : "Mix it anew: rackbook match."));
            return;
        }
        additions();
        if (m_shade.before_dE00 <= rule.value)
            say("It need not be changed.");
        say("Expected: what the drawdowns of the inks say the addition changes, from the colour "
            "that was measured; an estimate. Give or take: twice the standard uncertainty of that "
            "change, from the balance and from how well the inks are known. A film " +
            formatFixed(m_shade.filmUncertainty_share * 100, 0) +
            " % thicker or thinner than said moves the colour by ΔE00 " +
            formatFixed(m_shade.filmWeight_dE00, 1) +
            " by itself. Add half of it first, mix it through, draw it down at the same film "
            "weight "
            "and measure again: what is in does not come out.");
        if (!m_shade.weighed.empty())
            say("As the balance can show it: " + balanceWords(m_shade.balance) + ".");
        say(inkCaution);
    }

private:
    void say(const std::string& words) { printParagraph(m_console, words); }

    // ": too dark, too red"; nothing where no direction is worth a word.
    std::string directionWords() const {
        constexpr double worthAWord = 0.5;
        const Lab& is = m_shade.test.lab_D50;
        const Lab& aim = m_shade.target.lab_D50;
        std::vector<std::string> words;
        const auto add = [&](double difference, const char* below, const char* above) {
            if (difference < -worthAWord)
                words.push_back(below);
            if (difference > worthAWord)
                words.push_back(above);
        };
        add(is.l - aim.l, "too dark", "too light");
        add(is.a - aim.a, "too green", "too red");
        add(is.b - aim.b, "too blue", "too yellow");
        return words.empty() ? "" : " (" + joined(words, ", ") + ")";
    }

    void colours() {
        Table table({{"under D50"},
                     {"L*", Align::decimal},
                     {"a*", Align::decimal},
                     {"b*", Align::decimal},
                     {"reading"}});
        addColour(table, "to be", m_shade.target.lab_D50,
                  m_shade.aim.reading.empty() ? "predicted" : m_shade.aim.reading);
        addColour(table, "is", m_shade.test.lab_D50, m_shade.testReading);
        m_console.out() << table.text(m_console.width(), "");
    }

    static void addColour(Table& table, const std::string& what, const Lab& lab,
                          const std::string& reading) {
        table.addRow(
            {what, formatFixed(lab.l, 2), formatFixed(lab.a, 2), formatFixed(lab.b, 2), reading});
    }

    void additions() {
        m_console.out() << "\n" << m_console.emphasis("Ways") << "\n";
        Table table({{""},
                     {"add g", Align::decimal},
                     {"of"},
                     {"expected ΔE00", Align::decimal},
                     {"give or take", Align::decimal},
                     {"the batch then g", Align::decimal}});
        const std::vector<Shaded>& ways = m_shade.shown();
        const bool isWeighed = !m_shade.weighed.empty();
        for (std::size_t i = 0; i < ways.size(); ++i) {
            double total_g = m_shade.mass_g;
            for (const Addition& addition : ways[i].additions)
                total_g += addition.mass_g;
            bool isFirst = true;
            for (const Addition& addition : ways[i].additions) {
                table.addRow({isFirst ? std::to_string(i + 1) : "",
                              isWeighed ? gramsShown(addition.mass_g, m_shade.balance)
                                        : gramsOf(addition.mass_g),
                              lotWords(lotAt(m_ink, addition.lot)),
                              isFirst ? formatFixed(ways[i].miss.underD50_dE00, 2) : "",
                              isFirst ? giveOrTakeWords(m_shade.spread_dE00[i]) : "",
                              isFirst ? gramsOf(total_g) : ""});
                isFirst = false;
            }
        }
        m_console.out() << table.text(m_console.width(), "");
    }

    Console& m_console;
    const InkBook& m_ink;
    const Shade& m_shade;
};

Tree wayTree(const InkBook& ink, const Shaded& way) {
    Tree tree = Tree::object();
    Tree additions = Tree::array();
    for (const Addition& addition : way.additions)
        additions.add(
            Tree::object().set("lot", lotAt(ink, addition.lot).id).set("mass_g", addition.mass_g));
    tree.set("additions", std::move(additions));
    tree.set("expected_dE00", treeOf(way.miss)).set("expectedLab_D50", treeOf(way.expected_D50));
    tree.set("expectedSpectrum", way.expected ? treeOf(*way.expected) : Tree());
    tree.set("shares", treeOf(ink, way.shares));
    return tree;
}

Tree waysTree(const InkBook& ink, const std::vector<Shaded>& ways) {
    Tree trees = Tree::array();
    for (const Shaded& way : ways)
        trees.add(wayTree(ink, way));
    return trees;
}

}  // namespace

void printShade(Console& console, const InkBook& ink, const Shade& shade) {
    Report(console, ink, shade).print();
}

void addShade(Tree& report, const InkBook& ink, const Shade& shade) {
    report.set("target", shade.aim.words);
    report.set("targetReading", shade.aim.reading.empty() ? Tree() : Tree(shade.aim.reading));
    report.set("targetLab_D50", treeOf(shade.target.lab_D50));
    report.set("mix", mixAt(ink, shade.mix).id).set("mass_g", shade.mass_g);
    report.set("testReading", shade.testReading);
    report.set("testLab_D50", treeOf(shade.test.lab_D50));
    report.set("filmWeight_gm2", shade.filmWeight_gm2).set("paper", shade.paper.words);
    report.set("filmUncertainty_share", shade.filmUncertainty_share);
    report.set("filmWeight_dE00", shade.filmWeight_dE00);
    report.set("before_dE00", shade.before_dE00);
    report.set("ways", waysTree(ink, shade.found));
    report.set("waysAsWeighed", waysTree(ink, shade.weighed));
    Tree spreads = Tree::array();
    for (const double spread : shade.spread_dE00)
        spreads.add(spread);
    report.set("waysSpread_dE00", std::move(spreads));
    report.set("balance", treeOf(shade.balance));
    report.set("warnings", textsTree(shade.warnings));
}

}  // namespace rackbook
