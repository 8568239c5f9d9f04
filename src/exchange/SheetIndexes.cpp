#include "exchange/SheetIndexes.h"

namespace rackbook {

namespace {

using Ids = std::vector<std::string>;

template <class R>
Ids ids(const Ref<R>& ref) {
    return {ref.id};
}

template <class R>
Ids ids(const std::optional<Ref<R>>& ref) {
    return ref ? Ids{ref->id} : Ids{};
}

template <class R>
Ids ids(const std::vector<Ref<R>>& refs) {
    Ids found;
    for (const Ref<R>& ref : refs)
        found.push_back(ref.id);
    return found;
}

Ids lookedAt(const Look& look) {
    Ids found = ids(look.impressions);
    for (const Ref<Impression>& ref : look.standsFor)
        found.push_back(ref.id);
    return found;
}

// What naming(record) names.
template <class R, class F>
SheetIndexes::ById positionsBy(const RecordSet& records, F&& naming) {
    SheetIndexes::ById found;
    for (std::size_t i = 0; i < records.of<R>().size(); ++i)
        for (const std::string& id : naming(records.of<R>()[i])) {
            std::vector<std::size_t>& positions = found[id];
            if (positions.empty() || positions.back() != i)
                positions.push_back(i);
        }
    return found;
}

// By one of its fields.
template <class R, class Field>
SheetIndexes::ById positionsBy(const RecordSet& records, Field R::*field) {
    return positionsBy<R>(records, [field](const R& record) { return ids(record.*field); });
}

}  // namespace

SheetIndexes::SheetIndexes(const RecordSet& book)
    : records(book),
      impressionsOfEdition(positionsBy(book, &Impression::edition)),
      blocksOfEdition(positionsBy(book, &Block::edition)),
      layersOfEdition(positionsBy(book, &Layer::edition)),
      picturesOfEdition(positionsBy(book, &Attachment::edition)),
      picturesOfImpression(positionsBy(book, &Attachment::impression)),
      pullsOfImpression(positionsBy(book, &Pull::impressions)),
      pullsOfLayer(positionsBy(book, &Pull::layer)),
      movesOfImpression(positionsBy(book, &Move::impressions)),
      looksOfImpression(positionsBy<Look>(book, lookedAt)),
      transfersOfImpression(positionsBy(book, &Transfer::impressions)),
      mixesOfEdition(positionsBy(book, &Mix::edition)),
      weighingsOfMix(positionsBy(book, &Weighing::mix)),
      weighingsOfLot(positionsBy(book, &Weighing::lot)),
      drawdownsOfMix(positionsBy(book, &Drawdown::mix)),
      readingsOfDrawdown(positionsBy(book, &Reading::drawdown)),
      placesWithin(positionsBy(book, &Place::within)),
      movesTo(positionsBy(book, &Move::to)),
      meteringsAt(positionsBy(book, &Metering::place)) {}

}  // namespace rackbook
