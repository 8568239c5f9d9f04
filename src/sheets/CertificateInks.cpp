#include <algorithm>
#include <set>

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
    std::vector<LabelValue> entries;
    std::optional<LotKind> kind;
    for (const PartOfInks& part : partsOf(content)) {
        const Lot& lot = *part.lot;
        const std::string pigments = contentText(lot, words);
        const std::string name = shortWords(lot.colourWords);
        const std::string text =
            words.counted("layers.inkPart", std::to_string(part.layers.size()),
                          {{"what", pigments.empty() ? name : words.inRow({name, pigments})},
                           {"lot", lot.id},
                           {"layers", layersText(part.layers)}});
        if (kind == lot.lotKind)
            entries.back().value += "\n" + text;
        else
            entries.push_back({words.of("layers.kind", lot.lotKind), text});
        kind = lot.lotKind;
    }
    if (!entries.empty()) {
        flow.heading(2, words("layers.inks"));
        flow.labelValues(entries);
    }
    addNotRecorded(flow, content);
}

}  // namespace rackbook::certificateparts
