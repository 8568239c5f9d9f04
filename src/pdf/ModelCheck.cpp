#include "pdf/ModelCheck.h"

#include <cmath>
#include <initializer_list>
#include <set>

#include "base/Error.h"
#include "base/Finding.h"
#include "base/Numbers.h"
#include "pdf/FileNames.h"
#include "pdf/PictureShape.h"
#include "pdf/PicturesInUse.h"
#include "sheets/TextRules.h"

namespace rackbook {

namespace {

[[noreturn]] void refuseModel(const std::string& what) {
    throw RenderError("page model", what, "Report this fault of the program.");
}

void checkMeasures(std::initializer_list<double> measures) {
    for (const double measure : measures)
        if (!std::isfinite(measure))
            refuseModel("a measure is not a finite number");
}

void checkBox(const Box& box) {
    checkMeasures({box.x_mm, box.y_mm, box.width_mm, box.height_mm});
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

void checkCurve(const Curve& curve) {
    if (curve.points.size() < 2)
        refuseModel("a curve has fewer than two points");
    checkMeasures({curve.width_mm, curve.grey, curve.dash_mm});
    for (const PagePoint& point : curve.points)
        checkMeasures({point.x_mm, point.y_mm});
}

void checkFill(const Fill& fill) {
    if (fill.boxes.empty())
        refuseModel("a fill has no boxes");
    checkMeasures({fill.grey});
    for (const Box& box : fill.boxes)
        checkBox(box);
}

void checkPicture(const Picture& picture, const PageModel& model) {
    if (picture.file >= model.pictures.size())
        refuseModel("a page shows a picture that the sheet lacks");
    checkBox(picture.box);
    if (!(picture.box.width_mm > 0) || !(picture.box.height_mm > 0))
        refuseModel("the place of a picture has no size");
    if (picture.element != noElement &&
        model.structure[static_cast<std::size_t>(picture.element)].alternate.empty())
        throw RenderError(pictureName(picture.file), "no words say what it shows",
                          "Give it a caption.");
}

template <typename Thing>
void checkElements(const std::vector<Thing>& things, const PageModel& model) {
    for (const Thing& thing : things)
        if (thing.element < noElement || thing.element >= static_cast<int>(model.structure.size()))
            refuseModel("a thing belongs to an element that the structure lacks");
}

void checkPage(const Page& page, const PageModel& model, const PdfFonts& fonts) {
    checkElements(page.texts, model);
    checkElements(page.rules, model);
    checkElements(page.swatches, model);
    checkElements(page.curves, model);
    checkElements(page.fills, model);
    checkElements(page.pictures, model);
    for (const Swatch& swatch : page.swatches) {
        checkMeasures(
            {swatch.x_mm, swatch.y_mm, swatch.width_mm, swatch.height_mm, swatch.outline_mm});
        checkColour(swatch.colour);
    }
    for (const Rule& rule : page.rules)
        checkMeasures(
            {rule.fromX_mm, rule.fromY_mm, rule.toX_mm, rule.toY_mm, rule.width_mm, rule.grey});
    for (const Curve& curve : page.curves)
        checkCurve(curve);
    for (const Fill& fill : page.fills)
        checkFill(fill);
    for (const Picture& picture : page.pictures)
        checkPicture(picture, model);
    for (const TextRun& run : page.texts) {
        checkMeasures({run.x_mm, run.baselineY_mm, run.size_pt, run.grey});
        checkText(run, fonts);
    }
}

void checkStructure(const std::vector<StructureElement>& structure) {
    for (std::size_t i = 0; i < structure.size(); ++i) {
        if (structure[i].parent < noElement || structure[i].parent >= static_cast<int>(i))
            refuseModel("an element of the structure stands before its parent");
        if (structure[i].columns < 1)
            refuseModel("a cell reaches across no column");
    }
}

void checkPictureFiles(const std::vector<PictureFile>& pictures) {
    for (std::size_t i = 0; i < pictures.size(); ++i) {
        checkedShape(pictures[i], pictureName(i));
        if (pictures[i].orientation < 1 || pictures[i].orientation > 8)
            refuseModel("the orientation of a picture is not 1 to 8");
    }
}

// Every element of a form shows one field, and none shows two.
void checkForm(const PageModel& model, const PdfFonts& fonts) {
    std::set<std::string> names;
    std::set<int> elements;
    for (const FormField& field : model.form) {
        checkBox(field.box);
        checkMeasures({field.size_pt});
        if (field.page >= model.pages.size() || !(field.box.width_mm > 0) ||
            !(field.box.height_mm > 0))
            refuseModel("the field \"" + excerpt(field.name) + "\" has no place");
        if (field.name.empty() || field.tooltip.empty() || !names.insert(field.name).second)
            refuseModel("the field \"" + excerpt(field.name) +
                        "\" lacks a name of its own, or words");
        const bool isForm =
            field.element >= 0 && field.element < static_cast<int>(model.structure.size()) &&
            model.structure[static_cast<std::size_t>(field.element)].kind == ElementKind::form;
        if (!isForm || !elements.insert(field.element).second)
            refuseModel("the field \"" + excerpt(field.name) + "\" has no element of its own");
        checkText({FontRole::body, field.size_pt, 0, 0, field.value}, fonts);
    }
    for (std::size_t i = 0; i < model.structure.size(); ++i)
        if (model.structure[i].kind == ElementKind::form &&
            elements.count(static_cast<int>(i)) == 0)
            refuseModel("an element of a form shows no field");
}

void checkFiles(const std::vector<AssociatedFile>& files) {
    std::set<std::string> names;
    for (const AssociatedFile& file : files) {
        if (!isPlainFileName(file.name))
            throw RenderError("file inside the sheet",
                              "\"" + excerpt(file.name) + "\" is no file name",
                              "Name it without folders and control characters.");
        if (!names.insert(file.name).second)
            throw RenderError("file inside the sheet",
                              "\"" + excerpt(file.name) + "\" is the name of two files",
                              "Give each file a name of its own.");
        if (!isMediaType(file.mediaType))
            refuseModel("\"" + excerpt(file.mediaType) + "\" is no media type");
    }
}

}  // namespace

void checkModel(const PageModel& model, const PdfFonts& fonts) {
    if (model.pages.empty())
        refuseModel("it has no pages");
    checkMeasures({model.paper.width_mm, model.paper.height_mm});
    checkStructure(model.structure);
    checkPictureFiles(model.pictures);
    checkFiles(model.files);
    checkForm(model, fonts);
    for (const Page& page : model.pages)
        checkPage(page, model, fonts);
}

}  // namespace rackbook
