// What the flat history is read by. Private to store/.
#pragma once

namespace rackbook {

inline constexpr const char* editionsSql = "SELECT key, id, code FROM edition";
inline constexpr const char* layersSql =
    "SELECT key, edition, ordinal, extenderShare, colourWords FROM layer";
inline constexpr const char* lotsSql = "SELECT key, lotKind FROM lot";
inline constexpr const char* mixesSql = "SELECT key FROM mix";
inline constexpr const char* weighingsSql =
    "SELECT mix, act, lot, fromMix, atEarliest, atLatest, sequence, mass_g, massLow_g, massHigh_g "
    "FROM weighing";
inline constexpr const char* pullsSql =
    "SELECT key, layer, portion, startEarliest, startLatest, inkBefore_g, inkAfter_g FROM pull";
inline constexpr const char* placesSql =
    "SELECT key, id, name, placeKind, within, holder FROM place ORDER BY key";
inline constexpr const char* lightSql =
    "SELECT place, fromEarliest, fromLatest, lightKind FROM place_light ORDER BY place, position";
inline constexpr const char* movesSql =
    "SELECT key, \"to\", \"from\", atEarliest, atLatest, untilEarliest, untilLatest, why, "
    "interleaved FROM move";
inline constexpr const char* looksSql =
    "SELECT key, atEarliest, atLatest, touch, colour, reading FROM look";
inline constexpr const char* inOrderOfKeys = " ORDER BY key";
inline constexpr const char* impressionsSql =
    "SELECT key, edition, workingNumber, fate, holder, fateOnEarliest FROM impression";
inline constexpr const char* impressionsOrder = " ORDER BY edition, workingNumber";
inline constexpr const char* pullListSql = "SELECT impression, pull FROM pull_impressions";
inline constexpr const char* moveListSql = "SELECT impression, move FROM move_impressions";
inline constexpr const char* lookListSql = "SELECT impression, look FROM look_impressions";
inline constexpr const char* standsForSql = "SELECT impression, look FROM look_standsFor";

}  // namespace rackbook
