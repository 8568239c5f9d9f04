#include "base/Error.h"

namespace rackbook {

namespace {

std::string message(const std::string& where, const std::string& what, const std::string& remedy) {
    std::string text = where.empty() ? what : where + ": " + what;
    if (!text.empty() && text.back() != '.' && text.back() != '?')
        text += ".";
    return remedy.empty() ? text : text + " " + remedy;
}

std::string message(const std::vector<Finding>& findings) {
    std::string text;
    for (const Finding& finding : findings) {
        if (!text.empty())
            text += "\n";
        text += describe(finding);
    }
    return text;
}

}  // namespace

Error::Error(const std::string& where, const std::string& what, const std::string& remedy)
    : std::runtime_error(message(where, what, remedy)) {}

RefusedInput::RefusedInput(std::vector<Finding> findings)
    : Error({}, message(findings), {}), m_findings(std::move(findings)) {}

}  // namespace rackbook
