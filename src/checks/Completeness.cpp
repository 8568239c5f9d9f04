#include <algorithm>
#include <string>
#include <vector>

#include "base/Text.h"
#include "checks/EachEdition.h"
#include "checks/FindingList.h"
#include "checks/Rules.h"

namespace rackbook::rules {

namespace {

struct MissingField {
    const char* pointer;
    const char* words;
    bool isMissing;
};

void addMissing(const Edition& edition, const std::vector<MissingField>& fields,
                FindingList& found) {
    std::vector<std::string> words;
    std::string pointer;
    for (const MissingField& field : fields)
        if (field.isMissing) {
            pointer = words.empty() ? field.pointer : "";
            words.emplace_back(field.words);
        }
    if (!words.empty())
        found.add(Severity::note, edition, pointer,
                  joined(words) + (words.size() == 1 ? " is" : " are") + " not recorded", "",
                  "Record what is known; its sheets leave the rest out.");
}

bool hasMissingContent(const Lot& lot) {
    return lot.drierMetals.empty() ||
           std::any_of(lot.drierMetals.begin(), lot.drierMetals.end(),
                       [](const DrierMetal& metal) { return !metal.contentShare; });
}

}  // namespace

Findings editionIncomplete(const AuditContext& context) {
    FindingList found;
    for (const Edition& edition : context.records().of<Edition>()) {
        const bool hasStatement = edition.statement && !edition.statement->empty();
        addMissing(edition,
                   {{"/maker", "the maker", context.records().find(edition.maker) == nullptr},
                    {"/year", "the year", !edition.year},
                    {"/imageHeight_mm", "the image size", !edition.imageHeight_mm},
                    {"/sheetHeight_mm", "the sheet size", !edition.sheetHeight_mm},
                    {"/paper", "the paper", !edition.paper || edition.paper->empty()},
                    {"/declaredNumbered", "the numbered size", !edition.declaredNumbered},
                    {"/statement", "the statement", !hasStatement}},
                   found);
    }
    return found.take();
}

Findings layerWithoutPull(const AuditContext& context) {
    FindingList found;
    eachEdition(context, [&](const Edition& edition, const EditionFolder& folder) {
        bool laterPulled = false;
        for (std::size_t i = folder.layers.size(); i-- > 0;) {
            const bool closed = edition.status == EditionStatus::closed;
            if (folder.pulls[i].empty() && (closed || laterPulled))
                found.add(Severity::note, *folder.layers[i], "",
                          std::string("no pull of it is recorded, though ") +
                              (laterPulled ? "later layers were pulled" : "the edition is closed"),
                          "", "Record the pull, as well as it is known.");
            laterPulled = laterPulled || !folder.pulls[i].empty();
        }
    });
    return found.take();
}

Findings pullWithoutPortion(const AuditContext& context) {
    FindingList found;
    eachEdition(context, [&](const Edition& edition, const EditionFolder& folder) {
        std::vector<std::string> ids;
        for (const std::vector<const Pull*>& pulls : folder.pulls)
            for (const Pull* pull : pulls)
                if (!pull->portion)
                    ids.push_back(pull->id);
        if (!ids.empty())
            found.add(Severity::note, edition, "",
                      ids.size() == 1 ? "one pull names no portion"
                                      : std::to_string(ids.size()) + " pulls name no portion",
                      joined(ids, ", "),
                      "Record the portions; without them nothing is known of the ink but what the "
                      "layers remember.");
    });
    return found.take();
}

Findings mixWithoutWeighings(const AuditContext& context) {
    FindingList found;
    const MixOrder& order = context.ledgerByKind().order();
    const std::vector<Mix>& mixes = context.records().of<Mix>();
    for (std::size_t i = 0; i < mixes.size(); ++i)
        if (order.additionsBegin[i] == order.additionsBegin[i + 1])
            found.add(Severity::note, mixes[i], "", "nothing is recorded to have gone into it", "",
                      "Record its additions; a mass that is not known may be left out.");
    return found.take();
}

Findings lotIncomplete(const AuditContext& context) {
    FindingList found;
    for (const Lot& lot : context.records().of<Lot>()) {
        if (lot.lotKind == LotKind::ink && lot.pigments.empty())
            found.add(Severity::note, lot, "/pigments", "the ink states no pigment", "",
                      "Record the Colour Index generic names from its label.");
        if (lot.lotKind == LotKind::drier && hasMissingContent(lot))
            found.add(Severity::note, lot, "/drierMetals",
                      lot.drierMetals.empty() ? "the drier states no metal"
                                              : "the drier does not state how much metal it holds",
                      "", "Record the metals and their shares from its label or data sheet.");
    }
    return found.take();
}

Findings contactWithheld(const AuditContext& context) {
    FindingList found;
    for (const Party& party : context.records().of<Party>())
        if (party.contactWithheld)
            found.add(Severity::note, party, "/contactWithheld",
                      "its contact was left out of this copy of the book", "",
                      "Ask for a copy with contacts, where it is needed.");
    return found.take();
}

}  // namespace rackbook::rules
