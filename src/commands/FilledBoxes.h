// The boxes of a bench sheet as they were filled in, and what is wrong with them.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "base/Finding.h"
#include "commands/ReturnedSheet.h"
#include "sheets/SheetWords.h"

namespace rackbook {

class FilledBoxes {
public:
    // Finds boxes that are gone, that stand twice, and that no such sheet has. Both must outlive
    // it; the words are those that the sheet was printed with.
    FilledBoxes(const ReturnedSheet& sheet, const SheetWords& words);

    const ReturnedSheet& sheet() const { return m_sheet; }
    const SheetWords& words() const { return m_words; }

    // Without space at either end; empty where nothing stands there.
    std::string text(const std::string& name) const;
    bool isTicked(const std::string& name) const;

    // Whether nothing was filled in but what stood there already.
    bool isBlank() const;

    // The box is told by its printed label and its name.
    void refuse(const std::string& name, const std::string& what, const std::string& remedy,
                const std::string& value = {});

    const std::vector<Finding>& findings() const { return m_findings; }

private:
    std::string labelOf(const std::string& name) const;
    const FormValue* valueAt(const std::string& name) const;
    void checkPresence();

    const ReturnedSheet& m_sheet;
    const SheetWords& m_words;
    std::map<std::string, int> m_expected;  // working number, or 0
    std::map<std::string, const FormValue*> m_values;
    std::vector<Finding> m_findings;
};

}  // namespace rackbook
