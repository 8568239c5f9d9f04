// Words of the records that are offered as answers, for the extraction of texts: they stand in the
// rooms of the model, which know no translation, and are looked up by themselves (Suggestions.cpp).
#include "base/Translated.h"

namespace rackbook {

namespace {

[[maybe_unused]] constexpr const char* choices[] = {
    toTranslate("choice", "wet"),       toTranslate("choice", "tacky"),
    toTranslate("choice", "dry"),       toTranslate("choice", "turned"),
    toTranslate("choice", "returning"), toTranslate("choice", "true"),
    toTranslate("choice", "hang"),      toTranslate("choice", "store"),
    toTranslate("choice", "consign"),   toTranslate("choice", "lend"),
    toTranslate("choice", "sell"),      toTranslate("choice", "give"),
    toTranslate("choice", "return"),    toTranslate("choice", "destroy"),
    toTranslate("choice", "other"),     toTranslate("choice", "consignment"),
    toTranslate("choice", "sale"),      toTranslate("choice", "loan"),
    toTranslate("choice", "gift"),      toTranslate("choice", "sunny"),
    toTranslate("choice", "broken"),    toTranslate("choice", "overcast")};

}  // namespace

}  // namespace rackbook
