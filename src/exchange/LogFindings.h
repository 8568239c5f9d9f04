// What is found wrong with a log on the way, and what is worth knowing. Private to exchange/.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "base/Finding.h"

namespace rackbook {

// Where something stands in a log; line 0 where it is the whole file, column may be empty.
struct LogSpot {
    int line = 0;
    std::string column;
};

// Holds the first 20 of each kind and counts the others.
class LogFindings {
public:
    explicit LogFindings(std::string file) : m_file(std::move(file)) {}

    const std::string& file() const { return m_file; }

    void refuse(const LogSpot& spot, const std::string& what, const std::string& remedy,
                const std::string& value = {});
    void note(const LogSpot& spot, const std::string& what, const std::string& remedy);

    // Throws RefusedInput where something was refused.
    void requireNothingRefused() const;
    std::vector<Finding> notes() const;

private:
    struct Tally {
        std::vector<Finding> findings;
        std::size_t more = 0;
    };

    void add(Tally& tally, Severity severity, const LogSpot& spot, const std::string& what,
             const std::string& remedy, const std::string& value);
    std::vector<Finding> all(const Tally& tally, Severity severity) const;

    std::string m_file;
    Tally m_refused;
    Tally m_notes;
};

}  // namespace rackbook
