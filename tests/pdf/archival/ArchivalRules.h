// The families of rules, a file each.
#pragma once

#include "../ArchivalChecker.h"
#include "ContentSteps.h"
#include "PdfJson.h"

namespace rackbook {

struct ArchivalCase {
    const PdfJson& file;
    const std::vector<ContentStep>& steps;
    PdfLevel level;
    std::vector<ArchivalFinding> findings;

    void add(const std::string& clause, const std::string& what) {
        findings.push_back({clause, what});
    }
    bool isFirstPart() const { return level == PdfLevel::a1b; }
};

void checkBytes(ArchivalCase& checked);          // header, trailer, table of objects, streams
void checkObjects(ArchivalCase& checked);        // filters, limits, what a catalog may not have
void checkMetadata(ArchivalCase& checked);       // XMP, and whether Info says the same
void checkColour(ArchivalCase& checked);         // output intent, spaces, operators of colour
void checkFonts(ArchivalCase& checked);          // embedding, codes, widths, Unicode
void checkGraphicsState(ArchivalCase& checked);  // transparency, transfer functions, halftones
void checkInteraction(ArchivalCase& checked);    // annotations, forms, actions
void checkImages(ArchivalCase& checked);         // images and forms
void checkAttachments(ArchivalCase& checked);    // embedded files
void checkStructure(ArchivalCase& checked);      // tags
void checkContent(ArchivalCase& checked);        // operators and their nesting

// Colour spaces of images are judged like those of operators; `where` is for the finding.
void checkColourSpace(ArchivalCase& checked, const nlohmann::json& space, const std::string& where);

// Calls `visit(dictionary, where)` for each dictionary in the file, nested ones too.
template <class Visit>
void forEachDictionary(const nlohmann::json& value, const std::string& where, const Visit& visit) {
    if (value.is_object())
        visit(value, where);
    if (value.is_structured())
        for (const auto& [key, member] : value.items())
            forEachDictionary(member, where, visit);
}

template <class Visit>
void forEachDictionary(const PdfJson& file, const Visit& visit) {
    for (const auto& [reference, object] : file.objects())
        forEachDictionary(object.value, "object " + reference, visit);
}

}  // namespace rackbook
