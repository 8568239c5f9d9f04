#include "commands/Moving.h"

#include "calc/Stays.h"
#include "store/HistoryPart.h"

namespace rackbook {

std::optional<Ref<Place>> placeShared(const BookFile& book, const std::vector<Impression>& sheets,
                                      const EdtfDate& at) {
    std::vector<std::string> ids;
    for (const Impression& sheet : sheets)
        ids.push_back(sheet.id);
    const History history = historyOfPrints(book, ids).history;
    std::vector<Stay> stays;
    std::optional<int> shared;
    for (std::size_t i = 0; i < history.impressions.size(); ++i) {
        staysOf(history, i, at.latest(), stays);
        if (stays.empty() || stays.back().place < 0 || stays.back().to.earliest != endOfTime)
            return std::nullopt;
        if (shared && *shared != stays.back().place)
            return std::nullopt;
        shared = stays.back().place;
    }
    if (!shared)
        return std::nullopt;
    return Ref<Place>{history.places[static_cast<std::size_t>(*shared)].id};
}

Move moveOf(const BookFile& book, const std::vector<Impression>& sheets, const Ref<Place>& to,
            const EdtfDate& at, MoveWhy why) {
    Move move;
    move.id = freshId(RecordKind::move, at);
    move.impressions = refsTo(sheets);
    move.from = placeShared(book, sheets, at);
    if (move.from == to)
        move.from.reset();
    move.to = to;
    move.at = at;
    move.why = why;
    return move;
}

std::vector<MadeRecord> withFate(const std::vector<Impression>& sheets, ImpressionFate fate,
                                 const EdtfDate& day) {
    std::vector<MadeRecord> made;
    for (Impression sheet : sheets) {
        if (sheet.fate == fate)
            continue;
        sheet.fate = fate;
        sheet.fateOn = day;
        made.push_back({sheet, day.text()});
    }
    return made;
}

}  // namespace rackbook
