#include "commands/CheckBag.h"

#include "base/Text.h"
#include "cli/Table.h"
#include "commands/JsonReport.h"
#include "exchange/Bag.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

Tree reportOf(const BagReport& bag) {
    Tree report = newReport("check-bag");
    report.set("valid", bag.isValid()).set("version", bag.version);
    Tree info = Tree::array();
    for (const auto& [label, value] : bag.info)
        info.add(Tree::object().set("label", label).set("value", value));
    report.set("info", std::move(info));
    Tree digests = Tree::array();
    for (const std::string& digest : bag.digests)
        digests.add(digest);
    report.set("digests", std::move(digests));
    report.set("files", bag.payload.size());
    report.set("bytes", static_cast<std::int64_t>(bag.payloadBytes));
    report.set("findings", treeOf(bag.findings));
    return report;
}

bool isWeak(const std::vector<std::string>& digests) {
    for (const std::string& digest : digests)
        if (digest != "md5" && digest != "sha1")
            return false;
    return true;
}

void print(Console& console, const std::string& folder, const BagReport& bag) {
    Table table({{"label"}, {"value"}});
    for (const auto& [label, value] : bag.info)
        table.addRow({printable(label), printable(value)});
    if (!bag.info.empty())
        console.out() << table.text(console.width(), "") << "\n";
    for (const Finding& finding : bag.findings)
        console.out() << severityName(finding.severity) << ": " << printable(describe(finding))
                      << "\n";
    if (!bag.findings.empty())
        console.out() << "\n";
    if (!bag.isValid()) {
        console.out() << printable(folder) << " is not a sound bag.\n";
        return;
    }
    console.out() << printable(folder) << " is what was packed: " << bag.payload.size()
                  << (bag.payload.size() == 1 ? " file" : " files") << ", " << bag.payloadBytes
                  << " bytes, by " << joined(bag.digests, " and ") << ".\n";
    if (isWeak(bag.digests))
        console.out() << "Such a checksum tells of accidents; it is no proof against a forger.\n";
}

ExitCode run(CommandContext& context) {
    const std::string folder = context.arguments.text("folder");
    Progress progress(context.console, "Looking at files", 0);
    const BagReport bag = checkBag(folder, [&] { progress.advance(); });
    progress.finish();
    if (context.arguments.has("json"))
        context.console.out() << jsonText(reportOf(bag));
    else
        print(context.console, folder, bag);
    return bag.isValid() ? ExitCode::success : ExitCode::findings;
}

}  // namespace

Command checkBagCommand() {
    CommandSpec spec;
    spec.name = "check-bag";
    spec.group = toTranslate("group", "For the archive");
    spec.summary = toTranslate("summary", "Say whether a bag is what was packed");
    spec.details =
        "Checks any bag (BagIt 0.95 to 1.0, RFC 8493), whoever packed it: that every file is "
        "there, has the bytes that the manifests state, and that nothing was added. Links and "
        "paths that lead out of the folder are findings, and nothing is fetched. Exit code 1 "
        "where the bag is not sound.";
    spec.positionals = {{"folder", "The bag."}};
    spec.reportsJson = true;
    spec.needsBook = false;
    spec.examples = {{"rackbook check-bag whole-studio", "After years on a shelf."}};
    return {spec, run};
}

}  // namespace rackbook
