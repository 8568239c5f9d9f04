#include "records/AsItStood.h"

namespace rackbook {

bool isAfter(const std::optional<EdtfDate>& date, CivilMinute asOf) {
    return date && date->earliest() > asOf;
}

namespace {

void dropLater(std::optional<EdtfDate>& date, CivilMinute asOf) {
    if (isAfter(date, asOf))
        date.reset();
}

}  // namespace

void standAt(Lot& lot, CivilMinute asOf) {
    dropLater(lot.openedOn, asOf);
    dropLater(lot.finishedOn, asOf);
}

void standAt(Mix& mix, CivilMinute asOf) {
    dropLater(mix.finishedOn, asOf);
}

void standAt(Block& block, CivilMinute asOf) {
    while (!block.states.empty() && isAfter(block.states.back().cutOn, asOf))
        block.states.pop_back();
    if (!isAfter(block.fateOn, asOf))
        return;
    block.fate = MatrixFate::kept;
    block.fateOn.reset();
}

void standAt(Impression& impression, CivilMinute asOf) {
    if (isAfter(impression.signedOn, asOf)) {
        impression.designation.reset();
        impression.designationKind.reset();
        impression.signedOn.reset();
    }
    if (!isAfter(impression.fateOn, asOf))
        return;
    impression.fate = ImpressionFate::kept;
    impression.fateOn.reset();
}

RecordSet recordsAsOf(const RecordSet& records, CivilMinute asOf) {
    RecordSet kept;
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        for (R record : records.of<R>()) {
            if (isAfter(happenedAt(record), asOf))
                continue;
            standAt(record, asOf);
            kept.add(std::move(record));
        }
    });
    return kept;
}

}  // namespace rackbook
