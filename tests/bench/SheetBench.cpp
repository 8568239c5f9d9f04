#include "SheetBench.h"

#include <cairo-pdf.h>

#include <algorithm>
#include <ctime>
#include <memory>
#include <string>

#include "base/Files.h"
#include "pdf/PdfWriter.h"

namespace rackbook {

namespace {

// Of the processor: what else the machine does must not count.
double processorSeconds() {
    return static_cast<double>(std::clock()) / CLOCKS_PER_SEC;
}

// A small picture made long by comment segments (ITU-T T.81, B.2.4.5) after its first marker.
PictureFile longPicture() {
    const std::string file = std::string(RACKBOOK_SOURCE_DIR) + "/tests/pdf/pictures/rgb.jpg";
    std::string bytes = readFile(file, 1 << 20);
    const std::string comment = std::string("\xFF\xFE\xFF\xFF", 4) + std::string(0xFFFD, 'x');
    std::string comments;
    while (comments.size() < 2000000)
        comments += comment;
    bytes.insert(2, comments);
    return {"image/jpeg", std::make_shared<const std::string>(std::move(bytes)), 48, 32, 1};
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

double points(double length_mm) {
    return length_mm / mmPerPoint;
}

cairo_status_t append(void* bytes, const unsigned char* part, unsigned length) {
    static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(part), length);
    return CAIRO_STATUS_SUCCESS;
}

void drawWithCairo(cairo_t* context, const Page& page, cairo_surface_t* picture) {
    for (const Fill& fill : page.fills) {
        for (const Box& box : fill.boxes)
            cairo_rectangle(context, points(box.x_mm), points(box.y_mm), points(box.width_mm),
                            points(box.height_mm));
        cairo_fill(context);
    }
    for (const Picture& shown : page.pictures) {
        cairo_save(context);
        cairo_translate(context, points(shown.box.x_mm), points(shown.box.y_mm));
        cairo_scale(context, points(shown.box.width_mm) / 48, points(shown.box.height_mm) / 32);
        cairo_set_source_surface(context, picture, 0, 0);
        cairo_paint(context);
        cairo_restore(context);
    }
    for (const TextRun& run : page.texts) {
        cairo_set_font_size(context, run.size_pt);
        cairo_move_to(context, points(run.x_mm), points(run.baselineY_mm));
        cairo_show_text(context, run.text.c_str());
    }
    cairo_show_page(context);
}

std::string writtenByCairo(const PageModel& model) {
    std::string bytes;
    cairo_surface_t* picture = cairo_image_surface_create(CAIRO_FORMAT_RGB24, 48, 32);
    const std::string& jpeg = *model.pictures[0].bytes;
    cairo_surface_set_mime_data(picture, CAIRO_MIME_TYPE_JPEG,
                                reinterpret_cast<const unsigned char*>(jpeg.data()), jpeg.size(),
                                nullptr, nullptr);
    cairo_surface_t* surface = cairo_pdf_surface_create_for_stream(
        append, &bytes, points(model.paper.width_mm), points(model.paper.height_mm));
    cairo_t* context = cairo_create(surface);
    cairo_select_font_face(context, "Noto Sans", CAIRO_FONT_SLANT_NORMAL, CAIRO_FONT_WEIGHT_NORMAL);
    for (const Page& page : model.pages)
        drawWithCairo(context, page, picture);
    cairo_destroy(context);
    cairo_surface_finish(surface);
    cairo_surface_destroy(surface);
    cairo_surface_destroy(picture);
    return bytes;
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
