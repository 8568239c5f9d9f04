#include "commands/MixAgainReport.h"

#include <algorithm>
#include <cmath>

#include "base/Numbers.h"
#include "base/Text.h"
#include "calc/Wording.h"
#include "cli/Table.h"
#include "commands/BalanceGiven.h"
#include "commands/Cautions.h"
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
    Report(Console& console, const InkBook& ink, const MixAgain& again)
        : m_console(console),
          m_ink(ink),
          m_again(again),
          m_decimals(decimalsOf(again.request.balance)) {}

    void print(const std::string& balanceWords) {
        heading(balanceWords);
        lots();
        jars();
        if (m_again.plans.chosen)
            say("Weigh each step in the order given and tare before each part: the smallest comes "
                "first, so that where too much drops in, the rest can be raised to it; drier comes "
                "last, because it starts the clock.");
        else
            say("No way of weighing keeps every colour within " + ofIt(m_again.request.limit, 1) +
                " of its share on this balance (" + faultWords() +
                "). This is the recipe as it stands; mix more, or weigh on a finer "
                "balance.");
        for (std::size_t i = 0; i < m_again.plan().stages.size(); ++i)
            step(i);
        outcome();
        otherWays();
        otherPulls();
        say(inkCaution);
    }

private:
    void say(const std::string& words) { printParagraph(m_console, words); }

    std::string grams(double mass_g) const { return formatFixed(mass_g, m_decimals); }

    const Lot& lot(int position) const {
        return m_ink.records.of<Lot>()[static_cast<std::size_t>(position)];
    }

    void heading(const std::string& balanceWords) {
        std::string words = grams(m_again.request.wanted_g) + " g of " + m_again.wanted.words;
        if (m_again.fromPull >= 0) {
            const Pull& pull = m_ink.records.of<Pull>()[static_cast<std::size_t>(m_again.fromPull)];
            words += ", as in pull " + pull.id + " of " + pull.start.text();
        }
        m_console.out() << m_console.emphasis(printable(words)) << "\n"
                        << printable("Weighed on: " + balanceWords) << "\n";
    }

    void lots() {
        std::vector<std::string> leftNotKnown;
        for (const LotService& service : m_again.services) {
            if (service.answer == LotAnswer::serves && service.leftNotKnown)
                leftNotKnown.push_back(lot(service.need.lot).id);
            lotAnswer(service);
        }
        if (!leftNotKnown.empty())
            say("How much is left of " + joined(leftNotKnown) +
                " is not known; look before you begin.");
        for (const LotShortage& shortage : m_again.shortages)
            say("By the book " + lot(shortage.lot).id + " holds " +
                formatFixed(shortage.left_g.best, 1) + " g, and this takes " +
                grams(shortage.needed_g) + " g. Weigh what is in it, or mix less.");
        if (m_again.found.drierWasEarlier)
            say("Drier had gone into an earlier step then. Here it goes into the last one only.");
    }

    void lotAnswer(const LotService& service) {
        const std::string name = lotWords(lot(service.need.lot));
        switch (service.answer) {
            case LotAnswer::serves:
                break;
            case LotAnswer::replaced:
                say(replacementWords(service, name));
                break;
            case LotAnswer::tooLittle:
                say("There is too little of " + name + ": " + formatFixed(service.short_g, 1) +
                    " g are missing" +
                    (service.shortTogether_g > 0 ? " and no other tin makes up for it."
                                                 : "; together with others like it there is "
                                                   "enough: " +
                                                       togetherWords(service) + "."));
                break;
            case LotAnswer::needsColourMatching:
                say(name +
                    " is used up, and no other lot has the same pigments: this needs colour "
                    "matching. The steps below name it as if it were there.");
                break;
            case LotAnswer::noneAlike:
                say(name +
                    " is used up, and there is nothing of its kind. The steps below name it "
                    "as if it were there.");
                break;
        }
    }

    std::string replacementWords(const LotService& service, const std::string& name) const {
        std::string words =
            "In place of " + name + ", which is used up, stands " + lotWords(lot(service.by)) + ".";
        if (lot(service.by).lotKind == LotKind::ink)
            words +=
                " The same pigments may be stronger or weaker in another tin: compare a "
                "drawdown.";
        if (service.baseDiffers)
            words += " Another base may be paler or thicker: try a drawdown first.";
        if (service.metalsDiffer)
            words += " Its metals are mixed otherwise; their sum is kept.";
        if (service.contentNotStated)
            words += " Its content is not stated, so it is taken gram for gram, which is a guess.";
        else if (service.factor != 1)
            words += " Of it " + formatFixed(service.factor, 2) + " g go for each gram.";
        if (service.leftNotKnown)
            words += " How much is left of it is not known; look before you begin.";
        return words;
    }

    std::string togetherWords(const LotService& service) const {
        std::vector<std::string> ids;
        for (const int position : service.together)
            ids.push_back(lot(position).id);
        return joined(ids);
    }

    void jars() {
        const std::vector<RecipeStage>& stages = m_again.request.recipe.stages;
        for (const StageInJar& jar : m_again.inJars)
            if (jar.left_g.best > 0)
                say("By the book there are still " + formatFixed(jar.left_g.best, 1) + " g of " +
                    stages[jar.stage].name +
                    " as it was then. If it is sound, take it from there and leave out its step.");
    }

    std::string stageName(const WeighingPlan& plan, std::size_t position) const {
        const PlanStage& stage = plan.stages[position];
        const std::string name =
            m_again.request.recipe.stages[static_cast<std::size_t>(stage.recipeStage)].name;
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
        const WeighingPlan& plan = m_again.plan();
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
        if (stage.leftOver_g > m_again.request.balance.readability_g / 2)
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
        const WeighingPlan& plan = m_again.plan();
        for (const PlannedShare& share : plan.lots)
            addShare(table, lot(share.lot).id, share);
        if (plan.colour.recipe > 0)
            addShare(table, "all colour together", plan.colour);
        m_console.out() << table.text(m_console.width(), "");
        const RuleInForce& rule = m_ink.rules.rule("colourMostUncertainty");
        say("Off by: what rounding to the display does. Give or take: twice the standard "
            "uncertainty from the balance alone. Both are of the share itself; together they are "
            "to stay within " +
            ofIt(m_again.request.limit, 1) + " for every colour" +
            (rule.value == m_again.request.limit ? " (" + originWords(rule) + ")" : "") + ".");
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
        const PlanComplaint& complaint = m_again.plan().complaints.front();
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
        if (m_again.plans.plans.size() < 2)
            return;
        m_console.out() << "\n" << m_console.emphasis("Other ways") << "\n";
        Table table({{"way"},
                     {"steps", Align::right},
                     {"left over g", Align::decimal},
                     {"of that colour g", Align::decimal},
                     {"worst colour", Align::right},
                     {"within the limit"}});
        for (const WeighingPlan& plan : m_again.plans.plans)
            table.addRow(
                {std::string(&plan == &m_again.plan() ? "* " : "  ") + kindWords(plan.kind),
                 std::to_string(plan.stages.size()), grams(plan.waste.total_g),
                 grams(plan.waste.ink_g), ofIt(worst(plan), 1),
                 plan.isWithinLimit() ? "yes" : "no"});
        m_console.out() << table.text(m_console.width(), "");
        say(std::string(m_again.plans.chosen
                            ? "* is the one above: of those within the limit it leaves least "
                              "over. "
                            : "") +
            "Weighed as the recipe stands, the smallest batch within the limit is " +
            grams(m_again.plans.smallestBatch_g) + " g.");
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
    int m_decimals;
};

