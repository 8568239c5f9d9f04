// Facts for the sheets about ink: a recipe in three steps, and a shelf of five lots.
#pragma once

#include "EditionBook.h"
#include "calc/PlanFixture.h"
#include "sheets/RecipeFacts.h"
#include "sheets/StockSheetFacts.h"

namespace rackbook::test {

// By position as the plans' fixture has them: blue, base, red, drier, yellow.
inline std::vector<Lot> planLotRecords() {
    const char* const names[] = {"Sea blue; deep", "Clear base", "Brick red", "Liquid drier",
                                 "Straw yellow"};
    const char* const ids[] = {"blue-1", "base-1", "red-1", "drier-1", "yellow-1"};
    const char* const pigments[] = {"PB15:3", "", "PR101", "", "PY42"};
    std::vector<Lot> lots;
    for (std::size_t i = 0; i < planLots.size(); ++i) {
        Lot lot;
        lot.id = ids[i];
        lot.colourWords = names[i];
        lot.lotKind = planLots[i];
        if (*pigments[i])
            lot.pigments = {pigments[i]};
        if (lot.lotKind == LotKind::drier)
            lot.drierMetals = {{"manganese", 0.05}};
        lot.price = 1234;
        lot.supplier = Ref<Party>{"Secret Supplier"};
        lot.note = "private words";
        lots.push_back(std::move(lot));
    }
    return lots;
}

inline RecipeFacts weighedFacts(PlanRequest request) {
    RecipeFacts facts;
    facts.asOf = onDay("2026-03-20");
    facts.studio = "Studio at the Old Weir";
    facts.lots = planLotRecords();
    Mix mix;
    mix.id = "sea-a";
    mix.name = "Pale sea, portion a";
    mix.purpose = MixPurpose::portion;
    mix.madeOn = build::on("2026-02-02");
    mix.note = "private words";
    facts.mix = mix;
    RecipeWeighing weighing;
    weighing.plans = weighingPlans(request);
    weighing.plan = weighing.plans.plans[weighing.plans.chosen.value_or(0)];
    weighing.request = std::move(request);
    weighing.balance = {"Kitchen balance", weighing.request.balance, false, 3000, 1};
    weighing.limitRule = HouseRules().rule("colourMostUncertainty");
    facts.weighing = std::move(weighing);
    return facts;
}

// The recipe of a layer with drier in it, its colour and its film.
inline RecipeFacts recipeFacts() {
    PlanRequest request = threeStages();
    const char* const names[] = {"Sea stock", "Pale sea, let down", "Pale sea, portion a"};
    for (std::size_t i = 0; i < request.recipe.stages.size(); ++i)
        request.recipe.stages[i].name = names[i];
    RecipeFacts facts = weighedFacts(std::move(request));
    const build::Book book = editionBook();
    facts.edition = book.records.of<Edition>().front();
    facts.layer = book.records.of<Layer>().front();
    facts.layer->colourWords = "Pale sea";
    facts.runs = {{build::on("2026-02-02"), "a", 24, true, true, 0},
                  {build::on("2026-02-03"), "b", 10, false, true, 0.012}};
    const Estimate blueShare{0.0255, 0.0265, 0.0275};
    facts.ink.parts = {{facts.lots[base], Estimate::exactly(0.951)},
                       {facts.lots[blue], blueShare},
                       {facts.lots[drier], Estimate::exactly(0.02)}};
    facts.ink.unrecorded = Estimate::exactly(0);
    facts.filmLaid_gm2 = {7.78, 8.89, 10};
    RecipeColour colour;
    colour.isAim = true;
    colour.reading.takenOn = build::on("2026-01-20");
    colour.reading.illuminant = Illuminant::D50;
    colour.reading.observer = Observer::deg2;
    colour.reading.condition = MeasurementCondition::M1;
    colour.reading.backing = Backing::white;
    colour.drawdown = Drawdown{};
    colour.drawdown->substrate = "mulberry paper";
    colour.drawdown->filmWeight_gm2 = 5.5;
    colour.lab = LabColour{71.9, -17.9, -5.2};
    for (int i = 0; i <= 35; ++i)
        colour.curve.push_back({380.0 + 10 * i, 0.35 + 0.01 * i});
    facts.colour = std::move(colour);
    return facts;
}

inline StockSheetFacts stockFacts() {
    StockSheetFacts facts;
    facts.asOf = onDay("2026-03-20");
    facts.studio = "Studio at the Old Weir";
    const HouseRules rules;
    facts.rules = {rules.rule("openedLifeTin_days"), rules.rule("openedLifeTube_days")};
    for (const Lot& lot : planLotRecords()) {
        StockLine line;
        line.lot = lot;
        line.lot.container = Container::tube;
        line.usualLife_days = 1825;
        line.left_g = Estimate::exactly(40);
        line.used_g = Estimate::exactly(20);
        line.place = "Ink shelf";
        facts.open.push_back(std::move(line));
    }
    StockLine& old = facts.open[blue];
    old.lot.container = Container::tin;
    old.usualLife_days = 730;
    old.lot.openedOn = build::on("2023-06-10");
    old.isOld = true;
    StockLine& low = facts.open[red];
    low.lot.openedOn = build::on("2024-10-11");
    low.left_g = {2.5, 3, 3.5};
    low.counted = StockCount{build::on("2026-03-10"), 4};
    low.isRunningLow = true;
    facts.open[drier].isAway = true;
    facts.open[drier].place.clear();
    StockLine& gone = facts.open[yellow];
    gone.lot.openedOn = build::on("2025-01-10");
    gone.lot.finishedOn = build::on("2026-02-01");
    facts.finished.push_back(gone);
    facts.open.pop_back();
    return facts;
}

// A stock mix, let down, and a portion with drier: as in the demonstration's layer 1, 18 g and 6 g,
// 2.3 g and 69.7 g, 24 g and 0.48 g.
inline build::Book mixBook() {
    build::Book book = editionBook();
    const auto of = [](const char* made, bool isFree) {
        return [=](Mix& r) {
            r.edition = Ref<Edition>{"HB"};
            r.madeOn = build::on(made);
            r.drierFree = isFree;
            r.note = "private words";
        };
    };
    book.mix("Straw stock", MixPurpose::stock, of("2026-01-05", true));
    book.mix("Straw let-down", MixPurpose::letDown, of("2026-01-12", true));
    book.mix("Straw portion", MixPurpose::portion, of("2026-01-12", false));
    book.addLot("Straw stock", "ochre", 18, "2026-01-05T10:00");
    book.addLot("Straw stock", "clear", 6, "2026-01-05T10:05");
    book.addMix("Straw let-down", "Straw stock", 2.3, "2026-01-12T08:00");
    book.addLot("Straw let-down", "clear", 69.7, "2026-01-12T08:05");
    book.addMix("Straw portion", "Straw let-down", 24, "2026-01-12T09:00");
    book.addLot("Straw portion", "cobalt", 0.48, "2026-01-12T09:05");
    book.pull("HB-layer2", "2026-01-12T10:00", build::impressionIds("HB", 1, 8), [](Pull& r) {
        r.portion = Ref<Mix>{"Straw portion"};
        r.inkBefore_g = 20;
        r.inkAfter_g = 11;
    });
    return book;
}

}  // namespace rackbook::test
