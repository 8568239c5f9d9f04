#include "exchange/Selection.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "support/SampleRecords.h"

namespace rackbook {
namespace {

template <class R>
R named(const std::string& id) {
    R record = test::filled<R>(true);
    record.id = id;
    return record;
}

// Two editions with a sheet and a layer each; both layers are printed from one mix.
class SelectionTest : public testing::Test {
protected:
    SelectionTest() {
        m_records.add(named<Party>("party-a"));
        m_records.add(named<Party>("party-b"));
        m_records.add(named<Place>("drawer"));
        m_records.add(named<Mix>("veil"));
        for (const std::string code : {"TIDE", "DUNE"}) {
            m_records.add(named<Edition>(code));
            Layer layer = named<Layer>(code + "/1");
            layer.edition = {code};
            layer.mix = Ref<Mix>{"veil"};
            m_records.add(layer);
            Impression sheet = named<Impression>(code + "/01");
            sheet.edition = {code};
            m_records.add(sheet);
            Transfer transfer = named<Transfer>(code + "/sold");
            transfer.impressions = {{sheet.id}};
            m_records.add(transfer);
        }
    }

    void addIssue(const std::string& id, void (*about)(Issue&)) {
        Issue issue = named<Issue>(id);
        about(issue);
        m_records.add(issue);
    }

    bool isChosen(const std::string& id) const {
        const std::vector<Record> chosen = editionWithAll(m_records, "TIDE");
        return std::any_of(chosen.begin(), chosen.end(),
                           [&](const Record& record) { return idOf(record) == id; });
    }

private:
    RecordSet m_records;
};

TEST_F(SelectionTest, TakesTheSheetsHandedOutAboutAnythingOfTheEdition) {
    addIssue("of-edition", [](Issue& r) { r.edition = Ref<Edition>{"TIDE"}; });
    addIssue("of-sheet", [](Issue& r) { r.impressions = {{"TIDE/01"}}; });
    addIssue("of-transfer", [](Issue& r) { r.transfer = Ref<Transfer>{"TIDE/sold"}; });
    addIssue("of-layer", [](Issue& r) { r.layer = Ref<Layer>{"TIDE/1"}; });
    addIssue("of-mix", [](Issue& r) { r.mix = Ref<Mix>{"veil"}; });
    for (const char* id : {"of-edition", "of-sheet", "of-transfer", "of-layer", "of-mix"})
        EXPECT_TRUE(isChosen(id)) << id;
    EXPECT_FALSE(isChosen("DUNE"));
}

TEST_F(SelectionTest, LeavesThoseAboutOtherThings) {
    addIssue("of-edition", [](Issue& r) { r.edition = Ref<Edition>{"DUNE"}; });
    addIssue("of-transfer", [](Issue& r) { r.transfer = Ref<Transfer>{"DUNE/sold"}; });
    addIssue("of-layer", [](Issue& r) { r.layer = Ref<Layer>{"DUNE/1"}; });
    addIssue("of-place", [](Issue& r) { r.place = Ref<Place>{"drawer"}; });
    addIssue("of-its-mix", [](Issue& r) {
        r.mix = Ref<Mix>{"veil"};
        r.edition = Ref<Edition>{"DUNE"};
    });
    for (const char* id : {"of-edition", "of-transfer", "of-layer", "of-place", "of-its-mix"})
        EXPECT_FALSE(isChosen(id)) << id;
}

}  // namespace
}  // namespace rackbook