Tree treeOf(const PlannedShare& share, const InkBook& ink) {
    Tree tree = Tree::object();
    tree.set("lot", share.lot < 0
                        ? Tree(nullptr)
                        : Tree(ink.records.of<Lot>()[static_cast<std::size_t>(share.lot)].id));
    tree.set("recipeShare", share.recipe).set("weighedShare", share.planned);
    tree.set("standardUncertainty", share.uncertainty).set("isLimited", share.isLimited);
    return tree;
}

Tree treeOf(const WeighingPlan& plan, const InkBook& ink, const Recipe& recipe) {
    Tree tree = Tree::object();
    tree.set("way", textOf(plan.kind)).set("withinLimit", plan.isWithinLimit());
    Tree stages = Tree::array();
    for (const PlanStage& stage : plan.stages) {
        Tree one = Tree::object();
        one.set("role", textOf(stage.role));
        one.set("name", recipe.stages[static_cast<std::size_t>(stage.recipeStage)].name);
        if (stage.role != StageRole::recipe)
            one.set("baseParts", stage.baseParts);
        Tree parts = Tree::array();
        for (const PlanPart& part : stage.parts) {
            Tree weighed = Tree::object();
            if (part.lot >= 0)
                weighed.set("lot", ink.records.of<Lot>()[static_cast<std::size_t>(part.lot)].id);
            else
                weighed.set("step", part.stage + 1);
            weighed.set("mass_g", part.mass_g);
            parts.add(std::move(weighed));
        }
        one.set("parts", std::move(parts));
        one.set("total_g", stage.total_g).set("taken_g", stage.taken_g);
        one.set("leftOver_g", stage.leftOver_g);
        stages.add(std::move(one));
    }
    tree.set("steps", std::move(stages));
    Tree shares = Tree::array();
    for (const PlannedShare& share : plan.lots)
        shares.add(treeOf(share, ink));
    tree.set("shares", std::move(shares)).set("allColour", treeOf(plan.colour, ink));
    tree.set("waste_g", plan.waste.total_g).set("inkWaste_g", plan.waste.ink_g);
    return tree;
}

