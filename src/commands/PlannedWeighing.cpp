#include "commands/PlannedWeighing.h"

#include <algorithm>
#include <cmath>

#include "base/Numbers.h"
#include "base/Text.h"
#include "calc/Wording.h"
#include "cli/Table.h"
#include "commands/BalanceGiven.h"
#include "commands/Paragraph.h"

namespace rackbook {

namespace {

const char* kindWords(PlanKind kind) {
    static constexpr const char* words[] = {
        "as the recipe stands", "all of it larger", "the earlier steps larger",
        "strong colours let down first", "the colours weighed together first"};
    return words[static_cast<std::size_t>(kind)];
}

std::string ofIt(double share, int decimals) {
    return formatFixed(share * 100, decimals) + " %";
}

class Report {
public:
    Report(Console& console, const InkBook& ink, const PlannedWeighing& weighing)
        : m_console(console),
          m_ink(ink),
          m_weighing(weighing),
          m_decimals(decimalsOf(weighing.request.balance)) {}

    bool print() {
        if (!canBeWeighed()) {
            say("On this balance the recipe as it stands cannot be weighed: a part is less than "
                "its display can show. " +
                smallestBatchWords());
            return false;
        }
        if (m_weighing.plans.chosen)
            say("Weigh each step in the order given and tare before each part: colours first, the "
                "smallest of them before the others, so that where too much drops in, the rest can "
                "be raised to it; then base; drier last, because it starts the clock.");
        else
            say("No way of weighing keeps every colour within " +
                shareWords(m_weighing.request.limit) + " of its share on this balance (" +
                faultWords() +
                "). This is the recipe as it stands; mix more, or weigh on a finer balance.");
        for (std::size_t i = 0; i < m_weighing.plan().stages.size(); ++i)
            step(i);
        outcome();
        otherWays();
        return true;
    }

private:
    bool canBeWeighed() const {
        const std::vector<PlanStage>& stages = m_weighing.plan().stages;
        return std::all_of(stages.begin(), stages.end(),
                           [](const PlanStage& stage) { return stage.total_g > 0; });
    }

    std::string smallestBatchWords() const {
        return "Weighed as the recipe stands, each colour keeps the limit from about " +
               formatFixed(m_weighing.plans.smallestBatch_g, 0) + " g on, before rounding.";
    }

    // Per cent, with as many digits as it was given with.
    static std::string shareWords(double share) {
        return formatShortest(std::round(share * 1e6) / 1e4) + " %";
    }

    void say(const std::string& words) { printParagraph(m_console, words); }

    std::string grams(double mass_g) const { return formatFixed(mass_g, m_decimals); }

    const Lot& lot(int position) const { return lotAt(m_ink, position); }

    std::string stageName(const WeighingPlan& plan, std::size_t position) const {
        const PlanStage& stage = plan.stages[position];
        const std::string name =
            m_weighing.request.recipe.stages[static_cast<std::size_t>(stage.recipeStage)].name;
        if (stage.role == StageRole::coloursTogether)
            return "The colours of " + name;
        if (stage.role == StageRole::recipe)
            return name;
        const PlanPart& strong = stage.parts.front();
        return (strong.lot >= 0 ? lotWords(lot(strong.lot))
                                : stageName(plan, static_cast<std::size_t>(strong.stage))) +
               ", let down 1 to " + formatShortest(stage.baseParts);
    }

    std::string partName(const WeighingPlan& plan, const PlanPart& part) const {
        if (part.lot >= 0)
            return lotWords(lot(part.lot));
        return "step " + std::to_string(part.stage + 1) + ": " +
               stageName(plan, static_cast<std::size_t>(part.stage));
    }

    void step(std::size_t position) {
        const WeighingPlan& plan = m_weighing.plan();
        const PlanStage& stage = plan.stages[position];
        m_console.out() << "\n"
                        << m_console.emphasis(printable("Step " + std::to_string(position + 1) +
                                                        ": " + stageName(plan, position)))
                        << "\n";
        Table table({{"g", Align::decimal}, {"of"}, {"% of the step", Align::decimal}});
        for (const PlanPart& part : stage.parts)
            table.addRow({grams(part.mass_g), partName(plan, part),
                          formatFixed(part.mass_g / stage.total_g * 100, 2)});
        table.addRow({grams(stage.total_g), "in all", ""});
        m_console.out() << table.text(m_console.width(), "");
        if (stage.leftOver_g > m_weighing.request.balance.readability_g / 2)
            m_console.out() << grams(stage.taken_g)
                            << (position + 1 == plan.stages.size() ? " g are wanted; "
                                                                   : " g go on; ")
                            << grams(stage.leftOver_g) << " g are left over.\n";
        if (hasDrier(stage))
            m_console.out() << "With drier in it, it is to be printed from now.\n";
    }

    bool hasDrier(const PlanStage& stage) const {
        return std::any_of(stage.parts.begin(), stage.parts.end(), [&](const PlanPart& part) {
            return part.lot >= 0 && lot(part.lot).lotKind == LotKind::drier;
        });
    }

