#include "store/Journal.h"

#include "base/Sha256.h"

namespace rackbook {

namespace {

constexpr const char* columns =
    "entry, intake, recordedAt, recordedBy, happenedAt, action, kind, id, earlier, reason, salt, "
    "payload, payloadHash, previousHash, hash";

void appendField(std::string& text, std::string_view field) {
    text += std::to_string(field.size());
    text += ':';
    text += field;
    text += ',';
}

void appendOptional(std::string& text, const std::optional<std::string>& field) {
    if (field)
        appendField(text, *field);
    else
        text += "-,";
}

std::optional<std::string> optionalText(const Statement& statement, int column) {
    if (statement.isNull(column))
        return std::nullopt;
    return statement.text(column);
}

void bindOptional(Statement& statement, int parameter, const std::optional<std::string>& text) {
    if (text)
        statement.bindText(parameter, *text);
    else
        statement.bindNull(parameter);
}

}  // namespace

std::string payloadHashOf(std::string_view salt, std::string_view payload) {
    std::string bytes(salt);
    bytes += payload;
    return sha256Bytes(bytes);
}

std::string rowHashOf(const JournalRow& row) {
    std::string text;
    text.reserve(256);
    appendField(text, std::to_string(row.entry));
    appendField(text, std::to_string(row.intake));
    appendField(text, row.recordedAt);
    appendField(text, row.recordedBy);
    appendOptional(text, row.happenedAt);
    appendField(text, row.action);
    appendField(text, row.kind);
    appendField(text, row.id);
    appendOptional(text, row.earlier ? std::optional(std::to_string(*row.earlier)) : std::nullopt);
    appendOptional(text, row.reason);
    appendField(text, row.payloadHash);
    appendField(text, row.previousHash);
    return sha256Bytes(text);
}

bool isForgotten(const JournalRow& row) {
    return !row.payload && row.salt.empty();
}

bool wasChanged(const JournalRow& row) {
    return row.payload && payloadHashOf(row.salt, *row.payload) != row.payloadHash;
}

bool isGone(const JournalRow& row) {
    return !row.payload && !row.salt.empty();
}

std::string firstPreviousHash() {
    return std::string(32, '\0');
}

JournalWriter::JournalWriter(Database& database)
    : m_insert(database.prepare(std::string("INSERT INTO journal (") + columns +
                                ") VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")),
      m_nextEntry(database.wholeOf("SELECT coalesce(max(entry), 0) FROM journal") + 1),
      m_intake(database.wholeOf("SELECT intake FROM journal ORDER BY entry DESC LIMIT 1") + 1),
      m_previousHash(
          m_nextEntry == 1
              ? firstPreviousHash()
              : database.textOf("SELECT hash FROM journal ORDER BY entry DESC LIMIT 1")) {}

std::int64_t JournalWriter::append(JournalRow& row) {
    row.intake = m_intake;
    row.salt = randomBytes(16);
    row.payloadHash = payloadHashOf(row.salt, *row.payload);
    return appendChained(row);
}

std::int64_t JournalWriter::appendChained(JournalRow& row) {
    row.entry = m_nextEntry++;
    row.previousHash = m_previousHash;
    row.hash = rowHashOf(row);
    m_previousHash = row.hash;
    insertAsItStands(row);
    return row.entry;
}

void JournalWriter::insertAsItStands(const JournalRow& row) {
    m_insert.bind(1, row.entry);
    m_insert.bind(2, row.intake);
    m_insert.bindText(3, row.recordedAt);
    m_insert.bindText(4, row.recordedBy);
    bindOptional(m_insert, 5, row.happenedAt);
    m_insert.bindText(6, row.action);
    m_insert.bindText(7, row.kind);
    m_insert.bindText(8, row.id);
    if (row.earlier)
        m_insert.bind(9, *row.earlier);
    else
        m_insert.bindNull(9);
    bindOptional(m_insert, 10, row.reason);
    // Gone with the payload where that had to be forgotten.
    if (row.salt.empty())
        m_insert.bindNull(11);
    else
        m_insert.bindBlob(11, row.salt);
    bindOptional(m_insert, 12, row.payload);
    m_insert.bindBlob(13, row.payloadHash);
    m_insert.bindBlob(14, row.previousHash);
    m_insert.bindBlob(15, row.hash);
    m_insert.run();
}

JournalReader::JournalReader(const Database& database, const std::string& tail)
    : m_select(database.prepare(std::string("SELECT ") + columns + " FROM journal " + tail)) {}

bool JournalReader::next(JournalRow& row) {
    if (!m_select.step())
        return false;
    row.entry = m_select.whole(0);
    row.intake = m_select.whole(1);
    row.recordedAt = m_select.text(2);
    row.recordedBy = m_select.text(3);
    row.happenedAt = optionalText(m_select, 4);
    row.action = m_select.text(5);
    row.kind = m_select.text(6);
    row.id = m_select.text(7);
    row.earlier = m_select.isNull(8) ? std::nullopt : std::optional(m_select.whole(8));
    row.reason = optionalText(m_select, 9);
    row.salt = m_select.text(10);
    row.payload = optionalText(m_select, 11);
    row.payloadHash = m_select.text(12);
    row.previousHash = m_select.text(13);
    row.hash = m_select.text(14);
    return true;
}

}  // namespace rackbook
