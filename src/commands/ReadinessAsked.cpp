#include "commands/ReadinessAsked.h"

namespace rackbook {

ReadinessQuestion readinessAsked(const SheetRequest& request) {
    ReadinessQuestion question;
    question.asOf = request.asOf;
    question.edition = request.subject.edition ? request.subject.edition->id : std::string();
    question.namesHolders = request.namesHolders;
    question.atGallery = request.sheetTemplate.label("atGallery");
    question.atHolder = request.sheetTemplate.label("atHolder");
    return question;
}

}  // namespace rackbook
