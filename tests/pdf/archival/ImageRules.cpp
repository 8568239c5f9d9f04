// Rules about images and forms (6.1.10, 6.2.8, 6.2.9).
#include <set>

#include "ArchivalRules.h"

namespace rackbook {

namespace {

using nlohmann::json;

void checkImage(ArchivalCase& checked, const json& image, const std::string& where) {
    for (const char* key : {"/Alternates", "/OPI"})
        if (image.contains(key))
            checked.add("6.2.8", where + ": the key " + key);
    if (checked.file.at(image, "/Interpolate") == true)
        checked.add("6.2.8", where + ": it is interpolated");
    const json& mask = checked.file.at(image, "/SMask");
    if (!mask.is_null() && mask != "/None")
        checked.add(checked.isFirstPart() ? "19005-1, 6.4" : "house", where + ": a soft mask");
    const json& isMask = checked.file.at(image, "/ImageMask");
    const json& bits = checked.file.at(image, "/BitsPerComponent");
    static const std::set<int> allowed = {1, 2, 4, 8, 16};
    const bool isCoded = checked.file.at(image, "/Filter") == "/JPXDecode";
    if (!isCoded && isMask != true &&
        (!bits.is_number_integer() || allowed.count(bits.get<int>()) == 0))
        checked.add("32000-1, 8.9.5", where + ": bits per component " + bits.dump());
    if (!isCoded && isMask != true)
        checkColourSpace(checked, checked.file.raw(image, "/ColorSpace"), where);
    static const std::set<std::string> intents = {"/RelativeColorimetric", "/AbsoluteColorimetric",
                                                  "/Perceptual", "/Saturation"};
    const json& intent = checked.file.at(image, "/Intent");
    if (!intent.is_null() && intents.count(intent.get<std::string>()) == 0)
        checked.add("6.2.6", where + ": the rendering intent " + intent.dump());
}

void checkForm(ArchivalCase& checked, const json& form, const std::string& where) {
    if (form.contains("/OPI") || form.contains("/PS") ||
        checked.file.at(form, "/Subtype2") == "/PS")
        checked.add("6.2.9.1", where + ": PostScript or OPI");
    if (form.contains("/Ref"))
        checked.add("6.2.9.2", where + ": it refers to another file");
}

void checkInlineImage(ArchivalCase& checked, const ContentStep& step) {
    const Operand& dictionary = step.operation.operands[0];
    const std::string where = "page " + std::to_string(step.page) + ", inline image";
    static const std::set<std::string> filters = {"LZW", "LZWDecode", "Crypt"};
    for (const char* key : {"F", "Filter"})
        if (const Operand* filter = memberOf(dictionary, key)) {
            if (filters.count(filter->text) > 0)
                checked.add("6.1.10", where + ": the filter " + filter->text);
            for (const Operand& item : filter->items)
                if (filters.count(item.text) > 0)
                    checked.add("6.1.10", where + ": the filter " + item.text);
        }
    for (const char* key : {"I", "Interpolate"})
        if (const Operand* value = memberOf(dictionary, key); value && value->text == "true")
            checked.add("6.2.8", where + ": it is interpolated");
    for (const char* key : {"CS", "ColorSpace"})
        if (const Operand* space = memberOf(dictionary, key);
            space && space->kind == Operand::Kind::name) {
            const json& named =
                checked.file.at(checked.file.at(*step.resources, "/ColorSpace"), "/" + space->text);
            checkColourSpace(checked, named.is_null() ? json("/" + space->text) : named, where);
        }
}

}  // namespace

void checkImages(ArchivalCase& checked) {
    for (const auto& [reference, object] : checked.file.objects()) {
        const json& kind = checked.file.at(object.value, "/Subtype");
        if (object.isStream && kind == "/Image")
            checkImage(checked, object.value, "image " + reference);
        if (object.isStream && kind == "/Form")
            checkForm(checked, object.value, "form " + reference);
        if (object.isStream && kind == "/PS")
            checked.add("6.2.9.3", "object " + reference + " is PostScript");
    }
    for (const ContentStep& step : checked.steps)
        if (step.operation.name == "BI")
            checkInlineImage(checked, step);
}

}  // namespace rackbook
