#include "checks/AuditContext.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "calc/HistoryOf.h"
#include "calc/PlaceLight.h"

namespace rackbook {

namespace {

const EdtfDate& timeOf(const Pull& pull) {
    return pull.start;
}
const EdtfDate& timeOf(const Move& move) {
    return move.at;
}
const EdtfDate& timeOf(const Look& look) {
    return look.at;
}
const EdtfDate& timeOf(const Transfer& transfer) {
    return transfer.agreedOn;
}

template <class R>
void sortByTime(std::vector<const R*>& list) {
    std::stable_sort(list.begin(), list.end(), [](const R* a, const R* b) {
        return timeOf(*a).earliest() < timeOf(*b).earliest();
    });
}

template <class R>
void fillLists(const RecordSet& records, std::vector<ImpressionTimeline>& timelines,
               std::vector<const R*> ImpressionTimeline::*list) {
    for (const R& record : records.of<R>())
        for (const Ref<Impression>& ref : record.impressions) {
            const int position = records.indexOf<Impression>(ref.id);
            if (position >= 0)
                (timelines[static_cast<std::size_t>(position)].*list).push_back(&record);
        }
    for (ImpressionTimeline& timeline : timelines)
        sortByTime(timeline.*list);
}

std::vector<ImpressionTimeline> timelinesOf(const RecordSet& records) {
    std::vector<ImpressionTimeline> timelines(records.of<Impression>().size());
    fillLists<Pull>(records, timelines, &ImpressionTimeline::pulls);
    fillLists<Move>(records, timelines, &ImpressionTimeline::moves);
    fillLists<Look>(records, timelines, &ImpressionTimeline::looks);
    fillLists<Transfer>(records, timelines, &ImpressionTimeline::transfers);
    return timelines;
}

EditionFolder* folderAt(const RecordSet& records, std::vector<EditionFolder>& folders,
                        const Ref<Edition>& edition) {
    const int position = records.indexOf<Edition>(edition.id);
    return position < 0 ? nullptr : &folders[static_cast<std::size_t>(position)];
}

void filePulls(const RecordSet& records, std::vector<EditionFolder>& folders) {
    for (const Pull& pull : records.of<Pull>()) {
        const Layer* layer = records.find(pull.layer);
        EditionFolder* folder = layer ? folderAt(records, folders, layer->edition) : nullptr;
        if (!folder)
            continue;
        const auto found = std::find(folder->layers.begin(), folder->layers.end(), layer);
        folder->pulls[static_cast<std::size_t>(found - folder->layers.begin())].push_back(&pull);
    }
}

std::vector<EditionFolder> foldersOf(const RecordSet& records) {
    std::vector<EditionFolder> folders(records.of<Edition>().size());
    for (const Layer& layer : records.of<Layer>())
        if (EditionFolder* folder = folderAt(records, folders, layer.edition))
            folder->layers.push_back(&layer);
    for (const Block& block : records.of<Block>())
        if (EditionFolder* folder = folderAt(records, folders, block.edition))
            folder->blocks.push_back(&block);
    const std::vector<Impression>& impressions = records.of<Impression>();
    for (std::size_t i = 0; i < impressions.size(); ++i)
        if (EditionFolder* folder = folderAt(records, folders, impressions[i].edition))
            folder->impressions.push_back(i);
    for (EditionFolder& folder : folders) {
        std::stable_sort(folder.layers.begin(), folder.layers.end(),
                         [](const Layer* a, const Layer* b) { return a->ordinal < b->ordinal; });
        std::stable_sort(folder.impressions.begin(), folder.impressions.end(),
                         [&](std::size_t a, std::size_t b) {
                             return impressions[a].workingNumber < impressions[b].workingNumber;
                         });
        folder.pulls.resize(folder.layers.size());
    }
    filePulls(records, folders);
    for (EditionFolder& folder : folders)
        for (std::vector<const Pull*>& pulls : folder.pulls)
            sortByTime(pulls);
    return folders;
}

}  // namespace

struct AuditContext::Computed {
    std::optional<History> history;
    std::optional<MixLedger> ledgerByLot;
    std::optional<MixLedger> ledgerByKind;
    std::optional<std::vector<ImpressionTimeline>> timelines;
    std::optional<std::vector<EditionFolder>> folders;
    std::optional<PlaceLight> light;
};

AuditContext::AuditContext(const RecordSet& records, HouseRules rules, CivilMinute asOf)
    : m_records(records),
      m_rules(std::move(rules)),
      m_asOf(asOf),
      m_computed(std::make_unique<Computed>()) {}

AuditContext::~AuditContext() = default;

const History& AuditContext::history() const {
    if (!m_computed->history)
        m_computed->history = historyOf(m_records);
    return *m_computed->history;
}

const MixLedger& AuditContext::ledgerByLot() const {
    if (!m_computed->ledgerByLot)
        m_computed->ledgerByLot.emplace(rackbook::ledgerByLot(history()));
    return *m_computed->ledgerByLot;
}

const MixLedger& AuditContext::ledgerByKind() const {
    if (!m_computed->ledgerByKind)
        m_computed->ledgerByKind.emplace(rackbook::ledgerByKind(history()));
    return *m_computed->ledgerByKind;
}

const ImpressionTimeline& AuditContext::timelineOf(std::size_t impression) const {
    if (!m_computed->timelines)
        m_computed->timelines = timelinesOf(m_records);
    return (*m_computed->timelines)[impression];
}

const EditionFolder& AuditContext::folderOf(std::size_t edition) const {
    if (!m_computed->folders)
        m_computed->folders = foldersOf(m_records);
    return (*m_computed->folders)[edition];
}

bool AuditContext::isOutOfHands(std::size_t place) const {
    if (!m_computed->light)
        m_computed->light.emplace(history());
    return m_computed->light->isOutOfHands(static_cast<int>(place));
}

bool AuditContext::sharePlace(const Ref<Place>& a, const Ref<Place>& b) const {
    const auto liesWithin = [this](const std::string& inner, const std::string& outer) {
        const Place* place = m_records.find<Place>(inner);
        for (std::size_t steps = 0; place && steps <= m_records.of<Place>().size(); ++steps) {
            if (place->id == outer)
                return true;
            place = m_records.find(place->within);
        }
        return false;
    };
    return a == b || liesWithin(a.id, b.id) || liesWithin(b.id, a.id);
}

}  // namespace rackbook
