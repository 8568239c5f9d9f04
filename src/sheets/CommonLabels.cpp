#include "sheets/CommonLabels.h"

#include "calc/Readiness.h"
#include "records/Book.h"
#include "records/Edition.h"
#include "records/Impression.h"
#include "records/Look.h"
#include "records/Lot.h"
#include "records/Reading.h"
#include "sheets/LabelKeys.h"
#include "sheets/LotText.h"
#include "sheets/RuleSource.h"

namespace rackbook {

namespace {

std::vector<std::string> madeKeys() {
    std::vector<std::string> keys;
    addLabelKeys(keys, "", "pageOf notRecorded notKnown none caution estimate");
    addLabelKeys(keys, "", "orMore upTo metalContent ofDrier backingNamed");
    addLabelKeys(keys, "caution", "driers");
    addLabelKeys(keys, "", "listSeparator listLast listApart sentenceGap labelled");
    addLabelKeys(keys, "", "dateDay dateFirstDay dateMonth dateYear dateAbout");
    addLabelKeys(keys, "", "dateUncertain dateAboutUncertain dateBetween dateInterval");
    addLabelKeys(keys, "", "dateOpenStart dateOpenEnd dateUnknownStart dateUnknownEnd");
    addLabelKeys(keys, "", "season21 season22 season23 season24");
    addLabelKeys(keys, "when", "day longer");
    addLabelKeys(keys, "unit", "percent g gm2 days days.one");
    addLabelKeys(keys, "size", "mm in");
    addLabelKeysOf<DesignationKind>(keys, "designation");
    addLabelKeys(keys, "designationFit", "beyond otherCount cannotBe");
    addLabelKeysOf<MatrixFate>(keys, "matrixFate");
    addLabelKeysOf<ImpressionFate>(keys, "impressionFate");
    addLabelKeysOf<LotKind>(keys, "lotKind");
    addLabelKeysOf<Container>(keys, "container");
    addLabelKeysOf<Backing>(keys, "backing");
    addLabelKeysOf<Touch>(keys, "touch");
    addLabelKeysOf<LookColour>(keys, "lookColour");
    addLabelKeysOf<Verdict>(keys, "verdict");
    addLabelKeysOf<Origin>(keys, "origin");
    for (const std::string& metal : metalsWithWords())
        keys.push_back("metal." + metal);
    for (const std::string& rule : rulesWithSources())
        keys.push_back("source." + rule);
    return keys;
}

}  // namespace

const std::vector<std::string>& commonLabels() {
    static const std::vector<std::string> keys = madeKeys();
    return keys;
}

}  // namespace rackbook
