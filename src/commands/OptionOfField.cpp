#include "commands/OptionOfField.h"

#include <algorithm>
#include <map>
#include <stdexcept>

#include "commands/PlainFields.h"

namespace rackbook {

namespace {

// Options and arguments whose names are not those of the field.
const std::multimap<std::string, std::string>& othersOf() {
    static const std::multimap<std::string, std::string> others = {
        {"impressions", "sheets"},
        {"impressions", "range"},
        {"to", "place"},
        {"to", "hang"},
        {"to", "move-to"},
        {"at", "start"},
        {"receiver", "to"},
        {"giver", "from"},
        {"agreedOn", "on"},
        {"dueOn", "due"},
        {"signedOn", "on"},
        {"exposure_lxh", "lux-hours"},
        {"exposure_lxh", "lux"},
        {"nearUltraviolet_Whm2", "uv"},
        {"covered_h", "covered"},
        {"massLow_g", "low"},
        {"massHigh_g", "high"},
        {"act", "withdraw"},
        {"act", "discard"},
        {"colourWords", "colour"},
        {"blockState", "state"},
        {"filmWeight_gm2", "film-weight"},
        {"transferKind", "kind"},
        {"declaredNumbered", "numbered"},
        {"declaredProofs", "proofs"},
        {"imageHeight_mm", "image"},
        {"imageWidth_mm", "image"},
        {"sheetHeight_mm", "sheet"},
        {"sheetWidth_mm", "sheet"},
        {"standsFor", "stands-for"},
        {"on", "day"}};
    return others;
}

std::string hyphenated(std::string words) {
    std::replace(words.begin(), words.end(), ' ', '-');
    return words;
}

// Asking for what the verb does not take is a fault of the program elsewhere; here it is what is to
// be found out.
bool isGiven(const Arguments& arguments, const std::string& name) {
    try {
        return arguments.has(name);
    } catch (const std::out_of_range&) {
        return false;
    }
}

std::string nameFor(const Arguments& arguments, const std::string& field) {
    if (isGiven(arguments, "field"))
        return field;
    std::vector<std::string> names = {hyphenated(plainField(field))};
    const auto [begin, end] = othersOf().equal_range(field);
    for (auto other = begin; other != end; ++other)
        names.push_back(other->second);
    for (const std::string& name : names)
        if (isGiven(arguments, name))
            return arguments.label(name);
    return plainField(field);
}

}  // namespace

std::vector<Finding> namedByOptions(std::vector<Finding> findings, const Arguments& arguments,
                                    RecordKind kind) {
    const std::string own = std::string(textOf(kind)) + " ";
    for (Finding& finding : findings) {
        Location& where = finding.where;
        where.file.clear();
        if (where.record.rfind(own, 0) == 0 && !where.pointer.empty())
            where.record.clear();
        if (where.pointer.empty())
            continue;
        const std::size_t end = std::min(where.pointer.find('/', 1), where.pointer.size());
        where.file = nameFor(arguments, where.pointer.substr(1, end - 1));
        if (!where.record.empty())
            where.file = where.record + ", " + where.file;
        where.record.clear();
        where.pointer.clear();
    }
    return findings;
}

}  // namespace rackbook
