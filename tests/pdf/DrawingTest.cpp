// Curves, fills and pictures, as an outside renderer paints them.
#include <gtest/gtest.h>

#include "OutsideReader.h"
#include "RenderedPage.h"
#include "RichSheet.h"
#include "base/Files.h"
#include "pdf/PdfWriter.h"

namespace rackbook {
namespace {

std::string written(const PageModel& model) {
    static const PdfFonts fonts;
    return writePdf(model, fonts);
}

char colourOf(const Pixel& pixel) {
    const bool red = pixel.red > 128;
    const bool green = pixel.green > 128;
    const bool blue = pixel.blue > 128;
    if (red && green && blue)
        return 'w';
    return red ? 'r' : green ? 'g' : blue ? 'b' : '-';
}

TEST(Drawing, CurvesGoThroughTheirPoints) {
    PageModel model = emptySheet();
    model.pages[0].curves.push_back({{{10, 10}, {50, 10}, {50, 40}}, 1, 0.5, 0});
    const RenderedPage page(written(model), 1);
    for (const auto& [x_mm, y_mm] : {std::pair(12.0, 10.0), {49.0, 10.0}, {50.0, 39.0}})
        EXPECT_NEAR(page.at(x_mm, y_mm).green, 128, 2) << x_mm << " " << y_mm;
    EXPECT_EQ(page.at(30, 11).green, 255);
    EXPECT_EQ(page.at(30, 40).green, 255) << "it is not filled or closed";
}

TEST(Drawing, DashesAndGapsAreOfOneLength) {
    PageModel model = emptySheet();
    model.pages[0].curves.push_back({{{10, 10}, {50, 10}}, 1, 0, 4});
    model.pages[0].curves.push_back({{{10, 20}, {50, 20}}, 1, 0, 0});
    const RenderedPage page(written(model), 1);
    for (int i = 0; i < 10; ++i)
        EXPECT_EQ(page.at(12 + 4 * i, 10).red, i % 2 == 0 ? 0 : 255) << i;
    EXPECT_EQ(page.at(16, 20).red, 0) << "dashes end with their curve";
}

// Boxes that meet between pixels, filled one by one, would leave a grey line.
TEST(Drawing, FillsShowNoSeams) {
    PageModel model = emptySheet();
    model.pages[0].fills.push_back({{{10, 10, 5.035, 5}, {15.035, 10, 5, 5}}, 0});
    model.pages[0].fills.push_back({{{30, 10, 5, 5}, {32, 12, 5, 5}}, 0.5});
    const std::string bytes = written(model);
    const RenderedPage page(bytes, 1);
    for (const double x_mm : {14.95, 15.0, 15.05, 15.1})
        EXPECT_EQ(page.at(x_mm, 12).red, 0) << x_mm;
    EXPECT_NEAR(page.at(33, 13).red, 128, 2) << "where boxes overlap";
    EXPECT_EQ(page.at(22, 12).red, 255);
}

// Exif 2.3, tag 0x0112: which sides of what is looked at the first row and column of the file are.
// Fields above left, above right, below left, below right.
TEST(Drawing, PicturesAreTurnedAsTheirOrientationSays) {
    const std::vector<std::string> looks = {"rgbw", "grwb", "wbgr", "bwrg",
                                            "rbgw", "brwg", "wgbr", "gwrb"};
    for (const std::string name : {"rgb.jpg", "rgb.png"})
        for (int orientation = 1; orientation <= 8; ++orientation) {
            PageModel model = emptySheet();
            model.pictures = {samplePicture(name, orientation)};
            const double width_mm = 20 * proportionsOf(model.pictures[0]);
            model.pages[0].pictures.push_back({0, {20, 30, width_mm, 20}});
            const RenderedPage page(written(model), 1);
            std::string look;
            for (const double y_mm : {35.0, 45.0})
                for (const double share : {0.25, 0.75})
                    look += colourOf(page.at(20 + share * width_mm, y_mm));
            EXPECT_EQ(look, looks[static_cast<std::size_t>(orientation - 1)])
                << name << " " << orientation;
            EXPECT_EQ(colourOf(page.at(20.5 + width_mm, 40)), 'w');
            EXPECT_EQ(colourOf(page.at(21, 29.5)), 'w');
            EXPECT_EQ(colourOf(page.at(21, 50.5)), 'w');
        }
}

TEST(Drawing, JpegsAreHeldByteForByteAndOnce) {
    PageModel model = richSheet();
    model.pictures.push_back(samplePicture("grey.jpg", 6));
    model.pages[0].pictures.push_back({2, {60, 60, 10, 15}, noElement});
    const std::string path = fileWith(written(model), "pictures.pdf");
    const ToolRun list = readWith("pdfimages -list " + path);
    EXPECT_EQ(timesIn(list.output, " jpeg "), 3u) << "two places of one and one of the other\n"
                                                  << list.output;
    const ToolRun plain = readWith("qpdf --qdf --object-streams=disable " + path + " -");
    EXPECT_EQ(timesIn(plain.output, "/Subtype /Image"), 3u);
    EXPECT_EQ(timesIn(plain.output, "/Interpolate true"), 0u);
    EXPECT_EQ(timesIn(plain.output, "/SMask"), 0u);
    ASSERT_EQ(readWith("pdfimages -all " + path + " " + path).exitCode, 0);
    EXPECT_EQ(readFile(path + "-000.jpg", 1 << 20), *model.pictures[0].bytes);
    EXPECT_EQ(readFile(path + "-001.jpg", 1 << 20), *model.pictures[2].bytes);
}

TEST(Drawing, PngsKeepTheirPixels) {
    PageModel model = emptySheet();
    for (const char* name : {"rgb.png", "palette.png", "grey.png"}) {
        model.pages[0].pictures.push_back({model.pictures.size(), {10, 10, 30, 20}});
        model.pictures.push_back(samplePicture(name));
    }
    const std::string path = fileWith(written(model), "pngs.pdf");
    ASSERT_EQ(readWith("pdfimages " + path + " " + path).exitCode, 0);
    for (const char* number : {"000", "001"}) {
        const PixelMap pixels(readFile(path + "-" + number + ".ppm", 1 << 20));
        ASSERT_EQ(pixels.width(), 48);
        ASSERT_EQ(pixels.height(), 32);
        for (int y = 0; y < 32; ++y)
            for (int x = 0; x < 48; ++x) {
                const bool left = x < 24;
                const bool above = y < 16;
                const Pixel pixel = pixels.at(x, y);
                EXPECT_EQ(pixel.red, (left && above) || (!left && !above) ? 255 : 0)
                    << x << " " << y;
                EXPECT_EQ(pixel.green, left ? 0 : 255) << x << " " << y;
                EXPECT_EQ(pixel.blue, above ? 0 : 255) << x << " " << y;
            }
    }
    const ToolRun list = readWith("pdfimages -list " + path);
    EXPECT_EQ(timesIn(list.output, " gray    1   8 "), 1u) << list.output;
    EXPECT_EQ(timesIn(list.output, " rgb     3   8 "), 2u) << list.output;
}

}  // namespace
}  // namespace rackbook
