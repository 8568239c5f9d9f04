#include "exchange/JournalLines.h"

#include <set>

#include "base/Error.h"
#include "base/Sha256.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

void setOptional(Tree& tree, const char* name, const std::optional<std::string>& text) {
    if (text)
        tree.set(name, *text);
}

class JournalLine {
public:
    JournalLine(std::string_view text, const std::string& file, int line)
        : m_where(file + ":" + std::to_string(line)), m_tree(treeFromJson(text, m_where)) {
        if (!m_tree.asObject())
            fail("it is no entry of a journal");
    }

    JournalRow row() {
        JournalRow row;
        row.entry = whole("entry");
        row.intake = whole("intake");
        row.recordedAt = text("recordedAt");
        row.recordedBy = text("recordedBy");
        row.happenedAt = optionalText("happenedAt");
        row.action = text("action");
        row.kind = text("kind");
        row.id = text("id");
        if (m_tree.find("earlier"))
            row.earlier = whole("earlier");
        row.reason = optionalText("reason");
        row.salt = bytes("salt", 0);
        row.payload = optionalText("payload");
        row.payloadHash = bytes("payloadHash", 32);
        row.previousHash = bytes("previousHash", 32);
        row.hash = bytes("hash", 32);
        for (const auto& [name, value] : *m_tree.asObject())
            if (m_known.count(name) == 0)
                fail("an entry has no field \"" + excerpt(name) + "\"");
        return row;
    }

private:
    [[noreturn]] void fail(const std::string& what) const {
        throw InputError(m_where, what, "Take another copy of the journal.");
    }

    const Tree& value(const char* name) {
        m_known.insert(name);
        const Tree* found = m_tree.find(name);
        if (!found)
            fail(std::string("\"") + name + "\" is missing");
        return *found;
    }

    std::int64_t whole(const char* name) {
        const std::int64_t* number = value(name).asWhole();
        if (!number || *number < 1)
            fail(std::string("\"") + name + "\" is no number of an entry");
        return *number;
    }

    std::string text(const char* name) {
        const std::string* found = value(name).asText();
        if (!found)
            fail(std::string("\"") + name + "\" is no text");
        return *found;
    }

    std::optional<std::string> optionalText(const char* name) {
        m_known.insert(name);
        return m_tree.find(name) ? std::optional(text(name)) : std::nullopt;
    }

    // `wanted` 0: any number of them.
    std::string bytes(const char* name, std::size_t wanted) {
        const std::string digits = text(name);
        const std::optional<std::string> found = bytesOfHex(digits);
        if (!found || (wanted != 0 && found->size() != wanted))
            fail(std::string("\"") + name + "\" is not written in pairs of hexadecimal digits");
        return *found;
    }

    std::string m_where;
    Tree m_tree;
    std::set<std::string> m_known;
};

}  // namespace

std::string journalLine(const JournalRow& row) {
    Tree tree = Tree::object();
    tree.set("entry", row.entry).set("intake", row.intake);
    tree.set("recordedAt", row.recordedAt).set("recordedBy", row.recordedBy);
    setOptional(tree, "happenedAt", row.happenedAt);
    tree.set("action", row.action).set("kind", row.kind).set("id", row.id);
    if (row.earlier)
        tree.set("earlier", *row.earlier);
    setOptional(tree, "reason", row.reason);
    tree.set("salt", hexOf(row.salt));
    setOptional(tree, "payload", row.payload);
    tree.set("payloadHash", hexOf(row.payloadHash));
    tree.set("previousHash", hexOf(row.previousHash));
    tree.set("hash", hexOf(row.hash));
    return jsonLine(tree);
}

JournalRow journalRowFrom(std::string_view text, const std::string& file, int line) {
    return JournalLine(text, file, line).row();
}

}  // namespace rackbook