Tree lotsTree(const InkBook& ink, const MixAgain& again) {
    static constexpr const char* answers[] = {"serves", "replaced", "tooLittle",
                                              "needsColourMatching", "noneAlike"};
    Tree lots = Tree::array();
    for (const LotService& service : again.services) {
        Tree one = Tree::object();
        one.set("lot", ink.records.of<Lot>()[static_cast<std::size_t>(service.need.lot)].id);
        one.set("needed_g", service.need.mass_g);
        one.set("answer", answers[static_cast<std::size_t>(service.answer)]);
        if (service.answer == LotAnswer::replaced)
            one.set("by", ink.records.of<Lot>()[static_cast<std::size_t>(service.by)].id)
                .set("factor", service.factor);
        if (service.answer == LotAnswer::tooLittle)
            one.set("short_g", service.short_g);
        lots.add(std::move(one));
    }
    return lots;
}

}  // namespace

void printMixAgain(Console& console, const InkBook& ink, const MixAgain& again,
                   const std::string& balanceWords) {
    Report(console, ink, again).print(balanceWords);
}

void addMixAgain(Tree& report, const InkBook& ink, const MixAgain& again) {
    report.set("wanted", again.wanted.words).set("wanted_g", again.request.wanted_g);
    report.set("pull",
               again.fromPull < 0
                   ? Tree(nullptr)
                   : Tree(ink.records.of<Pull>()[static_cast<std::size_t>(again.fromPull)].id));
    report.set("readability_g", again.request.balance.readability_g);
    report.set("repeatability_g", again.request.balance.repeatability_g);
    report.set("limit", again.request.limit);
    report.set("lots", lotsTree(ink, again));
    Tree plans = Tree::array();
    for (const WeighingPlan& plan : again.plans.plans)
        plans.add(treeOf(plan, ink, again.request.recipe));
    report.set("plans", std::move(plans));
    report.set("chosen", again.plans.chosen ? Tree(*again.plans.chosen) : Tree(nullptr));
    report.set("smallestBatch_g", again.plans.smallestBatch_g);
}

}  // namespace rackbook
