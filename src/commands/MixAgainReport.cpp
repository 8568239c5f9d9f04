#include "commands/MixAgainReport.h"

#include <algorithm>
#include <cmath>

#include "base/Numbers.h"
#include "base/Text.h"
#include "commands/Cautions.h"
#include "commands/MixAgainLots.h"
#include "commands/Paragraph.h"

namespace rackbook {

namespace {

std::string ofIt(double share, int decimals) {
    return formatFixed(share * 100, decimals) + " %";
}

class Report {
public:
    Report(Console& console, const InkBook& ink, const MixAgain& again,
           std::optional<double> capacity_g)
        : m_console(console), m_ink(ink), m_again(again), m_capacity_g(capacity_g) {}

    void print(const std::string& balanceWords) {
        heading(balanceWords);
        for (const std::string& sentence : lotSentences(m_ink, m_again))
            say(sentence);
        jars();
        if (!printWeighing(m_console, m_ink, m_again.weighing))
            return;
        otherPulls();
        say(inkCaution);
    }

private:
    void say(const std::string& words) { printParagraph(m_console, words); }

    void heading(const std::string& balanceWords) {
        std::string words =
            formatShortest(std::round(m_again.weighing.request.wanted_g * 1000) / 1000) + " g of " +
            m_again.wanted.words;
        if (m_again.fromPull >= 0) {
            const Pull& pull = m_ink.records.of<Pull>()[static_cast<std::size_t>(m_again.fromPull)];
            words += ", as in pull " + pull.id + " of " + pull.start.text();
        }
        printHeading(m_console, words);
        printBalance(m_console, m_again.weighing, balanceWords, m_capacity_g);
    }

    void jars() {
        const std::vector<RecipeStage>& stages = m_again.weighing.request.recipe.stages;
        for (const StageInJar& jar : m_again.inJars)
            if (jar.left_g.best > 0)
                say("By the book there are still " + grams(jar.left_g.best) + " g of " +
                    stages[jar.stage].name + " as it was then" + whatToDo(jar));
    }

    static std::string grams(double mass_g) { return formatFixed(mass_g, 2); }

    static std::string whatToDo(const StageInJar& jar) {
        if (std::isnan(jar.needed_g))
            return ".";
        if (jar.isEnough())
            return ", and " + grams(jar.needed_g) +
                   " g are needed. If it is sound, take it from there and leave out its step.";
        return ", but " + grams(jar.needed_g) + " g are needed. If it is sound, use " +
               grams(jar.left_g.best) + " g of it and weigh the missing " +
               grams(jar.needed_g - jar.left_g.best) + " g in the same shares.";
    }

    void otherPulls() {
        for (const OtherPull& other : m_again.others) {
            if (!other.isComputable)
                say("What pull " + other.pull + " laid down cannot be computed.");
            else if (other.mostDifference > 5e-5)
                say("Pull " + other.pull + " differed: by up to " + ofIt(other.mostDifference, 2) +
                    " of the ink in one lot. Its own ink: rackbook "
                    "mix-again " +
                    other.pull + ".");
        }
    }

    Console& m_console;
    const InkBook& m_ink;
    const MixAgain& m_again;
    std::optional<double> m_capacity_g;
};

}  // namespace

void printMixAgain(Console& console, const InkBook& ink, const MixAgain& again,
                   const std::string& balanceWords, std::optional<double> capacity_g) {
    Report(console, ink, again, capacity_g).print(balanceWords);
}

}  // namespace rackbook
