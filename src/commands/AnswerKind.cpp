#include "commands/AnswerKind.h"

#include <algorithm>
#include <map>

namespace rackbook {

namespace {

using Kinds = std::map<std::string, AnswerKind>;

AnswerKind found(const Kinds& kinds, const std::string& key) {
    const auto row = kinds.find(key);
    return row == kinds.end() ? AnswerKind::text : row->second;
}

AnswerKind ofPositional(const CommandSpec& spec, const std::string& name) {
    static const Kinds kinds = {{"day", AnswerKind::date},    {"edition", AnswerKind::edition},
                                {"layer", AnswerKind::layer}, {"lot", AnswerKind::lot},
                                {"mass", AnswerKind::mass},   {"mix", AnswerKind::mix},
                                {"party", AnswerKind::party}, {"place", AnswerKind::place},
                                {"range", AnswerKind::range}, {"sheets", AnswerKind::sheets},
                                {"sky", AnswerKind::sky}};
    if (name == "kind")
        return spec.name == "hand-over" ? AnswerKind::transferKind : AnswerKind::recordKind;
    return found(kinds, name);
}

AnswerKind ofOption(const OptionSpec& option) {
    static const Kinds kinds = {
        {"BALANCE", AnswerKind::balance}, {"BLOCK", AnswerKind::block},
        {"DEGREES", AnswerKind::number},  {"LOT", AnswerKind::lot},
        {"GRAMS", AnswerKind::number},    {"LUX", AnswerKind::number},
        {"LUXHOURS", AnswerKind::number}, {"MASS", AnswerKind::mass},
        {"MIX", AnswerKind::mix},         {"PARTY", AnswerKind::party},
        {"PERCENT", AnswerKind::number},  {"PLACE", AnswerKind::place},
        {"RANGE", AnswerKind::range},     {"SHARE", AnswerKind::number},
        {"SHEETS", AnswerKind::sheets},   {"WATTHOURS", AnswerKind::number}};
    static const std::vector<std::string> moments = {"at", "start", "end", "from", "to"};
    if (option.valueName.empty())
        return AnswerKind::flag;
    if (option.valueName == "DATE")
        return std::count(moments.begin(), moments.end(), option.name) > 0 ? AnswerKind::moment
                                                                           : AnswerKind::date;
    return option.name == "edition" ? AnswerKind::edition : found(kinds, option.valueName);
}

}  // namespace

AnswerKind answerKindOf(const CommandSpec& spec, const std::string& name) {
    for (const PositionalSpec& positional : spec.positionals)
        if (positional.name == name)
            return ofPositional(spec, name);
    for (const OptionSpec& option : optionsOf(spec))
        if (option.name == name)
            return ofOption(option);
    return AnswerKind::text;
}

}  // namespace rackbook
