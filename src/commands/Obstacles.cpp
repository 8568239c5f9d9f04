#include "commands/Obstacles.h"

#include <algorithm>

#include "base/Text.h"

namespace rackbook {

namespace {

template <class R>
const std::string& idAt(const InkBook& ink, int position) {
    return ink.records.of<R>()[static_cast<std::size_t>(position)].id;
}

std::string wordsOf(const InkBook& ink, const MixProblem& problem) {
    switch (problem.obstacle) {
        case MixObstacle::massOfWeighing:
            return "weighing " + idAt<Weighing>(ink, problem.weighing) + " has no mass";
        case MixObstacle::inkOfPull:
            return "pull " + idAt<Pull>(ink, problem.pull) +
                   " took an unknown mass before more was added";
        case MixObstacle::contentsNotRecorded:
            break;
    }
    return problem.mix < 0
               ? "no portion is recorded"
               : "what went into mix " + idAt<Mix>(ink, problem.mix) + " was never weighed";
}

}  // namespace

std::string obstacleWords(const InkBook& ink, const std::vector<MixProblem>& problems) {
    std::vector<std::string> reasons;
    for (const MixProblem& problem : problems)
        reasons.push_back(wordsOf(ink, problem));
    std::sort(reasons.begin(), reasons.end());
    reasons.erase(std::unique(reasons.begin(), reasons.end()), reasons.end());
    return joined(reasons);
}

}  // namespace rackbook
