#include "commands/TodayPlan.h"

#include <algorithm>
#include <map>

#include "base/Text.h"
#include "base/Translated.h"
#include "checks/Audit.h"
#include "commands/FieldText.h"
#include "commands/ImpressionNames.h"
#include "commands/InkBookPart.h"
#include "commands/InkWords.h"
#include "commands/JudgedPrints.h"
#include "commands/SlabPlan.h"
#include "commands/StockReport.h"
#include "store/RecordReader.h"
#include "store/RecordsAround.h"

namespace rackbook {

namespace {

constexpr CivilMinute soonDue = 7 * minutesPerDay;

// Prints that stand alike, place by place.
class PrintsToSeeTo {
public:
    explicit PrintsToSeeTo(const JudgedPrints& prints) : m_prints(prints) {}

    TodaySection bringOut() const {
        return section("bringOut", translated("today", "Bring out of the dark"),
                       [](const ReadinessRow& row) {
                           return row.verdict == Verdict::bringOut && !row.outOfHands;
                       });
    }

    TodaySection lookAt() const {
        return section("lookAt", translated("today", "Look at, and feel"),
                       [](const ReadinessRow& row) {
                           return row.verdict == Verdict::lookDue && !row.outOfHands;
                       });
    }

    TodaySection putAway() const {
        return section("putAway", translated("today", "May be put away"),
                       [](const ReadinessRow& row) {
                           return row.verdict == Verdict::ready && !row.outOfHands &&
                                  row.lightNow == LightState::lit;
                       });
    }

    TodaySection leave() const {
        return section("leave", translated("today", "Leave in the light"),
                       [](const ReadinessRow& row) {
                           return row.verdict == Verdict::moreLight && !row.outOfHands;
                       });
    }

    TodaySection findOut() const {
        return section("findOut", translated("today", "Find out: the record does not decide it"),
                       [](const ReadinessRow& row) {
                           // What was never printed waits for the press.
                           return row.verdict == Verdict::unknown && !row.outOfHands &&
                                  row.lastPull >= 0;
                       });
    }

private:
    template <class Wanted>
    TodaySection section(const char* name, const std::string& heading, Wanted&& wanted) const {
        std::map<int, std::vector<std::uint32_t>> byPlace;
        for (const ReadinessRow& row : m_prints.readiness.rows)
            if (wanted(row))
                byPlace[row.place].push_back(static_cast<std::uint32_t>(row.impression));
        TodaySection made{name, heading, {}};
        for (const auto& [place, impressions] : byPlace)
            made.lines.push_back({namesOf(impressions, m_prints.labels), placeWords(place),
                                  impressions.size() == 1
                                      ? translated("today", "1 print")
                                      : filledIn(translated("today", "%1 prints"),
                                                 {std::to_string(impressions.size())})});
        return made;
    }

    std::string placeWords(int place) const {
        return place < 0 ? translated("today", "place not recorded")
                         : m_prints.history.places[static_cast<std::size_t>(place)].name;
    }

