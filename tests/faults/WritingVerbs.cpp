#include "WritingVerbs.h"

#include <algorithm>

namespace rackbook::faults {

namespace {

const std::vector<std::string> attached = {
    "attach pictures/with-everything.jpg --edition TIDE --id TIDE/line"};

std::vector<WritingCommand> recordingCommands() {
    return {
        {"begin",
         "begin --book other.rackbook --studio \"North shed\" --time-zone Europe/Copenhagen",
         {},
         {},
         "other.rackbook"},
        {"verify", "verify --rebuild"},
        {"edition", "edition FERN Fern --maker maren"},
        {"layer", "layer TIDE 2 \"Second veil\""},
        {"impressions", "impressions TIDE 9-12"},
        {"weigh", "weigh veil 0.6 --lot rose --at 16:30"},
        {"pull", "pull TIDE 1 1-5 --hang line"},
        {"hang", "hang TIDE line"},
        {"move", "move TIDE drawer --why store"},
        {"look", "look TIDE:1 --touch dry"},
        {"sign", "sign TIDE 1-3=1/3", {"pull TIDE 1 1-5"}},
        {"hand-over", "hand-over sale TIDE:4 --to ane", {"enter party ane name=Ane roles=holder"}},
        {"attach", attached.front()},
        {"sky", "sky 2026-03-18 sunny"},
        {"meter", "meter wall --from 2026-03-18T09:00 --to 17:30 --lux 850"},
        {"stock-take", "stock-take base 828 --tare 48 --at 2026-03-01"},
        {"day",
         "day evening.txt",
         {},
         {{"evening.txt", "hang TIDE line\nlook TIDE:1 --touch tacky\n"}}},
        {"enter", "enter party ane name=Ane roles=holder"},
        {"strike",
         "strike lot gone --reason wrong",
         {"enter lot gone lotKind=base colourWords=Gone"}},
        {"undo", "undo --reason wrong"},
    };
}

std::vector<WritingCommand> intakeCommands() {
    return {
        {"take-in",
         "take-in record.json",
         {},
         {{"record.json", R"({"rackbookRecords": 1, "records": [)"
                          R"({"record": "party", "id": "ane", "name": "Ane"},)"
                          R"({"record": "party", "id": "tides", "name": "The Tides Room"}]})"}}},
        {"take-readings",
         "take-readings measured/greys.csv --of rose-dd=drawdown:rose-dd "
         "--of a=b=impression:TIDE:1 --condition M1 --taken-on 2026-03-21",
         {"enter drawdown rose-dd lot=rose substrate=\"Cotton paper\" madeOn=2026-03-18"}},
        {"take-light-log",
         "take-light-log measured/light-autumn.csv wall --unit klx --clock utc "
         "--date-order day-month-year --record"},
        {"take-sheet", "take-sheet TIDE-L1-bench.pdf", {}, {}, "studio.rackbook", true},
        {"take-table",
         "take-table tables/editions-commas-utf-8.csv --map tables/editions.mapping "
         "--only-rows 1-5",
         {"enter party tilda name=\"Tilda Moor\" roles=maker,printer"}},
        {"give-out", "give-out TIDE-edition.pdf", {"sheet edition TIDE"}},
    };
}

std::vector<WritingCommand> fileCommands() {
    return {
        {"sheet", "sheet edition TIDE"},
        {"sheet", "sheet edition TIDE --replace --paper Letter", {"sheet edition TIDE"}},
        {"take-table",
         "take-table tables/editions-commas-utf-8.csv --propose edition --to proposed.json"},
        {"write-out", "write-out copy", attached},
        {"write-table", "write-table place --out places.csv"},
        {"attached", "attached TIDE/line --out line.jpg", attached},
        {"forecast",
         "forecast --on 2026-03-28 --calendar looks.ics",
         {"enter book book latitude_deg=55 longitude_deg=11 --reason \"left out\"",
          "pull TIDE 1 1-5 --hang line --start 2026-03-20T17:00"}},
    };
}

std::vector<WritingCommand> keepingCommands() {
    const std::string copy = "back-up copy.rackbook";
    return {
        {"verify",
         "verify --rebuild --into again.rackbook",
         {},
         {},
         "studio.rackbook",
         false,
         false,
         {"again.rackbook.lock"}},
        {"back-up",
         copy,
         {},
         {},
         "studio.rackbook",
         false,
         false,
         {"copy.rackbook.lock", "studio.rackbook.backed-up.unfinished"}},
        {"back-up",
         "back-up backups --keep-days 1",
         {"back-up backups/studio-20260301T100000Z.rackbook",
          "back-up backups/studio-20260302T100000Z.rackbook"},
         {{"backups/other.txt", "not a backup"}},
         "studio.rackbook",
         false,
         false,
         {"backups/studio-20260328T180000Z.rackbook.lock", "studio.rackbook.backed-up.unfinished"}},
        {"restore", "restore copy.rackbook --book other.rackbook", {copy}, {}, "other.rackbook"},
        {"restore",
         "restore copy.rackbook --replace",
         {copy, "enter party late name=Late"},
         {},
         "studio.rackbook",
         false,
         true},
        {"salvage", "salvage copy.rackbook found.rackbook", {copy}, {}, "found.rackbook"},
        {"write-bag", "write-bag --with-contacts bag", attached},
        {"write-linked-art", "write-linked-art TIDE museum"},
        {"take-bag",
         "take-bag bag --book other.rackbook",
         {attached.front(), "write-bag --with-contacts bag"},
         {},
         "other.rackbook"},
        {"forget",
         "forget ane --for-good",
         {"enter party ane name=Ane contact=ane@tide.invalid",
          "enter place anes name=Anes placeKind=holderAddress holder=ane"}},
        {"take-book",
         "take-book copy.rackbook",
         {copy, "enter party late name=Late --book copy.rackbook"},
         {},
         "studio.rackbook",
         false,
         false,
         {"copy.rackbook-shm", "copy.rackbook-wal"}},
    };
}

}  // namespace

const std::vector<WritingCommand>& writingCommands() {
    static const std::vector<WritingCommand> commands = [] {
        std::vector<WritingCommand> all = recordingCommands();
        for (auto* more : {&intakeCommands, &fileCommands, &keepingCommands})
            for (WritingCommand& command : more())
                all.push_back(std::move(command));
        return all;
    }();
    return commands;
}

bool writes(const CommandSpec& spec) {
    static const std::vector<std::string> filesWritten = {"out", "to", "calendar", "into"};
    const bool hasOption =
        std::any_of(spec.options.begin(), spec.options.end(), [](const OptionSpec& option) {
            const bool isPath = option.valueName == "FILE" || option.valueName == "FOLDER";
            return isPath && std::find(filesWritten.begin(), filesWritten.end(), option.name) !=
                                 filesWritten.end();
        });
    const bool hasPlace = std::any_of(
        spec.positionals.begin(), spec.positionals.end(), [&](const PositionalSpec& one) {
            return (one.name == "folder" && spec.name != "check-bag") || one.name == "where" ||
                   one.name == "new-book";
        });
    return spec.writesBook || hasOption || hasPlace;
}

}  // namespace rackbook::faults
