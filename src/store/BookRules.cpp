#include "store/BookRules.h"

#include <algorithm>
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
    bool onlyWhereChanged = false;  // a new record cannot have broken it
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
    {RecordKind::layer,
     "SELECT p.id FROM layer l JOIN pull p ON p.layer = l.key JOIN pull_impressions x ON x.pull = "
     "p.key JOIN impression i ON i.key = x.impression WHERE l.key = ?1 AND i.edition <> l.edition "
     "LIMIT 1",
     "/edition", "sheets of another edition were printed from it in pull ",
     "Correct the pull first, or leave the layer in its edition.", true},
    {RecordKind::impression,
     "SELECT p.id FROM impression i JOIN pull_impressions x ON x.impression = i.key JOIN pull p ON "
     "p.key = x.pull JOIN layer l ON l.key = p.layer WHERE i.key = ?1 AND i.edition <> l.edition "
     "LIMIT 1",
     "/edition", "a layer of another edition was printed on it in pull ",
     "Correct the pull first, or leave the sheet in its edition.", true},
};

void ask(const Database& database, const std::vector<Touched>& touched, Problems& problems) {
    for (const Question& question : questions) {
        Statement statement;
        bool prepared = false;
        for (const Touched& record : touched) {
            if (record.kind != question.kind || (question.onlyWhereChanged && record.isNew))
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

// Finds the nodes that lie on a cycle of edges, which a statement gives for one key: those whose
// strongly connected component has several members (R. Tarjan, Depth-first search and linear graph
// algorithms, 1972). Walks each node once over all starts, without recursion. A node with an edge
// to itself is not looked for: no record may name itself.
class CycleSearch {
public:
    CycleSearch(const Database& database, const char* edgesSql)
        : m_edges(database.prepare(edgesSql)) {}

    bool liesOnCycle(std::int64_t start) {
        if (m_nodes.count(start) == 0)
            walk(start);
        return m_nodes[start].onCycle;
    }

private:
    struct Node {
        int order = 0;   // in which it was first seen
        int lowest = 0;  // order of the first seen node that it leads back to
        bool open = true;
        bool onCycle = false;
    };
    struct Frame {
        std::int64_t node;
        std::vector<std::int64_t> targets;
        std::size_t next = 0;
    };

    void walk(std::int64_t start) {
        std::vector<Frame> path;
        enter(path, start);
        while (!path.empty()) {
            Frame& top = path.back();
            if (top.next < top.targets.size()) {
                const std::int64_t target = top.targets[top.next++];
                const auto seen = m_nodes.find(target);
                if (seen == m_nodes.end())
                    enter(path, target);
                else if (seen->second.open)
                    leadsBack(top.node, seen->second.order);
                continue;
            }
            const std::int64_t done = top.node;
            path.pop_back();
            if (!path.empty())
                leadsBack(path.back().node, m_nodes[done].lowest);
            if (m_nodes[done].lowest == m_nodes[done].order)
                closeComponent(done);
        }
    }

    void enter(std::vector<Frame>& path, std::int64_t node) {
        const int order = static_cast<int>(m_nodes.size());
        m_nodes[node] = {order, order};
        m_component.push_back(node);
        Frame frame{node, {}};
        m_edges.bind(1, node);
        while (m_edges.step())
            frame.targets.push_back(m_edges.whole(0));
        m_edges.reset();
        path.push_back(std::move(frame));
    }

    void leadsBack(std::int64_t node, int order) {
        m_nodes[node].lowest = std::min(m_nodes[node].lowest, order);
    }

    void closeComponent(std::int64_t root) {
        const bool several = m_component.back() != root;
        std::int64_t member = root;
        do {
            member = m_component.back();
            m_component.pop_back();
            m_nodes[member].open = false;
            m_nodes[member].onCycle = several;
        } while (member != root);
    }

    Statement m_edges;
    std::unordered_map<std::int64_t, Node> m_nodes;
    std::vector<std::int64_t> m_component;  // seen, but not yet known to be whole
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
        if (mixOf.step() && search.liesOnCycle(mixOf.whole(0)))
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
        if (record.kind == RecordKind::place && search.liesOnCycle(record.key))
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
