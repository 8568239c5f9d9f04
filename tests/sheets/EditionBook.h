// A small edition with something of everything: a reduction print in three layers, ten sheets.
#pragma once

#include <type_traits>

#include "support/Build.h"

namespace rackbook::test {

inline build::Book editionBook() {
    build::Book book;
    book.add(rackbook::Book{}, [](rackbook::Book& r) {
        r.id = "book";
        r.studio = "Studio at the Old Weir";
        r.timeZone = "Europe/Copenhagen";
    });
    book.party("printer", [](Party& r) { r.name = "Ole Printer"; });
    book.party("secret", [](Party& r) {
        r.name = "Secret Holder";
        r.contact = "secret@example.invalid";
        r.note = "private words";
    });
    book.edition("HB", [](Edition& r) {
        r.printer = Ref<Party>{"printer"};
        r.declaredNumbered = 5;
        r.declaredProofs = {{DesignationKind::artistsProof, 2}, {DesignationKind::bonATirer, 1}};
        r.declaredTotal = 8;
        r.inscriptions = {{"[designation]", "below the image, left", "pencil"}};
        r.promisedMatrixFate = MatrixFate::cutAway;
        r.promisedBy = build::on("2026-02");
        r.disclosures = {{"reproduces", DisclosureAnswer::notApplicable, {}},
                         {"workshop", DisclosureAnswer::stated, "Printed at the weir"},
                         {"framing", DisclosureAnswer::stated, "sold without a frame"}};
        r.note = "private words";
    });
    book.reductionBlock("HB-block", "HB", {"2026-01-01", "2026-01-08", "2026-01-15"});
    book.lot("ochre", LotKind::ink, [](Lot& r) {
        r.colourWords = "Ochre; dull";
        r.pigments = {"PY42"};
    });
    book.lot("clear", LotKind::base, [](Lot& r) { r.colourWords = "Clear base"; });
    book.lot("cobalt", LotKind::drier, [](Lot& r) { r.colourWords = "Drier"; });
    book.mix("portion", MixPurpose::portion, [](Mix& r) { r.name = "Portion a"; });
    book.addLot("portion", "ochre", 3, "2026-01-02T08:00");
    book.addLot("portion", "clear", 96, "2026-01-02T08:01");
    book.addLot("portion", "cobalt", 1, "2026-01-02T08:02");
    book.mix("guess", MixPurpose::portion, [](Mix& r) { r.name = "Portion b"; });
    book.weighing("guess", WeighingAct::add, 50, "2026-01-09T08:00",
                  [](Weighing& r) { r.lot = Ref<Lot>{"clear"}; });
    book.weighing("guess", WeighingAct::add, 0, "2026-01-09T08:01", [](Weighing& r) {
        r.lot = Ref<Lot>{"ochre"};
        r.mass_g.reset();
        r.massLow_g = 50;
        r.massHigh_g = 150;
    });
    book.add(Reading{}, [](Reading& r) {
        r.id = "reading1";
        r.paper = "paper";
        r.labL = 71.9;
        r.labA = 17.9;
        r.labB = -5.25;
        r.illuminant = Illuminant::D50;
        r.observer = Observer::deg2;
        r.backing = Backing::white;
    });
    for (int layer = 1; layer <= 3; ++layer)
        book.layer("HB", layer, [&](Layer& r) {
            r.block = Ref<Block>{"HB-block"};
            r.blockState = layer;
            if (layer == 1) {
                r.coverage = 0.5;
                r.filmWeight_gm2 = 5;
                r.reading = Ref<Reading>{"reading1"};
            }
            if (layer == 3)
                r.extenderShare = 0.85;
        });
    const auto lost = [](int number, ImpressionFate fate, const char* on) {
        return [=](Impression& r) {
            if (r.workingNumber != number)
                return;
            r.fate = fate;
            r.fateOn = build::on(on);
        };
    };
    book.signedImpression("HB", 1, "1/5", DesignationKind::numbered, "2026-03-01",
                          [](Impression& r) { r.holder = Ref<Party>{"secret"}; });
    book.signedImpression("HB", 2, "2/5", DesignationKind::numbered, "2026-03-01");
    book.signedImpression("HB", 3, "3/5", DesignationKind::numbered, "2026-03-01",
                          lost(3, ImpressionFate::destroyed, "2026-03-10"));
    book.signedImpression("HB", 4, "AP I/II", DesignationKind::artistsProof, "2026-03-01");
    book.signedImpression("HB", 5, "BAT", DesignationKind::bonATirer, "2026-03-01");
    book.signedImpression("HB", 6, "4/5", DesignationKind::numbered, "2026-04-01");
    book.impressions("HB", 7, 8);
    book.impressions("HB", 9, 10, lost(9, ImpressionFate::spoiled, "2026-01-09"));
    const auto laid = [](const char* portion) {
        return [=](Pull& r) {
            r.portion = Ref<Mix>{portion};
            r.inkBefore_g = 10;
            r.inkAfter_g = 6;
        };
    };
    book.pull("HB-layer1", "2026-01-02T10:00", build::impressionIds("HB", 1, 10), laid("portion"));
    book.pull("HB-layer2", "2026-01-09", build::impressionIds("HB", 1, 10), [&](Pull& r) {
        laid("guess")(r);
        r.spoiled = {{"HB-9"}};
    });
    book.pull("HB-layer3", "2026-01~", build::impressionIds("HB", 1, 8));
    return book;
}

// The records with each one of a kind changed.
template <class R, class Edit>
RecordSet changed(const RecordSet& records, Edit edit) {
    RecordSet made;
    forEachRecordType([&](auto tag) {
        using Other = typename decltype(tag)::Type;
        for (Other record : records.of<Other>()) {
            if constexpr (std::is_same_v<R, Other>)
                edit(record);
            made.add(std::move(record));
        }
    });
    return made;
}

inline CivilMinute onDay(const char* day) {
    return build::on(day).latest();
}

}  // namespace rackbook::test
