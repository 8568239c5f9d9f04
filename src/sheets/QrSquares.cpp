#include "sheets/QrSquares.h"

#include <qrcodegen/qrcodegen.hpp>

#include "base/Error.h"

namespace rackbook {

namespace {

constexpr int quietModules = 4;
constexpr double leastModule_mm = 0.3;

qrcodegen::QrCode encoded(const std::string& text, const std::string& where) {
    try {
        return qrcodegen::QrCode::encodeText(text.c_str(), qrcodegen::QrCode::Ecc::MEDIUM);
    } catch (const qrcodegen::data_too_long&) {
        throw RenderError(where, "a QR code cannot hold " + std::to_string(text.size()) + " bytes",
                          "Shorten what it says.");
    }
}

}  // namespace

Fill qrSquares(const std::string& utf8, double side_mm, int element, const std::string& where) {
    const qrcodegen::QrCode code = encoded(utf8, where);
    const double module_mm = side_mm / (code.getSize() + 2 * quietModules);
    if (module_mm < leastModule_mm)
        throw RenderError(where, "a QR code of this text would be too fine to be read",
                          "Shorten what it says, or give it more room.");
    Fill fill;
    fill.element = element;
    for (int y = 0; y < code.getSize(); ++y) {
        for (int x = 0; x < code.getSize(); ++x) {
            if (!code.getModule(x, y))
                continue;
            const int from = x;
            while (x < code.getSize() && code.getModule(x, y))
                ++x;
            fill.boxes.push_back({(from + quietModules) * module_mm, (y + quietModules) * module_mm,
                                  (x - from) * module_mm, module_mm});
        }
    }
    return fill;
}

}  // namespace rackbook
