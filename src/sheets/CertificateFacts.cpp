#include "sheets/CertificateFacts.h"

#include <algorithm>
#include <map>
#include <set>
#include <unordered_map>

#include "calc/PullInk.h"
#include "records/RefsTo.h"
#include "sheets/ProvenanceOf.h"
#include "sheets/PublicImpression.h"
#include "sheets/ReadinessFacts.h"

namespace rackbook {

namespace {

bool isBefore(const EdtfDate& a, const EdtfDate& b) {
    return std::make_pair(a.earliest(), a.latest()) < std::make_pair(b.earliest(), b.latest());
}

bool isAt(const Look& look, const std::string& impression) {
    return isAmong(look.impressions, impression);
}

class CertificateMaker {
public:
    CertificateMaker(const RecordSet& records, const Edition& edition, CivilMinute asOf,
                     bool namesHolders, const PictureSource& pictureOf)
        : m_records(records),
          m_asOf(asOf),
          m_pictureOf(pictureOf),
          m_edition(editionFactsOf(records, edition, asOf)),
          m_readiness(readinessFactsOf(records, {asOf, edition.id, true, {}, {}})),
          m_inks(inkOfPulls(m_readiness.history, m_readiness.rules)),
          m_provenance(records, asOf, namesHolders),
          m_ofEdition(
              newestPhotograph(attachmentsOfEdition(records, edition.id), pictureOf, asOf)) {
        for (std::size_t i = 0; i < m_readiness.history.impressions.size(); ++i)
            m_positions[static_cast<std::size_t>(m_readiness.history.impressions[i].key)] = i;
        for (const ReadinessRow& row : m_readiness.readiness.rows)
            m_rows[static_cast<std::size_t>(row.impression)] = &row;
        for (const Attachment& attachment : records.of<Attachment>())
            if (attachment.impression)
                m_attachments[attachment.impression->id].push_back(&attachment);
    }

    CertificateFacts make(const std::vector<Impression>& impressions) {
        CertificateFacts facts;
        for (const Impression& impression : impressions)
            facts.impressions.push_back(factsOf(impression));
        facts.edition = std::move(m_edition);
        return facts;
    }

private:
    CertificateImpression factsOf(const Impression& impression) const {
        CertificateImpression facts;
        facts.impression = publicImpression(impression, m_asOf);
        const std::size_t position =
            m_positions.at(static_cast<std::size_t>(m_records.indexOf<Impression>(impression.id)));
        addPulls(facts, position);
        addLooks(facts, position);
        const auto row = m_rows.find(position);
        if (row != m_rows.end())
            facts.light = lightOf(*row->second);
        facts.provenance = m_provenance.stepsOf(impression.id);
        facts.placedOn = m_provenance.lastPlacedOn(impression.id);
        facts.isWithHolder = impression.holder && !m_provenance.isTold(impression.id);
        addPhotograph(facts);
        return facts;
    }

    void addPulls(CertificateImpression& facts, std::size_t position) const {
        const RowLists& lists = m_readiness.history.pullsOf;
        std::set<std::string> printers;
        std::set<int> seen;
        for (const std::uint32_t* row = lists.begin(position); row != lists.end(position); ++row) {
            const Pull& pull = m_records.of<Pull>()[*row];
            if (pull.start.earliest() > m_asOf)
                continue;
            facts.pulls.push_back(pullOf(pull, *row));
            seen.insert(facts.pulls.back().ordinal);
            const Party* printer = m_records.find(pull.printer);
            if (printer && printers.insert(printer->name).second)
                facts.printers.push_back(printer->name);
        }
        if (m_edition.edition.printer || facts.printers.empty())
            facts.printers = m_edition.printers;
        std::stable_sort(
            facts.pulls.begin(), facts.pulls.end(), [](const OwnPull& a, const OwnPull& b) {
                return a.ordinal != b.ordinal ? a.ordinal < b.ordinal : isBefore(a.start, b.start);
            });
        for (const LayerFacts& layer : m_edition.layers)
            if (!layer.pulls.empty() && seen.count(layer.layer.ordinal) == 0)
                facts.notSeen.push_back(layer.layer.ordinal);
    }

