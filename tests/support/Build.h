// Builds books for tests, record by record. Every function fills in what its kind demands and lets
// the caller change the rest before the record goes in.
#pragma once

#include <initializer_list>
#include <string>
#include <utility>
#include <vector>

#include "records/RecordSet.h"

namespace rackbook::build {

inline EdtfDate on(const std::string& text) {
    return EdtfDate::parse(text);
}

struct AsIs {
    template <class R>
    void operator()(R&) const {}
};

class Book {
public:
    RecordSet records;

    // A maker, complete; id "maker".
    Book() { party("maker"); }

    template <class Edit = AsIs>
    Book& party(const std::string& id, Edit edit = {}) {
        Party r;
        r.id = id;
        r.name = id;
        return add(std::move(r), edit);
    }

    template <class Edit = AsIs>
    Book& place(const std::string& id, PlaceKind kind, Edit edit = {}) {
        Place r;
        r.id = id;
        r.name = id;
        r.placeKind = kind;
        return add(std::move(r), edit);
    }

    Book& place(const std::string& id, PlaceKind kind, LightKind light) {
        return place(id, kind, [&](Place& r) {
            r.light.emplace_back();
            r.light.back().lightKind = light;
        });
    }

    // Nothing a sheet prints is missing: 3 numbered, open.
    template <class Edit = AsIs>
    Book& edition(const std::string& id, Edit edit = {}) {
        Edition r;
        r.id = id;
        r.code = id;
        r.title = "Harbour";
        r.maker = {"maker"};
        r.process = "linocut";
        r.year = on("2026");
        r.imageHeight_mm = r.imageWidth_mm = 300;
        r.sheetHeight_mm = r.sheetWidth_mm = 400;
        r.paper = "mulberry paper, 45 g/m²";
        r.declaredNumbered = 3;
        r.statement = "Printed by hand.";
        return add(std::move(r), edit);
    }

    template <class Edit = AsIs>
    Book& block(const std::string& id, const std::string& editionId, Edit edit = {}) {
        Block r;
        r.id = id;
        r.edition = {editionId};
        r.name = id;
        return add(std::move(r), edit);
    }

    // States 1, 2, 3 … cut on these dates.
    Book& reductionBlock(const std::string& id, const std::string& editionId,
                         std::initializer_list<const char*> cutOn) {
        return block(id, editionId, [&](Block& r) {
            for (const char* date : cutOn) {
                BlockState state;
                state.ordinal = static_cast<int>(r.states.size()) + 1;
                state.words = "cut";
                state.cutOn = on(date);
                r.states.push_back(state);
            }
        });
    }

    // Its id is "<edition>-layer<ordinal>".
    template <class Edit = AsIs>
    Book& layer(const std::string& editionId, int ordinal, Edit edit = {}) {
        Layer r;
        r.id = editionId + "-layer" + std::to_string(ordinal);
        r.edition = {editionId};
        r.ordinal = ordinal;
        r.colourWords = "grey";
        return add(std::move(r), edit);
    }

    // Their ids are "<edition>-<working number>".
    template <class Edit = AsIs>
    Book& impressions(const std::string& editionId, int first, int last, Edit edit = {}) {
        for (int number = first; number <= last; ++number) {
            Impression r;
            r.id = editionId + "-" + std::to_string(number);
            r.edition = {editionId};
            r.workingNumber = number;
            add(std::move(r), edit);
        }
        return *this;
    }

    // One impression, designated and signed on that date.
    template <class Edit = AsIs>
    Book& signedImpression(const std::string& editionId, int number, const std::string& designation,
                           DesignationKind kind, const std::string& date, Edit edit = {}) {
        return impressions(editionId, number, number, [&](Impression& r) {
            r.designation = designation;
            r.designationKind = kind;
            r.signedOn = on(date);
            edit(r);
        });
    }

    template <class Edit = AsIs>
    Book& lot(const std::string& id, LotKind kind, Edit edit = {}) {
        Lot r;
        r.id = id;
        r.lotKind = kind;
        r.colourWords = id;
        if (kind == LotKind::ink)
            r.pigments = {"PBk7"};
        if (kind == LotKind::drier)
            r.drierMetals = {{"cobalt", 0.06}};
        return add(std::move(r), edit);
    }

