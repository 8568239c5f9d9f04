// Rules about colour (6.2.3, 6.2.4, 6.2.6).
#include <set>

#include "ArchivalRules.h"

namespace rackbook {

namespace {

using nlohmann::json;

// Of an ICC profile: how many channels its colour space has, or 0.
int channelsOf(const std::string& profile) {
    const std::string space = profile.size() > 20 ? profile.substr(16, 4) : "";
    return space == "RGB " || space == "Lab " ? 3 : space == "CMYK" ? 4 : space == "GRAY" ? 1 : 0;
}

void checkProfile(ArchivalCase& checked, const json& reference, const std::set<std::string>& kinds,
                  const std::string& clause, const std::string& where) {
    const PdfJson::Object* stream = checked.file.stream(reference);
    if (!stream || stream->data.size() < 128 || stream->data.substr(36, 4) != "acsp")
        return checked.add(clause, where + ": no ICC profile");
    const std::string& data = stream->data;
    if (checked.file.at(reference, "/N") != channelsOf(data))
        checked.add(clause, where + ": N is not the number of channels");
    if (kinds.count(data.substr(12, 4)) == 0)
        checked.add(clause, where + ": a profile of the class " + data.substr(12, 4));
    if (data[8] > (checked.isFirstPart() ? 2 : 4))
        checked.add(clause, where + ": a version of ICC that is too new");
    std::size_t size = 0;
    for (std::size_t i = 0; i < 4; ++i)
        size = size * 256 + static_cast<unsigned char>(data[i]);
    if (size != data.size())
        checked.add(clause, where + ": the profile's length is not what it says");
}

// Channels of the archival output intent, 0 where there is none.
int intendedChannels(const PdfJson& file) {
    for (const json& intent : file.at(file.catalog(), "/OutputIntents"))
        if (file.at(intent, "/S") == "/GTS_PDFA1")
            if (const PdfJson::Object* profile =
                    file.stream(file.raw(intent, "/DestOutputProfile")))
                return channelsOf(profile->data);
    return 0;
}

void checkOutputIntents(ArchivalCase& checked) {
    std::set<std::string> profiles;
    for (const json& intent : checked.file.at(checked.file.catalog(), "/OutputIntents")) {
        const json& profile = checked.file.raw(intent, "/DestOutputProfile");
        if (!profile.is_null())
            profiles.insert(profile.dump());
        if (checked.file.at(intent, "/S") != "/GTS_PDFA1")
            continue;
        checkProfile(checked, profile, {"mntr", "prtr"}, "6.2.3", "output intent");
        if (textOf(checked.file.at(intent, "/OutputConditionIdentifier")).empty())
            checked.add("32000-1, 14.11.5", "the output intent names no condition");
    }
    if (profiles.size() > 1)
        checked.add("6.2.3", "output intents with different profiles");
}

// Colours that depend on a device need an output intent of that kind; grey goes with each.
void checkDevice(ArchivalCase& checked, int channels, const std::string& where) {
    const int intended = intendedChannels(checked.file);
    if (intended == 0 || (channels != 1 && channels != intended))
        checked.add("6.2.4.3", where + ": a colour of a device with " + std::to_string(channels) +
                                   " channels, which no output intent covers");
}

int deviceChannels(const std::string& name) {
    if (name == "/DeviceGray" || name == "/G" || name == "/CalGray")
        return 1;
    return name == "/DeviceRGB" || name == "/RGB"     ? 3
           : name == "/DeviceCMYK" || name == "/CMYK" ? 4
                                                      : 0;
}

// ISO 32000-1, 8.6.5.4.
void checkLab(ArchivalCase& checked, const json& parameters, const std::string& where) {
    const json& white = checked.file.at(parameters, "/WhitePoint");
    if (!white.is_array() || white.size() != 3 || white[1] != 1.0 || white[0] <= 0 || white[2] <= 0)
        checked.add("32000-1, 8.6.5.4", where + ": a bad white point");
    const json& range = checked.file.at(parameters, "/Range");
    if (!range.is_null() && (range.size() != 4 || range[0] > range[1] || range[2] > range[3]))
        checked.add("32000-1, 8.6.5.4", where + ": a bad range");
}

const json& spaceNamed(const PdfJson& file, const json& resources, const std::string& name,
                       const json& otherwise) {
    const json& space = file.at(file.at(resources, "/ColorSpace"), name);
    return space.is_null() ? otherwise : space;
}

// ISO 32000-1, 8.6.5.4: L* 0 to 100, a* and b* in the range.
void checkLabValues(ArchivalCase& checked, const json& space, const ContentStep& step) {
    if (!space.is_array() || space.empty() || space[0] != "/Lab")
        return;
    const json& range = checked.file.at(space[1], "/Range");
    const auto& values = step.operation.operands;
    bool fits = values.size() == 3 && values[0].number >= 0 && values[0].number <= 100;
    for (std::size_t i = 0; fits && i < 2; ++i) {
        const double least = range.is_null() ? -100 : range[2 * i].get<double>();
        const double most = range.is_null() ? 100 : range[2 * i + 1].get<double>();
        fits = values[i + 1].number >= least && values[i + 1].number <= most;
    }
    if (!fits)
        checked.add("32000-1, 8.6.5.4",
                    "page " + std::to_string(step.page) + ": CIELAB values out of range");
}

void checkOperators(ArchivalCase& checked) {
    static const std::map<std::string, int> device = {{"g", 1},  {"G", 1}, {"rg", 3},
                                                      {"RG", 3}, {"k", 4}, {"K", 4}};
    static const std::set<std::string> intents = {"RelativeColorimetric", "AbsoluteColorimetric",
                                                  "Perceptual", "Saturation"};
    std::map<bool, json> spaces;
    std::set<std::string> seen;
    for (const ContentStep& step : checked.steps) {
        const std::string& name = step.operation.name;
        const auto& operands = step.operation.operands;
        const std::string where = "page " + std::to_string(step.page) + ", " + name;
        const auto known = device.find(name);
        if (known != device.end() && seen.insert(where).second)
            checkDevice(checked, known->second, where);
        if ((name == "cs" || name == "CS") && !operands.empty()) {
            const json spaceName = "/" + operands[0].text;
            const json& space = spaceNamed(checked.file, *step.resources, spaceName, spaceName);
            spaces[name == "cs"] = space;
            if (seen.insert(where + operands[0].text).second)
                checkColourSpace(checked, space, where + " /" + operands[0].text);
        }
        if (name == "sc" || name == "scn" || name == "SC" || name == "SCN")
            checkLabValues(checked, spaces[name[0] == 's'], step);
        if (name == "ri" && !operands.empty() && intents.count(operands[0].text) == 0)
            checked.add("6.2.6", where + ": the rendering intent " + operands[0].text);
    }
}

}  // namespace

void checkColourSpace(ArchivalCase& checked, const json& space, const std::string& where) {
    const json& known = checked.file.resolved(space);
    const bool isList = known.is_array() && !known.empty();
    const json& kind = isList ? known[0] : known;
    if (!kind.is_string())
        return checked.add("32000-1, 8.6.3", where + ": no colour space");
    const auto& name = kind.get_ref<const std::string&>();
    if (const int channels = deviceChannels(name); channels > 0 && name != "/CalGray")
        checkDevice(checked, channels, where);
    else if (name == "/ICCBased" && isList)
        checkProfile(checked, known[1], {"mntr", "prtr", "scnr", "spac"}, "6.2.4.2", where);
    else if (name == "/Lab" && isList)
        checkLab(checked, known[1], where);
    else if ((name == "/Indexed" || name == "/I") && isList)
        checkColourSpace(checked, known[1], where);
    else if ((name == "/Separation" || name == "/DeviceN") && isList)
        checkColourSpace(checked, known[2], where);
    else if (name == "/Pattern" && isList && known.size() > 1)
        checkColourSpace(checked, known[1], where);
    else if (name != "/CalGray" && name != "/CalRGB" && name != "/Pattern")
        checked.add("32000-1, 8.6.3", where + ": the colour space " + name);
}

void checkColour(ArchivalCase& checked) {
    checkOutputIntents(checked);
    checkOperators(checked);
}

}  // namespace rackbook
