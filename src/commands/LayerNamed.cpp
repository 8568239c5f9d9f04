#include "commands/LayerNamed.h"

#include <algorithm>

#include "base/Error.h"
#include "base/Numbers.h"
#include "base/Ranges.h"
#include "base/Text.h"
#include "store/RecordReader.h"

namespace rackbook {

std::vector<Layer> layersOf(const BookFile& book, const Edition& edition) {
    std::vector<Layer> layers = thoseOf<Layer>(book, "edition", edition.id);
    std::sort(layers.begin(), layers.end(),
              [](const Layer& a, const Layer& b) { return a.ordinal < b.ordinal; });
    return layers;
}

Layer layerOf(const BookFile& book, const Edition& edition, const std::string& words) {
    const std::size_t skipped = words[0] == 'L' ? 1 : 0;
    const std::optional<long long> ordinal = parseWhole(words.substr(skipped));
    std::vector<int> planned;
    for (Layer& layer : layersOf(book, edition)) {
        if (layer.id == words || ordinal == layer.ordinal)
            return std::move(layer);
        planned.push_back(layer.ordinal);
    }
    const std::string plan = "rackbook layer " + edition.code + " " +
                             (ordinal ? words.substr(skipped) : "N") + " COLOUR";
    throw UsageError("edition " + edition.code + " has no layer " + excerpt(words) + " planned",
                     planned.empty()
                         ? "Plan it with " + plan + "."
                         : "It has " + formatRanges(planned) + "; plan more with " + plan + ".");
}

}  // namespace rackbook
