// Rules about graphics states and transparency (6.2.5, 6.2.10). Part 3 allows transparency under
// conditions, part 1 forbids it (6.4); our sheets have none, so that every printer draws them
// alike.
#include <set>

#include "ArchivalRules.h"

namespace rackbook {

namespace {

using nlohmann::json;

void checkTransparency(ArchivalCase& checked, const json& state, const std::string& where) {
    const std::string clause = checked.isFirstPart() ? "19005-1, 6.4" : "house";
    const json& mode = checked.file.at(state, "/BM");
    static const std::set<std::string> modes = {
        "/Normal",    "/Compatible", "/Multiply",  "/Screen",     "/Overlay",   "/Darken",
        "/Lighten",   "/ColorDodge", "/ColorBurn", "/HardLight",  "/SoftLight", "/Difference",
        "/Exclusion", "/Hue",        "/Color",     "/Saturation", "/Luminosity"};
    if (mode.is_string() && modes.count(mode.get<std::string>()) == 0)
        checked.add("6.2.10", where + ": the blend mode " + mode.get<std::string>());
    else if (!mode.is_null() && mode != "/Normal" && mode != "/Compatible")
        checked.add(clause, where + ": a blend mode");
    for (const char* key : {"/CA", "/ca"})
        if (const json& alpha = checked.file.at(state, key); alpha.is_number() && alpha != 1.0)
            checked.add(clause, where + ": " + key + " is not 1");
    const json& mask = checked.file.at(state, "/SMask");
    if (!mask.is_null() && mask != "/None")
        checked.add(clause, where + ": a soft mask");
}

void checkState(ArchivalCase& checked, const json& state, const std::string& where) {
    if (!checked.file.at(state, "/TR").is_null())
        checked.add("6.2.5", where + ": a transfer function");
    const json& second = checked.file.at(state, "/TR2");
    if (!second.is_null() && second != "/Default")
        checked.add("6.2.5", where + ": a transfer function");
    if (!checked.file.at(state, "/HTP").is_null())
        checked.add("6.2.5", where + ": the key HTP");
    const json& halftone = checked.file.at(state, "/HT");
    const json& type = checked.file.at(halftone, "/HalftoneType");
    if (!type.is_null() && type != 1 && type != 5)
        checked.add("6.2.5", where + ": a halftone of another type than 1 and 5");
    if (!checked.file.at(halftone, "/HalftoneName").is_null())
        checked.add("6.2.5", where + ": a halftone with a name");
    checkTransparency(checked, state, where);
}

}  // namespace

void checkGraphicsState(ArchivalCase& checked) {
    std::set<std::string> seen;
    for (const ContentStep& step : checked.steps) {
        if (step.operation.name != "gs" || step.operation.operands.empty())
            continue;
        const std::string name = "/" + step.operation.operands[0].text;
        const std::string where = "page " + std::to_string(step.page) + ", graphics state " + name;
        if (seen.insert(where).second)
            checkState(checked,
                       checked.file.at(checked.file.at(*step.resources, "/ExtGState"), name),
                       where);
    }
    for (const auto& [reference, object] : checked.file.objects()) {
        const json& group = checked.file.at(object.value, "/Group");
        if (checked.file.at(group, "/S") == "/Transparency")
            checked.add(checked.isFirstPart() ? "19005-1, 6.4" : "house",
                        "object " + reference + ": a transparency group");
    }
}

}  // namespace rackbook
