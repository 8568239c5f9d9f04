// The operators of one page (ISO 32000-1, annex A), from lengths in mm from the top left corner.
#pragma once

#include <string>
#include <string_view>

#include "base/Numbers.h"
#include "sheets/PageModel.h"

namespace rackbook {

class ContentStream {
public:
    explicit ContentStream(double pageHeight_mm) : m_height_mm(pageHeight_mm) {}

    ContentStream& number(double value) {
        m_text += formatFixed(value, 3);
        m_text += ' ';
        return *this;
    }
    ContentStream& length(double length_mm) { return number(length_mm / mmPerPoint); }
    ContentStream& point(double x_mm, double y_mm) {
        return length(x_mm).length(m_height_mm - y_mm);
    }
    ContentStream& word(std::string_view word) {
        m_text += word;
        m_text += ' ';
        return *this;
    }
    // The last word of a line.
    ContentStream& operation(std::string_view name) {
        m_text += name;
        m_text += '\n';
        return *this;
    }
    ContentStream& rectangle(const Box& box) {
        return point(box.x_mm, box.y_mm + box.height_mm)
            .length(box.width_mm)
            .length(box.height_mm)
            .operation("re");
    }

    const std::string& text() const { return m_text; }

private:
    double m_height_mm;
    std::string m_text;
};

}  // namespace rackbook
