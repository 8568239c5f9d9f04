#include "commands/Audit.h"

#include <algorithm>

#include "base/Text.h"
#include "checks/Audit.h"
#include "cli/Table.h"
#include "cli/Wrap.h"
#include "commands/BookAccess.h"
#include "commands/JsonReport.h"
#include "exchange/TreeJson.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

void requireKnown(const std::vector<std::string>& wanted) {
    std::vector<std::string> names;
    for (const AuditRule& rule : auditRules())
        names.push_back(rule.name);
    for (const std::string& name : wanted) {
        if (std::find(names.begin(), names.end(), name) != names.end())
            continue;
        const std::optional<std::string> nearest = nearestName(name, names);
        throw UsageError(
            "there is no audit rule \"" + excerpt(name) + "\"",
            nearest ? "Did you mean " + *nearest + "?" : "rackbook audit --rules lists them.");
    }
}

ExitCode listRules(CommandContext& context) {
    if (context.arguments.has("json")) {
        Tree report = newReport("audit");
        Tree rules = Tree::array();
        for (const AuditRule& rule : auditRules()) {
            Tree one = Tree::object();
            one.set("rule", rule.name).set("summary", rule.summary);
            rules.add(std::move(one));
        }
        report.set("rules", std::move(rules));
        context.console.out() << jsonText(report);
        return ExitCode::success;
    }
    Table table({{"rule"}, {"what it finds"}});
    for (const AuditRule& rule : auditRules())
        table.addRow({rule.name, rule.summary});
    context.console.out() << table.text(context.console.width(), "There are no rules.");
    return ExitCode::success;
}

std::size_t countOf(const std::vector<Finding>& findings, Severity severity) {
    return static_cast<std::size_t>(
        std::count_if(findings.begin(), findings.end(),
                      [&](const Finding& finding) { return finding.severity == severity; }));
}

std::string counted(std::size_t count, const std::string& word) {
    return std::to_string(count) + " " + word + (count == 1 ? "" : "s");
}

void print(Console& console, const std::vector<Finding>& findings) {
    for (const Severity severity : {Severity::error, Severity::warning, Severity::note}) {
        for (const Finding& finding : findings) {
            if (finding.severity != severity)
                continue;
            const std::string lead = std::string(severityName(severity)) + ", " + finding.rule;
            console.out() << console.emphasis(lead, Console::Stream::out) << "\n";
            for (const std::string& line :
                 wrapped(printable(describe(finding)), std::min(console.width() - 2, 96)))
                console.out() << "  " << line << "\n";
            console.out() << "\n";
        }
    }
    if (findings.empty()) {
        console.out() << "Nothing was found: " << auditRules().size() << " rules hold.\n";
        return;
    }
    console.out() << counted(countOf(findings, Severity::error), "error") << ", "
                  << counted(countOf(findings, Severity::warning), "warning") << ", "
                  << counted(countOf(findings, Severity::note), "note") << ".\n";
}

ExitCode run(CommandContext& context) {
    if (context.arguments.has("rules"))
        return listRules(context);
    const std::vector<std::string> wanted = context.arguments.values("rule");
    requireKnown(wanted);
    const BookFile book = bookToRead(context);
    const Book studio = bookRecordOf(book);
    const RecordSet records = everythingIn(book);
    const AuditContext auditContext(records, HouseRules(studio.houseRules),
                                    asOfDay(context, studio));
    const std::vector<Finding> findings = audit(auditContext, wanted);
    if (context.arguments.has("json")) {
        Tree report = newReport("audit");
        report.set("on", formatDay(auditContext.asOf()));
        report.set("findings", treeOf(findings));
        context.console.out() << jsonText(report);
    } else {
        print(context.console, findings);
    }
    const bool clean =
        countOf(findings, Severity::error) + countOf(findings, Severity::warning) == 0;
    return clean ? ExitCode::success : ExitCode::findings;
}

}  // namespace

Command auditCommand() {
    CommandSpec spec;
    spec.name = "audit";
    spec.group = toTranslate("group", "Questions");
    spec.summary = toTranslate("summary", "Find what does not hold together in the book");
    spec.details =
        "Runs every audit rule over the book. Each finding names the record, says why it is one "
        "and what to do. Badly known dates are treated as ranges: what could be right is not "
        "called wrong. Exit code 1 where there is an error or a warning; notes alone give 0.";
    spec.options = {
        {"rule", "NAME", "Only this rule.", false, true, {}, {}},
        {"rules", "", "List the rules instead.", false, false, {}, {}},
        {"on", "DATE", "Judge as of this day.", false, false, "today at the studio", {}}};
    spec.reportsJson = true;
    spec.examples = {{"rackbook audit", "Everything."},
                     {"rackbook audit --rules", "What is looked for."}};
    return {spec, run};
}

}  // namespace rackbook
