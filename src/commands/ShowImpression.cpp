#include "commands/ShowImpression.h"

#include <algorithm>

#include "base/Text.h"
#include "cli/Table.h"
#include "records/RefsTo.h"
#include "store/HistoryPart.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

std::string pullDetail(const BookFile& book, const Pull& pull, bool spoiled) {
    const std::optional<Layer> layer = findIn<Layer>(book, pull.layer.id);
    std::string text = "layer " + std::to_string(layer->ordinal) + ", " + layer->colourWords;
    if (pull.portion)
        text += ", portion " + pull.portion->id;
    return spoiled ? text + "; spoiled" : text;
}

std::string moveDetail(const BookFile& book, const Move& move) {
    std::string text =
        std::string(textOf(move.why)) + ", to " + findIn<Place>(book, move.to.id)->name;
    return move.interleaved ? text + ", interleaved" : text;
}

std::string lookDetail(const Look& look) {
    std::string text = look.touch ? textOf(*look.touch) : "";
    if (look.colour)
        text += (text.empty() ? "colour " : ", colour ") + std::string(textOf(*look.colour));
    return text;
}

}  // namespace

std::vector<ImpressionEvent> eventsOf(const BookFile& book, const Impression& impression) {
    std::vector<ImpressionEvent> events;
    for (const Pull& pull : thoseOf<Pull>(book, "impressions", impression.id))
        events.push_back({pull.start,
                          "pulled",
                          pullDetail(book, pull, isAmong(pull.spoiled, impression.id)),
                          nameOf(Pull::kind, pull.id),
                          {}});
    for (const Move& move : thoseOf<Move>(book, "impressions", impression.id))
        events.push_back({move.at, "moved", moveDetail(book, move), nameOf(Move::kind, move.id),
                          findIn<Place>(book, move.to.id)->name});
    for (const std::string& id : historyOfPrints(book, {impression.id}).looks) {
        const Look look = *findIn<Look>(book, id);
        events.push_back({look.at, "looked at", lookDetail(look), nameOf(Look::kind, look.id), {}});
    }
    for (const Transfer& transfer : thoseOf<Transfer>(book, "impressions", impression.id))
        events.push_back({transfer.agreedOn,
                          textOf(transfer.transferKind),
                          "to " + findIn<Party>(book, transfer.receiver.id)->name,
                          nameOf(Transfer::kind, transfer.id),
                          {}});
    std::stable_sort(events.begin(), events.end(),
                     [](const ImpressionEvent& a, const ImpressionEvent& b) {
                         return a.at.earliest() < b.at.earliest();
                     });
    return events;
}

void printEvents(Console& console, const std::vector<ImpressionEvent>& events) {
    Table table({{"when"}, {"what"}, {"how"}, {"record"}});
    for (const ImpressionEvent& event : events)
        table.addRow({event.at.text(), event.what, event.detail, event.record});
    const auto moved = std::find_if(events.rbegin(), events.rend(),
                                    [](const ImpressionEvent& one) { return !one.place.empty(); });
    if (moved != events.rend())
        console.out() << "\nLast moved to " << printable(moved->place) << ", on "
                      << moved->at.text() << ".\n";
    console.out() << "\n"
                  << console.emphasis("What happened to it") << "\n"
                  << table.text(console.width(), "Nothing is recorded.");
}

Tree treeOf(const std::vector<ImpressionEvent>& events) {
    Tree list = Tree::array();
    for (const ImpressionEvent& event : events) {
        Tree one = Tree::object();
        one.set("at", event.at.text()).set("what", event.what);
        one.set("detail", event.detail).set("record", event.record);
        list.add(std::move(one));
    }
    return list;
}

}  // namespace rackbook
