// What a sheet looks like and what it carries, as plain values: the writer draws it, the tests read
// it. Lengths in mm from the top left corner of the page, type sizes in points (1 pt = 25.4/72 mm).
#pragma once

#include <cstddef>
#include <memory>
#include <string>
#include <vector>

#include "sheets/Structure.h"
#include "sheets/TextMeasurer.h"

namespace rackbook {

// CIELAB under D50, 2° observer. lightness 0–100; a and b -160 … 160.
struct LabColour {
    double lightness = 0;
    double a = 0;
    double b = 0;
};

// Each thing that is drawn names the element of the structure that it belongs to; what belongs to
// none is decoration or running matter, which a reading aloud passes over.

struct TextRun {
    FontRole role = FontRole::body;
    double size_pt = 0;
    double x_mm = 0;          // left edge
    double baselineY_mm = 0;  // from the top of the page
    std::string text;         // NFC, one line, code points up to U+FFFF
    double grey = 0;          // 0 black … 1 white
    int element = noElement;
};

// A straight stroke.
struct Rule {
    double fromX_mm = 0;
    double fromY_mm = 0;
    double toX_mm = 0;
    double toY_mm = 0;
    double width_mm = 0;
    double grey = 0;
    int element = noElement;
};

struct PagePoint {
    double x_mm = 0;
    double y_mm = 0;
};

// A line through two or more points.
struct Curve {
    std::vector<PagePoint> points;
    double width_mm = 0;
    double grey = 0;
    double dash_mm = 0;  // length of dashes and of the gaps between them; 0 for an unbroken line
    int element = noElement;
};

struct Box {
    double x_mm = 0;
    double y_mm = 0;  // top edge
    double width_mm = 0;
    double height_mm = 0;
};

// Rectangles filled at once, so that no seams show where they touch.
struct Fill {
    std::vector<Box> boxes;
    double grey = 0;
    int element = noElement;
};

// A filled rectangle with a thin black outline, which keeps pale colours visible on paper.
struct Swatch {
    double x_mm = 0;
    double y_mm = 0;  // top edge
    double width_mm = 0;
    double height_mm = 0;
    LabColour colour;
    double outline_mm = 0;  // 0 for none
    int element = noElement;
};

// A picture's place; its sides have the proportions of the picture as it is looked at.
struct Picture {
    std::size_t file = 0;  // index into PageModel::pictures
    Box box;
    int element = noElement;
};

struct Page {
    std::vector<TextRun> texts;  // in reading order
    std::vector<Rule> rules;
    std::vector<Swatch> swatches;
    std::vector<Curve> curves;
    std::vector<Fill> fills;
    std::vector<Picture> pictures;
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

// A JPEG or PNG file; a JPEG is passed on as it is. Grey or RGB, 8 bits, without transparency.
struct PictureFile {
    std::string mediaType;  // image/jpeg or image/png
    std::shared_ptr<const std::string> bytes;
    int width_px = 0;  // as stored
    int height_px = 0;
    int orientation = 1;  // 1–8, how it is turned to be looked at (Exif 2.3, tag 0x0112)
};

// A file that is carried inside the sheet.
struct AssociatedFile {
    std::string name;       // a file name
    std::string mediaType;  // application/json …
    std::string description;
    std::string bytes;
};

// A field of the form that the file is, over a box that is drawn on a page.
struct FormField {
    enum class Kind {
        text,
        lines,   // several
        choice,  // one of the choices, or other words
        tick
    };

    std::string name;  // its parts with points between, such as "pull.start"
    Kind kind = Kind::text;
    std::string tooltip;  // what goes in
    std::string value;    // what stands there already; of a tick nothing or "on"
    std::vector<std::string> choices;
    std::size_t page = 0;  // from 0
    Box box;
    double size_pt = 0;       // of what is filled in
    int element = noElement;  // of the kind form
};

struct PageModel {
    PaperSize paper;
    std::vector<Page> pages;
    DocumentInfo info;
    std::vector<StructureElement> structure;  // in reading order, parents before their children
    std::vector<PictureFile> pictures;
    std::vector<AssociatedFile> files;  // the source of what the sheet says
    std::vector<FormField> form;        // in reading order
};

// True where the picture is looked at lying on its side.
inline bool isTurnedSideways(const PictureFile& picture) {
    return picture.orientation >= 5;
}

// Width over height as it is looked at. Pre: both above 0.
inline double proportionsOf(const PictureFile& picture) {
    const double stored = static_cast<double>(picture.width_px) / picture.height_px;
    return isTurnedSideways(picture) ? 1 / stored : stored;
}

}  // namespace rackbook
