#include "sheets/LedgerFacts.h"

#include <algorithm>
#include <set>
#include <unordered_map>

#include "calc/PlaceLight.h"
#include "sheets/ProvenanceOf.h"
#include "sheets/PublicImpression.h"

namespace rackbook {

namespace {

class LedgerMaker {
public:
    LedgerMaker(const RecordSet& records, const ReadinessQuestion& question)
        : m_records(records),
          m_question(question),
          m_readiness(readinessFactsOf(records, question)),
          m_places(m_readiness.history),
          m_provenance(records, question.asOf, false) {
        for (const ReadinessRow& row : m_readiness.readiness.rows)
            m_rows[static_cast<std::size_t>(row.impression)] = &row;
        for (const Transfer& transfer : records.of<Transfer>())
            if (transfer.agreedOn.earliest() > question.asOf)
                for (const Ref<Impression>& impression : transfer.impressions)
                    m_handedOverLater.insert(impression.id);
        for (const Move& move : records.of<Move>())
            if (move.at.earliest() <= question.asOf)
                for (const Ref<Impression>& impression : move.impressions)
                    noteMove(impression.id, move);
    }

    LedgerFacts make() const {
        LedgerFacts facts;
        facts.studio = m_readiness.studio;
        facts.asOf = m_question.asOf;
        std::vector<LedgerEdition> editions;
        for (const Edition& edition : m_records.of<Edition>())
            editions.push_back({edition.title, edition.code, edition, {}});
        const std::vector<HistoryImpression>& all = m_readiness.history.impressions;
        for (std::size_t i = 0; i < all.size(); ++i)
            if (all[i].edition >= 0)
                editions[static_cast<std::size_t>(all[i].edition)].rows.push_back(rowOf(i));
        for (std::size_t i = 0; i < editions.size(); ++i)
            if (m_question.edition.empty() || m_records.of<Edition>()[i].id == m_question.edition)
                facts.editions.push_back(std::move(editions[i]));
        return facts;
    }

private:
    LedgerRow rowOf(std::size_t position) const {
        const HistoryImpression& impression = m_readiness.history.impressions[position];
        const Impression& record =
            m_records.of<Impression>()[static_cast<std::size_t>(impression.key)];
        LedgerRow row;
        row.impression = publicImpression(record, m_question.asOf);
        const auto judged = m_rows.find(position);
        if (row.impression.fate == ImpressionFate::spoiled)
            row.where = lastPlaceOf(record);
        if (judged == m_rows.end() || row.impression.fate != ImpressionFate::kept)
            return row;
        row.handedOver = handedOver(record);
        row.verdict = judged->second->verdict;
        row.where = whereOf(record, judged->second->place);
        return row;
    }

    // Sheets may be handed over without a word of where they went.
    std::string whereOf(const Impression& impression, int place) const {
        const bool isGone = place >= 0 && m_places.isOutOfHands(place);
        const Party* holder = m_records.find(impression.holder);
        if (!isGone && holder && m_handedOverLater.count(impression.id) == 0)
            return m_question.namesHolders ? holder->name : m_question.atHolder;
        return place < 0 ? std::string()
                         : m_readiness.history.places[static_cast<std::size_t>(place)].name;
    }

    void noteMove(const std::string& impression, const Move& move) {
        const Move*& last = m_lastMoves[impression];
        if (!last || last->at.earliest() <= move.at.earliest())
            last = &move;
    }

    // Of what is not judged, because it is spoiled.
    std::string lastPlaceOf(const Impression& impression) const {
        const auto last = m_lastMoves.find(impression.id);
        const int place =
            last == m_lastMoves.end() ? -1 : m_records.indexOf<Place>(last->second->to.id);
        return place < 0 ? std::string()
                         : m_readiness.history.places[static_cast<std::size_t>(place)].name;
    }

    std::optional<ProvenanceStep> handedOver(const Impression& impression) const {
        const std::vector<ProvenanceStep> steps = m_provenance.stepsOf(impression.id);
        // A move without a reason of its own may carry out what was agreed.
        const auto last =
            std::find_if(steps.rbegin(), steps.rend(),
                         [](const ProvenanceStep& step) { return step.why != MoveWhy::other; });
        if (last == steps.rend())
            return std::nullopt;
        const bool isOut = last->why == MoveWhy::sell || last->why == MoveWhy::give ||
                           last->why == MoveWhy::consign || last->why == MoveWhy::lend;
        return isOut ? std::optional(*last) : std::nullopt;
    }

    const RecordSet& m_records;
    const ReadinessQuestion& m_question;
    ReadinessFacts m_readiness;
    PlaceLight m_places;
    ProvenanceOf m_provenance;
    std::unordered_map<std::string, const Move*> m_lastMoves;     // by id of the impression
    std::unordered_map<std::size_t, const ReadinessRow*> m_rows;  // by position in the history
    std::set<std::string> m_handedOverLater;                      // ids of impressions
};

}  // namespace

LedgerFacts ledgerFactsOf(const RecordSet& records, const ReadinessQuestion& question) {
    return LedgerMaker(records, question).make();
}

}  // namespace rackbook
