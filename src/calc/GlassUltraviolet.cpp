#include "calc/GlassUltraviolet.h"

#include <algorithm>

#include "calc/EstimateMath.h"

namespace rackbook {

namespace {

struct GlassFigures {
    Estimate ultraviolet;  // transmittance, 315–400 nm
    double visible;        // transmittance as EN 410 weighs it
};

// From memory of published tables by the method of EN 410, whose ultraviolet goes from 280 to
// 380 nm, and of skin doctors' measurements up to 400 nm, which come out somewhat higher.
GlassFigures figuresOf(Glass glass) {
    switch (glass) {
        case Glass::open:
            return {Estimate::exactly(1), 1};
        case Glass::clearSingle:
            return {{0.55, 0.65, 0.75}, 0.88};
        case Glass::clearDouble:
            return {{0.35, 0.47, 0.58}, 0.80};
        case Glass::coatedDouble:
            return {{0.12, 0.27, 0.40}, 0.76};
        case Glass::laminated:
            return {{0.001, 0.01, 0.05}, 0.87};
        case Glass::filtering:
            return {{0.001, 0.01, 0.03}, 0.85};
    }
    return {Estimate::exactly(1), 1};
}

// Any glass but laminated or filtering, which a studio would know of.
constexpr GlassFigures anyClear{{0.15, 0.50, 0.75}, 0.83};

// Walls and ceilings, of ultraviolet beside light: white paint with titanium dioxide takes nearly
// all ultraviolet away, but near a window most of the light comes straight from the sky (our
// guess).
constexpr Estimate walls{0.5, 0.8, 1};

}  // namespace

Estimate ultravioletThroughGlass(const Light& light) {
    if (light.glassUltravioletTransmittance)
        return Estimate::exactly(*light.glassUltravioletTransmittance);
    return light.glass ? figuresOf(*light.glass).ultraviolet : anyClear.ultraviolet;
}

Estimate ultravioletInRoom(const Light& light) {
    const double visible = light.glassTransmittance.value_or(
        light.glass ? figuresOf(*light.glass).visible : anyClear.visible);
    const Estimate through = ultravioletThroughGlass(light);
    // Whoever states what glass lets through of both has measured it; a ratio above 1 would mean
    // that the glass keeps out light alone.
    const double least = std::max(visible, 0.01);
    return independentProductOf(scaled(through, 1 / least), walls);
}

}  // namespace rackbook
