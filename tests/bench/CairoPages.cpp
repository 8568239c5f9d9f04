#include "CairoPages.h"

#include <cairo-pdf.h>

#include "sheets/TextMeasurer.h"

namespace rackbook {

namespace {

double points(double length_mm) {
    return length_mm / mmPerPoint;
}

cairo_status_t append(void* bytes, const unsigned char* part, unsigned length) {
    static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(part), length);
    return CAIRO_STATUS_SUCCESS;
}

void drawWithCairo(cairo_t* context, const Page& page, cairo_surface_t* picture) {
    const double width = cairo_image_surface_get_width(picture);
    const double height = cairo_image_surface_get_height(picture);
    for (const Fill& fill : page.fills) {
        for (const Box& box : fill.boxes)
            cairo_rectangle(context, points(box.x_mm), points(box.y_mm), points(box.width_mm),
                            points(box.height_mm));
        cairo_fill(context);
    }
    for (const Picture& shown : page.pictures) {
        cairo_save(context);
        cairo_translate(context, points(shown.box.x_mm), points(shown.box.y_mm));
        cairo_scale(context, points(shown.box.width_mm) / width,
                    points(shown.box.height_mm) / height);
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

}  // namespace

std::string writtenByCairo(const PageModel& model) {
    std::string bytes;
    const PictureFile& file = model.pictures[0];
    cairo_surface_t* picture =
        cairo_image_surface_create(CAIRO_FORMAT_RGB24, file.width_px, file.height_px);
    const std::string& jpeg = *file.bytes;
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

}  // namespace rackbook
