#include "pdf/ModelCheck.h"

#include <cmath>
#include <vector>

#include "base/Error.h"
#include "base/Finding.h"
#include "base/Numbers.h"
#include "sheets/TextRules.h"

namespace rackbook {

namespace {

void checkMeasures(const std::vector<double>& measures) {
    for (const double measure : measures)
        if (!std::isfinite(measure))
            throw RenderError("page model", "a measure is not a finite number",
                              "Report this fault of the program.");
}

void checkColour(const LabColour& colour) {
    const auto within = [](double value, double least, double most) {
        return value >= least && value <= most;
    };
    if (!within(colour.lightness, 0, 100) || !within(colour.a, -160, 160) ||
        !within(colour.b, -160, 160))
        throw RenderError("swatch",
                          "the colour L* " + formatShortest(colour.lightness) + ", a* " +
                              formatShortest(colour.a) + ", b* " + formatShortest(colour.b) +
                              " lies outside 0 to 100 and -160 to 160",
                          "Check the reading that it came from.");
}

void checkText(const TextRun& run, const PdfFonts& fonts) {
    if (const auto missing = fonts.missingGlyph(run.role, run.text))
        throw RenderError("page model",
                          "no font of this sheet has " + codePointName(*missing) + " in \"" +
                              excerpt(run.text) + "\"",
                          "Write the text without it, or add a font family that has it to the "
                          "template.");
}

}  // namespace

void checkModel(const PageModel& model, const PdfFonts& fonts) {
    if (model.pages.empty())
        throw RenderError("page model", "it has no pages", "Report this fault of the program.");
    checkMeasures({model.paper.width_mm, model.paper.height_mm});
    for (const Page& page : model.pages) {
        for (const Swatch& swatch : page.swatches) {
            checkMeasures(
                {swatch.x_mm, swatch.y_mm, swatch.width_mm, swatch.height_mm, swatch.outline_mm});
            checkColour(swatch.colour);
        }
        for (const Rule& rule : page.rules)
            checkMeasures(
                {rule.fromX_mm, rule.fromY_mm, rule.toX_mm, rule.toY_mm, rule.width_mm, rule.grey});
        for (const TextRun& run : page.texts) {
            checkMeasures({run.x_mm, run.baselineY_mm, run.size_pt, run.grey});
            checkText(run, fonts);
        }
    }
}

}  // namespace rackbook
