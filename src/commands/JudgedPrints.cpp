#include "commands/JudgedPrints.h"

namespace rackbook {

JudgedPrints::JudgedPrints(const BookFile& book, const Book& studio, const HouseRules& rules,
                           const std::optional<HistoryFilter>& filter, CivilMinute asOf)
    : history(judgedHistoryIn(book, filter.value_or(HistoryFilter{}), rules)),
      labels(labelsOf(book, history)),
      light(learntLightOf(book, studio, rules, history, !filter, asOf)),
      readiness(readinessOf(history, rules, asOf, light.model())) {}

}  // namespace rackbook
