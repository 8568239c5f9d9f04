// The sheets that can be made. A new one is a row in sheetKinds() and a template.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "records/RecordSet.h"
#include "sheets/PageModel.h"
#include "sheets/Template.h"
#include "sheets/TextMeasurer.h"

namespace rackbook {

struct SheetRequest {
    const RecordSet& records;
    std::optional<Edition> edition;
    CivilMinute asOf = 0;
    bool namesHolders = false;
    const SheetTemplate& sheetTemplate;
    const TextMeasurer& measurer;
    std::string created;  // as in DocumentInfo
};

struct SheetKind {
    const char* name;  // of the template too
    const char* what;
    bool needsEdition;
    TemplateRules (*rules)();
    PageModel (*make)(const SheetRequest& request);
    // Without ".pdf"; `code` is empty where no edition was named.
    std::string (*fileName)(const std::string& code, CivilMinute asOf);
};

const std::vector<SheetKind>& sheetKinds();

std::vector<std::string> sheetNames();

// Throws UsageError with the nearest name where there is none of that name.
const SheetKind& sheetKindNamed(const std::string& name);

}  // namespace rackbook