    template <class Edit = AsIs>
    Book& mix(const std::string& id, MixPurpose purpose, Edit edit = {}) {
        Mix r;
        r.id = id;
        r.name = id;
        r.purpose = purpose;
        return add(std::move(r), edit);
    }

    // The weighings' ids are "weighing1", "weighing2" …
    template <class Edit = AsIs>
    Book& addLot(const std::string& mixId, const std::string& lotId, double mass_g,
                 const std::string& at, Edit edit = {}) {
        return weighing(mixId, WeighingAct::add, mass_g, at, [&](Weighing& r) {
            r.lot = Ref<Lot>{lotId};
            edit(r);
        });
    }

    template <class Edit = AsIs>
    Book& addMix(const std::string& mixId, const std::string& fromId, double mass_g,
                 const std::string& at, Edit edit = {}) {
        return weighing(mixId, WeighingAct::add, mass_g, at, [&](Weighing& r) {
            r.fromMix = Ref<Mix>{fromId};
            edit(r);
        });
    }

    template <class Edit = AsIs>
    Book& weighing(const std::string& mixId, WeighingAct act, double mass_g, const std::string& at,
                   Edit edit = {}) {
        Weighing r;
        r.id = numbered<Weighing>("weighing");
        r.mix = {mixId};
        r.act = act;
        r.at = on(at);
        r.mass_g = mass_g;
        return add(std::move(r), edit);
    }

    // Ids are "pull1", "move1", "look1", "transfer1" …; impressions are full ids.
    template <class Edit = AsIs>
    Book& pull(const std::string& layerId, const std::string& start,
               const std::vector<std::string>& impressionIds, Edit edit = {}) {
        Pull r;
        r.id = numbered<Pull>("pull");
        r.layer = {layerId};
        r.start = on(start);
        r.impressions = refs(impressionIds);
        return add(std::move(r), edit);
    }

    template <class Edit = AsIs>
    Book& move(const std::string& to, const std::string& at,
               const std::vector<std::string>& impressionIds, Edit edit = {}) {
        Move r;
        r.id = numbered<Move>("move");
        r.to = {to};
        r.at = on(at);
        r.impressions = refs(impressionIds);
        return add(std::move(r), edit);
    }

    template <class Edit = AsIs>
    Book& look(const std::string& at, const std::vector<std::string>& impressionIds, Touch touch,
               LookColour colour, Edit edit = {}) {
        Look r;
        r.id = numbered<Look>("look");
        r.at = on(at);
        r.impressions = refs(impressionIds);
        r.touch = touch;
        r.colour = colour;
        return add(std::move(r), edit);
    }

    template <class Edit = AsIs>
    Book& transfer(TransferKind kind, const std::string& giver, const std::string& receiver,
                   const std::string& agreedOn, const std::vector<std::string>& impressionIds,
                   Edit edit = {}) {
        Transfer r;
        r.id = numbered<Transfer>("transfer");
        r.transferKind = kind;
        r.giver = {giver};
        r.receiver = {receiver};
        r.agreedOn = on(agreedOn);
        r.impressions = refs(impressionIds);
        return add(std::move(r), edit);
    }

    template <class R, class Edit = AsIs>
    Book& add(R record, Edit edit = {}) {
        edit(record);
        records.add(std::move(record));
        return *this;
    }

private:
    template <class R>
    std::string numbered(const char* word) const {
        return word + std::to_string(records.of<R>().size() + 1);
    }

    static std::vector<Ref<Impression>> refs(const std::vector<std::string>& ids) {
        std::vector<Ref<Impression>> all;
        for (const std::string& id : ids)
            all.push_back({id});
        return all;
    }
};

// "e-1" … "e-3"
inline std::vector<std::string> impressionIds(const std::string& editionId, int first, int last) {
    std::vector<std::string> ids;
    for (int number = first; number <= last; ++number)
        ids.push_back(editionId + "-" + std::to_string(number));
    return ids;
}

}  // namespace rackbook::build
