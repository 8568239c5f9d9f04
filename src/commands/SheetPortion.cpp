#include "commands/SheetPortion.h"

#include <cmath>

#include "base/Numbers.h"
#include "commands/BoxValues.h"
#include "records/Mix.h"
#include "records/Weighing.h"

namespace rackbook {

namespace {

// The masses of the section, each nothing where it is not filled in or 0.
struct Taken {
    std::optional<double> mix_g;
    std::optional<double> base_g;
    std::optional<double> drier_g;
    bool drierFromShare = false;

    bool isNothing() const { return !mix_g && !base_g && !drier_g; }
    double ink_g() const { return mix_g.value_or(0) + base_g.value_or(0); }
};

std::optional<double> aboveNothing(const std::optional<double>& mass_g) {
    return mass_g && *mass_g > 0 ? mass_g : std::nullopt;
}

// The share is of the ink before the drier goes in; where both are filled in they must agree, to
// what a share of the ink with it may differ and was rounded.
void addDrier(FilledBoxes& boxes, Taken& taken) {
    constexpr double rounded_pct = 0.3;
    const std::optional<double> share_pct = aboveNothing(massIn(boxes, "portion.drier_pct"));
    if (!share_pct)
        return;
    if (*share_pct > 100) {
        boxes.refuse("portion.drier_pct", "it is more than all of the ink",
                     "Write per cent of the ink.", boxes.text("portion.drier_pct"));
        return;
    }
    const double follows_g = *share_pct / 100 * taken.ink_g();
    if (!taken.drier_g && follows_g > 0) {
        taken.drier_g = std::round(follows_g * 1e3) / 1e3;
        taken.drierFromShare = true;
    } else if (taken.drier_g && taken.ink_g() > 0 &&
               std::abs(100 * *taken.drier_g / taken.ink_g() - *share_pct) >
                   rounded_pct + *share_pct * *share_pct / 100) {
        boxes.refuse("portion.drier_pct",
                     "it contradicts the masses, by which the drier is " +
                         formatFixed(100 * *taken.drier_g / taken.ink_g(), 1) + " % of the ink",
                     "Correct one of them, or leave the share out.",
                     boxes.text("portion.drier_pct"));
    }
}

Taken takenIn(FilledBoxes& boxes) {
    Taken taken;
    taken.mix_g = aboveNothing(massIn(boxes, "portion.mix_g"));
    taken.base_g = aboveNothing(massIn(boxes, "portion.base_g"));
    taken.drier_g = aboveNothing(massIn(boxes, "portion.drier_g"));
    addDrier(boxes, taken);
    return taken;
}

// Whether something is weighed here that the boxes and the layer say where it came from.
void requireSources(const RecordSet& records, FilledBoxes& boxes, const Taken& taken) {
    const ReturnedSheet& sheet = boxes.sheet();
    if (!taken.mix_g)
        boxes.refuse("portion.mix_g", "it is not filled in, and extender or drier went into it",
                     "Write how much of the mix was taken.");
    else if (!sheet.layer.mix)
        boxes.refuse("portion.mix_g", "no mix is recorded for layer " + sheet.layer.id,
                     "Say which with rackbook enter layer " + sheet.layer.id +
                         " mix=MIX --reason TEXT, make the sheet anew, and fill that in.");
    const auto require = [&](const std::optional<double>& mass_g, const char* box, LotKind kind) {
        const Lot* lot = recordIn<Lot>(boxes, box, records);
        if (!mass_g)
            return;
        if (boxes.text(box).empty())
            boxes.refuse(box, "it is not filled in, and something was weighed out of it",
                         "Write the id of the lot.");
        else if (lot && lot->lotKind != kind)
            boxes.refuse(box,
                         std::string("that lot is of the kind ") + textOf(lot->lotKind) + ", not " +
                             textOf(kind),
                         "Write the id of another.", boxes.text(box));
    };
    require(taken.base_g, "portion.baseLot", LotKind::base);
    require(taken.drier_g, "portion.drierLot", LotKind::drier);
}

class PortionWriting {
public:
    PortionWriting(const RecordSet& records, FilledBoxes& boxes, const EdtfDate& start)
        : m_records(records), m_boxes(boxes), m_start(start) {}

    std::vector<RecordFromBoxes> write(const Taken& taken) {
        addMix();
        Weighing fromMix;
        fromMix.fromMix = m_boxes.sheet().layer.mix;
        add(fromMix, taken.mix_g, "portion.mix_g", {});
        addFromLot(taken.base_g, "portion.base_g", "portion.baseLot");
        addFromLot(taken.drier_g, taken.drierFromShare ? "portion.drier_pct" : "portion.drier_g",
                   "portion.drierLot");
        return std::move(m_made);
    }

private:
    void addMix() {
        const ReturnedSheet& sheet = m_boxes.sheet();
        Mix mix;
        mix.id = sheet.idOf(RecordKind::mix);
        mix.name = sheet.edition.code + ", layer " + std::to_string(sheet.layer.ordinal) +
                   ", portion of " + m_start.text().substr(0, 10);
        mix.purpose = MixPurpose::portion;
        mix.edition = Ref<Edition>{sheet.edition.id};
        mix.madeOn = EdtfDate::parse(m_start.text().substr(0, 10));
        m_made.push_back({{mix}, {}});
    }

    void addFromLot(const std::optional<double>& mass_g, const std::string& box,
                    const std::string& lotBox) {
        if (!mass_g)
            return;
        const Lot* lot = recordIn<Lot>(m_boxes, lotBox, m_records);
        Weighing weighing;
        if (lot)
            weighing.lot = Ref<Lot>{lot->id};
        if (box == "portion.drier_pct")
            weighing.note = "Reckoned from a share of " + m_boxes.text(box) +
                            " % on the bench sheet, not weighed.";
        add(weighing, mass_g, box, lotBox);
    }

    void add(Weighing weighing, const std::optional<double>& mass_g, const std::string& box,
             const std::string& lotBox) {
        const ReturnedSheet& sheet = m_boxes.sheet();
        weighing.mix = {sheet.idOf(RecordKind::mix)};
        weighing.id = weighing.mix.id + "/" + std::to_string(m_made.size());
        weighing.at = m_start;
        weighing.sequence = static_cast<int>(m_made.size()) - 1;
        weighing.mass_g = mass_g;
        m_made.push_back({{weighing}, {{"/mass_g", box}, {"/lot", lotBox}, {"/at", "pull.day"}}});
    }

    const RecordSet& m_records;
    FilledBoxes& m_boxes;
    const EdtfDate& m_start;
    std::vector<RecordFromBoxes> m_made;
};

}  // namespace

std::vector<RecordFromBoxes> portionOfSheet(const RecordSet& records, FilledBoxes& boxes,
                                            const EdtfDate& start) {
    const Taken taken = takenIn(boxes);
    if (taken.isNothing())
        return {};
    if (!boxes.text("pull.portion").empty()) {
        boxes.refuse("pull.portion", "a portion of the book is named, and masses for a new one too",
                     "Leave out one of them: what went into a portion of the book is recorded with "
                     "rackbook weigh.",
                     boxes.text("pull.portion"));
        return {};
    }
    const std::size_t before = boxes.findings().size();
    requireSources(records, boxes, taken);
    if (boxes.findings().size() > before)
        return {};
    return PortionWriting(records, boxes, start).write(taken);
}

}  // namespace rackbook
