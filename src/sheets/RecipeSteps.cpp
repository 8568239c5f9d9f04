#include <algorithm>
#include <cmath>

#include "sheets/LotText.h"
#include "sheets/RecipeParts.h"

namespace rackbook::recipeparts {

namespace {

class Steps {
public:
    Steps(const RecipeFacts& facts, const SheetWords& words)
        : m_facts(facts), m_words(words), m_weighing(*facts.weighing), m_plan(m_weighing.plan) {}

    void set(Flow& flow) const {
        flow.paragraph(leadText());
        if (!canBeWeighed(m_facts)) {
            flow.paragraph(m_words("steps.cannot"));
            flow.paragraph(smallestText());
            return;
        }
        if (m_weighing.plans.chosen)
            flow.paragraph(m_words("steps.order"), TextStyle::small);
        else
            flow.note(
                NoteKind::note, {},
                m_words.sentences(
                    {m_words.filled("steps.notWithin", {{"limit", limitText()}}), smallestText()}));
        SheetTable table;
        table.columns = {{m_words("steps.mass"), Alignment::decimal, 0, 18},
                         {m_words("steps.what"), Alignment::left, 2.2, 0},
                         {m_words("steps.pigments"), Alignment::left, 1, 0},
                         {m_words("steps.share"), Alignment::decimal, 0, 19},
                         {m_words("steps.weighed"), Alignment::left, 0, 22}};
        for (std::size_t i = 0; i < m_plan.stages.size(); ++i)
            addStep(table, i);
        flow.table(table);
    }

private:
    std::string grams(double mass_g) const {
        return m_words.figure(mass_g, m_weighing.balance.decimals);
    }

    // Per cent, with as many digits as it was given with.
    std::string limitText() const {
        return m_words.withUnit(
            "percent", m_words.shortFigure(std::round(m_weighing.request.limit * 1e6) / 1e4));
    }

    std::string smallestText() const {
        return m_words.filled("steps.smallest",
                              {{"mass", m_words.figure(m_weighing.plans.smallestBatch_g, 0)}});
    }

    std::string balanceText() const {
        const RecipeBalance& balance = m_weighing.balance;
        const auto shown = [&](double mass_g) { return m_words.shortFigure(mass_g); };
        return m_words.filled(
            balance.repeatabilityAssumed ? "steps.balanceAssumed" : "steps.balance",
            {{"name", balance.name.empty() ? m_words("steps.balanceNotRecorded") : balance.name},
             {"step", shown(balance.figures.readability_g)},
             {"repeat", shown(balance.figures.repeatability_g)}});
    }

    std::string leadText() const {
        const double wanted_g = std::round(m_weighing.request.wanted_g * 1000) / 1000;
        std::vector<std::string> sentences = {m_words.filled(
            "steps.lead", {{"mass", m_words.shortFigure(wanted_g)}, {"balance", balanceText()}})};
        for (std::size_t i = 0; m_weighing.balance.capacity_g && i < m_plan.stages.size(); ++i)
            if (m_plan.stages[i].total_g > *m_weighing.balance.capacity_g)
                sentences.push_back(m_words.filled(
                    "steps.tooHeavy",
                    {{"step", std::to_string(i + 1)},
                     {"mass", m_words.shortFigure(*m_weighing.balance.capacity_g)}}));
        return m_words.sentences(sentences);
    }

    std::string stageName(std::size_t position) const {
        const PlanStage& stage = m_plan.stages[position];
        const std::string name =
            m_weighing.request.recipe.stages[static_cast<std::size_t>(stage.recipeStage)].name;
        if (stage.role == StageRole::coloursTogether)
            return m_words.filled("steps.coloursOf", {{"mix", name}});
        if (stage.role == StageRole::recipe)
            return name;
        const PlanPart& strong = stage.parts.front();
        return m_words.filled(
            "steps.letDown",
            {{"what", strong.lot >= 0 ? shortWords(lot(strong.lot).colourWords)
                                      : stageName(static_cast<std::size_t>(strong.stage))},
             {"parts", m_words.shortFigure(stage.baseParts)}});
    }

