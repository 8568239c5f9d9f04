#include "commands/JsonReport.h"

namespace rackbook {

Tree newReport(const std::string& verb) {
    constexpr int reportVersion = 1;
    Tree report = Tree::object();
    report.set("rackbookReport", reportVersion);
    report.set("verb", verb);
    return report;
}

Tree textsTree(const std::vector<std::string>& texts) {
    Tree tree = Tree::array();
    for (const std::string& text : texts)
        tree.add(text);
    return tree;
}

Tree treeOf(const Finding& finding) {
    Tree tree = Tree::object();
    tree.set("rule", finding.rule);
    tree.set("severity", severityName(finding.severity));
    const auto setIfAny = [&](const char* name, const std::string& text) {
        if (!text.empty())
            tree.set(name, text);
    };
    setIfAny("record", finding.where.record);
    setIfAny("file", finding.where.file);
    if (finding.where.line > 0)
        tree.set("line", finding.where.line);
    setIfAny("pointer", finding.where.pointer);
    tree.set("what", finding.what);
    setIfAny("value", finding.value);
    setIfAny("remedy", finding.remedy);
    return tree;
}

Tree treeOf(const std::vector<Finding>& findings) {
    Tree list = Tree::array();
    for (const Finding& finding : findings)
        list.add(treeOf(finding));
    return list;
}

}  // namespace rackbook
