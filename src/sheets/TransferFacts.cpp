#include "sheets/TransferFacts.h"

#include <algorithm>
#include <map>

#include "records/AsItStood.h"
#include "sheets/ReadinessFacts.h"

namespace rackbook {

namespace {

TransferParty partyOf(const RecordSet& records, const Ref<Party>& ref, bool namesContacts) {
    const Party* party = records.find(ref);
    if (!party)
        return {};
    return {party->name, namesContacts ? party->contact.value_or(std::string()) : std::string()};
}

// By position of the impression in the records.
std::map<std::size_t, Verdict> verdictsOf(const RecordSet& records, CivilMinute asOf) {
    ReadinessQuestion question;
    question.asOf = asOf;
    question.namesHolders = true;  // no place is named
    const ReadinessFacts facts = readinessFactsOf(records, question);
    std::map<std::size_t, Verdict> verdicts;
    for (const ReadinessRow& row : facts.readiness.rows) {
        const auto at = static_cast<std::size_t>(row.impression);
        verdicts[static_cast<std::size_t>(facts.history.impressions[at].key)] = row.verdict;
    }
    return verdicts;
}

TransferPrint printOf(const Impression& impression, CivilMinute asOf) {
    TransferPrint print;
    print.workingNumber = impression.workingNumber;
    if (impression.designation && !isAfter(impression.signedOn, asOf))
        print.designation = *impression.designation;
    if (!isAfter(impression.fateOn, asOf))
        print.fate = impression.fate;
    return print;
}

TransferEdition& editionIn(std::vector<TransferEdition>& editions, const RecordSet& records,
                           const Ref<Edition>& ref) {
    const auto found =
        std::find_if(editions.begin(), editions.end(),
                     [&](const TransferEdition& one) { return one.edition.id == ref.id; });
    if (found != editions.end())
        return *found;
    TransferEdition made;
    made.edition.id = made.edition.code = ref.id;
    if (const Edition* edition = records.find(ref))
        made.edition = *edition;
    if (const Party* maker = records.find(made.edition.maker))
        made.maker = maker->name;
    editions.push_back(std::move(made));
    return editions.back();
}

}  // namespace

TransferFacts transferFactsOf(const RecordSet& records, const Transfer& transfer, CivilMinute asOf,
                              bool namesContacts) {
    TransferFacts facts;
    facts.asOf = asOf;
    facts.transfer = transfer;
    facts.giver = partyOf(records, transfer.giver, namesContacts);
    facts.receiver = partyOf(records, transfer.receiver, namesContacts);
    if (!records.of<Book>().empty()) {
        facts.studio = records.of<Book>().front().studio;
        facts.lengthUnit = records.of<Book>().front().lengthUnit;
    }
    const std::map<std::size_t, Verdict> verdicts = verdictsOf(records, asOf);
    for (const Ref<Impression>& ref : transfer.impressions) {
        const int position = records.indexOf<Impression>(ref.id);
        if (position < 0)
            continue;
        const auto at = static_cast<std::size_t>(position);
        const Impression& impression = records.of<Impression>()[at];
        TransferPrint print = printOf(impression, asOf);
        const auto verdict = verdicts.find(at);
        if (verdict != verdicts.end())
            print.verdict = verdict->second;
        editionIn(facts.editions, records, impression.edition).prints.push_back(std::move(print));
    }
    return facts;
}

}  // namespace rackbook
