#include "commands/PlainFields.h"

#include <map>

namespace rackbook {

namespace {

using Words = std::map<std::string, std::string>;

std::string found(const Words& words, const std::string& key) {
    const auto row = words.find(key);
    return row == words.end() ? std::string() : row->second;
}

// "working number" of workingNumber
std::string partedAtCapitals(const std::string& name) {
    std::string words;
    for (const char c : name) {
        const bool isCapital = c >= 'A' && c <= 'Z';
        if (isCapital && !words.empty())
            words += ' ';
        words += isCapital ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return words;
}

std::size_t unitAt(const std::string& name) {
    const std::size_t at = name.rfind('_');
    return at == std::string::npos ? name.size() : at;
}

// Where the letters of the name are not what a person would say.
const Words& ownWords() {
    static const Words words = {{"lotKind", "kind"},
                                {"placeKind", "kind"},
                                {"transferKind", "agreed as"},
                                {"sheetKind", "sheet"},
                                {"lightKind", "light"},
                                {"designationKind", "kind of designation"},
                                {"colourWords", "colour"},
                                {"fateOn", "fate since"},
                                {"massLow_g", "mass at least"},
                                {"massHigh_g", "mass at most"},
                                {"drierFree", "without drier"},
                                {"standsFor", "stands for"},
                                {"labL", "L*"},
                                {"labA", "a*"},
                                {"labB", "b*"},
                                {"oktas", "eighths covered"},
                                {"ordinal", "number"},
                                {"blockState", "state of the block"},
                                {"nearUltraviolet_Whm2", "near ultraviolet"},
                                {"exposure_lxh", "light"},
                                {"illuminance_lx", "level of light"},
                                {"declaredNumbered", "numbered, declared"},
                                {"declaredProofs", "proofs, declared"},
                                {"declaredTotal", "in all, declared"},
                                {"sha256", "hash of its bytes"},
                                {"fileSha256", "hash of the file"},
                                {"contentSha256", "hash of its content"},
                                {"interleaved", "under interleaving"}};
    return words;
}

}  // namespace

std::string plainField(const std::string& name) {
    const std::string own = found(ownWords(), name);
    return own.empty() ? partedAtCapitals(name.substr(0, unitAt(name))) : own;
}

std::string unitOfField(const std::string& name) {
    static const Words units = {
        {"_g", " g"},      {"_C", " °C"},     {"_pct", " %"},     {"_mm", " mm"},    {"_nm", " nm"},
        {"_gm2", " g/m²"}, {"_gml", " g/ml"}, {"_lx", " lx"},     {"_lxh", " lx·h"}, {"_h", " h"},
        {"_deg", "°"},     {"_px", " px"},    {"_Whm2", " Wh/m²"}};
    return found(units, name.substr(unitAt(name)));
}

std::string plainWord(const std::string& word) {
    static const Words own = {
        {"artistsProof", "artist's proof"}, {"printersProof", "printer's proof"},
        {"bonATirer", "bon à tirer"},       {"horsCommerce", "hors commerce"},
        {"stockTake", "stock-take"},        {"holderAddress", "holder's address"}};
    const std::string words = found(own, word);
    return words.empty() ? partedAtCapitals(word) : words;
}

std::string countedKind(RecordKind kind, std::size_t count) {
    static const Words several = {{"party", "parties"},
                                  {"mix", "mixes"},
                                  {"weather", "days of weather"},
                                  {"issue", "sheets handed out"}};
    const std::string name = textOf(kind);
    if (count == 1)
        return "1 " + plainWord(name);
    const std::string words = found(several, name);
    return std::to_string(count) + " " + (words.empty() ? plainWord(name) + "s" : words);
}

}  // namespace rackbook
