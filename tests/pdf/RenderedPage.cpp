#include "RenderedPage.h"

#include <gtest/gtest.h>

#include <sstream>

#include "OutsideReader.h"
#include "base/Files.h"

namespace rackbook {

namespace {

std::string painted(const std::string& pdf, int page) {
    const std::string path = fileWith(pdf, "painted.pdf");
    const std::string number = std::to_string(page);
    const ToolRun run = readWith("pdftoppm -r 254 -singlefile -f " + number + " -l " + number +
                                 " " + path + " " + path);
    EXPECT_EQ(run.exitCode, 0) << run.output;
    return readFile(path + ".ppm", 1 << 26);
}

}  // namespace

PixelMap::PixelMap(std::string bytes) : m_bytes(std::move(bytes)) {
    std::istringstream heading(m_bytes.substr(0, 64));
    std::string kind;
    int most = 0;
    heading >> kind >> m_width >> m_height >> most;
    EXPECT_EQ(kind, "P6");
    EXPECT_EQ(most, 255);
    m_start = static_cast<std::size_t>(heading.tellg()) + 1;
}

Pixel PixelMap::at(int x, int y) const {
    const std::size_t at = m_start + 3 * static_cast<std::size_t>(y * m_width + x);
    const auto part = [&](std::size_t i) {
        return static_cast<int>(static_cast<unsigned char>(m_bytes.at(at + i)));
    };
    return {part(0), part(1), part(2)};
}

RenderedPage::RenderedPage(const std::string& pdf, int page) : m_pixels(painted(pdf, page)) {}

Pixel RenderedPage::at(double x_mm, double y_mm) const {
    return m_pixels.at(static_cast<int>(x_mm * 10), static_cast<int>(y_mm * 10));
}

}  // namespace rackbook
