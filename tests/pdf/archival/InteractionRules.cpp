// Rules about what answers a reader: annotations (6.3), forms (6.4), actions (6.5).
#include <set>

#include "ArchivalRules.h"

namespace rackbook {

namespace {

using nlohmann::json;

void checkFlags(ArchivalCase& checked, const json& annotation, const std::string& where) {
    constexpr int invisible = 1, hidden = 2, print = 4, noView = 32, toggleNoView = 256;
    const json& value = checked.file.at(annotation, "/F");
    const int flags = value.is_number_integer() ? value.get<int>() : 0;
    if ((flags & print) == 0)
        checked.add("6.3.2", where + ": it is not printed");
    if ((flags & (invisible | hidden | noView | toggleNoView)) != 0)
        checked.add("6.3.2", where + ": it is hidden");
}

// What fields inherit from those above them (ISO 32000-1, 12.7.3.1).
const json& inheritedOf(const PdfJson& file, const json& field, const std::string& key) {
    const json* node = &file.resolved(field);
    for (int depth = 0; depth < 32 && file.at(*node, key).is_null(); ++depth)
        node = &file.at(*node, "/Parent");
    return file.at(*node, key);
}

void checkAppearance(ArchivalCase& checked, const json& annotation, const std::string& where) {
    const json& kind = checked.file.at(annotation, "/Subtype");
    if (kind == "/Popup" || kind == "/Link")
        return;
    const json& appearance = checked.file.at(annotation, "/AP");
    if (!appearance.is_object() || appearance.size() != 1 || !appearance.contains("/N")) {
        checked.add("6.3.3", where + ": no appearance, or more than the normal one");
        return;
    }
    const json& normal = checked.file.raw(appearance, "/N");
    const bool isStream = checked.file.stream(normal) != nullptr;
    if (kind != "/Widget" || inheritedOf(checked.file, annotation, "/FT") != "/Btn") {
        if (!isStream)
            checked.add("6.3.3", where + ": its appearance is no stream");
        return;
    }
    const json& states = checked.file.resolved(normal);
    const json& state = checked.file.at(annotation, "/AS");
    if (isStream || !states.is_object())
        checked.add("6.3.3", where + ": a button without an appearance for each state");
    else if (!state.is_string() || !states.contains(state.get<std::string>()))
        checked.add("32000-1, 12.5.5", where + ": its state has no appearance");
}

void checkAnnotation(ArchivalCase& checked, const json& annotation, const std::string& where) {
    static const std::set<std::string> kinds = {
        "/Text",    "/Link",      "/FreeText",      "/Line",      "/Square",   "/Circle",
        "/Polygon", "/PolyLine",  "/Highlight",     "/Underline", "/Squiggly", "/StrikeOut",
        "/Stamp",   "/Caret",     "/Ink",           "/Popup",     "/Widget",   "/PrinterMark",
        "/TrapNet", "/Watermark", "/FileAttachment"};
    const json& kind = checked.file.at(annotation, "/Subtype");
    if (!kind.is_string() || kinds.count(kind.get<std::string>()) == 0)
        checked.add("6.3.1", where + ": the kind " + kind.dump());
    if (checked.isFirstPart() && kind == "/FileAttachment")
        checked.add("19005-1, 6.5.2", where + ": an attached file");
    if (kind != "/Popup")
        checkFlags(checked, annotation, where);
    checkAppearance(checked, annotation, where);
    if (kind == "/Widget" && !checked.file.at(annotation, "/A").is_null())
        checked.add("6.4.1", where + ": a field with an action");
}

void checkAnnotations(ArchivalCase& checked) {
    int number = 0;
    for (const std::string& page : checked.file.pages()) {
        ++number;
        for (const json& annotation : checked.file.at(page, "/Annots"))
            checkAnnotation(checked, annotation, "annotation on page " + std::to_string(number));
    }
}

void checkField(ArchivalCase& checked, const json& field, const std::string& above, int depth) {
    if (depth > 32)
        return checked.add("32000-1, 12.7.3", "fields go deeper than 32");
    const json& name = checked.file.at(field, "/T");
    const std::string where = above + " " + textOf(name);
    const json& kids = checked.file.at(field, "/Kids");
    const bool isWidget = checked.file.at(field, "/Subtype") == "/Widget";
    if (!isWidget && !checked.file.at(field, "/A").is_null())
        checked.add("6.4.1", where + ": a field with an action");
    if (textOf(name).find('.') != std::string::npos)
        checked.add("32000-1, 12.7.3.2", where + ": a point in the name");
    if (!kids.is_array() && inheritedOf(checked.file, field, "/FT").is_null())
        checked.add("32000-1, 12.7.3.1", where + ": no kind of field");
    for (const json& kid : kids)
        checkField(checked, kid, where, depth + 1);
}

void checkForm(ArchivalCase& checked) {
    const json& form = checked.file.at(checked.file.catalog(), "/AcroForm");
    if (checked.file.at(form, "/NeedAppearances") == true)
        checked.add("6.4.1", "the form asks for appearances");
    if (!checked.file.at(form, "/XFA").is_null())
        checked.add("6.4.2", "the form is of XML");
    if (checked.file.at(checked.file.catalog(), "/NeedsRendering") == true)
        checked.add("6.4.2", "the pages are to be made from XML");
    for (const json& field : checked.file.at(form, "/Fields"))
        checkField(checked, field, "field", 0);
}

void checkActions(ArchivalCase& checked) {
    static const std::set<std::string> forbidden = {
        "/Launch",      "/Sound",     "/Movie", "/ResetForm",  "/ImportData", "/Hide",
        "/SetOCGState", "/Rendition", "/Trans", "/GoTo3DView", "/JavaScript"};
    static const std::set<std::string> moves = {"/NextPage", "/PrevPage", "/FirstPage",
                                                "/LastPage"};
    forEachDictionary(checked.file, [&](const json& dictionary, const std::string& where) {
        const json& kind = checked.file.at(dictionary, "/S");
        if (kind.is_string() && forbidden.count(kind.get<std::string>()) > 0)
            checked.add("6.5.1", where + ": the action " + kind.get<std::string>());
        const json& move = checked.file.at(dictionary, "/N");
        if (kind == "/Named" && (!move.is_string() || moves.count(move.get<std::string>()) == 0))
            checked.add("6.5.1", where + ": the named action " + move.dump());
        if (dictionary.contains("/AA"))
            checked.add("6.5.2", where + ": actions that happen by themselves");
    });
    if (!checked.file.at(checked.file.at(checked.file.catalog(), "/Names"), "/JavaScript")
             .is_null())
        checked.add("6.5.1", "the catalog names scripts");
}

}  // namespace

void checkInteraction(ArchivalCase& checked) {
    checkAnnotations(checked);
    checkForm(checked);
    checkActions(checked);
}

}  // namespace rackbook
