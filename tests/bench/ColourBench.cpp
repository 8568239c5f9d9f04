#include "ColourBench.h"

#include <algorithm>
#include <chrono>
#include <limits>
#include <stdexcept>

#include "calc/ColourMatch.h"
#include "calc/InventedInks.h"

namespace rackbook {

namespace {

using namespace test;

template <class Work>
double fastestOfThree(const Work& work) {
    using Clock = std::chrono::steady_clock;
    double fastest = std::numeric_limits<double>::infinity();
    for (int round = 0; round < 3; ++round) {
        const Clock::time_point start = Clock::now();
        work();
        fastest = std::min(fastest, std::chrono::duration<double>(Clock::now() - start).count());
    }
    return fastest;
}

// Over paper and over black each.
std::vector<DrawdownSample> fourDrawdownsEach() {
    std::vector<DrawdownSample> samples;
    for (const double filmWeight_gm2 : {3.0, 6.0, 9.0, 14.0})
        samples.push_back(drawdownOf("base", {{clearBase, 1}}, filmWeight_gm2));
    for (const int ink : allInks())
        for (const double share : {0.02, 0.08, 0.25, 1.0})
            samples.push_back(drawdownOf("ink", letDown(ink, share), 5));
    return samples;
}

// A colour of five inks, so that four cannot quite meet it.
MatchQuestion matchOf(const Characterisation& inks) {
    const std::vector<LotShare> wanted = {{clearBase, 0.78}, {coldYellow, 0.07}, {warmRed, 0.03},
                                          {coldRed, 0.04},   {greenBlue, 0.05},  {thinWhite, 0.03}};
    return {inks,
            targetOf(readingOver(whitePaper(), wanted, 5)),
            allInks(),
            clearBase,
            {},
            std::nullopt,
            5,
            5,
            whitePaper(),
            4};
}

}  // namespace

ColourFigures measuredColour() {
    ColourFigures figures;
    const std::vector<DrawdownSample> samples = fourDrawdownsEach();
    figures.drawdowns = samples.size();
    Characterisation learnt;
    figures.learnSeconds =
        fastestOfThree([&] { learnt = characterise(samples, inventedKinds(), {}); });
    const MatchQuestion question = matchOf(learnt);
    std::vector<MatchFound> found;
    figures.matchSeconds = fastestOfThree([&] { found = matchesFor(question, 5); });
    if (found.empty() || found.front().miss.underD50_dE00 > 1)
        throw std::runtime_error("the invented colour was not matched");
    figures.films = 100000;
    const Bands paper = insideOf(whitePaper(), {});
    double sum = 0;
    figures.filmSeconds = fastestOfThree([&] {
        for (std::size_t i = 0; i < figures.films; ++i)
            sum += filmOver(paper, learnt.optics[firstInk + i % inkCount], 5)[i % bandCount];
    });
    if (!(sum > 0))
        throw std::runtime_error("the invented films are black");
    return figures;
}

}  // namespace rackbook
