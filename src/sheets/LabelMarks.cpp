#include "sheets/LabelMarks.h"

#include <algorithm>

namespace rackbook {

std::set<std::string> marksIn(const std::string& label) {
    const auto isPart = [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    };
    std::set<std::string> marks;
    for (std::size_t open = label.find('{'); open != std::string::npos;
         open = label.find('{', open + 1)) {
        const std::size_t close = label.find('}', open);
        if (close == std::string::npos)
            break;
        const std::string mark = label.substr(open + 1, close - open - 1);
        if (!mark.empty() && std::all_of(mark.begin(), mark.end(), isPart))
            marks.insert(mark);
    }
    return marks;
}

}  // namespace rackbook
