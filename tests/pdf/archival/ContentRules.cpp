// Rules about operators (6.1.13, 6.2.2; ISO 32000-1, annex A).
#include <set>

#include "ArchivalRules.h"

namespace rackbook {

namespace {

using nlohmann::json;

// ISO 32000-1, table A.1; BI stands for the three operators of an inline image.
const std::set<std::string> operators = {
    "b",  "B",  "b*", "B*",  "BDC", "BI", "BMC", "BT", "BX", "c",  "cm", "CS", "cs", "d",  "d0",
    "d1", "Do", "DP", "EMC", "ET",  "EX", "f",   "F",  "f*", "G",  "g",  "gs", "h",  "i",  "j",
    "J",  "K",  "k",  "l",   "m",   "M",  "MP",  "n",  "q",  "Q",  "re", "RG", "rg", "ri", "s",
    "S",  "SC", "sc", "SCN", "scn", "sh", "T*",  "Tc", "Td", "TD", "Tf", "Tj", "TJ", "TL", "Tm",
    "Tr", "Ts", "Tw", "Tz",  "v",   "w",  "W",   "W*", "y",  "'",  "\""};

const std::set<std::string> textOnly = {"Td", "TD", "Tm", "T*", "Tj", "TJ", "'", "\""};

// Kind of resource by operator.
const std::map<std::string, std::string> kinds = {
    {"Tf", "/Font"}, {"Do", "/XObject"}, {"gs", "/ExtGState"}, {"sh", "/Shading"}};

class ContentCheck {
public:
    explicit ContentCheck(ArchivalCase& checked) : m_checked(checked) {}

    void step(const ContentStep& step) {
        const std::string& name = step.operation.name;
        if (step.page != m_page)
            finishPage();
        m_page = step.page;
        if (operators.count(name) == 0)
            add("6.2.2", "the operator " + name);
        if (step.depth >= 28 && name == "q")
            add("6.1.13", "q goes deeper than 28");
        m_depth += name == "q" ? 1 : name == "Q" ? -1 : 0;
        m_marks += name == "BMC" || name == "BDC" ? 1 : name == "EMC" ? -1 : 0;
        if (m_depth < 0 || m_marks < 0)
            add("32000-1, 8.4.2", name + " ends what has not begun");
        if (name == "BT" ? step.inText : name == "ET" && !step.inText)
            add("32000-1, 9.4.1", name + " out of turn");
        if (textOnly.count(name) > 0 && !step.inText)
            add("32000-1, 9.4.1", name + " outside of a text object");
        m_inText = name == "BT" || (name != "ET" && step.inText);
        checkResource(step);
    }

    void finishPage() {
        if (m_depth > 0 || m_marks > 0 || m_inText)
            add("32000-1, 7.8.2", "something is left open at its end");
        m_depth = 0;
        m_marks = 0;
        m_inText = false;
    }

private:
    void add(const std::string& clause, const std::string& what) {
        if (m_seen.insert(std::to_string(m_page) + clause + what).second)
            m_checked.add(clause, "page " + std::to_string(m_page) + ": " + what);
    }

    void checkResource(const ContentStep& step) {
        const auto kind = kinds.find(step.operation.name);
        if (kind == kinds.end() || step.operation.operands.empty())
            return;
        const std::string resource = "/" + step.operation.operands[0].text;
        const json& found =
            m_checked.file.at(m_checked.file.at(*step.resources, kind->second), resource);
        if (found.is_null())
            add("6.2.2", "the resource " + resource + " is missing");
    }

    ArchivalCase& m_checked;
    std::set<std::string> m_seen;
    int m_page = 0;
    int m_depth = 0;
    int m_marks = 0;
    bool m_inText = false;
};

}  // namespace

void checkContent(ArchivalCase& checked) {
    ContentCheck check(checked);
    for (const ContentStep& step : checked.steps)
        check.step(step);
    check.finishPage();
    for (const std::string& page : checked.file.pages())
        if (checked.file.at(page, "/Resources").is_null())
            checked.add("6.2.2", "page " + page + " has no resources of its own");
}

}  // namespace rackbook
