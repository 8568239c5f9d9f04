#include "store/PageScan.h"

#include <sqlite3.h>

#include <algorithm>
#include <cstring>
#include <memory>
#include <optional>
#include <string_view>

namespace rackbook {

namespace {

constexpr std::size_t usualPage_B = 4096;
constexpr std::size_t logHeader_B = 32;
constexpr std::size_t frameHeader_B = 24;
constexpr std::uint64_t largestPayload_B = 1'000'000'000;

std::uint32_t bigEndian(std::string_view bytes, std::size_t at) {
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < 4; ++i)
        value = value << 8 | static_cast<unsigned char>(bytes[at + i]);
    return value;
}

// One to nine bytes, seven bits in each, all eight in the ninth.
std::optional<std::uint64_t> varint(std::string_view bytes, std::size_t& at) {
    std::uint64_t value = 0;
    for (int i = 0; i < 9; ++i) {
        if (at >= bytes.size())
            return std::nullopt;
        const auto byte = static_cast<unsigned char>(bytes[at++]);
        if (i == 8)
            return value << 8 | byte;
        value = value << 7 | (byte & 0x7F);
        if ((byte & 0x80) == 0)
            return value;
    }
    return std::nullopt;
}

std::uint64_t sizeOf(std::uint64_t serialType) {
    static constexpr std::uint64_t sizes[] = {0, 1, 2, 3, 4, 6, 8, 8, 0, 0};
    if (serialType < 10)
        return sizes[serialType];
    return serialType < 12 ? largestPayload_B : (serialType - 12) / 2;
}

std::size_t pageSizeIn(std::string_view file) {
    if (file.size() < 100)
        return usualPage_B;
    const std::size_t said = static_cast<std::size_t>(static_cast<unsigned char>(file[16])) << 8 |
                             static_cast<unsigned char>(file[17]);
    const std::size_t size = said == 1 ? 65536 : said;
    return size >= 512 && (size & (size - 1)) == 0 ? size : usualPage_B;
}

// The running checksum of a log, over pairs of words in the byte order that its header names.
class LogSum {
public:
    explicit LogSum(bool isBigEndian) : m_isBigEndian(isBigEndian) {}
    void add(std::string_view bytes) {
        for (std::size_t at = 0; at + 8 <= bytes.size(); at += 8) {
            m_first += word(bytes, at) + m_second;
            m_second += word(bytes, at + 4) + m_first;
        }
    }
    bool is(std::uint32_t first, std::uint32_t second) const {
        return m_first == first && m_second == second;
    }

private:
    std::uint32_t word(std::string_view bytes, std::size_t at) const {
        const std::uint32_t big = bigEndian(bytes, at);
        return m_isBigEndian ? big : __builtin_bswap32(big);
    }
    bool m_isBigEndian;
    std::uint32_t m_first = 0;
    std::uint32_t m_second = 0;
};

struct Frame {
    std::uint32_t page = 0;
    std::size_t at = 0;  // of its bytes in the log
};

// Puts the pages of committed transactions in their places.
void applyLog(ScannedFile& file, std::string_view log) {
    if (log.size() < logHeader_B)
        return;
    const std::uint32_t magic = bigEndian(log, 0);
    const std::size_t page_B = bigEndian(log, 8);
    LogSum sum((magic & 1) != 0);
    sum.add(log.substr(0, 24));
    file.isLogDamaged = (magic | 1) != 0x377F0683 || page_B != file.pageSize_B ||
                        !sum.is(bigEndian(log, 24), bigEndian(log, 28));
    if (file.isLogDamaged)
        return;
    std::vector<Frame> pending;
    for (std::size_t at = logHeader_B; at + frameHeader_B + page_B <= log.size();
         at += frameHeader_B + page_B) {
        // What is left of an earlier round of the log has other salts: the end.
        if (log.substr(at + 8, 8) != log.substr(16, 8))
            return;
        sum.add(log.substr(at, 8));
        sum.add(log.substr(at + frameHeader_B, page_B));
        if (!sum.is(bigEndian(log, at + 16), bigEndian(log, at + 20))) {
            file.isLogDamaged = true;
            return;
        }
        pending.push_back({bigEndian(log, at), at + frameHeader_B});
        const std::size_t pages = bigEndian(log, at + 4);
        if (pages == 0)
            continue;
        for (const Frame& frame : pending) {
            const std::size_t begin = (frame.page - std::size_t{1}) * page_B;
            if (frame.page == 0 || frame.page > pages)
                continue;
            file.bytes.resize(std::max(file.bytes.size(), begin + page_B));
            file.bytes.replace(begin, page_B, log.substr(frame.at, page_B));
        }
        pending.clear();
    }
}

class Scan {
public:
    Scan(const ScannedFile& file, const RowShape& shape,
         const std::function<void(ScannedRow&)>& see)
        : m_bytes(file.bytes), m_page_B(file.pageSize_B), m_shape(shape), m_see(see) {}

    void run() {
        for (std::size_t page = 0; page < m_bytes.size(); page += m_page_B) {
            const std::string_view bytes = m_bytes.substr(page, m_page_B);
            for (std::size_t at = 0; at < bytes.size(); ++at)
                tryCell(bytes, at);
        }
    }

private:
    void tryCell(std::string_view page, std::size_t at) {
        const std::optional<std::uint64_t> size = varint(page, at);
        if (!size || *size < m_shape.columns || *size > largestPayload_B)
            return;
        const std::optional<std::uint64_t> rowid = varint(page, at);
        if (!rowid || !readTypes(page.substr(at), *size))
            return;
        const std::optional<std::string> payload = payloadOf(page, at, *size);
        if (!payload)
            return;
        ScannedRow row;
        row.rowid = static_cast<std::int64_t>(*rowid);
        std::size_t from = m_header_B;
        for (const std::uint64_t type : m_types)
            row.values.push_back(valueAt(*payload, from, type));
        m_see(row);
    }

