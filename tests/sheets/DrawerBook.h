// A drawer with something of everything.
#pragma once

#include "EditionBook.h"
#include "sheets/DrawerFacts.h"

namespace rackbook::test {

inline TimeSpan spanOf(const char* text) {
    const EdtfDate date = build::on(text);
    return {date.earliest(), date.latest()};
}

inline DrawerPrint drawerPrint(std::size_t edition, int number, const char* designation,
                               std::optional<Verdict> verdict, const char* since) {
    DrawerPrint print;
    print.edition = edition;
    print.workingNumber = number;
    print.designation = designation;
    print.verdict = verdict;
    print.since = print.darkSince = spanOf(since);
    return print;
}

inline void ask(DrawerPrint& print, const char* airing, bool isDue) {
    print.mayNeedLight = true;
    print.airing_day = dayOf(spanOf(airing).earliest);
    print.isAiringDue = isDue;
}

// Two prints put away tacky, one put there ready, one that needs a look, one not affected, one
// spoiled.
inline DrawerFacts drawerFacts() {
    DrawerFacts facts;
    facts.asOf = onDay("2026-03-20");
    facts.studio = "Studio at the Old Weir";
    facts.name = "Plan chest, drawer 3";
    facts.capacity = 60;
    facts.airing_days = 30;
    facts.airingSource = "our guess, no source";
    facts.editions = {{"HB", "Harbour"}, {"ZZ", "Other"}};
    for (const int number : {1, 2}) {
        facts.prints.push_back(drawerPrint(0, number, number == 1 ? "1/5" : "2/5",
                                           Verdict::bringOut, "2026-02-03T10:00"));
        facts.prints.back().touchThen = Touch::tacky;
        ask(facts.prints.back(), "2026-03-05", true);
    }
    facts.prints.push_back(drawerPrint(0, 3, "3/5", Verdict::ready, "2026-03-01"));
    facts.prints.back().isInterleaved = true;
    facts.prints.back().touchThen = Touch::dry;
    facts.prints.push_back(drawerPrint(0, 9, "", std::nullopt, "../2019"));
    facts.prints.push_back(drawerPrint(1, 4, "", Verdict::lookDue, "2026-03-10"));
    facts.prints.back().touchThen = Touch::tacky;
    facts.prints.back().foundDryOn = spanOf("2026-03-12");
    ask(facts.prints.back(), "2026-04-09", false);
    facts.prints.push_back(drawerPrint(1, 5, "", Verdict::notAffected, "2026-03-10"));
    facts.prints.back().touchThen = Touch::dry;
    facts.prints.back().perhapsElsewhere = true;
    DrawerSoft soft;
    soft.prints = {{0, 1, false}, {0, 2, false}};
    soft.putThere = spanOf("2026-02-03T10:00");
    soft.touch = Touch::tacky;
    soft.touchOn = spanOf("2026-02-02");
    soft.besideThen = {{0, 9, true}};
    soft.comeSince = {{0, 3, true}, {1, 4, false}, {1, 5, false}};
    facts.soft.push_back(soft);
    return facts;
}

}  // namespace rackbook::test
