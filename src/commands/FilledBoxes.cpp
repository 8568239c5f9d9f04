#include "commands/FilledBoxes.h"

#include <algorithm>

#include "base/Text.h"
#include "base/TypedDate.h"
#include "sheets/BenchForm.h"

namespace rackbook {

namespace {

constexpr const char* makeAnew = "Make the sheet anew with rackbook sheet bench.";

std::map<std::string, int> expectedOn(const ReturnedSheet& sheet) {
    std::map<std::string, int> names;
    const bool hasPortion =
        sheet.layer.mix ||
        std::any_of(sheet.values.begin(), sheet.values.end(), [](const FormValue& value) {
            const BenchField* field = findBenchField(value.name);
            return field && isOfPortion(*field);
        });
    for (const BenchField& field : benchFields()) {
        if (isOfPortion(field) && !hasPortion)
            continue;
        if (!isOfImpressions(field))
            names[field.name] = 0;
        else
            for (const Impression& one : sheet.listed)
                names[benchFieldName(field, sheet.edition.code, one.workingNumber)] =
                    one.workingNumber;
    }
    if (sheet.listed.size() > 1)
        names[everyPrinted] = 0;
    return names;
}

// What is never there before somebody fills it in.
bool isFilledByHandOnly(const BenchField& field) {
    return field.kind != FieldKind::choice && std::string(field.name) != "pull.press" &&
           std::string(field.name) != "pull.packing";
}

}  // namespace

FilledBoxes::FilledBoxes(const ReturnedSheet& sheet, const SheetWords& words)
    : m_sheet(sheet), m_words(words), m_expected(expectedOn(sheet)) {
    checkPresence();
}

void FilledBoxes::checkPresence() {
    for (const FormValue& value : m_sheet.values) {
        const bool isKnown = m_expected.count(value.name) > 0;
        if (isKnown && !m_values.emplace(value.name, &value).second)
            refuse(value.name, "the box stands twice in the file", makeAnew);
        else if (!isKnown && findBenchField(value.name))
            refuse(value.name, "the sheet was made without this box", makeAnew);
    }
    std::vector<std::string> gone;
    for (const auto& [name, number] : m_expected)
        if (m_values.count(name) == 0)
            gone.push_back(labelOf(name));
    constexpr std::size_t mostNamed = 5;
    if (gone.size() > mostNamed) {
        const std::string more = std::to_string(gone.size() - mostNamed) + " more";
        gone.resize(mostNamed);
        gone.push_back(more);
    }
    if (gone.empty())
        return;
    Finding finding;
    finding.rule = "box";
    finding.where.file = m_sheet.path;
    finding.what = "these boxes are gone from the file: " + joined(gone);
    finding.remedy = "Fill in the sheet as rackbook made it, and save all of it.";
    m_findings.push_back(std::move(finding));
}

std::string FilledBoxes::labelOf(const std::string& name) const {
    const BenchField* field = findBenchField(name);
    if (!field)
        return name;
    const auto number = m_expected.find(name);
    const std::string of = number != m_expected.end() && number->second > 0
                               ? " " + std::to_string(number->second)
                               : "";
    return benchFieldLabel(*field, m_words) + of + " (" + name + ")";
}

const FormValue* FilledBoxes::valueAt(const std::string& name) const {
    const auto found = m_values.find(name);
    return found == m_values.end() ? nullptr : found->second;
}

std::string FilledBoxes::text(const std::string& name) const {
    const FormValue* value = valueAt(name);
    if (!value || rackbook::isBlank(value->text))
        return {};
    const std::string& text = value->text;
    const std::size_t first = text.find_first_not_of(" \t\n");
    return text.substr(first, text.find_last_not_of(" \t\n") - first + 1);
}

bool FilledBoxes::isTicked(const std::string& name) const {
    const FormValue* value = valueAt(name);
    return value && value->isTick && value->isOn;
}

bool FilledBoxes::isBlank() const {
    return std::none_of(m_values.begin(), m_values.end(), [&](const auto& entry) {
        const bool isFilled = isTicked(entry.first) || !text(entry.first).empty();
        return isFilled &&
               (isFilledByHandOnly(*findBenchField(entry.first)) || entry.first == "pull.portion");
    });
}

void FilledBoxes::refuse(const std::string& name, const std::string& what,
                         const std::string& remedy, const std::string& value) {
    Finding finding;
    finding.rule = "box";
    finding.where.file = m_sheet.path;
    finding.where.record = labelOf(name);
    finding.what = what;
    finding.value = value.empty() ? value : excerpt(value);
    finding.remedy = remedy;
    m_findings.push_back(std::move(finding));
}

}  // namespace rackbook
