#include <algorithm>
#include <map>
#include <tuple>

#include "records/Designation.h"
#include "sheets/EditionParts.h"

namespace rackbook::editionparts {

namespace {

// By number where the designation says one, else as written.
bool standsBefore(const Impression* a, const Impression* b) {
    const int first = designationParts(*a->designation).number.value_or(0);
    const int second = designationParts(*b->designation).number.value_or(0);
    return std::tie(first, *a->designation) < std::tie(second, *b->designation);
}

std::string fateText(const Impression& impression, const std::string& date,
                     const SheetWords& words) {
    const std::string& fate = words.of("impressionFate", impression.fate);
    return date.empty() ? fate
                        : words.filled("impressions.fateOn", {{"fate", fate}, {"date", date}});
}

// Two impressions a row, the first half of a group left and the second half right.
class ImpressionsTable {
public:
    ImpressionsTable(const EditionFacts& facts, const SheetWords& words)
        : m_words(words),
          m_allKept(std::all_of(facts.impressions.begin(), facts.impressions.end(),
                                [](const Impression& one) {
                                    return !one.designation || one.fate == ImpressionFate::kept;
                                })) {
        for (int side = 0; side < 2; ++side) {
            m_table.columns.push_back({words("impressions.designation"), Alignment::left, 1, 0});
            m_table.columns.push_back({words("impressions.working"), Alignment::right, 0, 16});
            m_table.columns.push_back({words("impressions.signedOn"), Alignment::left, 0, 33});
        }
    }

    void addGroup(const std::string& heading, const std::vector<const Impression*>& impressions) {
        TableRow row{{heading}};
        row.heading = true;
        m_table.rows.push_back(std::move(row));
        const std::size_t half = (impressions.size() + 1) / 2;
        for (std::size_t i = 0; i < half; ++i) {
            TableRow pair;
            addCells(pair, *impressions[i]);
            if (half + i < impressions.size())
                addCells(pair, *impressions[half + i]);
            pair.cells.resize(m_table.columns.size());
            m_table.rows.push_back(std::move(pair));
        }
    }

    void set(Flow& flow) const {
        if (m_table.rows.empty())
            return;
        flow.table(m_table);
        if (m_allKept)
            flow.paragraph(m_words("impressions.keptAll"), TextStyle::small);
    }

private:
    void addCells(TableRow& row, const Impression& impression) const {
        row.cells.emplace_back(*impression.designation);
        row.cells.emplace_back(std::to_string(impression.workingNumber));
        std::string when = m_words.tableDateOrNotRecorded(impression.signedOn);
        if (impression.fate != ImpressionFate::kept)
            when += "\n" + fateText(impression,
                                    impression.fateOn ? m_words.tableDate(*impression.fateOn)
                                                      : std::string(),
                                    m_words);
        row.cells.emplace_back(std::move(when));
    }

    const SheetWords& m_words;
    bool m_allKept;
    SheetTable m_table;
};

// "14, 22 spoiled 24 January 2026"
std::string lostText(const Impression& sample, const std::vector<int>& numbers,
                     const SheetWords& words) {
    const std::string fate = std::string("impressions.lost.") + textOf(sample.fate);
    const std::string text = words.counted(fate, words.count(static_cast<int>(numbers.size())), {});
    return numberRanges(numbers) + "\u00a0" +
           (sample.fateOn ? words.filled("impressions.lostOn",
                                         {{"fate", text}, {"when", words.when(*sample.fateOn)}})
                          : text);
}

// "5 spoiled 9 February 2026; 14, 22 spoiled 24 January 2026"
std::string lostText(const EditionFacts& facts, const SheetWords& words) {
    const auto isAlike = [](const Impression& a, const Impression& b) {
        return a.fate == b.fate && a.fateOn.has_value() == b.fateOn.has_value() &&
               (!a.fateOn || a.fateOn->text() == b.fateOn->text());
    };
    std::vector<std::pair<const Impression*, std::vector<int>>> groups;
    for (const Impression& impression : facts.impressions) {
        if (impression.fate == ImpressionFate::kept || impression.designation)
            continue;
        auto group = std::find_if(groups.begin(), groups.end(),
                                  [&](const auto& one) { return isAlike(*one.first, impression); });
        if (group == groups.end())
            group = groups.insert(groups.end(), {&impression, {}});
        group->second.push_back(impression.workingNumber);
    }
    std::vector<std::string> texts;
    for (const auto& [sample, numbers] : groups)
        texts.push_back(lostText(*sample, numbers, words));
    return words.apart(texts);
}

}  // namespace

void addImpressions(Flow& flow, const EditionFacts& facts, const SheetWords& words) {
    if (facts.impressions.empty()) {
        flow.paragraph(words("notRecorded"));
        return;
    }
    std::map<DesignationKind, std::vector<const Impression*>> designated;
    std::vector<const Impression*> withoutKind;
    std::vector<int> unsignedNumbers;
    for (const Impression& impression : facts.impressions) {
        if (impression.designation && impression.designationKind)
            designated[*impression.designationKind].push_back(&impression);
        else if (impression.designation)
            withoutKind.push_back(&impression);
        else if (impression.fate == ImpressionFate::kept)
            unsignedNumbers.push_back(impression.workingNumber);
    }
    ImpressionsTable table(facts, words);
    for (auto& [kind, impressions] : designated) {
        std::stable_sort(impressions.begin(), impressions.end(), standsBefore);
        table.addGroup(words.of("designation", kind), impressions);
    }
    if (!withoutKind.empty())
        table.addGroup(words("impressions.withoutKind"), withoutKind);
    table.set(flow);
    std::vector<LabelValue> rest;
    if (!unsignedNumbers.empty())
        rest.push_back(
            {words("impressions.unsigned"),
             words.filled("impressions.numbers", {{"numbers", numberRanges(unsignedNumbers)}})});
    const std::string lost = lostText(facts, words);
    if (!lost.empty())
        rest.push_back(
            {words("impressions.lost"), words.filled("impressions.numbers", {{"numbers", lost}})});
    flow.labelValues(rest);
}

}  // namespace rackbook::editionparts
