#include "commands/HowMuchPlan.h"

#include <algorithm>
#include <set>

#include "base/Error.h"
#include "calc/EstimateMath.h"
#include "calc/MixLedger.h"

namespace rackbook {

namespace {

double imageAreaOf_m2(const Edition& edition) {
    const std::optional<double> area_m2 = recordedAreaOf_m2(edition);
    if (!area_m2)
        throw UsageError("the image size of " + edition.code + " is not recorded",
                         "Record it with rackbook enter edition " + edition.id +
                             " imageHeight_mm=300 imageWidth_mm=200 --reason \"measured\".");
    return *area_m2;
}

std::vector<int> layersInOrder(const InkBook& ink, const std::string& edition) {
    const std::vector<Layer>& layers = ink.records.of<Layer>();
    std::vector<int> found;
    for (std::size_t i = 0; i < layers.size(); ++i)
        if (layers[i].edition.id == edition)
            found.push_back(static_cast<int>(i));
    std::stable_sort(found.begin(), found.end(), [&](int a, int b) {
        return layers[static_cast<std::size_t>(a)].ordinal <
               layers[static_cast<std::size_t>(b)].ordinal;
    });
    return found;
}

bool wasPulled(const InkBook& ink, int layer) {
    return std::any_of(ink.history.pulls.begin(), ink.history.pulls.end(),
                       [&](const HistoryPull& pull) { return pull.layer == layer; });
}

int keptSheets(const InkBook& ink, const std::string& edition) {
    const std::vector<Impression>& sheets = ink.records.of<Impression>();
    return static_cast<int>(
        std::count_if(sheets.begin(), sheets.end(), [&](const Impression& sheet) {
            return sheet.edition.id == edition && sheet.fate == ImpressionFate::kept;
        }));
}

int keptSheetsOfLayer(const InkBook& ink, int layer) {
    const std::string& id = ink.records.of<Layer>()[static_cast<std::size_t>(layer)].id;
    std::set<std::string> kept;
    for (const Pull& pull : ink.records.of<Pull>()) {
        if (pull.layer.id != id)
            continue;
        for (const Ref<Impression>& ref : pull.impressions)
            if (const Impression* sheet = ink.records.find(ref);
                sheet && sheet->fate == ImpressionFate::kept)
                kept.insert(ref.id);
    }
    return static_cast<int>(kept.size());
}

void setSheets(HowMuch& much, const InkBook& ink, const InkWanted& wanted,
               const std::vector<int>& layers) {
    const Edition& edition = *much.edition;
    much.kept = keptSheets(ink, edition.id);
    if (wanted.sheets) {
        much.sheets = *wanted.sheets;
        much.sheetsWords = "as given";
        return;
    }
    if (edition.declaredNumbered) {
        int proofs = 0;
        for (const DeclaredProofs& declared : edition.declaredProofs)
            proofs += declared.count;
        much.sheets = *edition.declaredNumbered + proofs;
        much.sheetsWords =
            std::to_string(*edition.declaredNumbered) + " numbered" +
            (proofs > 0 ? " and " + std::to_string(proofs) + (proofs == 1 ? " proof" : " proofs")
                        : "") +
            ", as declared";
    } else if (edition.declaredTotal) {
        much.sheets = *edition.declaredTotal;
        much.sheetsWords = "all that are declared";
    }
    if (much.sheets > 0)
        return;
    much.sheets = layers.empty() ? 0 : keptSheetsOfLayer(ink, layers.front());
    much.sheetsWords = "those kept of the first layer; no size is declared";
    if (much.sheets > 0)
        return;
    much.sheets = much.kept;
    much.sheetsWords = "those kept; no size is declared";
    if (much.sheets == 0)
        throw UsageError("how many sheets " + edition.code + " is to have is not recorded",
                         "Give --sheets NUMBER, or declare the edition's size with rackbook enter "
                         "edition " +
                             edition.id + " declaredNumbered=20 --reason \"decided\".");
}

LayerNeed needOf(const InkBook& ink, int position, const InkWanted& wanted, const HowMuch& much) {
    const Layer& layer = ink.records.of<Layer>()[static_cast<std::size_t>(position)];
    LayerNeed need;
    need.layer = position;
    need.coverage = layer.coverage.value_or(1);
    need.coverageAssumed = !layer.coverage;
    need.mix = layer.mix ? ink.records.indexOf<Mix>(layer.mix->id) : -1;
    need.film = wanted.weight_gm2
                    ? LayerFilm{Estimate::exactly(*wanted.weight_gm2), WeightSource::given, 0}
                    : layerFilm(ink, position, wanted.aimed);
    need.ink_g = inkNeeded({imageAreaOf_m2(*much.edition), need.coverage, much.sheets,
                            much.spoilShare, need.film.weight_gm2});
    return need;
}

void addMixes(HowMuch& much, const InkBook& ink, CivilMinute asOf) {
    const MixStages stages(ink.history, asOf);
    const MixLedger ledger(ledgerByKind(ink.history, asOf));
    std::vector<LayerInk> inks;
    std::set<int> closed;
    for (const LayerNeed& layer : much.layers) {
        if (layer.mix < 0)
            continue;
        const auto mix = static_cast<std::size_t>(layer.mix);
        inks.push_back(inkFromMix(stages, mix, layer.ink_g));
        if (!stages.atEnd(mix).problems.empty())
            closed.insert(layer.mix);
    }
    much.closedMixes.assign(closed.begin(), closed.end());
    for (const MixNeed& need : inkByMix(inks))
        much.mixes.push_back(
            {need, leftInMix(ink, ledger, static_cast<std::size_t>(need.mix), asOf)});
}

}  // namespace

HowMuch howMuch(const InkBook& ink, const InkWanted& wanted, CivilMinute asOf) {
    HowMuch much;
    much.edition = ink.records.find<Edition>(wanted.edition);
    imageAreaOf_m2(*much.edition);
    const std::vector<int> layers = layersInOrder(ink, wanted.edition);
    setSheets(much, ink, wanted, layers);
    much.spoilGiven = wanted.spoilShare.has_value();
    much.spoilShare = wanted.spoilShare.value_or(ink.rules.value("spoilShare"));
    for (const int layer : layers) {
        if (wanted.layer && *wanted.layer != layer)
            continue;
        if (!wanted.layer && !wanted.all && wasPulled(ink, layer)) {
            much.leftOut.push_back(
                ink.records.of<Layer>()[static_cast<std::size_t>(layer)].ordinal);
            continue;
        }
        much.layers.push_back(needOf(ink, layer, wanted, much));
        much.total_g = sumOf(much.total_g, much.layers.back().ink_g);
    }
    addMixes(much, ink, asOf);
    return much;
}

}  // namespace rackbook
