// Record files: JSON in, checked; JSON out.
#pragma once

#include <cstddef>
#include <functional>
#include <memory>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/Finding.h"
#include "records/Record.h"

namespace rackbook {

// A record that came in, and where it stands.
struct IncomingRecord {
    Record record;
    std::string payload;       // its one JSON text, see RecordCodec.h
    std::size_t source = 0;    // number of the text it came from
    std::size_t position = 0;  // its position among the records of that text
};

// A field of an incoming record.
struct RecordSpot {
    std::size_t record = 0;  // number in RecordFileReader::records()
    std::string pointer;     // JSON pointer inside the record
};

// Collects records from any number of texts, with everything that is wrong with them.
class RecordFileReader {
public:
    // Throws InputError where the schemas cannot be read.
    explicit RecordFileReader(const std::string& schemaFolder);
    ~RecordFileReader();

    // Reads one text: an envelope {"rackbookRecords": 1, "records": […]}, an array of records or
    // one record. Everything that is wrong is noted in findings(); nothing is thrown for it.
    void read(const std::string& file, std::string text);

    // Checks a record that was made here, the same way. Its place in messages is `words`.
    void add(const Record& record, const std::string& words);

    std::vector<IncomingRecord>& records() { return m_records; }
    const std::vector<Finding>& findings() const { return m_findings; }

    // Whether a text could not be read to its end, so that records in it are not known.
    bool hasUnreadable() const { return m_hasUnreadable; }

    // Whether a record of that id was read and refused: references to it lead nowhere only because
    // of that.
    bool hasRefused(RecordKind kind, const std::string& id) const;

    // Where fields of incoming records stand, with their lines.
    std::vector<Location> locate(const std::vector<RecordSpot>& spots) const;

private:
    void readRecords(const std::string& file, std::string text);

    struct Inner;
    std::unique_ptr<Inner> m_inner;
    std::vector<IncomingRecord> m_records;
    std::vector<Finding> m_findings;
    std::set<std::pair<RecordKind, std::string>> m_refused;
    bool m_hasUnreadable = false;
};

// The text of a record file with these payloads, in their order, indented for reading.
std::string recordFileText(const std::vector<std::string>& payloads);

}  // namespace rackbook
