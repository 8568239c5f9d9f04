#include "records/Personal.h"

#include <iterator>
#include <map>
#include <set>
#include <sstream>

namespace rackbook {

namespace {

using Paths = std::set<std::string, std::less<>>;

// Facts about works, ink, paper, light and time.
constexpr const char* ofThings =
    "act answer asOf at backing balance block blockState boughtOn capacity "
    "capacity_g code colour colourWords condition contactWithheld container "
    "contentShare count coverage covered_h currency cutOn daylightFactor_pct "
    "declaredNumbered declaredProofs declaredTotal density_gml designation "
    "designationKind directSun disclosures drawdown drierFree drierMetals edition "
    "end exposure_lxh extenderShare fate fateOn filmWeight_gm2 finishedOn from "
    "fromMix geometry glass glassTransmittance glassUltravioletTransmittance "
    "height_px houseRules humidity_pct id illuminance_lx illuminant imageHeight_mm "
    "imageWidth_mm impression impressions inkAfter_g inkBefore_g inscriptions "
    "instrument interleaved issuedOn item labA labB labL language layer lengthUnit "
    "light lightKind lot lotKind madeOn massHigh_g massLow_g mass_g material "
    "mediaType medium metal mix month monthlySkies name namesHolders "
    "nearUltraviolet_Whm2 netMass_g observer oktas on openedOn ordinal orientation "
    "origin overcastShare packing paper pigments placeKind portion press process "
    "promisedBy promisedMatrixFate purpose readability_g reading repeatability_g "
    "retiredOn role roles rule sequence sheetHeight_mm sheetKind sheetWidth_mm "
    "signedOn sky spectrum spectrumStart_nm spectrumStep_nm spoiled standsFor start "
    "states status substrate sunnyShare takenOn temperature_C timeZone title to "
    "touch transferKind until value where why width_px windowAzimuth_deg words "
    "workingNumber year";

Paths wordsIn(const std::string& text) {
    std::istringstream words(text);
    return {std::istream_iterator<std::string>(words), std::istream_iterator<std::string>()};
}

// By name alone, whatever the kind: what it means in one it means in all, but for those below.
const std::map<Personal, Paths>& byName() {
    static const std::map<Personal, Paths> marks = {
        {Personal::direct, {"contact", "studio", "latitude_deg", "longitude_deg"}},
        {Personal::linked,
         {"agreedOn", "contentSha256", "dueOn", "fileSha256", "giver", "holder", "maker", "place",
          "price", "printer", "publisher", "receiver", "recipient", "supplier", "transfer",
          "document", "within"}},
        {Personal::mayHold,
         {"careNotes", "caption", "fileName", "note", "safetySheet", "sha256", "source",
          "statement", "terms", "text"}},
        {Personal::none, wordsIn(ofThings)}};
    return marks;
}

// Ids are often made of names. Where a place is the studio's own, nobody is told by it.
const std::map<std::string, Personal, std::less<>>& byKind() {
    static const std::map<std::string, Personal, std::less<>> marks = {
        {"party.id", Personal::direct},      {"party.name", Personal::direct},
        {"place.id", Personal::direct},      {"place.name", Personal::direct},
        {"transfer.id", Personal::mayHold},  {"transfer.currency", Personal::linked},
        {"issue.id", Personal::mayHold},     {"move.id", Personal::mayHold},
        {"move.from", Personal::linked},     {"move.to", Personal::linked},
        {"attachment.id", Personal::mayHold}};
    return marks;
}

}  // namespace

std::optional<Personal> personalMark(RecordKind kind, std::string_view path) {
    const auto own = byKind().find(std::string(textOf(kind)) + "." + std::string(path));
    if (own != byKind().end())
        return own->second;
    const std::string_view name = path.substr(path.rfind('.') + 1);
    for (const auto& [mark, names] : byName())
        if (names.find(name) != names.end())
            return mark;
    return std::nullopt;
}

}  // namespace rackbook
