#include "exchange/TableMapping.h"

#include "base/Error.h"
#include "base/Files.h"
#include "base/Text.h"
#include "exchange/FieldForms.h"
#include "exchange/JsonSchema.h"
#include "exchange/TablePattern.h"

namespace rackbook {

namespace {

constexpr const char* unfilled = "?";  // what a proposal leaves to be filled in

std::vector<std::string> textsIn(const Json& object, const char* name) {
    return object.contains(name) ? object[name].get<std::vector<std::string>>()
                                 : std::vector<std::string>{};
}

std::optional<std::string> textIn(const Json& object, const char* name) {
    return object.contains(name) ? std::optional(object[name].get<std::string>()) : std::nullopt;
}

bool isIdText(const std::string& text) {
    return text.find_first_not_of(
               "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"
               "._-/") == std::string::npos;
}

// Pre for all: the JSON satisfies its schema.
class MappingReader {
public:
    MappingReader(const Json& root, std::vector<Complaint>& complaints)
        : m_root(root), m_complaints(complaints) {}

    TableMapping read() {
        TableMapping mapping;
        readForm(mapping);
        if (m_root.contains("leaveOut"))
            for (std::size_t i = 0; i < m_root["leaveOut"].size(); ++i)
                mapping.leaveOut.push_back(
                    conditionOf(m_root["leaveOut"][i], "/leaveOut/" + std::to_string(i)));
        for (std::size_t i = 0; i < m_root["records"].size(); ++i)
            readRecord(m_root["records"][i], "/records/" + std::to_string(i), mapping);
        return mapping;
    }

private:
    void complain(const std::string& pointer, std::string what, std::string remedy) {
        m_complaints.push_back({pointer, std::move(what), std::move(remedy)});
    }

    void readForm(TableMapping& mapping) {
        mapping.form.encoding = textIn(m_root, "encoding");
        if (const std::optional<std::string> separator = textIn(m_root, "separator"))
            mapping.form.separator = separator->front();
        mapping.skipRows = m_root.value("skipRows", std::size_t{0});
        mapping.hasHeadings = m_root.value("headings", true);
        mapping.numbers.decimal =
            textIn(m_root, "decimal").value_or("point") == "comma" ? ',' : '.';
        mapping.numbers.thousands = textIn(m_root, "thousands").value_or(std::string(1, '\0'))[0];
        if (mapping.numbers.thousands == mapping.numbers.decimal)
            complain("/thousands", "the same mark parts thousands and stands before decimals",
                     "Say another one for either.");
        if (const std::optional<std::string> order = textIn(m_root, "dates"))
            mapping.dates.order = *order == "dmy"   ? DateOrder::dayMonthYear
                                  : *order == "mdy" ? DateOrder::monthDayYear
                                                    : DateOrder::yearMonthDay;
        if (m_root.contains("twoDigitYearsFrom"))
            mapping.dates.twoDigitYearsFrom = m_root["twoDigitYearsFrom"].get<int>();
        mapping.missing = textsIn(m_root, "missing");
        mapping.keepSpaces = m_root.value("keepSpaces", false);
    }

    static ConditionRule conditionOf(const Json& json, const std::string& pointer) {
        return {json["column"].get<std::string>(), textsIn(json, "is"), textsIn(json, "isNot"),
                pointer};
    }

    static NumbersRule numbersOf(const Json& json, const std::string& pointer) {
        return {json["column"].get<std::string>(), json["as"] == "count", pointer};
    }

    void checkPattern(const std::string& pattern, const std::string& pointer, bool hasNumbers,
                      bool isId) {
        const auto pieces = patternPieces(pattern);
        if (!pieces) {
            complain(pointer, "a brace of this pattern is not closed or names nothing",
                     "Write a heading in each pair, such as {Code}; {{ is a brace.");
            return;
        }
        for (const PatternPiece& piece : *pieces) {
            if (piece.kind == PatternPiece::Kind::number && !hasNumbers)
                complain(pointer, "the pattern has a number, and nothing is counted",
                         "Add \"numbers\" beside it.");
            if (isId && piece.kind == PatternPiece::Kind::literal && !isIdText(piece.text))
                complain(pointer, "the pattern holds characters that no id has",
                         "Use letters without accents, digits and . _ - / only.");
        }
    }

    ValueRule valueOf(const Json& json, const std::string& pointer, bool hasNumbers, bool isId) {
        ValueRule rule;
        rule.pointer = pointer;
        int sources = 0;
        const auto take = [&](const char* name, ValueRule::Source source) {
            if (!json.contains(name))
                return;
            ++sources;
            rule.source = source;
            rule.text = json[name].get<std::string>();
        };
        take("column", ValueRule::Source::column);
        take("pattern", ValueRule::Source::pattern);
        take("fixed", ValueRule::Source::fixed);
        if (sources != 1)
            complain(pointer, "exactly one of column, pattern and fixed is wanted",
                     "Keep the one that the value comes from.");
        if (json.contains("words"))
            for (const auto& [word, meaning] : json["words"].items()) {
                rule.words.emplace_back(word, meaning.get<std::string>());
                if (rule.words.back().second == unfilled)
                    complain(pointer + "/words/" + pointerStep(word),
                             "this is still to be filled in", "Write what the word means.");
            }
        rule.otherwise = textIn(json, "otherwise");
        rule.find = textIn(json, "find");
        if (json.contains("part"))
            rule.part = json["part"].get<std::size_t>() - 1;
        rule.partedBy = textIn(json, "partedBy").value_or("x");
        rule.times = json.value("times", 1.0);
        rule.units = textsIn(json, "units");
        if (json.contains("numbers"))
            rule.numbers = numbersOf(json["numbers"], pointer + "/numbers");
        if (rule.source == ValueRule::Source::pattern)
            checkPattern(rule.text, pointer + "/pattern", hasNumbers || rule.numbers.has_value(),
                         isId && !rule.find);
        if (rule.source == ValueRule::Source::fixed && rule.text == unfilled)
            complain(pointer + "/fixed", "this is still to be filled in",
                     "Write what is the same for every row, or name a column.");
        return rule;
    }

