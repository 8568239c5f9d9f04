#include "store/Intake.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>

#include "base/Sha256.h"
#include "base/Text.h"
#include "records/Forgetting.h"
#include "store/BookInner.h"
#include "store/BookRules.h"
#include "store/BrokenReferences.h"
#include "store/BytesTable.h"
#include "store/Columns.h"
#include "store/Journal.h"
#include "store/Projector.h"

namespace rackbook {

namespace {

constexpr std::size_t progressStep = 1000;

// What the book holds of a record already.
struct Standing {
    std::int64_t entry = 0;
    std::string payload;
};

class IntakeRun {
public:
    IntakeRun(Database& database, const std::vector<Entry>& entries, const IntakeTerms& terms)
        : m_database(database),
          m_entries(entries),
          m_terms(terms),
          m_keys(database),
          m_projector(database, m_keys),
          m_steps(entries.size()),
          m_struckLookup(database.prepare(
              "SELECT 1 FROM journal WHERE action = 'strike' AND kind = ? AND id = ?")),
          m_hasStruck(database.wholeOf("SELECT count(*) FROM journal WHERE action = 'strike'") >
                      0) {}

    IntakeResult run() {
        Transaction transaction(m_database);
        // Only now can no other writer add to the journal.
        m_journal.emplace(m_database);
        findKeys();
        for (std::size_t i = 0; i < m_entries.size(); ++i) {
            write(i);
            if (m_terms.onProgress && i % progressStep == 0)
                m_terms.onProgress(i);
        }
        checkStruck();
        keepBytes();
        if (m_result.problems.empty())
            m_result.problems = brokenBookRules(m_database, m_touched);
        if (!m_result.problems.empty()) {
            sortProblems();
            return refused();
        }
        for (const Step& step : m_steps)
            m_result.outcomes.push_back(step.outcome);
        if (!m_terms.dryRun)
            transaction.commit();
        return std::move(m_result);
    }

private:
    struct Step {
        std::int64_t key = 0;
        bool isNew = false;
        bool repeats = false;  // says the same as an entry before it
        EntryOutcome outcome = EntryOutcome::unchanged;
    };

    // Keys come first, so that records may name each other in any order.
    void findKeys() {
        std::array<std::size_t, recordKinds> counts{};
        for (const Entry& entry : m_entries)
            ++counts[entry.record.index()];
        for (std::size_t kind = 0; kind < recordKinds; ++kind)
            if (counts[kind] > 0)
                m_keys.expect(static_cast<RecordKind>(kind), counts[kind]);
        for (std::size_t i = 0; i < m_entries.size(); ++i) {
            const RecordKind kind = kindOf(m_entries[i].record);
            const std::string& id = idOf(m_entries[i].record);
            const auto [first, fresh] =
                m_firstOf[static_cast<std::size_t>(kind)].emplace(std::string_view(id), i);
            if (!fresh) {
                noteRepeat(i, first->second);
                continue;
            }
            const std::optional<std::int64_t> known = m_keys.find(kind, id);
            m_steps[i].isNew = !known;
            if (!known)
                refuseStruckId(i);
            m_steps[i].key = known ? *known : m_keys.assign(kind, id);
        }
    }

    void noteRepeat(std::size_t i, std::size_t first) {
        m_steps[i].repeats = true;
        if (m_entries[i].payload == m_entries[first].payload)
            return;
        m_result.problems.push_back({i, "/id", "the same record stands twice and differs",
                                     idOf(m_entries[i].record),
                                     "Keep one of the two, or give one an id of its own."});
    }

    // An id that was struck out stands in the journal for what it was; giving it to something else
    // would make two records of one.
    void refuseStruckId(std::size_t i) {
        if (!m_hasStruck)
            return;
        const RecordKind kind = kindOf(m_entries[i].record);
        Statement& lookup = m_struckLookup;
        lookup.bindText(1, textOf(kind));
        lookup.bindText(2, idOf(m_entries[i].record));
        if (lookup.step())
            m_result.problems.push_back({i, "/id", "a record of that id was struck out",
                                         idOf(m_entries[i].record),
                                         "Give this one an id of its own."});
        lookup.reset();
    }

