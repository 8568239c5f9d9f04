#include "exchange/LogFindings.h"

#include "base/Error.h"

namespace rackbook {

namespace {

constexpr std::size_t mostFindings = 20;
constexpr const char* ruleName = "light-log";

}  // namespace

void LogFindings::add(Tally& tally, Severity severity, const LogSpot& spot, const std::string& what,
                      const std::string& remedy, const std::string& value) {
    if (tally.findings.size() == mostFindings) {
        ++tally.more;
        return;
    }
    Finding finding;
    finding.rule = ruleName;
    finding.severity = severity;
    finding.where.file = m_file;
    finding.where.line = spot.line;
    if (!spot.column.empty())
        finding.where.record = "column \"" + spot.column + "\"";
    finding.what = what;
    finding.value = value;
    finding.remedy = remedy;
    tally.findings.push_back(std::move(finding));
}

std::vector<Finding> LogFindings::all(const Tally& tally, Severity severity) const {
    std::vector<Finding> findings = tally.findings;
    if (tally.more == 0)
        return findings;
    Finding rest;
    rest.rule = ruleName;
    rest.severity = severity;
    rest.where.file = m_file;
    rest.what = std::to_string(tally.more) + " more findings are not shown";
    findings.push_back(std::move(rest));
    return findings;
}

void LogFindings::refuse(const LogSpot& spot, const std::string& what, const std::string& remedy,
                         const std::string& value) {
    add(m_refused, Severity::error, spot, what, remedy, value);
}

void LogFindings::note(const LogSpot& spot, const std::string& what, const std::string& remedy) {
    add(m_notes, Severity::note, spot, what, remedy, {});
}

void LogFindings::requireNothingRefused() const {
    if (!m_refused.findings.empty())
        throw RefusedInput(all(m_refused, Severity::error));
}

std::vector<Finding> LogFindings::notes() const {
    return all(m_notes, Severity::note);
}

}  // namespace rackbook
