// A sound book, and what each audit rule says about variations of it.
#pragma once

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "checks/Audit.h"
#include "support/Build.h"

namespace rackbook {

// Every part of a finding, the value in brackets.
inline std::string textOf(const Finding& finding) {
    return std::string(severityName(finding.severity)) + ": " + describe(finding.where) + ": " +
           finding.what + (finding.value.empty() ? "" : " (" + finding.value + ")") + ". " +
           finding.remedy;
}

// Findings of one rule, in order. As of noon on 1 June 2026.
inline std::vector<std::string> found(const build::Book& book, const std::string& rule,
                                      const HouseRules& rules = HouseRules()) {
    const AuditContext context(book.records, rules, build::on("2026-06-01T12:00").earliest());
    std::vector<std::string> texts;
    for (const Finding& finding : audit(context))
        if (finding.rule == rule)
            texts.push_back(textOf(finding));
    return texts;
}

using Texts = std::vector<std::string>;

// Edition e of three, layers 1 and 2 pulled with weighed ink, hung in light, looked at, numbered
// and signed, still open.
inline build::Book soundBook() {
    build::Book book;
    book.place("rack", PlaceKind::rack, LightKind::daylight);
    book.place("drawer", PlaceKind::drawer, LightKind::dark);
    book.lot("base", LotKind::base).lot("blue", LotKind::ink).lot("cobalt", LotKind::drier);
    book.mix("stock", MixPurpose::stock, [](Mix& r) { r.drierFree = true; });
    book.mix("portion1", MixPurpose::portion).mix("portion2", MixPurpose::portion);
    book.addLot("stock", "base", 90, "2026-03-01");
    book.addLot("stock", "blue", 10, "2026-03-01");
    book.addMix("portion1", "stock", 40, "2026-03-04");
    book.addLot("portion1", "cobalt", 0.5, "2026-03-04");
    book.addMix("portion2", "stock", 40, "2026-03-06");
    book.edition("e").layer("e", 1).layer("e", 2);
    for (int number = 1; number <= 3; ++number)
        book.signedImpression("e", number, std::to_string(number) + "/3", DesignationKind::numbered,
                              "2026-04-10");
    const std::vector<std::string> all = build::impressionIds("e", 1, 3);
    book.pull("e-layer1", "2026-03-04", all, [](Pull& r) { r.portion = Ref<Mix>{"portion1"}; });
    book.pull("e-layer2", "2026-03-06", all, [](Pull& r) { r.portion = Ref<Mix>{"portion2"}; });
    book.move("rack", "2026-03-06", all);
    book.look("2026-04-08", all, Touch::dry, LookColour::trueColour);
    book.move("drawer", "2026-04-11", all, [](Move& r) { r.from = Ref<Place>{"rack"}; });
    return book;
}

}  // namespace rackbook
