#include "commands/JudgedPrints.h"

namespace rackbook {

JudgedPrints::JudgedPrints(const BookFile& book, const Book& studio, const HouseRules& rules,
                           const std::optional<HistoryFilter>& filter, CivilMinute asOf)
    : m_lit(litHistoryOf(book, studio, rules, filter, asOf)),
      history(m_lit.history),
      light(m_lit.light),
      labels(labelsOf(book, history)),
      readiness(readinessOf(history, rules, asOf, light.model())) {}

}  // namespace rackbook