    void checkField(const FieldRule& rule, const RecordRule& record) {
        const std::optional<FoundField> found = fieldAt(record.kind, rule.path);
        if (!found || rule.path == "id") {
            const std::vector<std::string> paths = fieldPaths(record.kind);
            const std::optional<std::string> nearest = nearestName(rule.path, paths);
            complain(rule.value.pointer,
                     std::string(textOf(record.kind)) + " has no such field here",
                     nearest ? "Did you mean " + *nearest + "?"
                             : "It has " + joined({paths.begin() + 1, paths.end()}) + ".");
            return;
        }
        const FieldForm form = found->field->form;
        if (rule.value.find && form != FieldForm::reference)
            complain(rule.value.pointer + "/find", "only the id of another record can be found",
                     "Leave it out.");
        if (rule.value.find && form == FieldForm::reference &&
            !fieldAt(*found->field->target, *rule.value.find))
            complain(rule.value.pointer + "/find",
                     std::string(textOf(*found->field->target)) + " has no such field",
                     "Name one of its fields, such as name, code or title.");
        if (rule.value.times != 1 && form != FieldForm::number)
            complain(rule.value.pointer + "/times", "only a number with a unit can be multiplied",
                     "Leave it out.");
        if (rule.value.numbers && !found->field->isList)
            complain(rule.value.pointer + "/numbers", "this field holds one value, no list",
                     "Put the numbers beside the id, to make a record for each.");
    }

    void readRecord(const Json& json, const std::string& pointer, TableMapping& mapping) {
        RecordRule rule;
        rule.pointer = pointer;
        const std::string word = json["record"].get<std::string>();
        const std::optional<RecordKind> kind = enumFrom<RecordKind>(word);
        if (!kind) {
            const std::vector<std::string> known = enumNames<RecordKind>();
            const std::optional<std::string> nearest = nearestName(word, known);
            complain(pointer + "/record", "there is no such kind of record",
                     nearest ? "Did you mean " + *nearest + "?"
                             : "Use one of " + joined(known, " or ") + ".");
            return;
        }
        rule.kind = *kind;
        rule.id = json["id"].get<std::string>();
        rule.ifNew = json.value("ifNew", false);
        if (json.contains("numbers"))
            rule.numbers = numbersOf(json["numbers"], pointer + "/numbers");
        checkPattern(rule.id, pointer + "/id", rule.numbers.has_value(), true);
        if (json.contains("when"))
            rule.when = conditionOf(json["when"], pointer + "/when");
        if (json.contains("changedOn"))
            rule.changedOn = valueOf(json["changedOn"], pointer + "/changedOn", false, false);
        if (rule.changedOn && rule.ifNew)
            complain(pointer + "/ifNew", "a record that changes is not new",
                     "Keep one of the two.");
        for (const auto& [path, value] : json["fields"].items()) {
            const std::string at = pointer + "/fields/" + pointerStep(path);
            const std::optional<FoundField> found = fieldAt(rule.kind, path);
            const bool isId = found && found->field->form == FieldForm::reference;
            rule.fields.push_back({path, valueOf(value, at, rule.numbers.has_value(), isId)});
            checkField(rule.fields.back(), rule);
        }
        mapping.records.push_back(std::move(rule));
    }

    const Json& m_root;
    std::vector<Complaint>& m_complaints;
};

std::vector<Finding> findingsOf(const std::vector<Complaint>& complaints, const Json& root,
                                const TableMapping& mapping) {
    std::vector<Finding> findings;
    for (const Complaint& complaint : complaints) {
        const Json::json_pointer at(complaint.pointer);
        std::string value;
        if (root.contains(at) && root.at(at).is_primitive())
            value = root.at(at).is_string() ? root.at(at).get<std::string>() : root.at(at).dump();
        findings.push_back(
            mappingFinding(mapping, complaint.pointer, complaint.what, value, complaint.remedy));
    }
    return findings;
}

}  // namespace

TableMapping mappingFrom(const std::string& text, const std::string& file,
                         const std::string& schemaFolder) {
    const Json root = parseJson(text, file);
    std::vector<Complaint> complaints =
        JsonSchema(pathOf(schemaFolder, "table-mapping.schema.json")).complaintsAbout(root);
    TableMapping mapping;
    if (complaints.empty())
        mapping = MappingReader(root, complaints).read();
    mapping.file = file;
    mapping.text = text;
    if (!complaints.empty())
        throw RefusedInput(findingsOf(complaints, root, mapping));
    return mapping;
}

Finding mappingFinding(const TableMapping& mapping, const std::string& pointer,
                       const std::string& what, const std::string& value,
                       const std::string& remedy) {
    Finding finding;
    finding.rule = "table-mapping";
    finding.where.file = mapping.file;
    finding.where.line = linesOf(mapping.text, {pointer})[0];
    finding.where.pointer = pointer;
    finding.what = what;
    finding.value = value;
    finding.remedy = remedy;
    return finding;
}

}  // namespace rackbook