    OwnPull pullOf(const Pull& pull, std::size_t row) const {
        OwnPull own;
        if (const Layer* layer = m_records.find(pull.layer)) {
            own.ordinal = layer->ordinal;
            own.colourWords = layer->colourWords;
        }
        own.start = pull.start;
        if (const Mix* portion = m_records.find(pull.portion))
            own.portion = portion->name;
        own.extenderShare = m_inks[row].extenderShare;
        own.drierShare = m_inks[row].drierShare;
        own.isRemembered = m_inks[row].remembered;
        locate(own, pull);
        return own;
    }

    void locate(OwnPull& own, const Pull& pull) const {
        for (std::size_t i = 0; i < m_edition.layers.size(); ++i) {
            const LayerFacts& layer = m_edition.layers[i];
            for (std::size_t j = 0; layer.layer.id == pull.layer.id && j < layer.pulls.size(); ++j)
                if (layer.pulls[j].id == pull.id) {
                    own.layerAt = static_cast<int>(i);
                    own.pullAt = static_cast<int>(j);
                }
        }
    }

    void addLooks(CertificateImpression& facts, std::size_t position) const {
        const RowLists& lists = m_readiness.history.looksOf;
        for (const std::uint32_t* row = lists.begin(position); row != lists.end(position); ++row) {
            const Look& look = m_records.of<Look>()[*row];
            if (look.at.earliest() <= m_asOf)
                facts.looks.push_back(
                    {look.at, isAt(look, facts.impression.id), look.touch, look.colour});
        }
        std::stable_sort(facts.looks.begin(), facts.looks.end(),
                         [](const OwnLook& a, const OwnLook& b) { return isBefore(a.at, b.at); });
    }

    OwnLight lightOf(const ReadinessRow& row) const {
        OwnLight light;
        light.verdict = row.verdict;
        if (row.pull < 0)
            return light;
        const Pull& pull = m_records.of<Pull>()[static_cast<std::size_t>(row.pull)];
        if (row.layer >= 0)
            light.richLayer = m_records.of<Layer>()[static_cast<std::size_t>(row.layer)].ordinal;
        light.richOn = pull.start;
        light.daysLow = row.daysLow;
        light.daysHigh = row.daysHigh;
        light.daysNeeded = row.daysNeeded;
        if (row.asksDose)
            light.dose_sunnyDays = row.dose.sunnyDays;
        return light;
    }

    void addPhotograph(CertificateImpression& facts) const {
        const auto own = m_attachments.find(facts.impression.id);
        if (own != m_attachments.end())
            facts.photograph = newestPhotograph(own->second, m_pictureOf, m_asOf);
        facts.photographIsOfIt = facts.photograph.has_value();
        if (!facts.photograph)
            facts.photograph = m_ofEdition;
    }

    const RecordSet& m_records;
    CivilMinute m_asOf;
    const PictureSource& m_pictureOf;
    EditionFacts m_edition;
    ReadinessFacts m_readiness;
    std::vector<PullInk> m_inks;
    ProvenanceOf m_provenance;
    std::optional<Photograph> m_ofEdition;  // read once; certificates share its bytes
    std::unordered_map<std::size_t, std::size_t> m_positions;     // in the history, by record
    std::unordered_map<std::size_t, const ReadinessRow*> m_rows;  // by position in the history
    std::unordered_map<std::string, std::vector<const Attachment*>> m_attachments;
};

}  // namespace

CertificateFacts certificateFactsOf(const RecordSet& records, const Edition& edition,
                                    const std::vector<Impression>& impressions, CivilMinute asOf,
                                    bool namesHolders, const PictureSource& pictureOf) {
    return CertificateMaker(records, edition, asOf, namesHolders, pictureOf).make(impressions);
}

}  // namespace rackbook
