// Rules about the bytes between the objects (6.1.2 to 6.1.4, 6.1.7, 6.1.9).
#include <optional>
#include <regex>

#include "ArchivalRules.h"

namespace rackbook {

namespace {

bool startsAt(const std::string& bytes, std::size_t at, const std::string& text) {
    return at <= bytes.size() && bytes.compare(at, text.size(), text) == 0;
}

void checkHeader(ArchivalCase& checked) {
    const std::string& bytes = checked.file.bytes();
    const std::string version = checked.isFirstPart() ? "[0-4]" : "[0-7]";
    if (!std::regex_search(bytes.substr(0, 9), std::regex("^%PDF-1\\." + version + "[\r\n]")))
        checked.add("6.1.2", "the header is not that of the version");
    const std::size_t comment = bytes.find('%', 1);
    for (std::size_t i = comment + 1; i < comment + 5; ++i)
        if (comment > 10 || i >= bytes.size() || static_cast<unsigned char>(bytes[i]) < 128) {
            checked.add("6.1.2", "no comment of four bytes above 127 follows the header");
            return;
        }
}

void checkTrailer(ArchivalCase& checked) {
    const nlohmann::json& id = checked.file.at(checked.file.trailer(), "/ID");
    if (!id.is_array() || id.size() != 2 || textOf(id[0]).empty() || textOf(id[1]).empty())
        checked.add("6.1.3", "the trailer has no identifier");
    const std::string& bytes = checked.file.bytes();
    const std::size_t end = bytes.rfind("%%EOF");
    if (end == std::string::npos || bytes.find_first_not_of("\r\n", end + 5) != std::string::npos ||
        bytes.size() - end > 7)
        checked.add("6.1.3", "something follows the end-of-file marker");
}

// Offsets of the objects in use by number, from one classic table.
class ObjectTable {
public:
    explicit ObjectTable(const std::string& bytes) : m_bytes(bytes) {
        const std::size_t start = bytes.rfind("startxref");
        if (start == std::string::npos)
            return;
        std::size_t at = std::strtoul(bytes.c_str() + start + 9, nullptr, 10);
        std::smatch head;
        const std::string beginning = bytes.substr(std::min(at, bytes.size()), 40);
        m_isClassic = startsAt(bytes, at, "xref");
        static const std::regex form("^xref(\r\n|\n|\r)0 ([0-9]+)(\r\n|\n|\r)");
        m_isWellFormed = std::regex_search(beginning, head, form);
        if (!m_isWellFormed)
            return;
        at += static_cast<std::size_t>(head.length(0));
        const std::size_t count = std::stoul(head[2]);
        for (std::size_t number = 0; number < count; ++number, at += 20)
            readEntry(number, at);
    }

    bool isClassic() const { return m_isClassic; }
    bool isWellFormed() const { return m_isWellFormed; }
    const std::map<std::size_t, std::size_t>& offsets() const { return m_offsets; }

private:
    void readEntry(std::size_t number, std::size_t at) {
        static const std::regex form("[0-9]{10} [0-9]{5} [nf]( \r| \n|\r\n)");
        const std::string entry = at + 20 <= m_bytes.size() ? m_bytes.substr(at, 20) : "";
        if (!std::regex_match(entry, form))
            m_isWellFormed = false;
        else if (entry[17] == 'n')
            m_offsets[number] = std::stoul(entry.substr(0, 10));
    }

    const std::string& m_bytes;
    std::map<std::size_t, std::size_t> m_offsets;
    bool m_isClassic = false;
    bool m_isWellFormed = false;
};

// The number that stands for a stream's length, directly or in an object of its own.
std::optional<std::size_t> lengthIn(const std::string& bytes, const std::string& dictionary,
                                    const ObjectTable& table) {
    static const std::regex form("/Length ([0-9]+)( [0-9]+ R)?");
    std::smatch found;
    if (!std::regex_search(dictionary, found, form))
        return std::nullopt;
    const std::size_t number = std::stoul(found[1]);
    if (!found[2].matched)
        return number;
    const auto object = table.offsets().find(number);
    if (object == table.offsets().end())
        return std::nullopt;
    const std::size_t at = bytes.find("obj", object->second);
    return std::strtoul(bytes.c_str() + at + 3, nullptr, 10);
}

void checkStream(ArchivalCase& checked, const ObjectTable& table, std::size_t object,
                 const std::string& where) {
    const std::string& bytes = checked.file.bytes();
    const std::size_t keyword = bytes.find("stream", bytes.find(">>", object));
    const auto length = lengthIn(bytes, bytes.substr(object, keyword - object), table);
    std::size_t at = keyword + 6;
    if (startsAt(bytes, at, "\r\n") || startsAt(bytes, at, "\n"))
        at += bytes[at] == '\r' ? 2 : 1;
    else
        checked.add("6.1.7.1", where + ": no end of line after the keyword stream");
    if (!length)
        return checked.add("6.1.7.1", where + ": no length");
    at += *length;
    if (!startsAt(bytes, at, "\nendstream") && !startsAt(bytes, at, "\r\nendstream") &&
        !startsAt(bytes, at, "\rendstream"))
        checked.add("6.1.7.1", where + ": the length is not that of the data");
}

void checkTable(ArchivalCase& checked) {
    const std::string& bytes = checked.file.bytes();
    const ObjectTable table(bytes);
    if (!table.isClassic()) {
        if (checked.isFirstPart())
            checked.add("19005-1, 6.1.4", "the table of objects is a stream");
        return;
    }
    if (!table.isWellFormed())
        checked.add("6.1.4", "the table of objects is not written as it should");
    for (const auto& [number, offset] : table.offsets()) {
        const std::string name = std::to_string(number) + " 0 ";
        if (!startsAt(bytes, offset, name + "obj") ||
            (bytes[offset - 1] != '\n' && bytes[offset - 1] != '\r')) {
            checked.add("6.1.9", "object " + name + "does not begin a line at its offset");
            continue;
        }
        const char after = bytes[offset + name.size() + 3];
        if (after != '\n' && after != '\r')
            checked.add("6.1.9", "object " + name + "has no end of line after obj");
        if (checked.file.stream(name + "R"))
            checkStream(checked, table, offset, "object " + name + "R");
    }
}

}  // namespace

void checkBytes(ArchivalCase& checked) {
    checkHeader(checked);
    checkTrailer(checked);
    checkTable(checked);
}

}  // namespace rackbook
