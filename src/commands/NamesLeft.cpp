#include "commands/NamesLeft.h"

#include <QDir>
#include <map>
#include <set>

#include "base/Files.h"
#include "commands/BackupNote.h"
#include "exchange/TreeJson.h"
#include "store/JournalCopy.h"

namespace rackbook {

namespace {

constexpr std::size_t largestFile = std::size_t{1} << 20;

// Looks through one record's JSON.
class RecordLook {
public:
    RecordLook(const SoughtNames& names, const std::set<std::string>& ids, const std::string& where,
               std::vector<NameLeft>& left)
        : m_names(names), m_ids(ids), m_where(where), m_left(left) {}

    void look(const Tree& tree, const std::string& field) {
        if (const std::string* text = tree.asText())
            lookAt(*text, field);
        if (const Tree::Array* items = tree.asArray())
            for (const Tree& item : *items)
                look(item, field);
        if (const Tree::Object* members = tree.asObject())
            for (const auto& [name, value] : *members)
                look(value, field.empty() ? name : field + "." + name);
    }

private:
    void lookAt(const std::string& text, const std::string& field) {
        // Others name it by its id: that is what it is kept for.
        if (field == "record" || (field != "id" && m_ids.count(text) != 0))
            return;
        if (const std::optional<std::string> found = m_names.foundIn(text))
            m_left.push_back({m_where + ", " + field, *found});
    }

    const SoughtNames& m_names;
    const std::set<std::string>& m_ids;
    const std::string& m_where;
    std::vector<NameLeft>& m_left;
};

}  // namespace

std::vector<NameLeft> namesLeft(const BookFile& book, const ForgetPlan& plan) {
    std::vector<NameLeft> left;
    if (plan.names.isEmpty())
        return left;
    std::set<std::string> ids;
    std::set<std::string> emptied;
    std::set<std::string> others;  // only their present state stays
    for (const RecordName& record : plan.records) {
        const bool isTheirs = record.kind == RecordKind::party || record.kind == RecordKind::place;
        if (isTheirs)
            ids.insert(record.id);
        (isTheirs ? emptied : others).insert(nameOf(record.kind, record.id));
    }
    std::map<std::string, std::int64_t> last;
    eachJournalRow(book, [&](const JournalRow& row) { last[row.kind + " " + row.id] = row.entry; });
    std::set<std::string> toldIds;
    eachJournalRow(book, [&](const JournalRow& row) {
        const std::string name = row.kind + " " + row.id;
        const std::string entry = "journal entry " + std::to_string(row.entry) + " (" + name + ")";
        const auto look = [&](const std::string& text, const std::string& what) {
            if (const std::optional<std::string> found = plan.names.foundIn(text))
                left.push_back({entry + ", " + what, *found});
        };
        look(row.recordedBy, "recordedBy");
        if (row.reason)
            look(*row.reason, "reason");
        if (emptied.count(name) != 0) {
            const std::optional<std::string> found = plan.names.foundIn(row.id);
            if (found && toldIds.insert(name).second)
                left.push_back({name + ", id", *found});
        } else if (row.payload) {
            const bool stands = row.action != "strike" && last.at(name) == row.entry;
            if (!stands && others.count(name) != 0)
                return;
            const std::string where = stands ? name : entry;
            RecordLook(plan.names, ids, where, left).look(treeFromJson(*row.payload, entry), {});
        }
    });
    return left;
}

std::vector<std::string> copiesBeside(const std::string& bookPath, const SoughtNames& names) {
    std::vector<std::string> found;
    const std::string book = fileNameOf(bookPath);
    const std::string folder = folderOf(bookPath);
    const QDir::Filters files = QDir::Files | QDir::Hidden;
    for (const QString& entry : QDir(QString::fromStdString(folder)).entryList(files, QDir::Name)) {
        const std::string name = entry.toStdString();
        const std::string path = pathOf(folder, name);
        const bool isCopy = name.rfind(book + ".before-", 0) == 0;
        const bool isNote = path == backupNotePath(pathOf(folder, book));
        if (isCopy || (isNote && names.foundIn(readFile(path, largestFile))))
            found.push_back(path);
    }
    return found;
}

}  // namespace rackbook
