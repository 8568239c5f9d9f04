#include <algorithm>
#include <set>

#include "base/Ranges.h"
#include "sheets/CertificateParts.h"
#include "sheets/LotText.h"

namespace rackbook::certificateparts {

namespace {

struct PartOfInks {
    const Lot* lot = nullptr;
    std::set<int> layers;
};

// Of its portion, else of the layer's mix as it stood last; nothing where neither is recorded.
const InkFacts* inkOf(const Content& content, const OwnPull& own) {
    if (own.layerAt < 0 || own.pullAt < 0)
        return nullptr;
    const LayerFacts& layer = content.edition.layers[static_cast<std::size_t>(own.layerAt)];
    const PullFacts& pull = layer.pulls[static_cast<std::size_t>(own.pullAt)];
    return pull.ink ? &*pull.ink : layer.mixInk ? &*layer.mixInk : nullptr;
}

// Inks first, then extenders, driers and modifiers; each in the order of the layers.
std::vector<PartOfInks> partsOf(const Content& content) {
    std::vector<PartOfInks> parts;
    for (const OwnPull& pull : content.own.pulls) {
        const InkFacts* ink = inkOf(content, pull);
        if (!ink)
            continue;
        for (const InkPart& part : ink->parts) {
            auto found = std::find_if(parts.begin(), parts.end(), [&](const PartOfInks& other) {
                return other.lot->id == part.lot.id;
            });
            if (found == parts.end())
                found = parts.insert(parts.end(), {&part.lot, {}});
            found->layers.insert(pull.ordinal);
        }
    }
    std::stable_sort(parts.begin(), parts.end(), [](const PartOfInks& a, const PartOfInks& b) {
        return a.lot->lotKind < b.lot->lotKind;
    });
    return parts;
}

std::string layersText(const std::set<int>& layers) {
    return numberRanges({layers.begin(), layers.end()});
}

void addNotRecorded(Flow& flow, const Content& content) {
    std::set<int> layers;
    for (const OwnPull& pull : content.own.pulls) {
        const InkFacts* ink = inkOf(content, pull);
        if (!ink || ink->parts.empty())
            layers.insert(pull.ordinal);
    }
    if (!layers.empty())
        flow.paragraph(
            content.words.filled("layers.inksNotRecorded", {{"layers", layersText(layers)}}),
            TextStyle::small);
}

}  // namespace

void addInkParts(Flow& flow, const Content& content) {
    const SheetWords& words = content.words;
    SheetTable table;
    table.columns = {{words("layers.lot"), Alignment::left, 1.7, 0},
                     {words("layers.kind"), Alignment::left, 0, 20},
                     {words("layers.pigments"), Alignment::left, 1, 0},
                     {words("layers.id"), Alignment::left, 0.8, 0},
                     {words("layers.inLayers"), Alignment::left, 0, 22}};
    for (const PartOfInks& part : partsOf(content))
        table.rows.push_back(
            {{part.lot->colourWords, words.of("lotKind", part.lot->lotKind),
              pigmentsText(*part.lot, words), part.lot->id, layersText(part.layers)}});
    if (!table.rows.empty()) {
        flow.heading(2, words("layers.inks"));
        flow.table(table);
    }
    addNotRecorded(flow, content);
}

}  // namespace rackbook::certificateparts
