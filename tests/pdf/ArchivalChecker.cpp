#include "ArchivalChecker.h"

#include "archival/ArchivalRules.h"

namespace rackbook {

std::vector<ArchivalFinding> archivalFindings(const std::string& bytes, PdfLevel level) {
    const PdfJson file(bytes);
    const std::vector<ContentStep> steps = stepsOf(file);
    ArchivalCase checked{file, steps, level, {}};
    for (const auto check :
         {checkBytes, checkObjects, checkMetadata, checkColour, checkFonts, checkGraphicsState,
          checkInteraction, checkImages, checkAttachments, checkStructure, checkContent})
        check(checked);
    return checked.findings;
}

std::string linesOf(const std::vector<ArchivalFinding>& findings) {
    std::string lines;
    for (const ArchivalFinding& finding : findings)
        lines += finding.clause + ": " + finding.what + "\n";
    return lines;
}

}  // namespace rackbook