    void strike(std::size_t i, Step& step) {
        const RecordKind kind = kindOf(m_entries[i].record);
        const auto refuse = [&](const std::string& what, const std::string& remedy) {
            m_result.problems.push_back({i, {}, what, {}, remedy});
        };
        if (step.isNew)
            return refuse("there is no such record", "Nothing need be struck out.");
        if (!m_terms.reason)
            return refuse("striking a record out needs a reason", "Give --reason.");
        const Standing standing = standingOf(kind, step.key);
        step.outcome = EntryOutcome::struck;
        journalEntry(i, step, standing.entry);
        m_projector.erase(kind, step.key);
        m_keys.forget(kind, idOf(m_entries[i].record));
        m_struck[{textOf(kind), step.key}] = i;
    }

    // Records that were struck out together may have named each other; none that stays may.
    void checkStruck() {
        if (m_struck.empty() || !m_database.hasBrokenReferences())
            return;
        std::map<std::size_t, std::set<std::string>> namedBy;
        for (const BrokenReference& broken : brokenReferencesIn(m_database)) {
            const auto found = m_struck.find({broken.wantedTable, broken.wantedKey});
            if (found != m_struck.end())
                namedBy[found->second].insert(broken.table.substr(0, broken.table.find('_')));
        }
        for (const auto& [i, kinds] : namedBy)
            m_result.problems.push_back(
                {i,
                 {},
                 "other records name it: " + joined({kinds.begin(), kinds.end()}),
                 {},
                 "Strike those out first, or correct what they name."});
    }

    void write(std::size_t i) {
        Step& step = m_steps[i];
        if (step.repeats)
            return;
        if (m_entries[i].strikes) {
            strike(i, step);
            return;
        }
        std::optional<std::int64_t> earlier;
        step.outcome = EntryOutcome::recorded;
        if (!step.isNew) {
            const Standing standing = standingOf(kindOf(m_entries[i].record), step.key);
            if (standing.payload == m_entries[i].payload) {
                step.outcome = EntryOutcome::unchanged;
                return;
            }
            if (refuseBroughtBack(i, step))
                return;
            earlier = standing.entry;
            step.outcome = m_entries[i].changedOn ? EntryOutcome::updated : EntryOutcome::corrected;
            if (step.outcome == EntryOutcome::corrected && !m_terms.reason) {
                m_result.problems.push_back(
                    {i,
                     {},
                     "it differs from what the book holds",
                     nameOf(kindOf(m_entries[i].record), idOf(m_entries[i].record)),
                     "Give --reason to correct the book, or --changed-on where the thing itself "
                     "has changed."});
                return;
            }
        }
        project(i, journalEntry(i, step, earlier));
    }

    // Whoever had to be forgotten stays so, whichever way a record with the name comes in.
    bool refuseBroughtBack(std::size_t i, const Step& step) {
        const Record& record = m_entries[i].record;
        const RecordKind kind = kindOf(record);
        if ((kind != RecordKind::party && kind != RecordKind::place) || isNeutral(record) ||
            m_database.textOf("SELECT name FROM " + quoted(textOf(kind)) +
                              " WHERE key = " + std::to_string(step.key)) != forgottenName)
            return false;
        m_result.problems.push_back({i, "/name", "it had to be forgotten, and stays so",
                                     nameOf(kind, idOf(record)),
                                     "Leave it as it is, or enter a new one under another id."});
        return true;
    }

    std::int64_t journalEntry(std::size_t i, const Step& step,
                              std::optional<std::int64_t> earlier) {
        static constexpr const char* actions[] = {"record", "update", "correct", "strike"};
        const Entry& entry = m_entries[i];
        m_row.recordedAt = m_terms.recordedAt;
        m_row.recordedBy = m_terms.recordedBy;
        m_row.action = actions[static_cast<std::size_t>(step.outcome)];
        m_row.kind = textOf(kindOf(entry.record));
        m_row.id = idOf(entry.record);
        m_row.earlier = earlier;
        const bool wantsReason =
            step.outcome == EntryOutcome::corrected || step.outcome == EntryOutcome::struck;
        m_row.reason = wantsReason ? m_terms.reason : std::nullopt;
        m_row.happenedAt = entry.changedOn;
        if (!m_row.happenedAt)
            if (const std::optional<EdtfDate> date = happenedAt(entry.record))
                m_row.happenedAt = date->text();
        m_row.payload = entry.payload;
        const std::int64_t number = m_journal->append(m_row);
        m_result.firstEntry = m_result.firstEntry == 0 ? number : m_result.firstEntry;
        m_result.lastEntry = number;
        return number;
    }

