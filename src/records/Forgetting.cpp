#include "records/Forgetting.h"

namespace rackbook {

std::optional<Record> forgotten(const Record& record) {
    if (const Party* party = std::get_if<Party>(&record)) {
        Party left = *party;
        left.name = forgottenName;
        left.contact.reset();
        left.contactWithheld = false;
        left.note.reset();
        return left;
    }
    if (const Place* place = std::get_if<Place>(&record)) {
        Place left = *place;
        left.name = forgottenName;
        left.note.reset();
        for (Light& light : left.light)
            light.note.reset();
        return left;
    }
    return std::nullopt;
}

std::optional<Record> forgotten(RecordKind kind, const std::string& id) {
    if (kind == RecordKind::party) {
        Party party;
        party.id = id;
        return forgotten(Record(party));
    }
    if (kind == RecordKind::place) {
        Place place;
        place.id = id;
        return forgotten(Record(place));
    }
    return std::nullopt;
}

bool isNeutral(const Record& record) {
    if (const Party* party = std::get_if<Party>(&record))
        return party->name == forgottenName && !party->contact && !party->contactWithheld &&
               !party->note;
    if (const Place* place = std::get_if<Place>(&record)) {
        bool hasNote = place->note.has_value();
        for (const Light& light : place->light)
            hasNote = hasNote || light.note;
        return place->name == forgottenName && !hasNote;
    }
    return false;
}

}  // namespace rackbook
