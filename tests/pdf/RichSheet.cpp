#include "RichSheet.h"

#include "SampleSheet.h"
#include "base/Files.h"
#include "support/Paths.h"

namespace rackbook {

namespace {

int inRow(StructureBuilder& structure, Page& page, int row, int column, double baselineY_mm,
          ElementKind kind, const std::string& text, int columns = 1) {
    const int cell = structure.addCell(kind, row, columns);
    page.texts.push_back(textAt(10 + 25 * column, baselineY_mm, text, cell));
    return cell;
}

void addTable(StructureBuilder& structure, Page& page) {
    const int table = structure.add(ElementKind::table);
    const int header = structure.add(ElementKind::tableRow, table);
    inRow(structure, page, header, 0, 40, ElementKind::headerCell, "Ink");
    inRow(structure, page, header, 1, 40, ElementKind::headerCell, "Colour");
    const int first = structure.add(ElementKind::tableRow, table);
    inRow(structure, page, first, 0, 45, ElementKind::dataCell, "Base");
    const int pale = inRow(structure, page, first, 1, 45, ElementKind::dataCell, "pale");
    page.swatches.push_back({45, 42, 5, 4, {90, 0, 5}, 0.1, pale});
    const int last = structure.add(ElementKind::tableRow, table);
    inRow(structure, page, last, 0, 50, ElementKind::dataCell, "Nothing else", 2);
    page.rules.push_back({10, 41, 60, 41, 0.2, 0, noElement});
}

void addList(StructureBuilder& structure, Page& page) {
    const int item = structure.add(ElementKind::listItem, structure.add(ElementKind::list));
    page.texts.push_back(textAt(10, 56, "1.", structure.add(ElementKind::listLabel, item)));
    page.texts.push_back(textAt(15, 56, "Hang", structure.add(ElementKind::listBody, item)));
}

void addFigure(StructureBuilder& structure, Page& page) {
    const int figure = structure.add(ElementKind::figure, noElement, "Four fields, ρed to white");
    page.pictures.push_back({0, {10, 60, 30, 20}, figure});
    page.curves.push_back({{{12, 62}, {20, 70}, {38, 66}}, 0.4, 0, 1, figure});
    page.fills.push_back({{{12, 74, 2, 2}, {14, 74, 2, 2}}, 0, figure});
    page.texts.push_back(textAt(10, 85, "As printed", structure.add(ElementKind::caption, figure)));
}

}  // namespace

PictureFile samplePicture(const std::string& name, int orientation) {
    const bool isJpeg = name.find(".jpg") != std::string::npos;
    const std::string path = test::sourcePath("tests/pdf/pictures/" + name);
    return {isJpeg ? "image/jpeg" : "image/png",
            std::make_shared<const std::string>(readFile(path, 1 << 20)), 48, 32, orientation};
}

TextRun textAt(double x_mm, double baselineY_mm, const std::string& text, int element) {
    return {FontRole::body, 9, x_mm, baselineY_mm, text, 0, element};
}

PageModel emptySheet() {
    PageModel model;
    model.paper = {100, 100};
    model.pages.resize(1);
    model.info = sampleInfo();
    return model;
}

PageModel richSheet() {
    PageModel model = emptySheet();
    model.pages.resize(2);
    model.pictures = {samplePicture("rgb.jpg"), samplePicture("grey.png")};
    StructureBuilder structure;
    Page& first = model.pages[0];
    Page& second = model.pages[1];
    first.texts.push_back(textAt(10, 15, "Harbour", structure.add(ElementKind::title)));
    const int section = structure.add(ElementKind::section);
    first.texts.push_back(textAt(10, 22, "Layers", structure.add(ElementKind::heading, section)));
    const int paragraph = structure.add(ElementKind::paragraph, section);
    first.texts.push_back(textAt(10, 28, "Thin films,", paragraph));
    first.texts.push_back(textAt(10, 32, "many of them,", paragraph));
    second.texts.push_back(textAt(10, 15, "one a week.", paragraph));
    addTable(structure, first);
    addList(structure, first);
    addFigure(structure, first);
    second.pictures.push_back({0, {10, 30, 15, 10}, noElement});
    second.pictures.push_back({1, {30, 30, 15, 10}, noElement});
    first.texts.push_back(textAt(80, 95, "Page 1 of 2"));
    second.texts.push_back(textAt(80, 95, "Page 2 of 2"));
    model.structure = structure.take();
    model.files = {{"harbour.json", "application/json", "The record, in words & Ωs",
                    "{\"edition\": \"HB\"}\n"},
                   {"Räume.txt", "text/plain", "", std::string("a\0b\r\n", 5)}};
    return model;
}

}  // namespace rackbook
