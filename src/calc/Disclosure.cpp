#include "calc/Disclosure.h"

#include <algorithm>

namespace rackbook {

const std::vector<DisclosureItem>& disclosureItems() {
    static const std::vector<DisclosureItem> items = {
        {"artist", "the artist"},
        {"signature", "signed by the artist, or where the name comes from"},
        {"medium", "medium and process, in trade terms"},
        {"reproduces", "whether it reproduces an image from another medium"},
        {"posthumous", "whether it was printed after the artist's death"},
        {"year", "the year of printing"},
        {"limited", "whether the edition is limited"},
        {"mostNumbered", "the greatest number signed and numbered"},
        {"unsigned", "impressions that are not signed"},
        {"proofs", "proofs outside the numbers, by kind"},
        {"total", "all impressions together"},
        {"matrix", "whether the matrix was destroyed, altered or cancelled"},
        {"otherStates", "earlier states and other editions from the same matrix"},
        {"restrike", "whether it is a restrike, or printed from a reworked matrix"},
        {"workshop", "the workshop"},
    };
    return items;
}

std::vector<DisclosureRow> disclosureOf(const Edition& edition) {
    std::vector<DisclosureRow> rows;
    for (const DisclosureItem& item : disclosureItems())
        rows.push_back({item.item, true, {}, {}});
    for (const Disclosure& answered : edition.disclosures) {
        auto row = std::find_if(rows.begin(), rows.end(), [&](const DisclosureRow& one) {
            return one.item == answered.item;
        });
        if (row == rows.end())
            row = rows.insert(rows.end(), {answered.item, false, {}, {}});
        row->answer = answered.answer;
        row->text = answered.text.value_or("");
    }
    return rows;
}

}  // namespace rackbook
