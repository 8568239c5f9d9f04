#include "exchange/LinkedWork.h"

#include <algorithm>

#include "exchange/WithoutPrivate.h"

namespace rackbook {

namespace {

constexpr const char* context = "https://linked.art/ns/v1/linked-art.json";

template <class R>
void addWithoutPrivate(const RecordSet& from, const PrivacyChoice& choice, RecordSet& to) {
    for (const R& record : from.of<R>()) {
        Record copy = record;
        withoutPrivate(copy, choice);
        to.add(std::get<R>(std::move(copy)));
    }
}

RecordSet publicRecords(const RecordSet& records, bool namesHolders) {
    PrivacyChoice choice;
    choice.namesHolders = namesHolders;
    RecordSet kept;
    addWithoutPrivate<Book>(records, choice, kept);
    addWithoutPrivate<Party>(records, choice, kept);
    addWithoutPrivate<Place>(records, choice, kept);
    addWithoutPrivate<Edition>(records, choice, kept);
    addWithoutPrivate<Block>(records, choice, kept);
    addWithoutPrivate<Lot>(records, choice, kept);
    addWithoutPrivate<Mix>(records, choice, kept);
    addWithoutPrivate<Weighing>(records, choice, kept);
    addWithoutPrivate<Layer>(records, choice, kept);
    addWithoutPrivate<Impression>(records, choice, kept);
    addWithoutPrivate<Pull>(records, choice, kept);
    if (namesHolders)
        addWithoutPrivate<Move>(records, choice, kept);
    addWithoutPrivate<Attachment>(records, choice, kept);
    return kept;
}

template <class R>
std::vector<const R*> found(const std::map<std::string, std::vector<const R*>>& index,
                            const std::string& id) {
    const auto at = index.find(id);
    return at == index.end() ? std::vector<const R*>() : at->second;
}

}  // namespace

LinkedWork::LinkedWork(const RecordSet& records, const LinkedArtChoice& choice)
    : m_choice(choice),
      m_records(publicRecords(records, choice.namesHolders)),
      m_uris(choice.base, choice.bookMark) {
    if (!m_records.of<Book>().empty())
        m_studio = m_records.of<Book>().front();
    index();
}

void LinkedWork::index() {
    for (const Pull& pull : m_records.of<Pull>())
        for (const Ref<Impression>& impression : pull.impressions)
            m_pulls[impression.id].push_back(&pull);
    for (const Move& move : m_records.of<Move>())
        for (const Ref<Impression>& impression : move.impressions)
            m_moves[impression.id].push_back(&move);
    for (const Attachment& picture : m_records.of<Attachment>()) {
        if (picture.impression)
            m_ofImpression[picture.impression->id].push_back(&picture);
        if (picture.edition)
            m_ofEdition[picture.edition->id].push_back(&picture);
    }
    for (const Weighing& weighing : m_records.of<Weighing>())
        if (weighing.act == WeighingAct::add)
            m_weighings[weighing.mix.id].push_back(&weighing);
}

std::vector<const Pull*> LinkedWork::pullsOf(const Impression& impression) const {
    std::vector<const Pull*> pulls = found(m_pulls, impression.id);
    const auto place = [&](const Pull* pull) {
        const Layer* layer = m_records.find(pull->layer);
        return std::pair(layer ? layer->ordinal : 0, pull->start.earliest());
    };
    std::stable_sort(pulls.begin(), pulls.end(),
                     [&](const Pull* a, const Pull* b) { return place(a) < place(b); });
    return pulls;
}

std::vector<const Attachment*> LinkedWork::picturesOf(const Impression& impression) const {
    return found(m_ofImpression, impression.id);
}

std::vector<const Attachment*> LinkedWork::picturesOf(const Edition& edition) const {
    return found(m_ofEdition, edition.id);
}

const Place* LinkedWork::placeOf(const Impression& impression) const {
    const Move* latest = nullptr;
    for (const Move* move : found(m_moves, impression.id))
        if (!latest || move->at.earliest() >= latest->at.earliest())
            latest = move;
    return latest && !latest->until ? m_records.find(latest->to) : nullptr;
}

std::set<std::string> LinkedWork::pigmentsOf(const Mix& mix, const EdtfDate& until) const {
    std::set<std::string> seen;
    std::set<std::string> pigments;
    addPigments(mix.id, until, seen, pigments);
    return pigments;
}

void LinkedWork::addPigments(const std::string& mix, const EdtfDate& until,
                             std::set<std::string>& seen, std::set<std::string>& pigments) const {
    if (!seen.insert(mix).second)
        return;
    for (const Weighing* weighing : found(m_weighings, mix)) {
        if (certainlyBefore(until, weighing->at))
            continue;
        if (const Lot* lot = m_records.find(weighing->lot))
            pigments.insert(lot->pigments.begin(), lot->pigments.end());
        if (weighing->fromMix)
            addPigments(weighing->fromMix->id, until, seen, pigments);
    }
}

Tree LinkedWork::headOf(LinkedKind kind, const std::string& id, const std::string& label) const {
    Tree head = Tree::object();
    head.set("@context", context);
    head.set("id", m_uris.uriOf(kind, id));
    head.set("type", classOf(kind));
    head.set("_label", label);
    return head;
}

Tree LinkedWork::originOf(RecordKind kind, const std::string& id) const {
    const std::string asSaid = m_choice.saidOn.empty() ? "" : ", as it said on " + m_choice.saidOn;
    return linkedStatement("Generated on " + m_choice.day + " by " + m_choice.program +
                               " from the book of " + m_studio.studio + asSaid + ": " +
                               nameOf(kind, id) + ". What that record does not say is left out.",
                           linkedTerms::note, "where this description comes from");
}

std::optional<Tree> LinkedWork::actor(const Ref<Party>& ref) {
    const Party* party = m_records.find(ref);
    if (!party)
        return std::nullopt;
    if (m_choice.persons.count(ref.id) != 0) {
        m_personsNamed.insert(ref.id);
        return m_uris.reference(LinkedKind::person, ref.id, party->name);
    }
    if (m_choice.groups.count(ref.id) != 0) {
        m_groupsNamed.insert(ref.id);
        return m_uris.reference(LinkedKind::group, ref.id, party->name);
    }
    m_onlyInWords.insert(ref.id);
    return std::nullopt;
}

void LinkedWork::addActor(Tree& activity, Tree& statements, const Ref<Party>& ref,
                          const std::string& role) {
    if (std::optional<Tree> known = actor(ref))
        activity.set("carried_out_by", Tree::array().add(std::move(*known)));
    else if (const Party* party = m_records.find(ref))
        statements.add(linkedStatement(role + ": " + party->name, linkedTerms::note, role));
}

Tree LinkedWork::place(const Place& place) {
    m_placesNamed.insert(place.id);
    return m_uris.reference(LinkedKind::place, place.id, place.name);
}

}  // namespace rackbook