    const Lot& lot(int position) const { return m_facts.lots[static_cast<std::size_t>(position)]; }

    void addStep(SheetTable& table, std::size_t position) const {
        const PlanStage& stage = m_plan.stages[position];
        const std::size_t begin = table.rows.size();
        TableRow heading{{headingText(position)}};
        heading.heading = true;
        table.rows.push_back(std::move(heading));
        for (const PlanPart& part : stage.parts)
            table.rows.push_back(partRow(stage, part));
        for (std::size_t i = begin; i + 1 < table.rows.size(); ++i)
            table.rows[i].keepsWithNext = true;
    }

    TableRow partRow(const PlanStage& stage, const PlanPart& part) const {
        const std::string share = m_words.percent(part.mass_g / stage.total_g, 2);
        if (part.lot < 0)
            return {{grams(part.mass_g),
                     m_words.filled("steps.fromStep",
                                    {{"step", std::to_string(part.stage + 1)},
                                     {"name", stageName(static_cast<std::size_t>(part.stage))}}),
                     "", share, ""}};
        return {{grams(part.mass_g), lotText(m_facts, part.lot),
                 pigmentsText(lot(part.lot), m_words), share, ""}};
    }

    std::string stepThatTakes(std::size_t position) const {
        std::vector<std::string> steps;
        for (std::size_t i = position + 1; i < m_plan.stages.size(); ++i)
            for (const PlanPart& part : m_plan.stages[i].parts)
                if (part.lot < 0 && part.stage == static_cast<int>(position))
                    steps.push_back(std::to_string(i + 1));
        return m_words.listed(steps);
    }

    // With what the step makes, what of it goes on, and what is left over.
    std::string headingText(std::size_t position) const {
        const PlanStage& stage = m_plan.stages[position];
        const bool isLast = position + 1 == m_plan.stages.size();
        std::string text = m_words.filled("steps.step", {{"step", std::to_string(position + 1)},
                                                         {"name", stageName(position)},
                                                         {"mass", grams(stage.total_g)}});
        if (stage.leftOver_g > m_weighing.request.balance.readability_g / 2)
            text += " · " +
                    (isLast ? m_words.filled("steps.wanted", {{"taken", grams(stage.taken_g)},
                                                              {"left", grams(stage.leftOver_g)}})
                            : m_words.filled("steps.goOn", {{"taken", grams(stage.taken_g)},
                                                            {"step", stepThatTakes(position)},
                                                            {"left", grams(stage.leftOver_g)}}));
        const bool hasDrier =
            std::any_of(stage.parts.begin(), stage.parts.end(), [&](const PlanPart& part) {
                return part.lot >= 0 && lot(part.lot).lotKind == LotKind::drier;
            });
        return hasDrier ? text + " · " + m_words("steps.printNow") : text;
    }

    const RecipeFacts& m_facts;
    const SheetWords& m_words;
    const RecipeWeighing& m_weighing;
    const WeighingPlan& m_plan;
};

}  // namespace

bool canBeWeighed(const RecipeFacts& facts) {
    if (!facts.weighing)
        return false;
    const WeighingPlan& plan = facts.weighing->plan;
    return std::none_of(plan.complaints.begin(), plan.complaints.end(),
                        [](const PlanComplaint& complaint) {
                            return complaint.fault == PlanFault::massShowsAsZero;
                        });
}

void addSteps(Flow& flow, const RecipeFacts& facts, const SheetWords& words) {
    if (facts.weighing)
        Steps(facts, words).set(flow);
    else if (facts.namesNoMix)
        flow.paragraph(words("steps.namesNoMix"));
    else
        flow.paragraph(words.filled("steps.whyNot", {{"why", facts.whyNot}}));
}

}  // namespace rackbook::recipeparts
