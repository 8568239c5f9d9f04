#include "calc/GlassUltraviolet.h"

#include <algorithm>

#include "calc/EstimateMath.h"

namespace rackbook {

namespace {

struct GlassFigures {
    Estimate ultraviolet;  // transmittance, 315–400 nm
    double visible;        // transmittance as EN 410 weighs it
};

// Visible: published window data sets have 0.881 for clear glass of 6 mm, 0.89 for 4 mm, and 0.76
// for two panes of 6 mm; two of 4 mm let through about 0.8. Ultraviolet of clear and coated glass:
// from memory of tables by the method of EN 410, which goes from 280 to 380 nm, widened upwards for
// what skin doctors measured up to 400 nm: of UV-A, smooth ordinary glass let through 74.3 %,
// laminated glass and glass with a film against sun none that was measurable ("The role of glass as
// a barrier against the transmission of ultraviolet radiation: an experimental study",
// Photodermatology, Photoimmunology & Photomedicine 25, 2009). Visible of the others: from memory.
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

namespace {

// Of ultraviolet let through, over light. Where only the light was recorded, as of tinted glass,
// the kind of glass says how the two go together: darker glass lets through less of both.
Estimate besideLight(const Light& light) {
    const GlassFigures usual = light.glass ? figuresOf(*light.glass) : anyClear;
    if (light.glassUltravioletTransmittance) {
        const double visible = std::max(light.glassTransmittance.value_or(usual.visible), 0.01);
        return Estimate::exactly(*light.glassUltravioletTransmittance / visible);
    }
    return scaled(usual.ultraviolet, 1 / usual.visible);
}

}  // namespace

Estimate ultravioletInRoom(const Light& light) {
    return independentProductOf(besideLight(light), walls);
}

double ultravioletBesideClearGlass(const Light& light) {
    const GlassFigures clear = figuresOf(Glass::clearSingle);
    if (light.lightKind == LightKind::outdoors)
        return clear.visible / clear.ultraviolet.best;
    const bool isStated = light.glass || light.glassUltravioletTransmittance;
    return isStated ? besideLight(light).best / (clear.ultraviolet.best / clear.visible) : 1;
}

}  // namespace rackbook
