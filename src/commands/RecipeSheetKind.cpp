#include "commands/RecipeSheetKind.h"

#include "commands/BalanceToUse.h"
#include "commands/RecipeFactsOf.h"
#include "sheets/RecipeSheet.h"

namespace rackbook {

namespace {

std::vector<PageModel> makeRecipe(const SheetRequest& request) {
    return {recipeSheet(recipeFactsOf(request), request.sheetTemplate, request.measurer,
                        request.created)};
}

}  // namespace

SheetKind recipeSheetKind() {
    SheetKind kind;
    kind.name = "recipe";
    kind.what = "is the card to weigh an ink by: steps, composition, colour, room for a drawdown";
    kind.subject = SubjectKind::ink;
    kind.depth.swatches = true;
    kind.rules = recipeSheetRules;
    kind.make = makeRecipe;
    kind.options = {"mass"};
    for (const OptionSpec& option : balanceToUseOptions())
        kind.options.push_back(option.name);
    return kind;
}

}  // namespace rackbook