    void project(std::size_t i, std::int64_t journalEntry) {
        const Step& step = m_steps[i];
        const std::vector<Dangling> dangling =
            m_projector.write(m_entries[i].record, step.key, journalEntry, step.isNew);
        for (const Dangling& reference : dangling)
            m_result.problems.push_back(
                {i, reference.pointer,
                 "there is no " + std::string(textOf(reference.wanted)) + " of that id",
                 reference.id, "Correct the id, or take that record in too.", reference.wanted});
        if (dangling.empty())
            m_touched.push_back({i, kindOf(m_entries[i].record), step.key, step.isNew});
    }

    // Bytes come and go with the records that name them.
    void keepBytes() {
        BytesTable table(m_database);
        bool mayHaveGone = false;
        for (std::size_t i = 0; i < m_entries.size(); ++i) {
            const Attachment* attachment = std::get_if<Attachment>(&m_entries[i].record);
            if (attachment == nullptr)
                continue;
            mayHaveGone = mayHaveGone || !m_steps[i].isNew;
            if (m_terms.bytesOf && !m_entries[i].strikes && !table.holdsSound(attachment->sha256))
                putBytes(i, *attachment, table);
        }
        if (mayHaveGone)
            table.dropUnnamed();
    }

    void putBytes(std::size_t i, const Attachment& attachment, BytesTable& table) {
        const std::optional<std::string> bytes = m_terms.bytesOf(attachment.sha256);
        if (!bytes)
            return;
        if (sha256(*bytes) == attachment.sha256)
            table.put(attachment.sha256, *bytes);
        else
            m_result.problems.push_back({i, "/sha256", "the file that was given has another hash",
                                         attachment.sha256, "Give the file that was attached."});
    }

    Standing standingOf(RecordKind kind, std::int64_t key) {
        Statement& statement = m_standing[static_cast<std::size_t>(kind)].statement;
        bool& prepared = m_standing[static_cast<std::size_t>(kind)].prepared;
        if (!prepared) {
            statement =
                m_database.prepare("SELECT j.entry, j.payload FROM " + quoted(textOf(kind)) +
                                   " r JOIN journal j ON j.entry = r.entry WHERE r.key = ?");
            prepared = true;
        }
        statement.bind(1, key);
        Standing standing;
        if (statement.step())
            standing = {statement.whole(0), statement.text(1)};
        statement.reset();
        return standing;
    }

    void sortProblems() {
        std::stable_sort(
            m_result.problems.begin(), m_result.problems.end(),
            [](const IntakeProblem& a, const IntakeProblem& b) { return a.index < b.index; });
    }

    IntakeResult refused() {
        IntakeResult result;
        result.problems = std::move(m_result.problems);
        return result;
    }

    struct Lookup {
        Statement statement;
        bool prepared = false;
    };

    Database& m_database;
    const std::vector<Entry>& m_entries;
    const IntakeTerms& m_terms;
    Keys m_keys;
    Projector m_projector;
    std::optional<JournalWriter> m_journal;
    JournalRow m_row;
    std::vector<Step> m_steps;
    std::vector<Touched> m_touched;
    std::map<std::pair<std::string, std::int64_t>, std::size_t> m_struck;  // kind and key: entry
    std::array<std::unordered_map<std::string_view, std::size_t>, recordKinds> m_firstOf;
    std::array<Lookup, recordKinds> m_standing;
    Statement m_struckLookup;
    bool m_hasStruck;
    IntakeResult m_result;
};

}  // namespace

IntakeResult take(BookFile& book, const std::vector<Entry>& entries, const IntakeTerms& terms) {
    return IntakeRun(*book.inner().database, entries, terms).run();
}

}  // namespace rackbook
