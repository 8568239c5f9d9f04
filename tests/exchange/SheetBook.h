// A small studio of which every kind of sheet has something to say, and all sheets of it.
#pragma once

#include <functional>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "exchange/SheetRecords.h"
#include "support/Build.h"

namespace rackbook::test {

constexpr const char* sheetDay = "2026-03-20";

inline void addInkOf(build::Book& book) {
    book.add(Balance{}, [](Balance& r) {
        r.id = "scale";
        r.name = "scale";
        r.readability_g = 0.1;
    });
    book.lot("rose", LotKind::ink);
    book.add(StockTake{}, [](StockTake& r) {
        r.id = "count";
        r.lot = {"rose"};
        r.at = build::on("2026-02-20");
        r.mass_g = 180;
    });
    book.mix("veil", MixPurpose::stock, [](Mix& r) { r.edition = Ref<Edition>{"TIDE"}; });
    book.mix("veil-a", MixPurpose::portion);
    const auto weighed = [](Weighing& r) { r.balance = Ref<Balance>{"scale"}; };
    book.addLot("veil", "rose", 100, "2026-02-27T08:00", weighed);
    book.addMix("veil-a", "veil", 20, "2026-03-01T08:00", weighed);
    book.add(Drawdown{}, [](Drawdown& r) {
        r.id = "swatch";
        r.mix = Ref<Mix>{"veil"};
        r.substrate = "card";
        r.madeOn = build::on("2026-02-27");
    });
    book.add(Reading{}, [](Reading& r) {
        r.id = "swatch-read";
        r.drawdown = Ref<Drawdown>{"swatch"};
        r.takenOn = build::on("2026-02-28");
        r.labL = 60;
        r.labA = 20;
        r.labB = 5;
    });
}

inline void addPlacesOf(build::Book& book) {
    book.party("tides", [](Party& r) { r.contact = "12 Quay Street"; });
    book.party("collector");
    book.place("line", PlaceKind::rack, LightKind::daylight);
    book.place("chest", PlaceKind::other);
    book.place("drawer", PlaceKind::drawer, [](Place& r) { r.within = Ref<Place>{"chest"}; });
    book.place("tides-wall", PlaceKind::gallery, [](Place& r) {
        r.name = "The Tides Room";
        r.holder = Ref<Party>{"tides"};
    });
}

// Three sheets of one edition. 1 was consigned to a gallery; 2 hung on the line and lies in the
// drawer; 3 hangs on the line.
inline build::Book sheetBook() {
    build::Book book;
    book.add(Book{}, [](Book& r) {
        r.id = "book";
        r.studio = "Studio at the Old Weir";
        r.timeZone = "Europe/Copenhagen";
    });
    addPlacesOf(book);
    book.edition("TIDE").block("TIDE-key", "TIDE");
    addInkOf(book);
    book.layer("TIDE", 1, [](Layer& r) { r.mix = Ref<Mix>{"veil"}; });
    book.impressions("TIDE", 1, 3, [](Impression& r) {
        if (r.workingNumber == 1)
            r.holder = Ref<Party>{"tides"};
    });
    book.pull("TIDE-layer1", "2026-03-01T10:00", build::impressionIds("TIDE", 1, 3),
              [](Pull& r) { r.portion = Ref<Mix>{"veil-a"}; });
    book.move("line", "2026-03-01T16:00", build::impressionIds("TIDE", 1, 3));
    book.transfer(TransferKind::consignment, "maker", "tides", "2026-03-09", {"TIDE-1"},
                  [](Transfer& r) {
                      r.price = 410;
                      r.currency = "EUR";
                      r.terms = "Forty per cent to the gallery.";
                  });
    book.move("tides-wall", "2026-03-10", {"TIDE-1"});
    book.move("drawer", "2026-03-12", {"TIDE-2"});
    book.look("2026-03-11", {"TIDE-2", "TIDE-3"}, Touch::dry, LookColour::returning,
              [](Look& r) { r.standsFor = {{"TIDE-1"}}; });
    return book;
}

inline SheetDepth certificateDepth() {
    SheetDepth depth;
    depth.light = depth.transfers = depth.photographs = true;
    return depth;
}

inline std::map<std::string, SheetDepth> sheetDepths() {
    std::map<std::string, SheetDepth> depths = {{"plain", {}}, {"certificate", certificateDepth()}};
    depths["light"].light = true;
    depths["stock"].stock = true;
    depths["mixes"].mixes = true;
    depths["swatches"].swatches = true;
    depths["storage"].storage = true;
    depths["transfer"].privacy.tellsTransfers = true;
    return depths;
}

inline std::map<std::string, SheetAbout> sheetAbouts() {
    std::map<std::string, SheetAbout> abouts = {{"the whole book", {}}};
    abouts["edition"].edition = "TIDE";
    for (const char* id : {"TIDE-1", "TIDE-2", "TIDE-3"}) {
        abouts[id].edition = "TIDE";
        abouts[id].impressions = {id};
    }
    abouts["layer"].edition = "TIDE";
    abouts["layer"].layer = "TIDE-layer1";
    abouts["mix"].mix = "veil";
    abouts["transfer"].transfer = "transfer1";
    abouts["drawer"].place = "drawer";
    abouts["drawer"].impressions = {"TIDE-2"};
    return abouts;
}

inline std::string sheetText(const RecordSet& records, const SheetDepth& depth,
                             const SheetAbout& about) {
    const SheetIndexes indexes(records);
    return SheetRecords(indexes, depth, build::on(sheetDay).latest())
        .textFor({"sheet", sheetDay, "en", about});
}

// By the names of what it speaks of and what it is about.
inline std::map<std::string, std::string> sheetTexts(const RecordSet& records, bool namesHolders) {
    std::map<std::string, std::string> texts;
    for (auto [name, depth] : sheetDepths()) {
        depth.privacy.namesHolders = namesHolders;
        for (const auto& [subject, about] : sheetAbouts())
            texts[name + " of " + subject] = sheetText(records, depth, about);
    }
    return texts;
}

// A copy with every record changed as `edit` will have it.
template <class Edit>
RecordSet edited(const RecordSet& records, Edit&& edit) {
    RecordSet changed;
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        for (R record : records.of<R>()) {
            edit(record);
            changed.add(std::move(record));
        }
    });
    return changed;
}

}  // namespace rackbook::test
