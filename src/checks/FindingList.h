// Findings as rules put them together.
#pragma once

#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "base/Finding.h"
#include "records/Record.h"
#include "records/RecordSet.h"

namespace rackbook {

// The rule's name is filled in by audit().
class FindingList {
public:
    template <class R>
    void add(Severity severity, const R& record, std::string pointer, std::string what,
             std::string value, std::string remedy) {
        Finding finding;
        finding.severity = severity;
        finding.where.pointer = std::move(pointer);
        finding.where.record = nameOf(R::kind, record.id);
        finding.what = std::move(what);
        finding.value = std::move(value);
        finding.remedy = std::move(remedy);
        m_findings.push_back(std::move(finding));
    }

    std::vector<Finding> take() { return std::move(m_findings); }

private:
    std::vector<Finding> m_findings;
};

// Working numbers that one finding speaks of.
class Numbers {
public:
    // Of the edition that the finding is about anyway.
    void add(int number) { m_numbers[""].insert(number); }
    // Where the finding's record may speak of several editions: named by code.
    void add(const RecordSet& records, const Impression& impression);
    bool empty() const { return m_numbers.empty(); }

    // "impression 3", "impressions 1-5,7", "impressions EEL:1-5 and BRK:2"
    std::string words() const;
    // "impression 3 was", "impressions 1-5,7 were"
    std::string words(const char* singularVerb, const char* pluralVerb) const;

private:
    bool isOne() const;

    std::map<std::string, std::set<int>> m_numbers;  // by code
};

// "/states/2" for ("/states", 2)
std::string elementPointer(const char* list, std::size_t i);

// "12.5 g": to the hundredth.
std::string gramsWords(double mass_g);

// "cut away", as sentences say what became of a matrix.
const char* matrixFateWords(MatrixFate fate);

}  // namespace rackbook
