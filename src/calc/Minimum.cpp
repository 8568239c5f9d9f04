#include "calc/Minimum.h"

#include <nlopt.h>

#include <algorithm>
#include <cmath>
#include <exception>
#include <memory>
#include <stdexcept>

namespace rackbook {

namespace {

struct Search {
    const MinimumQuestion& question;
    nlopt_opt optimiser;
    Minimum best;
    std::exception_ptr thrown;
};

// Exceptions must not cross the C library.
double valueAt(unsigned count, const double* x, double*, void* data) {
    auto& search = *static_cast<Search*>(data);
    // The optimiser works in steps of its own, and may come out beyond a bound by rounding.
    std::vector<double> at(x, x + count);
    for (std::size_t i = 0; i < at.size(); ++i)
        at[i] = std::clamp(at[i], search.question.least[i], search.question.greatest[i]);
    try {
        const double value = search.question.value(at);
        if (value < search.best.value)
            search.best = {at, value};
        return value;
    } catch (...) {
        search.thrown = std::current_exception();
        nlopt_force_stop(search.optimiser);
        return search.best.value;
    }
}

void requireDone(bool isDone) {
    if (!isDone)
        throw std::invalid_argument("a search for a minimum needs bounds around its start");
}

bool isUsable(const MinimumQuestion& question) {
    const std::size_t count = question.start.size();
    if (count == 0 || question.least.size() != count || question.greatest.size() != count ||
        question.firstStep.size() != count || question.mostTrials == 0)
        return false;
    for (std::size_t i = 0; i < count; ++i) {
        const bool isBounded = std::isfinite(question.least[i]) &&
                               std::isfinite(question.greatest[i]) &&
                               question.least[i] < question.greatest[i];
        const bool isWithin =
            question.start[i] >= question.least[i] && question.start[i] <= question.greatest[i];
        if (!isBounded || !isWithin || !(question.firstStep[i] > 0))
            return false;
    }
    return true;
}

// The optimiser refuses steps that do not fit twice between the bounds.
std::vector<double> fittingSteps(const MinimumQuestion& question) {
    constexpr double almostHalf = 0.49;
    std::vector<double> steps = question.firstStep;
    for (std::size_t i = 0; i < steps.size(); ++i)
        steps[i] = std::min(steps[i], almostHalf * (question.greatest[i] - question.least[i]));
    return steps;
}

}  // namespace

Minimum minimumNear(const MinimumQuestion& question) {
    requireDone(isUsable(question));
    const std::size_t count = question.start.size();
    const std::unique_ptr<nlopt_opt_s, void (*)(nlopt_opt)> optimiser(
        nlopt_create(count > 1 ? NLOPT_LN_BOBYQA : NLOPT_LN_NELDERMEAD,
                     static_cast<unsigned>(count)),
        nlopt_destroy);
    Search search{question, optimiser.get(), {question.start, question.value(question.start)}, {}};
    if (question.mostTrials == 1)
        return search.best;
    const std::vector<double> closeEnough(count, question.closeEnough);
    const std::vector<double> firstStep = fittingSteps(question);
    requireDone(nlopt_set_lower_bounds(optimiser.get(), question.least.data()) > 0 &&
                nlopt_set_upper_bounds(optimiser.get(), question.greatest.data()) > 0 &&
                nlopt_set_min_objective(optimiser.get(), valueAt, &search) > 0 &&
                nlopt_set_initial_step(optimiser.get(), firstStep.data()) > 0 &&
                nlopt_set_xtol_abs(optimiser.get(), closeEnough.data()) > 0 &&
                nlopt_set_maxeval(optimiser.get(), static_cast<int>(question.mostTrials - 1)) > 0);
    std::vector<double> at = question.start;
    double value = 0;
    const nlopt_result result = nlopt_optimize(optimiser.get(), at.data(), &value);
    if (search.thrown)
        std::rethrow_exception(search.thrown);
    requireDone(result != NLOPT_INVALID_ARGS && result != NLOPT_OUT_OF_MEMORY);
    return search.best;
}

}  // namespace rackbook
