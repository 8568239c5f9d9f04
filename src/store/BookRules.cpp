#include "store/BookRules.h"

#include <unordered_map>

namespace rackbook {

namespace {

using Problems = std::vector<IntakeProblem>;

// A question about one touched record: the statement takes its key and answers with a row where
// the rule is broken.
struct Question {
    RecordKind kind;
    const char* sql;
    const char* pointer;
    const char* what;  // followed by the first column of the answer
    const char* remedy;
};

constexpr Question questions[] = {
    {RecordKind::book, "SELECT id FROM book WHERE key <> ?1", "/id",
     "a book holds one book record, and it is there already: ",
     "Correct that one, keeping its id, instead of adding another."},
    {RecordKind::edition,
     "SELECT b.id FROM edition a JOIN edition b ON b.code = a.code AND b.key <> a.key "
     "WHERE a.key = ?1",
     "/code", "the code is taken by edition ", "Choose another code."},
    {RecordKind::impression,
     "SELECT b.id FROM impression a JOIN impression b ON b.edition = a.edition AND "
     "b.workingNumber = a.workingNumber AND b.key <> a.key WHERE a.key = ?1",
     "/workingNumber", "the working number is taken in this edition by impression ",
     "Give the sheet a number of its own."},
    {RecordKind::layer,
     "SELECT b.id FROM layer a JOIN layer b ON b.edition = a.edition AND b.ordinal = a.ordinal "
     "AND b.key <> a.key WHERE a.key = ?1",
     "/ordinal", "the place in the printing order is taken by layer ",
     "Number the layers 1, 2, 3 in the order of printing."},
    {RecordKind::pull,
     "SELECT i.id FROM pull p JOIN layer l ON l.key = p.layer JOIN pull_impressions x ON "
     "x.pull = p.key JOIN impression i ON i.key = x.impression WHERE p.key = ?1 AND "
     "i.edition <> l.edition LIMIT 1",
     "/impressions", "the layer is of another edition than impression ",
     "Name the layer of the edition that the sheets belong to."},
};

void ask(const Database& database, const std::vector<Touched>& touched, Problems& problems) {
    for (const Question& question : questions) {
        Statement statement;
        bool prepared = false;
        for (const Touched& record : touched) {
            if (record.kind != question.kind)
                continue;
            if (!prepared) {
                statement = database.prepare(question.sql);
                prepared = true;
            }
            statement.bind(1, record.key);
            if (statement.step())
                problems.push_back({record.index,
                                    question.pointer,
                                    question.what + statement.text(0),
                                    {},
                                    question.remedy});
            statement.reset();
        }
    }
}

// Finds cycles along edges that a statement gives for one key. Walks each node once over all
// starts, without recursion.
class CycleSearch {
public:
    CycleSearch(const Database& database, const char* edgesSql)
        : m_edges(database.prepare(edgesSql)) {}

    bool reachesItself(std::int64_t start) {
        if (m_state.count(start) != 0)
            return m_state[start] == State::inCycle;
        std::vector<Frame> path;
        push(path, start);
        bool found = false;
        while (!path.empty()) {
            Frame& top = path.back();
            if (top.next == top.targets.size()) {
                m_state[top.node] = found ? State::inCycle : State::clear;
                path.pop_back();
                continue;
            }
            const std::int64_t target = top.targets[top.next++];
            const auto seen = m_state.find(target);
            if (seen == m_state.end())
                push(path, target);
            else if (seen->second != State::clear)
                found = true;
        }
        return found;
    }

private:
    enum class State { onPath, clear, inCycle };
    struct Frame {
        std::int64_t node;
        std::vector<std::int64_t> targets;
        std::size_t next = 0;
    };

    void push(std::vector<Frame>& path, std::int64_t node) {
        m_state[node] = State::onPath;
        Frame frame{node, {}};
        m_edges.bind(1, node);
        while (m_edges.step())
            frame.targets.push_back(m_edges.whole(0));
        m_edges.reset();
        path.push_back(std::move(frame));
    }

    Statement m_edges;
    std::unordered_map<std::int64_t, State> m_state;
};

void searchMixes(const Database& database, const std::vector<Touched>& touched,
                 Problems& problems) {
    CycleSearch search(database,
                       "SELECT DISTINCT fromMix FROM weighing WHERE mix = ? AND fromMix IS NOT "
                       "NULL");
    Statement mixOf = database.prepare(
        "SELECT mix, m.id FROM weighing w JOIN mix m ON m.key = w.mix WHERE w.key = ? AND "
        "w.fromMix IS NOT NULL");
    for (const Touched& record : touched) {
        if (record.kind != RecordKind::weighing)
            continue;
        mixOf.bind(1, record.key);
        if (mixOf.step() && search.reachesItself(mixOf.whole(0)))
            problems.push_back(
                {record.index, "/fromMix", "the mix would be made from itself, by way of others",
                 mixOf.text(1), "Begin a new mix for what was scraped together again."});
        mixOf.reset();
    }
}

void searchPlaces(const Database& database, const std::vector<Touched>& touched,
                  Problems& problems) {
    CycleSearch search(database, "SELECT within FROM place WHERE key = ? AND within IS NOT NULL");
    for (const Touched& record : touched)
        if (record.kind == RecordKind::place && search.reachesItself(record.key))
            problems.push_back({record.index,
                                "/within",
                                "the place would lie within itself, by way of others",
                                {},
                                "Name the place around it."});
}

}  // namespace

std::vector<IntakeProblem> brokenBookRules(const Database& database,
                                           const std::vector<Touched>& touched) {
    Problems problems;
    ask(database, touched, problems);
    searchMixes(database, touched, problems);
    searchPlaces(database, touched, problems);
    return problems;
}

}  // namespace rackbook
