#include "commands/CommandTable.h"

#include "base/Text.h"
#include "commands/About.h"
#include "commands/Attach.h"
#include "commands/Attached.h"
#include "commands/Audit.h"
#include "commands/BackUp.h"
#include "commands/Begin.h"
#include "commands/Blend.h"
#include "commands/Characterise.h"
#include "commands/CheckBag.h"
#include "commands/CheckSheet.h"
#include "commands/Colour.h"
#include "commands/Cost.h"
#include "commands/Day.h"
#include "commands/Drawers.h"
#include "commands/Edition.h"
#include "commands/Enter.h"
#include "commands/Find.h"
#include "commands/Forecast.h"
#include "commands/Forget.h"
#include "commands/GiveOut.h"
#include "commands/GivenOut.h"
#include "commands/HandOver.h"
#include "commands/Hang.h"
#include "commands/History.h"
#include "commands/HowMuch.h"
#include "commands/Impressions.h"
#include "commands/Layer.h"
#include "commands/LightHad.h"
#include "commands/LightWantedVerb.h"
#include "commands/List.h"
#include "commands/Look.h"
#include "commands/Match.h"
#include "commands/Meter.h"
#include "commands/MixAgain.h"
#include "commands/Move.h"
#include "commands/Predict.h"
#include "commands/Pull.h"
#include "commands/PutRight.h"
#include "commands/Ready.h"
#include "commands/Restore.h"
#include "commands/Salvage.h"
#include "commands/Shade.h"
#include "commands/Sheet.h"
#include "commands/Show.h"
#include "commands/Sign.h"
#include "commands/Sky.h"
#include "commands/Slab.h"
#include "commands/Stock.h"
#include "commands/StockTake.h"
#include "commands/Strike.h"
#include "commands/TakeBag.h"
#include "commands/TakeBook.h"
#include "commands/TakeIn.h"
#include "commands/TakeLightLog.h"
#include "commands/TakeReadings.h"
#include "commands/TakeSheet.h"
#include "commands/TakeTable.h"
#include "commands/Today.h"
#include "commands/Trace.h"
#include "commands/Undo.h"
#include "commands/Verify.h"
#include "commands/Weigh.h"
#include "commands/WriteBag.h"
#include "commands/WriteLinkedArt.h"
#include "commands/WriteOut.h"
#include "commands/WriteTable.h"

namespace rackbook {

const char* const programVersion = RACKBOOK_VERSION;

const std::vector<Command>& commandTable() {
    static const std::vector<Command> commands = {
        // The book
        beginCommand(),
        verifyCommand(),
        backUpCommand(),
        restoreCommand(),
        salvageCommand(),
        takeBookCommand(),
        forgetCommand(),
        // At the press
        editionCommand(),
        layerCommand(),
        impressionsCommand(),
        weighCommand(),
        pullCommand(),
        putRightCommand(),
        blendCommand(),
        hangCommand(),
        moveCommand(),
        lookCommand(),
        signCommand(),
        handOverCommand(),
        attachCommand(),
        skyCommand(),
        meterCommand(),
        stockTakeCommand(),
        dayCommand(),
        enterCommand(),
        strikeCommand(),
        undoCommand(),
        // Record files
        takeInCommand(),
        takeReadingsCommand(),
        takeLightLogCommand(),
        takeSheetCommand(),
        takeTableCommand(),
        writeOutCommand(),
        writeTableCommand(),
        attachedCommand(),
        // Questions
        todayCommand(),
        readyCommand(),
        drawersCommand(),
        lightCommand(),
        forecastCommand(),
        lightWantedCommand(),
        mixAgainCommand(),
        howMuchCommand(),
        auditCommand(),
        slabCommand(),
        stockCommand(),
        traceCommand(),
        costCommand(),
        colourCommand(),
        characteriseCommand(),
        predictCommand(),
        matchCommand(),
        shadeCommand(),
        findCommand(),
        showCommand(),
        historyCommand(),
        listCommand(),
        // Sheets
        sheetCommand(),
        giveOutCommand(),
        givenOutCommand(),
        checkSheetCommand(),
        // For the archive
        writeBagCommand(),
        checkBagCommand(),
        takeBagCommand(),
        writeLinkedArtCommand(),
        // The program
        manualPageCommand(),
        completionCommand(),
    };
    return commands;
}

const Command& commandNamed(const std::string& name) {
    std::vector<std::string> names;
    for (const Command& command : commandTable()) {
        if (command.spec.name == name)
            return command;
        names.push_back(command.spec.name);
    }
    const std::optional<std::string> nearest = nearestName(name, names);
    throw UsageError(
        "there is no verb \"" + excerpt(name) + "\"",
        nearest ? "Did you mean " + *nearest + "?" : "rackbook --help lists what there is.");
}

std::vector<CommandSpec> commandSpecs() {
    std::vector<CommandSpec> specs;
    for (const Command& command : commandTable())
        specs.push_back(command.spec);
    return specs;
}

}  // namespace rackbook