    const JudgedPrints& m_prints;
};

TodaySection heapsToUse(const BookFile& book, CivilMinute asOf) {
    TodaySection made{"heaps", translated("today", "Ink on the slab"), {}};
    const Slab slab = slabOf(book, {asOf, {}, false});
    for (const std::size_t mix : slab.heaps) {
        const HeapLife& life = slab.lives[mix];
        const bool isPast = life.verdict == HeapVerdict::past;
        if (!isPast && life.verdict != HeapVerdict::nearItsEnd)
            continue;
        made.lines.push_back(
            {mixAt(slab.ink, static_cast<int>(mix)).name,
             {},
             isPast
                 ? translated("today", "past its life by the house rules: try it, or scrape it off")
                 : translated("today", "near its end") +
                       (life.ends ? ", " + momentWords(*life.ends) : std::string())});
    }
    return made;
}

TodaySection tinsToSeeTo(const InkBook& ink, CivilMinute asOf) {
    TodaySection made{"tins", translated("today", "Tins, tubes and bottles"), {}};
    const std::vector<LotUse> uses = lotUseOf(ink, asOf);
    const std::vector<Lot>& lots = ink.records.of<Lot>();
    for (std::size_t lot = 0; lot < lots.size(); ++lot) {
        if (lots[lot].finishedOn && lots[lot].finishedOn->latest() <= asOf)
            continue;
        if (isOld(uses[lot], asOf))
            made.lines.push_back(
                {lotWords(lots[lot]), {}, translated("today", "open for long: try a drawdown")});
        if (isNearlyOut(uses[lot], asOf))
            made.lines.push_back(
                {lotWords(lots[lot]), {}, translated("today", "less than a month of use is left")});
    }
    return made;
}

// The sheets of it that its receiver still holds.
std::vector<std::string> stillOut(const InkBook& ink, const Transfer& transfer) {
    std::vector<std::string> names;
    for (const Ref<Impression>& ref : transfer.impressions) {
        const int position = ink.records.indexOf<Impression>(ref.id);
        if (position < 0)
            continue;
        const Impression& sheet = ink.records.of<Impression>()[static_cast<std::size_t>(position)];
        if (sheet.holder && sheet.holder->id == transfer.receiver.id)
            names.push_back(ref.id);
    }
    return names;
}

std::string partyName(const InkBook& ink, const Ref<Party>& party) {
    const int position = ink.records.indexOf<Party>(party.id);
    return position < 0 ? party.id
                        : ink.records.of<Party>()[static_cast<std::size_t>(position)].name;
}

TodaySection dueBack(const InkBook& ink, CivilMinute asOf) {
    TodaySection made{"due", translated("today", "Due back"), {}};
    for (const Transfer& transfer : ink.records.of<Transfer>()) {
        if (!transfer.dueOn || transfer.dueOn->earliest() > asOf + soonDue)
            continue;
        const std::vector<std::string> out = stillOut(ink, transfer);
        if (out.empty())
            continue;
        const bool isOver = transfer.dueOn->latest() < asOf - minutesPerDay + 1;
        made.lines.push_back({idsInShort(out), partyName(ink, transfer.receiver),
                              filledIn(isOver ? translated("today", "%1 overdue since %2")
                                              : translated("today", "%1 ends %2"),
                                       {translated("choice", textOf(transfer.transferKind)),
                                        transfer.dueOn->text()})});
    }
    return made;
}

TodaySection promises(const InkBook& ink, CivilMinute asOf) {
    TodaySection made{"promises", translated("today", "Promised to buyers"), {}};
    const AuditContext context(ink.records, ink.rules, asOf);
    for (const Finding& finding : audit(context, {"promised-fate"}))
        if (finding.severity == Severity::error)
            made.lines.push_back({finding.where.record, {}, finding.what});
    return made;
}

}  // namespace

namespace {

// What tins, transfers and promises are judged by.
InkBook inkBookFor(const BookFile& book) {
    InkBook ink = inkBookWith(book, {RecordKind::book, RecordKind::party, RecordKind::edition,
                                     RecordKind::block, RecordKind::lot, RecordKind::stockTake});
    for (Transfer& transfer : transfersThatEnd(book)) {
        for (const Ref<Impression>& ref : transfer.impressions)
            if (ink.records.find(ref) == nullptr)
                ink.records.add(*findIn<Impression>(book, ref.id));
        ink.records.add(std::move(transfer));
    }
    return ink;
}

// They are read, told and let go before the prints are read.
std::vector<TodaySection> inkSectionsOf(const BookFile& book, CivilMinute asOf) {
    const InkBook ink = inkBookFor(book);
    return {heapsToUse(book, asOf), tinsToSeeTo(ink, asOf), dueBack(ink, asOf),
            promises(ink, asOf)};
}

}  // namespace

std::vector<TodaySection> todayIn(const BookFile& book, CivilMinute asOf) {
    const std::vector<TodaySection> ofInk = inkSectionsOf(book, asOf);
    const Book studio = bookRecordOf(book);
    const HouseRules rules(studio.houseRules);
    const JudgedPrints judged(book, studio, rules, std::nullopt, asOf);
    const PrintsToSeeTo prints(judged);
    std::vector<TodaySection> all = {prints.bringOut(), prints.lookAt(), prints.putAway(),
                                     prints.leave(), prints.findOut()};
    all.insert(all.end(), ofInk.begin(), ofInk.end());
    return all;
}

}  // namespace rackbook
