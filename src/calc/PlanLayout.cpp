#include "calc/PlanLayout.h"

#include <algorithm>

namespace rackbook {

namespace {

// Base that is used up but for rounding.
constexpr double nothingLeft = 1e-12;

// Takes a share out of a stage's base. False where there is not enough.
bool takeBase(LayoutStage& stage, double share, const PlanCase& planCase) {
    const std::optional<std::size_t> base = basePartOf(stage, planCase);
    if (!base || stage.parts[*base].share < share - nothingLeft)
        return false;
    stage.parts[*base].share -= share;
    return true;
}

void dropEmptyParts(LayoutStage& stage) {
    const auto isEmpty = [](const LayoutPart& part) { return part.share <= nothingLeft; };
    stage.parts.erase(std::remove_if(stage.parts.begin(), stage.parts.end(), isEmpty),
                      stage.parts.end());
}

// Copies stages one after the other, with others put between, and keeps references right.
class Rebuilding {
public:
    explicit Rebuilding(const Layout& old) : m_newPlace(old.size()) {}

    // The parts name stages as the old layout does. Returns the new place.
    int add(LayoutStage stage) {
        for (LayoutPart& part : stage.parts)
            if (part.stage >= 0)
                part.stage = m_newPlace[static_cast<std::size_t>(part.stage)];
        m_layout.push_back(std::move(stage));
        return static_cast<int>(m_layout.size()) - 1;
    }

    // `insertedParts` take from stages that were put in by add.
    void addOld(std::size_t place, LayoutStage stage, const std::vector<LayoutPart>& inserted) {
        m_newPlace[place] = add(std::move(stage));
        std::vector<LayoutPart>& parts = m_layout.back().parts;
        parts.insert(parts.end(), inserted.begin(), inserted.end());
    }

    Layout take() { return std::move(m_layout); }

private:
    Layout m_layout;
    std::vector<int> m_newPlace;  // by old place
};

}  // namespace

std::optional<std::size_t> basePartOf(const LayoutStage& stage, const PlanCase& planCase) {
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < stage.parts.size(); ++i) {
        const LayoutPart& part = stage.parts[i];
        const bool isBase =
            part.constituent >= 0 &&
            planCase.kinds[static_cast<std::size_t>(part.constituent)] == LotKind::base;
        if (isBase && (!best || part.share > stage.parts[*best].share))
            best = i;
    }
    return best;
}

Layout layoutOf(const Recipe& recipe, const PlanCase& planCase) {
    Layout layout;
    for (std::size_t i = 0; i < recipe.stages.size(); ++i) {
        LayoutStage stage;
        stage.recipeStage = static_cast<int>(i);
        for (const RecipePart& part : recipe.stages[i].parts) {
            const auto lot = std::lower_bound(planCase.lots.begin(), planCase.lots.end(), part.lot);
            const int constituent =
                part.lot < 0 ? -1 : static_cast<int>(lot - planCase.lots.begin());
            stage.parts.push_back({constituent, part.stage, part.share});
        }
        layout.push_back(std::move(stage));
    }
    layout.back().least_g = planCase.wanted_g;
    return layout;
}

std::optional<Layout> withTints(const Layout& layout, const std::vector<Tint>& tints,
                                const PlanCase& planCase) {
    Rebuilding rebuilding(layout);
    for (std::size_t place = 0; place < layout.size(); ++place) {
        LayoutStage stage = layout[place];
        std::vector<LayoutPart> inserted;
        for (const Tint& tint : tints) {
            if (tint.stage != place)
                continue;
            LayoutPart& weak = stage.parts[tint.part];
            const int base = stage.parts[basePartOf(stage, planCase).value_or(0)].constituent;
            if (!takeBase(stage, tint.baseParts * weak.share, planCase))
                return std::nullopt;
            const double whole = 1 + tint.baseParts;
            LayoutStage made{StageRole::tint, stage.recipeStage, tint.baseParts, {}, 0};
            made.parts.push_back({weak.constituent, weak.stage, 1 / whole});
            made.parts.push_back({base, -1, tint.baseParts / whole});
            inserted.push_back({-1, rebuilding.add(std::move(made)), weak.share * whole});
            weak.share = 0;
        }
        dropEmptyParts(stage);
        rebuilding.addOld(place, std::move(stage), inserted);
    }
    return rebuilding.take();
}

std::optional<Layout> withColoursTogether(const Layout& layout, std::size_t stage, double baseParts,
                                          const PlanCase& planCase) {
    LayoutStage rest = layout[stage];
    LayoutStage joint{StageRole::coloursTogether, rest.recipeStage, baseParts, {}, 0};
    double ink = 0;
    for (LayoutPart& part : rest.parts)
        if (part.constituent >= 0 && planCase.isInk[static_cast<std::size_t>(part.constituent)]) {
            joint.parts.push_back(part);
            ink += part.share;
            part.share = 0;
        }
    const double whole = ink * (1 + baseParts);
    if (joint.parts.size() < 2 || joint.parts.size() == rest.parts.size())
        return std::nullopt;
    if (baseParts > 0) {
        const std::optional<std::size_t> base = basePartOf(rest, planCase);
        if (!base)
            return std::nullopt;
        joint.parts.push_back({rest.parts[*base].constituent, -1, ink * baseParts});
        if (!takeBase(rest, ink * baseParts, planCase))
            return std::nullopt;
    }
    for (LayoutPart& part : joint.parts)
        part.share /= whole;
    dropEmptyParts(rest);

    Rebuilding rebuilding(layout);
    for (std::size_t place = 0; place < layout.size(); ++place) {
        if (place != stage) {
            rebuilding.addOld(place, layout[place], {});
            continue;
        }
        const int jointPlace = rebuilding.add(joint);
        rebuilding.addOld(place, rest, {{-1, jointPlace, whole}});
    }
    return rebuilding.take();
}

}  // namespace rackbook
