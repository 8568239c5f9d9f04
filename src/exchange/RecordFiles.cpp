#include "exchange/RecordFiles.h"

#include <map>

#include "base/Error.h"
#include "base/Text.h"
#include "exchange/RecordCodec.h"
#include "exchange/RecordDecoder.h"
#include "exchange/RecordSchemas.h"

namespace rackbook {

namespace {

constexpr int fileVersion = 1;

}  // namespace

struct RecordFileReader::Inner {
    explicit Inner(const std::string& schemaFolder) : schemas(schemaFolder) {}

    enum class Form { one, array, envelope, made };
    struct Source {
        std::string name;
        std::string text;  // empty for records that were made here
        Form form = Form::one;

        std::string pointerOf(std::size_t position) const {
            switch (form) {
                case Form::array:
                    return "/" + std::to_string(position);
                case Form::envelope:
                    return "/records/" + std::to_string(position);
                case Form::one:
                case Form::made:
                    break;
            }
            return {};
        }
    };

    RecordSchemas schemas;
    std::vector<Source> sources;
};

RecordFileReader::RecordFileReader(const std::string& schemaFolder)
    : m_inner(std::make_unique<Inner>(schemaFolder)) {}

RecordFileReader::~RecordFileReader() = default;

namespace {

using Complaints = std::vector<Complaint>;

// Which kind of record an object says it is.
std::optional<RecordKind> kindOfObject(const Json& object, Complaints& complaints) {
    const std::vector<std::string> known = enumNames<RecordKind>();
    if (!object.is_object()) {
        complaints.push_back({{}, "it is no record", "Give an object, in { }."});
        return std::nullopt;
    }
    const auto found = object.find("record");
    if (found == object.end() || !found->is_string()) {
        complaints.push_back({"/record", "the kind of record is missing",
                              "Add \"record\", one of " + joined(known, " or ") + "."});
        return std::nullopt;
    }
    const std::string& word = found->get_ref<const std::string&>();
    const std::optional<RecordKind> kind = enumFrom<RecordKind>(word);
    if (!kind) {
        const std::optional<std::string> nearest = nearestName(word, known);
        complaints.push_back({"/record", "there is no such kind of record",
                              nearest ? "Did you mean " + *nearest + "?"
                                      : "Use one of " + joined(known, " or ") + "."});
    }
    return kind;
}

// What is wrong with what stands around the records of a file.
Complaints complaintsAboutEnvelope(const Json& root) {
    Complaints complaints;
    for (const auto& [name, unused] : root.items())
        if (name != "rackbookRecords" && name != "records")
            complaints.push_back({"/" + pointerStep(name),
                                  "there is no field \"" + excerpt(name) + "\" here",
                                  "A record file has rackbookRecords and records."});
    if (root["rackbookRecords"] != fileVersion)
        complaints.push_back({"/rackbookRecords", "this version of record files is not known",
                              "This program reads version 1."});
    const auto records = root.find("records");
    if (records == root.end() || !records->is_array())
        complaints.push_back(
            {"/records", "the list of records is missing", "Add \"records\", a list in [ ]."});
    return complaints;
}

// Values of this field are private and stand in no message.
bool isPrivate(const std::string& pointer) {
    return pointer == "/contact";
}

std::string jsonExcerpt(const Json& value) {
    return value.is_string() ? value.get<std::string>()
                             : value.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace

void RecordFileReader::read(const std::string& file, std::string text) {
    const std::size_t before = m_findings.size();
    readRecords(file, std::move(text));
    std::vector<std::string> pointers;
    std::vector<Finding*> located;
    for (std::size_t i = before; i < m_findings.size(); ++i) {
        if (m_findings[i].where.file.empty())
            continue;
        pointers.push_back(m_findings[i].where.pointer);
        located.push_back(&m_findings[i]);
    }
    if (pointers.empty())
        return;
    const std::vector<int> lines = linesOf(m_inner->sources.back().text, pointers);
    for (std::size_t i = 0; i < lines.size(); ++i)
        located[i]->where.line = lines[i];
}

void RecordFileReader::readRecords(const std::string& file, std::string text) {
    const std::size_t source = m_inner->sources.size();
    m_inner->sources.push_back({file, std::move(text), Inner::Form::one});
    Inner::Source& from = m_inner->sources.back();
    const auto note = [&](const Complaint& complaint, const Json& around, const std::string& base) {
        Finding finding;
        finding.rule = "record-file";
        const std::string pointer = base + complaint.pointer;
        finding.where = {from.name, 0, pointer, {}};
        finding.what = complaint.what;
        finding.remedy = complaint.remedy;
        const Json::json_pointer at(complaint.pointer);
        if (!isPrivate(complaint.pointer) && around.contains(at) && around.at(at).is_primitive())
            finding.value = jsonExcerpt(around.at(at));
        m_findings.push_back(std::move(finding));
    };
    const auto takeOne = [&](const Json& object, std::size_t position) {
        Complaints complaints;
        const std::optional<RecordKind> kind = kindOfObject(object, complaints);
        if (kind)
            complaints = m_inner->schemas.complaintsAbout(object, *kind);
        if (kind && complaints.empty()) {
            Decoded decoded = decodeObject(object, *kind, Rules::ofIntake);
            complaints = std::move(decoded.complaints);
            if (complaints.empty()) {
                std::string payload = encodeRecord(decoded.record);
                m_records.push_back(
                    {std::move(decoded.record), std::move(payload), source, position});
            }
        }
        for (const Complaint& complaint : complaints)
            note(complaint, object, from.pointerOf(position));
        if (kind && !complaints.empty() && object.contains("id") && object["id"].is_string())
            m_refused.emplace(*kind, object["id"].get<std::string>());
    };
    Json root;
    try {
        root = parseJsonList(
            from.text, file,
            [&](const std::string& listPointer, std::size_t position, const Json& item) {
                from.form = listPointer.empty() ? Inner::Form::array : Inner::Form::envelope;
                takeOne(item, position);
            });
    } catch (const InputError& error) {
        Finding finding;
        finding.rule = "record-file";
        finding.what = error.what();
        m_findings.push_back(std::move(finding));
        m_hasUnreadable = true;
        return;
    }
    if (root.is_array())
        return;
    if (root.is_object() && root.contains("record") && root.contains("records")) {
        note({"/records", "it is a record and a list of records at once",
              "Give one record, or {\"rackbookRecords\": 1, \"records\": […]}."},
             root, {});
    } else if (root.is_object() && root.contains("record")) {
        from.form = Inner::Form::one;
        takeOne(root, 0);
    } else if (root.is_object() && root.contains("rackbookRecords")) {
        for (const Complaint& complaint : complaintsAboutEnvelope(root))
            note(complaint, root, {});
    } else {
        note({{},
              "it is no record file",
              "Give one record, a list of records, or {\"rackbookRecords\": 1, \"records\": […]}."},
             root, {});
    }
}

void RecordFileReader::add(const Record& record, const std::string& words) {
    const std::size_t source = m_inner->sources.size();
    m_inner->sources.push_back({words, {}, Inner::Form::made});
    const std::string payload = encodeRecord(record);
    const Json object = parseJson(payload, words);
    const RecordKind kind = kindOf(record);
    Complaints complaints = m_inner->schemas.complaintsAbout(object, kind);
    if (complaints.empty()) {
        Decoded decoded = decodeObject(object, kind, Rules::ofIntake);
        complaints = std::move(decoded.complaints);
        if (complaints.empty())
            m_records.push_back(
                {decoded.record, encodeRecord(decoded.record), source, m_records.size()});
    }
    for (const Complaint& complaint : complaints) {
        Finding finding;
        finding.rule = "record";
        finding.where.record = nameOf(kind, idOf(record));
        finding.where.pointer = complaint.pointer;
        finding.what = complaint.what;
        finding.remedy = complaint.remedy;
        const Json::json_pointer at(complaint.pointer);
        if (!isPrivate(complaint.pointer) && object.contains(at) && object.at(at).is_primitive())
            finding.value = jsonExcerpt(object.at(at));
        m_findings.push_back(std::move(finding));
    }
}

bool RecordFileReader::hasRefused(RecordKind kind, const std::string& id) const {
    return m_refused.count({kind, id}) != 0;
}

std::vector<Location> RecordFileReader::locate(const std::vector<RecordSpot>& spots) const {
    std::vector<Location> places(spots.size());
    std::map<std::size_t, std::vector<std::size_t>> spotsOfSource;
    for (std::size_t i = 0; i < spots.size(); ++i) {
        const IncomingRecord& record = m_records[spots[i].record];
        const Inner::Source& from = m_inner->sources[record.source];
        places[i].record = nameOf(kindOf(record.record), idOf(record.record));
        places[i].pointer = from.pointerOf(record.position) + spots[i].pointer;
        if (from.form == Inner::Form::made)
            continue;
        places[i].file = from.name;
        spotsOfSource[record.source].push_back(i);
    }
    for (const auto& [source, members] : spotsOfSource) {
        std::vector<std::string> pointers;
        for (const std::size_t i : members)
            pointers.push_back(places[i].pointer);
        const std::vector<int> lines = linesOf(m_inner->sources[source].text, pointers);
        for (std::size_t i = 0; i < members.size(); ++i)
            places[members[i]].line = lines[i];
    }
    return places;
}

std::string recordFileText(const std::vector<std::string>& payloads) {
    using Ordered = nlohmann::ordered_json;
    std::string text =
        "{\n  \"rackbookRecords\": " + std::to_string(fileVersion) + ",\n  \"records\": [";
    bool first = true;
    for (const std::string& payload : payloads) {
        text += first ? "\n" : ",\n";
        first = false;
        const std::string record = Ordered::parse(payload).dump(2);
        std::size_t at = 0;
        while (at < record.size()) {
            const std::size_t end = std::min(record.find('\n', at), record.size());
            text += "    " + record.substr(at, end - at);
            if (end < record.size())
                text += "\n";
            at = end + 1;
        }
    }
    text += first ? "]\n}\n" : "\n  ]\n}\n";
    return text;
}

}  // namespace rackbook
