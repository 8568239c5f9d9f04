// A small studio whose bench sheet is filled in and taken back.
#pragma once

#include <map>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "FormTools.h"
#include "Script.h"
#include "base/Files.h"

namespace rackbook::test {

using Filling = std::map<std::string, nlohmann::json>;

inline std::string rackbook(const std::string& line) {
    return transcriptOf(splitWords("rackbook " + line));
}

// The studio of studio.txt, in a folder of its own, with a sheet for its layer.
class BenchForms {
public:
    BenchForms() {
        for (const ScriptStep& step : readScript(std::string(RACKBOOK_SCRIPTS) + "/studio.txt"))
            transcriptOf(step.words);
    }

    // Makes the sheet of the layer and gives its bytes.
    static std::string sheet(const std::string& options = "") {
        rackbook("sheet bench TIDE/L1 --replace --out blank.pdf " + options);
        return readFile("blank.pdf", std::size_t{1} << 26);
    }

    // What take-sheet says of the sheet so filled in.
    static std::string taken(const Filling& filling, const std::string& options = "") {
        return takenFile(filledByQpdf(sheet(), filling), options);
    }

    static std::string takenFile(const std::string& bytes, const std::string& options = "") {
        writeFileSafely("filled.pdf", bytes);
        return rackbook("take-sheet filled.pdf " + options);
    }

private:
    FreshFolder m_folder;
};

// With all that must be there.
inline Filling leastFilling() {
    return {{"pull.day", "u:2026-03-28"}, {"sheet.all.printed", "/on"}};
}

inline bool says(const std::string& transcript, const std::string& words) {
    std::string onOneLine;
    for (const char c : transcript)
        if (c != '\n' && !(c == ' ' && !onOneLine.empty() && onOneLine.back() == ' '))
            onOneLine += c;
        else if (c == '\n' && !onOneLine.empty() && onOneLine.back() != ' ')
            onOneLine += ' ';
    return onOneLine.find(words) != std::string::npos;
}

}  // namespace rackbook::test
