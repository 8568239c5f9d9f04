// Rules about all objects (6.1.3, 6.1.7, 6.1.8, 6.1.12, 6.1.13) and the catalog (6.9 to 6.11).
#include <array>
#include <cmath>
#include <set>

#include "ArchivalRules.h"
#include "base/Text.h"

namespace rackbook {

namespace {

using nlohmann::json;

void checkFilter(ArchivalCase& checked, const json& filter, const std::string& where) {
    static const std::set<std::string> allowed = {
        "/ASCIIHexDecode", "/ASCII85Decode", "/FlateDecode", "/RunLengthDecode",
        "/CCITTFaxDecode", "/JBIG2Decode",   "/DCTDecode",   "/JPXDecode"};
    for (const json& name : filter.is_array() ? filter : json::array({filter})) {
        if (!name.is_string() || allowed.count(name) == 0)
            checked.add("6.1.7.2", where + ": the filter " + name.dump());
        else if (name == "/JPXDecode" && checked.isFirstPart())
            checked.add("19005-1, 6.1.10", where + ": JPXDecode came after PDF 1.4");
    }
}

void checkStreams(ArchivalCase& checked) {
    for (const auto& [reference, object] : checked.file.objects()) {
        if (!object.isStream)
            continue;
        const std::string where = "object " + reference;
        for (const char* key : {"/F", "/FFilter", "/FDecodeParms"})
            if (object.value.contains(key))
                checked.add("6.1.7.1", where + ": the data are outside of the file");
        const json& filter = checked.file.at(object.value, "/Filter");
        if (!filter.is_null())
            checkFilter(checked, filter, where);
        if (checked.isFirstPart() && checked.file.at(object.value, "/Type") == "/ObjStm")
            checked.add("19005-1, 6.1.4", where + ": objects inside a stream");
    }
}

// A name, a string, or a number.
void checkLimit(ArchivalCase& checked, const json& value, const std::string& where) {
    constexpr double largest = 2147483647;
    constexpr double largestReal = 3.403e38;
    if (value.is_string()) {
        const auto& text = value.get_ref<const std::string&>();
        if (text.front() == '/' && text.size() > 128)
            checked.add("6.1.13", where + ": a name of more than 127 bytes");
        if (text.front() == '/' && invalidUtf8At(text))
            checked.add("6.1.8", where + ": a name that is not UTF-8");
        if (textOf(value).size() > 32767)
            checked.add("6.1.13", where + ": a string of more than 32,767 bytes");
    } else if (value.is_number_integer() && std::abs(value.get<double>()) > largest) {
        checked.add("6.1.13", where + ": a whole number that is too large");
    } else if (value.is_number_float() && std::abs(value.get<double>()) > largestReal) {
        checked.add("6.1.13", where + ": a number that is too large");
    }
}

void checkLimits(ArchivalCase& checked, const json& value, const std::string& where) {
    if (!value.is_structured())
        return checkLimit(checked, value, where);
    if (checked.isFirstPart() && value.is_array() && value.size() > 8191)
        checked.add("19005-1, 6.1.12", where + ": an array of more than 8,191");
    if (checked.isFirstPart() && value.is_object() && value.size() > 4095)
        checked.add("19005-1, 6.1.12", where + ": a dictionary of more than 4,095");
    for (const auto& [key, member] : value.items()) {
        if (value.is_object())
            checkLimit(checked, json(key), where);
        checkLimits(checked, member, where);
    }
}

void checkPages(ArchivalCase& checked) {
    for (const std::string& page : checked.file.pages()) {
        const json& box = checked.file.inherited(page, "/MediaBox");
        if (!box.is_array() || box.size() != 4) {
            checked.add("32000-1, 7.7.3.3", "page " + page + " has no media box");
            continue;
        }
        for (const std::size_t i : {0u, 1u}) {
            const double side = std::abs(box[i + 2].get<double>() - box[i].get<double>());
            if (side < 3 || side > 14400)
                checked.add("6.1.13", "page " + page + " is too small or too large");
        }
        if (!checked.file.at(page, "/PresSteps").is_null())
            checked.add("6.10", "page " + page + " has steps of a presentation");
    }
}

void checkCatalog(ArchivalCase& checked) {
    const json& catalog = checked.file.catalog();
    if (!checked.file.at(checked.file.trailer(), "/Encrypt").is_null())
        checked.add("6.1.3", "the file is encrypted");
    for (const auto& [key, member] : checked.file.at(catalog, "/Perms").items())
        if (key != "/UR3" && key != "/DocMDP")
            checked.add("6.1.12", "the permission " + key);
    if (!checked.file.at(catalog, "/Requirements").is_null())
        checked.add("6.11", "the file asks for abilities of its reader");
    if (!checked.file.at(checked.file.at(catalog, "/Names"), "/AlternatePresentations").is_null())
        checked.add("6.10", "the file has alternate presentations");
    const json& layers = checked.file.at(catalog, "/OCProperties");
    if (layers.is_null())
        return;
    if (checked.isFirstPart())
        checked.add("19005-1, 6.1.13", "the file has optional content");
    else if (textOf(checked.file.at(checked.file.at(layers, "/D"), "/Name")).empty())
        checked.add("6.9", "the configuration of optional content has no name");
}

}  // namespace

void checkObjects(ArchivalCase& checked) {
    checkStreams(checked);
    for (const auto& [reference, object] : checked.file.objects())
        checkLimits(checked, object.value, "object " + reference);
    if (checked.file.objects().size() > 8388607)
        checked.add("6.1.13", "there are too many objects");
    checkPages(checked);
    checkCatalog(checked);
}

}  // namespace rackbook
