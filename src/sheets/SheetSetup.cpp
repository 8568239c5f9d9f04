#include "sheets/SheetSetup.h"

namespace rackbook {

FlowSetup sheetSetup(const SheetTemplate& sheetTemplate, const SheetWords& words,
                     const std::string& studio, CivilMinute asOf, const std::string& created) {
    FlowSetup setup = sheetTemplate.flowSetup();
    const std::string day = words.filled("footer", {{"date", words.day(asOf)}});
    setup.footer = studio.empty() ? day : studio + " · " + day;
    setup.info.author = studio;
    setup.info.created = created;
    return setup;
}

}  // namespace rackbook
