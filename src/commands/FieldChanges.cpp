#include "commands/FieldChanges.h"

#include <algorithm>

namespace rackbook {

std::vector<FieldChange> changesBetween(const Record& before, const Record& after,
                                        FieldStyle style) {
    const auto was = fieldTexts(before, style);
    const auto is = fieldTexts(after, style);
    const auto textIn = [](const auto& texts, const std::string& name) {
        for (const auto& [field, text] : texts)
            if (field == name)
                return text;
        return std::string();
    };
    std::vector<std::string> names;
    for (const auto* texts : {&was, &is})
        for (const auto& [field, text] : *texts)
            if (std::find(names.begin(), names.end(), field) == names.end())
                names.push_back(field);
    std::vector<FieldChange> changes;
    for (const std::string& name : names)
        if (textIn(was, name) != textIn(is, name) && name != "contact")
            changes.push_back({name, textIn(was, name), textIn(is, name)});
    return changes;
}

}  // namespace rackbook
