#include "SheetBench.h"

#include <algorithm>
#include <ctime>
#include <string>

#include "CairoPages.h"
#include "LongPicture.h"
#include "pdf/PdfWriter.h"

namespace rackbook {

namespace {

// Of the processor: what else the machine does must not count.
double processorSeconds() {
    return static_cast<double>(std::clock()) / CLOCKS_PER_SEC;
}

std::string lineOfText(std::size_t page, std::size_t line) {
    return "Impression " + std::to_string(page * 60 + line) +
           ": three films of warm grey, 0.125 g on the sheet, dry after " +
           std::to_string(1 + (page + line) % 30) + " days";
}

Fill squares(std::size_t page, int element) {
    Fill fill;
    fill.element = element;
    for (std::size_t i = 0; fill.boxes.size() < 300; ++i)
        if ((i * 7919 + page * 104729) % 13 < 6)
            fill.boxes.push_back({160 + 0.8 * static_cast<double>(i % 33),
                                  240 + 0.8 * static_cast<double>(i / 33), 0.8, 0.8});
    return fill;
}

void addPage(PageModel& model, StructureBuilder& structure, std::size_t number) {
    Page page;
    const int section = structure.add(ElementKind::section);
    for (std::size_t line = 0; line < 60; ++line)
        page.texts.push_back({FontRole::body, 8, 20, 20 + 3.5 * static_cast<double>(line),
                              lineOfText(number, line), 0,
                              structure.add(ElementKind::paragraph, section)});
    const int figure = structure.add(ElementKind::figure, section, "Invented fields of colour");
    page.fills.push_back(squares(number, figure));
    page.pictures.push_back({0, {20, 240, 48, 32}, figure});
    model.pages.push_back(std::move(page));
}

PageModel longDocument(std::size_t pages) {
    PageModel model;
    model.info.title = "A long document";
    model.info.language = "en";
    model.info.created = "2026-03-04T08:30:00Z";
    model.pictures = {longPicture()};
    StructureBuilder structure;
    for (std::size_t i = 0; i < pages; ++i)
        addPage(model, structure, i);
    model.structure = structure.take();
    return model;
}

}  // namespace

SheetFigures measuredSheets(std::size_t pages) {
    const PageModel model = longDocument(pages);
    const PdfFonts fonts;
    SheetFigures figures;
    figures.pages = pages;
    for (int round = 0; round < 3; ++round) {
        double start = processorSeconds();
        figures.bytes = writePdf(model, fonts).size();
        const double seconds = processorSeconds() - start;
        start = processorSeconds();
        figures.otherBytes = writtenByCairo(model).size();
        const double otherSeconds = processorSeconds() - start;
        figures.writeSeconds = round == 0 ? seconds : std::min(figures.writeSeconds, seconds);
        figures.otherSeconds =
            round == 0 ? otherSeconds : std::min(figures.otherSeconds, otherSeconds);
    }
    return figures;
}

}  // namespace rackbook