    // The types of all columns, where they fit the shape and add up to the size.
    bool readTypes(std::string_view record, std::uint64_t size) {
        std::size_t at = 0;
        const std::optional<std::uint64_t> header = varint(record, at);
        if (!header || *header > size || *header <= m_shape.columns ||
            *header > 1 + 9 * m_shape.columns || *header > record.size())
            return false;
        m_header_B = static_cast<std::size_t>(*header);
        m_types.clear();
        std::uint64_t total = *header;
        while (at < m_header_B) {
            const std::optional<std::uint64_t> type = varint(record, at);
            if (!type || m_types.size() == m_shape.columns)
                return false;
            m_types.push_back(*type);
            total += sizeOf(*type);
            if (total > size)
                return false;
        }
        return at == m_header_B && total == size && m_types.size() == m_shape.columns &&
               m_shape.fits(m_types[0], m_types[1]);
    }

    // What does not fit into the page goes on in a chain of others.
    std::optional<std::string> payloadOf(std::string_view page, std::size_t at,
                                         std::uint64_t size64) const {
        const auto size = static_cast<std::size_t>(size64);
        std::size_t here = size;
        if (size > m_page_B - 35) {
            const std::size_t least = (m_page_B - 12) * 32 / 255 - 23;
            here = least + (size - least) % (m_page_B - 4);
            if (here > m_page_B - 35)
                here = least;
        }
        if (at + here + (here < size ? 4 : 0) > page.size())
            return std::nullopt;
        std::string payload(page.substr(at, here));
        std::size_t next = here < size ? bigEndian(page, at + here) : 0;
        while (payload.size() < size) {
            const std::size_t begin = (next - 1) * m_page_B;
            if (next == 0 || next > m_bytes.size() / m_page_B)
                return std::nullopt;
            const std::size_t part = std::min(m_page_B - 4, size - payload.size());
            payload += m_bytes.substr(begin + 4, part);
            next = bigEndian(m_bytes, begin);
        }
        return payload;
    }

    static ScannedValue valueAt(std::string_view payload, std::size_t& at, std::uint64_t type) {
        const auto size = static_cast<std::size_t>(sizeOf(type));
        const std::string_view bytes = payload.substr(at, size);
        at += size;
        if (type == 0)
            return std::monostate();
        if (type >= 12)
            return std::string(bytes);
        if (type == 8 || type == 9)
            return static_cast<std::int64_t>(type - 8);
        const bool isNegative = (static_cast<unsigned char>(bytes[0]) & 0x80) != 0;
        std::uint64_t bits = type != 7 && isNegative ? ~std::uint64_t{0} : 0;
        for (const char byte : bytes)
            bits = bits << 8 | static_cast<unsigned char>(byte);
        if (type != 7)
            return static_cast<std::int64_t>(bits);
        double real = 0;
        std::memcpy(&real, &bits, sizeof real);
        return real;
    }

    std::string_view m_bytes;
    std::size_t m_page_B;
    const RowShape& m_shape;
    const std::function<void(ScannedRow&)>& m_see;
    std::vector<std::uint64_t> m_types;
    std::size_t m_header_B = 0;
};

}  // namespace

ScannedFile withLog(std::string file, const std::string& log) {
    ScannedFile scanned;
    scanned.pageSize_B = pageSizeIn(file);
    scanned.bytes = std::move(file);
    applyLog(scanned, log);
    scanned.isCut = scanned.bytes.size() >= 32 &&
                    scanned.bytes.size() / scanned.pageSize_B < bigEndian(scanned.bytes, 28);
    return scanned;
}

bool isInOrder(const ScannedFile& file) {
    const auto size = static_cast<sqlite3_int64>(file.bytes.size());
    auto* bytes = static_cast<unsigned char*>(sqlite3_malloc64(file.bytes.size() + 1));
    if (size < 100 || bytes == nullptr) {
        sqlite3_free(bytes);
        return false;
    }
    std::memcpy(bytes, file.bytes.data(), file.bytes.size());
    // The log is in it already, and a copy in memory has none.
    bytes[18] = bytes[19] = 1;
    sqlite3* opened = nullptr;
    sqlite3_open(":memory:", &opened);
    const std::unique_ptr<sqlite3, int (*)(sqlite3*)> database(opened, sqlite3_close);
    sqlite3_stmt* check = nullptr;
    bool isRight =
        sqlite3_deserialize(opened, "main", bytes, size, size,
                            SQLITE_DESERIALIZE_FREEONCLOSE | SQLITE_DESERIALIZE_READONLY) ==
            SQLITE_OK &&
        sqlite3_prepare_v2(opened, "PRAGMA integrity_check(1)", -1, &check, nullptr) == SQLITE_OK &&
        sqlite3_step(check) == SQLITE_ROW;
    if (isRight)
        isRight =
            std::strcmp(reinterpret_cast<const char*>(sqlite3_column_text(check, 0)), "ok") == 0;
    sqlite3_finalize(check);
    return isRight;
}

void scanRows(const ScannedFile& file, const RowShape& shape,
              const std::function<void(ScannedRow&)>& see) {
    Scan(file, shape, see).run();
}

}  // namespace rackbook
