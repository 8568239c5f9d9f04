// What the tests of whole sheets share: shipped templates, a measurer for all that stands on them,
// and a sheet as text.
#pragma once

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <set>
#include <string>

#include "EvenMeasurer.h"
#include "base/Files.h"
#include "base/Numbers.h"
#include "exchange/TreeJson.h"
#include "sheets/CommonLabels.h"
#include "sheets/PageModel.h"
#include "sheets/SheetWords.h"
#include "sheets/Template.h"
#include "sheets/TemplateFiles.h"

namespace rackbook::test {

// Has every character below the private use area.
class SheetMeasurer : public EvenMeasurer {
public:
    std::optional<char32_t> missingGlyph(FontRole, std::string_view) const override {
        return std::nullopt;
    }
};

constexpr const char* fixedClock = "2026-03-20T12:00:00Z";

// The templates of the source tree, and files of a studio that a test makes up.
inline TemplateSource templateSource(const std::map<std::string, Tree>& own = {}) {
    TemplateSource source;
    source.shipped = RACKBOOK_TEMPLATES;
    source.read = [own](const std::string& file) {
        const auto found = own.find(file);
        return found != own.end() ? found->second : treeFromJson(readFile(file, 1 << 20), file);
    };
    source.exists = [own](const std::string& file) {
        return own.count(file) > 0 || fileExists(file);
    };
    source.foldersWith = [](const std::string& folder, const std::string& file) {
        std::vector<std::string> names;
        for (const char* language : {"de", "en", "es", "fr", "ja"})
            if (fileExists(pathOf(pathOf(folder, language), file)))
                names.push_back(language);
        return names;
    };
    return source;
}

inline SheetTemplate shippedTemplate(const std::string& sheet, const TemplateRules& rules,
                                     const std::string& language = "en") {
    const TemplateWish wish{sheet, {}, language, {}};
    return SheetTemplate::read(gatherTemplate(templateSource(), wish), rules);
}

// The shipped template with other sections.
inline SheetTemplate templateWith(const std::string& sheet, const TemplateRules& rules,
                                  const std::vector<std::string>& sections) {
    Tree list = Tree::array();
    for (const std::string& section : sections)
        list.add(section);
    Tree own = Tree::object();
    own.set("basedOn", sheet + ".json").set("sections", list);
    const TemplateWish wish{sheet, "own.json", {}, {}};
    return SheetTemplate::read(gatherTemplate(templateSource({{"own.json", own}}), wish), rules);
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

// A text without its line ends: these are spaces, but for those after a hyphen, dash or slash and
// between East Asian characters.
inline std::string inOneLine(const std::string& lines) {
    std::string all;
    for (std::size_t at = 0; at < lines.size(); ++at) {
        const bool joins = all.empty() || std::string("-/").find(all.back()) != std::string::npos ||
                           (all.back() < 0 && at + 1 < lines.size() && lines[at + 1] < 0);
        if (lines[at] != '\n')
            all += lines[at];
        else if (!joins)
            all += ' ';
    }
    return all;
}

// Every heading of a column stands there as one of the template's labels has it, so that none of
// its words was broken.
inline void expectWholeHeadings(const PageModel& model, const SheetTemplate& shipped,
                                const TemplateRules& rules) {
    std::set<std::string> known;
    for (const std::vector<std::string>* keys : {&rules.labels, &commonLabels()})
        for (const std::string& key : *keys) {
            known.insert(inOneLine(shipped.label(key)));
            known.insert(inOneLine(asHeading(shipped.label(key))));
        }
    std::map<int, std::string> headings;
    for (const Page& page : model.pages)
        for (const TextRun& run : page.texts) {
            const bool isHeading = run.element != noElement &&
                                   model.structure[static_cast<std::size_t>(run.element)].kind ==
                                       ElementKind::headerCell;
            if (isHeading)
                headings[run.element] += (headings[run.element].empty() ? "" : "\n") + run.text;
        }
    for (const auto& [element, heading] : headings)
        EXPECT_EQ(known.count(inOneLine(heading)), 1u)
            << shipped.sheet() << " " << shipped.language() << ": " << heading;
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
