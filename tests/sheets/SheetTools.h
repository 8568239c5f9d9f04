// What the tests of whole sheets share: shipped templates, a measurer for all that stands on them,
// and a sheet as text.
#pragma once

#include <cmath>
#include <string>

#include "EvenMeasurer.h"
#include "base/Files.h"
#include "base/Numbers.h"
#include "exchange/TreeJson.h"
#include "sheets/PageModel.h"
#include "sheets/Template.h"

namespace rackbook::test {

// Has every character below the private use area.
class SheetMeasurer : public EvenMeasurer {
public:
    std::optional<char32_t> missingGlyph(FontRole, std::string_view) const override {
        return std::nullopt;
    }
};

constexpr const char* fixedClock = "2026-03-20T12:00:00Z";

inline std::string templateFile(const std::string& sheet) {
    return std::string(RACKBOOK_TEMPLATES) + "/" + sheet + ".json";
}

inline SheetTemplate shippedTemplate(const std::string& sheet, const TemplateRules& rules) {
    const std::string file = templateFile(sheet);
    return SheetTemplate::read(treeFromJson(readFile(file, 1 << 20), file), file, rules);
}

// The shipped template with other sections.
inline SheetTemplate templateWith(const std::string& sheet, const TemplateRules& rules,
                                  const std::vector<std::string>& sections) {
    const std::string file = templateFile(sheet);
    const Tree whole = treeFromJson(readFile(file, 1 << 20), file);
    Tree changed = Tree::object();
    for (const auto& [name, value] : *whole.asObject()) {
        Tree list = Tree::array();
        for (const std::string& section : sections)
            list.add(section);
        changed.set(name, name == "sections" ? list : value);
    }
    return SheetTemplate::read(changed, file, rules);
}

// All runs in reading order, one a line.
inline std::string wordsOf(const PageModel& model) {
    std::string all;
    for (const Page& page : model.pages)
        for (const TextRun& run : page.texts)
            all += run.text + "\n";
    return all;
}

// Whether the text stands on the sheet, however its lines were broken inside one part of it.
inline bool says(const PageModel& model, const std::string& text) {
    std::string all = wordsOf(model);
    for (char& c : all)
        c = c == '\n' ? ' ' : c;
    return all.find(text) != std::string::npos;
}

// "page 1", then for each baseline its height in mm and its runs with a bar between them.
inline std::string linesOf(const PageModel& model) {
    std::string all;
    for (std::size_t i = 0; i < model.pages.size(); ++i) {
        all += "page " + std::to_string(i + 1) + "\n";
        const Page& page = model.pages[i];
        double last_mm = -1;
        for (const TextRun& run : page.texts) {
            const bool same = std::abs(run.baselineY_mm - last_mm) < 1e-6;
            all += same ? " | " + run.text
                        : (last_mm < 0 ? "" : "\n") + formatFixed(run.baselineY_mm, 1) + "  " +
                              run.text;
            last_mm = run.baselineY_mm;
        }
        all += "\nswatches " + std::to_string(page.swatches.size()) + "\n";
    }
    return all;
}

}  // namespace rackbook::test
