// A page as an outside renderer (poppler) paints it.
#pragma once

#include <string>

namespace rackbook {

struct Pixel {
    int red = 0;
    int green = 0;
    int blue = 0;
};

// A picture of the kind P6 (three bytes a pixel after a heading of three lines).
class PixelMap {
public:
    explicit PixelMap(std::string bytes);
    int width() const { return m_width; }
    int height() const { return m_height; }
    Pixel at(int x, int y) const;

private:
    std::string m_bytes;
    std::size_t m_start = 0;
    int m_width = 0;
    int m_height = 0;
};

class RenderedPage {
public:
    // 10 pixels a millimetre.
    RenderedPage(const std::string& pdf, int page);
    Pixel at(double x_mm, double y_mm) const;

private:
    PixelMap m_pixels;
};

}  // namespace rackbook
