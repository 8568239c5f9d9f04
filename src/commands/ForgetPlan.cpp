#include "commands/ForgetPlan.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/Text.h"
#include "commands/BookAccess.h"
#include "commands/RecordNamed.h"
#include "exchange/RecordCodec.h"
#include "records/Forgetting.h"
#include "store/JournalCopy.h"
#include "store/JournalQuery.h"

namespace rackbook {

namespace {

// What the journal says of parties and places, whenever it said it.
struct Said {
    bool knowsParty = false;
    std::vector<Party> party;
    std::map<std::string, std::vector<Place>> places;
    std::map<std::string, int> entriesWithPayload;  // "party ane"
};

Said saidIn(const BookFile& book, const std::string& party) {
    Said said;
    eachJournalRow(book, [&](const JournalRow& row) {
        const bool isParty = row.kind == textOf(RecordKind::party) && row.id == party;
        if (!isParty && row.kind != textOf(RecordKind::place))
            return;
        said.knowsParty = said.knowsParty || isParty;
        if (!row.payload)
            return;
        ++said.entriesWithPayload[row.kind + " " + row.id];
        const Record record = decodeRecord(*row.payload);
        if (isParty)
            said.party.push_back(std::get<Party>(record));
        else
            said.places[row.id].push_back(std::get<Place>(record));
    });
    return said;
}

bool isHeldBy(const Place& place, const std::string& party) {
    return place.holder && place.holder->id == party;
}

// By its own record, else by that of the nearest place around it that says whose it is.
bool isTheirs(const RecordSet& records, const Place& place, const std::string& party) {
    const Place* at = &place;
    for (std::size_t steps = 0; at && steps <= records.of<Place>().size(); ++steps) {
        if (at->holder)
            return isHeldBy(*at, party);
        at = records.find(at->within);
    }
    return false;
}

std::set<std::string> theirPlaces(const RecordSet& records, const Said& said,
                                  const std::string& party) {
    std::set<std::string> ids;
    for (const auto& [id, versions] : said.places) {
        const Place* standing = records.find<Place>(id);
        const bool theirs =
            standing ? isTheirs(records, *standing, party)
                     : std::any_of(versions.begin(), versions.end(),
                                   [&](const Place& place) { return isHeldBy(place, party); });
        if (theirs)
            ids.insert(id);
    }
    return ids;
}

template <class R>
void planFor(ForgetPlan& plan, const RecordSet& records, const Said& said, const std::string& id) {
    plan.records.push_back({R::kind, id});
    const R* standing = records.find<R>(id);
    const bool isLeft = standing && isNeutral(*standing);
    if (standing && !isLeft)
        plan.left.push_back({*forgotten(Record(*standing))});
    const auto count = said.entriesWithPayload.find(nameOf(R::kind, id));
    plan.hasSaid = plan.hasSaid ||
                   (count != said.entriesWithPayload.end() && count->second > (isLeft ? 1 : 0));
}

void addNames(SoughtNames& names, const Said& said, const std::set<std::string>& places) {
    for (const Party& party : said.party) {
        if (party.name != forgottenName)
            names.addName(party.name);
        if (party.contact)
            names.addWhole(*party.contact);
    }
    for (const std::string& id : places)
        for (const Place& place : said.places.at(id))
            if (place.name != forgottenName)
                names.addWhole(place.name);
}

// Of another record what it says now stays: people have corrected it, or struck it out.
void addOther(ForgetPlan& plan, const BookFile& book, const std::string& words) {
    const std::size_t space = std::min(words.find(' '), words.size());
    const RecordKind kind = recordKindNamed(words.substr(0, space));
    const std::string id = words.substr(std::min(space + 1, words.size()));
    if (kind == RecordKind::party || kind == RecordKind::place)
        throw UsageError("--also: " + words + " is forgotten by itself",
                         "A party by rackbook forget, a place with the party that is its holder.");
    const std::vector<JournalEntry> entries = journalOf(book, kind, id);
    if (entries.empty())
        withRecordType(kind,
                       [&](auto tag) { recordNamed<typename decltype(tag)::Type>(book, id); });
    plan.records.push_back({kind, id});
    for (const JournalEntry& entry : entries) {
        const bool stays =
            entry.entry == entries.back().entry && entry.action != JournalAction::strike;
        plan.hasSaid = plan.hasSaid || (entry.payload && !stays);
    }
}

std::string countOf(std::size_t count, const std::string& one, const std::string& many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

template <class R, class Names>
std::vector<std::string> idsOf(const RecordSet& records, Names&& names) {
    std::vector<std::string> ids;
    for (const R& record : records.of<R>())
        if (names(record))
            ids.push_back(record.id);
    return ids;
}

}  // namespace

ForgetPlan planToForget(const BookFile& book, const RecordSet& records, const std::string& party,
                        const std::vector<std::string>& also) {
    const Said said = saidIn(book, party);
    if (!said.knowsParty)
        recordNamed<Party>(book, party);
    ForgetPlan plan;
    plan.party = party;
    planFor<Party>(plan, records, said, party);
    const std::set<std::string> places = theirPlaces(records, said, party);
    for (const std::string& id : places)
        planFor<Place>(plan, records, said, id);
    for (const std::string& words : also)
        addOther(plan, book, words);
    addNames(plan.names, said, places);
    return plan;
}

std::vector<std::string> whatNames(const RecordSet& records, const std::string& party) {
    const auto is = [&](const auto& ref) { return ref && ref->id == party; };
    std::vector<std::string> sentences;
    const std::vector<std::string> editions = idsOf<Edition>(records, [&](const Edition& edition) {
        return edition.maker.id == party || is(edition.printer) || is(edition.publisher);
    });
    if (!editions.empty())
        sentences.push_back("It made, printed or published " + joined(editions) +
                            ": sheets about them will call it \"" + forgottenName + "\".");
    const std::size_t held = idsOf<Impression>(records, [&](const Impression& sheet) {
                                 return is(sheet.holder);
                             }).size();
    if (held > 0)
        sentences.push_back(countOf(held, "print is", "prints are") +
                            " with it and will stay recorded so, under its id alone.");
    const std::vector<std::string> transfers =
        idsOf<Transfer>(records, [&](const Transfer& transfer) {
            return transfer.giver.id == party || transfer.receiver.id == party;
        });
    if (!transfers.empty())
        sentences.push_back(
            "Its transfers stay, with dates, prices and terms: " + joined(transfers) + ".");
    const std::set<std::string> about(transfers.begin(), transfers.end());
    const std::vector<std::string> issues = idsOf<Issue>(records, [&](const Issue& issue) {
        return is(issue.recipient) || issue.namesHolders ||
               (issue.transfer && about.count(issue.transfer->id) != 0);
    });
    if (!issues.empty())
        sentences.push_back(
            "Sheets that were given out may say the name, and no book can call "
            "them back: " +
            joined(issues) + ".");
    return sentences;
}

}  // namespace rackbook
