// Which weather and which meterings the light on some impressions follows from. Private to
// exchange/.
#pragma once

#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

#include "exchange/SheetIndexes.h"
#include "records/AsItStood.h"

namespace rackbook {

// Spans of time, ends included.
class Times {
public:
    void add(CivilMinute from, CivilMinute to) { m_spans.emplace_back(from, to); }
    // To be called between the last add and the first question.
    void join();
    bool meet(CivilMinute from, CivilMinute to) const;

private:
    std::vector<std::pair<CivilMinute, CivilMinute>> m_spans;
};

// Where the day of a move is badly known, both places count through all of that time. Places of
// which nothing is recorded do not: how the sky was only bounds what nobody knows.
class SheetLight {
public:
    // All must outlive it.
    SheetLight(const SheetIndexes& indexes, const RecordsThen& then, CivilMinute asOf)
        : m_indexes(indexes), m_then(then), m_asOf(asOf) {}

    // Where it stood with its face open.
    void add(const Impression& impression);

    // Positions of the records that were there by the day.
    std::vector<std::size_t> weather();
    std::vector<std::size_t> meterings();

private:
    struct Stay {
        const Move* move = nullptr;
        CivilMinute to = endOfTime;
    };

    std::vector<Stay> staysOf(const Impression& impression) const;
    void add(const Move& move, CivilMinute to);

    const SheetIndexes& m_indexes;
    const RecordsThen& m_then;
    CivilMinute m_asOf;
    Times m_underSky;
    std::unordered_map<std::string, Times> m_at;  // by place, with those around it
};

}  // namespace rackbook