    void outcome() {
        m_console.out() << "\n" << m_console.emphasis("What comes of it") << "\n";
        Table table({{"lot"},
                     {"recipe %", Align::decimal},
                     {"weighed %", Align::decimal},
                     {"off by", Align::right},
                     {"give or take", Align::right}});
        const WeighingPlan& plan = m_weighing.plan();
        for (const PlannedShare& share : plan.lots)
            addShare(table, lot(share.lot).id, share);
        if (plan.colour.recipe > 0)
            addShare(table, "all colour together", plan.colour);
        m_console.out() << table.text(m_console.width(), "");
        drierOutcome();
        const RuleInForce& rule = m_ink.rules.rule("colourMostUncertainty");
        say("Off by: what rounding to the display does. Give or take: twice the standard "
            "uncertainty from the balance alone. Both are of the share itself; together they are "
            "to stay within " +
            shareWords(m_weighing.request.limit) + " for every colour" +
            (rule.value == m_weighing.request.limit ? " (" + originWords(rule) + ")" : "") + ".");
    }

    // Drier has no limit, because a wide range of it does; but one may want to know.
    void drierOutcome() {
        constexpr double worthAWord = 0.25;
        for (const PlannedShare& share : m_weighing.plan().lots) {
            const double off = std::abs(share.deviation()) + share.expandedUncertainty();
            if (lot(share.lot).lotKind == LotKind::drier && off > worthAWord)
                say("The drier is only known to " + ofIt(off, 0) +
                    " of itself so: weigh it on a finer balance, or take a larger portion.");
        }
    }

    static void addShare(Table& table, const std::string& name, const PlannedShare& share) {
        table.addRow({name, formatFixed(share.recipe * 100, 3), formatFixed(share.planned * 100, 3),
                      ofIt(share.deviation(), 1), ofIt(share.expandedUncertainty(), 1)});
    }

    double worst(const WeighingPlan& plan) const {
        double most = 0;
        for (const PlannedShare& share : plan.lots)
            if (share.isLimited)
                most = std::max(most, std::abs(share.deviation()) + share.expandedUncertainty());
        return most;
    }

    std::string faultWords() const {
        const PlanComplaint& complaint = m_weighing.plan().complaints.front();
        const std::string name = complaint.lot < 0 ? "all colour" : lot(complaint.lot).id;
        switch (complaint.fault) {
            case PlanFault::massShowsAsZero:
                return "a part is less than its display can show";
            case PlanFault::roundedTooFar:
                return name + " is rounded too far";
            default:
                return name + " is too uncertain";
        }
    }

    void otherWays() {
        if (m_weighing.plans.plans.size() < 2)
            return;
        m_console.out() << "\n" << m_console.emphasis("Other ways") << "\n";
        Table table({{""},
                     {"way"},
                     {"steps", Align::right},
                     {"left over g", Align::decimal},
                     {"of that colour g", Align::decimal},
                     {"worst colour", Align::right},
                     {"within the limit"}});
        for (const WeighingPlan& plan : m_weighing.plans.plans)
            table.addRow({m_weighing.plans.chosen && &plan == &m_weighing.plan() ? "*" : "",
                          kindWords(plan.kind), std::to_string(plan.stages.size()),
                          grams(plan.waste.total_g), grams(plan.waste.ink_g), ofIt(worst(plan), 1),
                          plan.isWithinLimit() ? "yes" : "no"});
        m_console.out() << table.text(m_console.width(), "");
        say(std::string(m_weighing.plans.chosen
                            ? "* is the one above: of those within the limit it leaves least "
                              "over. "
                            : "") +
            smallestBatchWords());
    }

    Console& m_console;
    const InkBook& m_ink;
    const PlannedWeighing& m_weighing;
    int m_decimals;
};

}  // namespace

PlannedWeighing plannedWeighing(PlanRequest request) {
    PlannedWeighing weighing{std::move(request), {}};
    weighing.plans = weighingPlans(weighing.request);
    if (!weighing.plans.chosen) {
        // The recipe as it stands is to be shown where nothing keeps the limit.
        std::vector<WeighingPlan>& plans = weighing.plans.plans;
        const auto asItStands = std::find_if(
            plans.begin(), plans.end(),
            [](const WeighingPlan& plan) { return plan.kind == PlanKind::asItStands; });
        std::iter_swap(plans.begin(), asItStands);
    }
    return weighing;
}

void printBalance(Console& console, const PlannedWeighing& weighing,
                  const std::string& balanceWords, std::optional<double> capacity_g) {
    printWrapped(console, "Weighed on: " + balanceWords);
    const WeighingPlan& plan = weighing.plan();
    const int decimals = decimalsOf(weighing.request.balance);
    for (std::size_t i = 0; capacity_g && i < plan.stages.size(); ++i)
        if (plan.stages[i].total_g > *capacity_g)
            printParagraph(console, "Step " + std::to_string(i + 1) + " comes to " +
                                        formatFixed(plan.stages[i].total_g, decimals) +
                                        " g, and the balance carries " +
                                        formatShortest(*capacity_g) +
                                        " g with the dish: weigh it in parts.");
}

bool printWeighing(Console& console, const InkBook& ink, const PlannedWeighing& weighing) {
    return Report(console, ink, weighing).print();
}

}  // namespace rackbook
