// What a sheet looks like, as plain values: the writer draws it, the tests read it. Lengths in mm
// from the top left corner of the page, type sizes in points (1 pt = 25.4/72 mm).
#pragma once

#include <string>
#include <vector>

#include "sheets/TextMeasurer.h"

namespace rackbook {

// CIELAB under D50, 2° observer. lightness 0–100; a and b -160 … 160.
struct LabColour {
    double lightness = 0;
    double a = 0;
    double b = 0;
};

struct TextRun {
    FontRole role = FontRole::body;
    double size_pt = 0;
    double x_mm = 0;          // left edge
    double baselineY_mm = 0;  // from the top of the page
    std::string text;         // NFC, one line, code points up to U+FFFF
    double grey = 0;          // 0 black … 1 white
};

// A straight stroke.
struct Rule {
    double fromX_mm = 0;
    double fromY_mm = 0;
    double toX_mm = 0;
    double toY_mm = 0;
    double width_mm = 0;
    double grey = 0;
};

// A filled rectangle with a thin black outline, which keeps pale colours visible on paper.
struct Swatch {
    double x_mm = 0;
    double y_mm = 0;  // top edge
    double width_mm = 0;
    double height_mm = 0;
    LabColour colour;
    double outline_mm = 0;  // 0 for none
};

struct Page {
    std::vector<TextRun> texts;  // in reading order
    std::vector<Rule> rules;
    std::vector<Swatch> swatches;
};

struct PaperSize {
    double width_mm = 210;
    double height_mm = 297;
};

// What the file says about itself. Empty members are left out.
struct DocumentInfo {
    std::string title;
    std::string author;  // the studio
    std::string subject;
    std::string keywords;
    std::string language;  // BCP 47, for instance "en"
    std::string created;   // "2026-03-04T08:30:00Z", or with a shift such as +01:00
    std::string program = "Rackbook";
};

struct PageModel {
    PaperSize paper;
    std::vector<Page> pages;
    DocumentInfo info;
};

}  // namespace rackbook
