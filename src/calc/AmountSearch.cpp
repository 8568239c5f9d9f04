#include "calc/AmountSearch.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <stdexcept>

#include "calc/Minimum.h"

namespace rackbook {

namespace {

constexpr std::size_t keptSets = 60;
constexpr std::size_t trialsOfOneThing = 32;
// What a further thing starts at, beside the largest that is there.
constexpr double firstPart = 0.15;

class Search {
public:
    explicit Search(const AmountQuestion& question) : m_question(question) {}

    std::vector<AmountsFound> run() {
        std::vector<AmountsFound> all = ofOne();
        std::vector<AmountsFound> smaller = all;
        for (std::size_t size = 2; size <= m_question.mostAtOnce && size <= m_question.things;
             ++size) {
            std::vector<AmountsFound> larger = madeFrom(smaller);
            all.insert(all.end(), larger.begin(), larger.end());
            smaller = std::move(larger);
        }
        sortByValue(all);
        // In flat valleys the search for each set stops early; those that matter are gone over
        // again.
        for (std::size_t i = 0; i < std::min(keptSets, all.size()); ++i)
            all[i] = improved(all[i].tried, Care::last);
        sortByValue(all);
        return all;
    }

private:
    bool hasOther() const { return m_question.otherGreatest > m_question.otherLeast; }

    double otherMiddle() const { return (m_question.otherLeast + m_question.otherGreatest) / 2; }

    static void sortByValue(std::vector<AmountsFound>& found) {
        std::stable_sort(
            found.begin(), found.end(),
            [](const AmountsFound& a, const AmountsFound& b) { return a.value < b.value; });
    }

    AmountsTried triedAt(const std::vector<std::size_t>& things,
                         const std::vector<double>& at) const {
        AmountsTried tried{things, {}, m_question.otherLeast};
        for (std::size_t i = 0; i < things.size(); ++i)
            tried.amounts.push_back(std::exp(at[i]));
        if (hasOther())
            tried.other = at.back();
        return tried;
    }

    enum class Care { first, last };

    AmountsFound improved(const AmountsTried& start, Care care = Care::first) const {
        MinimumQuestion question;
        for (const double amount : start.amounts) {
            question.start.push_back(
                std::log(std::clamp(amount, m_question.least, m_question.greatest)));
            question.least.push_back(std::log(m_question.least));
            question.greatest.push_back(std::log(m_question.greatest));
            question.firstStep.push_back(0.5);
        }
        if (hasOther()) {
            question.start.push_back(
                std::clamp(start.other, m_question.otherLeast, m_question.otherGreatest));
            question.least.push_back(m_question.otherLeast);
            question.greatest.push_back(m_question.otherGreatest);
            question.firstStep.push_back((m_question.otherGreatest - m_question.otherLeast) / 5);
        }
        question.value = [&](const std::vector<double>& at) {
            return m_question.value(triedAt(start.things, at));
        };
        question.closeEnough = care == Care::first ? 1e-3 : 1e-5;
        question.mostTrials = (care == Care::first ? 1 : 5) * (60 + 50 * question.start.size());
        const Minimum found = minimumNear(question);
        return {triedAt(start.things, found.at), found.value};
    }

    // Amounts evenly spread over their logarithms, so that the search begins in the right valley.
    std::vector<AmountsFound> ofOne() const {
        std::vector<AmountsFound> found;
        for (std::size_t thing = 0; thing < m_question.things; ++thing) {
            AmountsFound best{{}, INFINITY};
            for (std::size_t i = 0; i < trialsOfOneThing; ++i) {
                const double part =
                    static_cast<double>(i) / static_cast<double>(trialsOfOneThing - 1);
                const double amount =
                    m_question.least * std::pow(m_question.greatest / m_question.least, part);
                const AmountsTried tried{{thing}, {amount}, otherMiddle()};
                const double value = m_question.value(tried);
                if (value < best.value)
                    best = {tried, value};
            }
            if (best.tried.things.empty())
                throw std::invalid_argument("what is tried has no value");
            found.push_back(improved(best.tried));
        }
        sortByValue(found);
        return found;
    }

    static AmountsTried withOneMore(const AmountsTried& parent, std::size_t thing) {
        AmountsTried tried = parent;
        const double most = *std::max_element(parent.amounts.begin(), parent.amounts.end());
        const auto place = std::lower_bound(tried.things.begin(), tried.things.end(), thing);
        const auto index = place - tried.things.begin();
        tried.things.insert(place, thing);
        tried.amounts.insert(tried.amounts.begin() + index, firstPart * most);
        return tried;
    }

    // How many sets of so many things there are.
    double setsOf(std::size_t size) const {
        double sets = 1;
        for (std::size_t i = 0; i < size; ++i)
            sets *= static_cast<double>(m_question.things - i) / static_cast<double>(i + 1);
        return sets;
    }

    // Pre: `parents` is sorted, so that the first that leads to a set is the best one.
    std::vector<AmountsFound> madeFrom(const std::vector<AmountsFound>& parents) const {
        std::map<std::vector<std::size_t>, AmountsTried> starts;
        std::vector<std::vector<std::size_t>> inOrder;
        const bool takesAll =
            setsOf(parents.front().tried.things.size() + 1) <= static_cast<double>(everySet);
        const std::size_t most = takesAll ? parents.size() : keptSets;
        for (std::size_t i = 0; i < std::min(most, parents.size()); ++i)
            for (std::size_t thing = 0; thing < m_question.things; ++thing) {
                const std::vector<std::size_t>& there = parents[i].tried.things;
                if (std::binary_search(there.begin(), there.end(), thing))
                    continue;
                AmountsTried start = withOneMore(parents[i].tried, thing);
                if (starts.emplace(start.things, start).second)
                    inOrder.push_back(start.things);
            }
        std::vector<AmountsFound> found;
        for (const std::vector<std::size_t>& things : inOrder)
            found.push_back(improved(starts.at(things)));
        sortByValue(found);
        return found;
    }

    const AmountQuestion& m_question;
};

}  // namespace

std::vector<AmountsFound> amountsFor(const AmountQuestion& question) {
    if (question.mostAtOnce < 1 || !(question.least > 0) || !(question.greatest > question.least) ||
        !(question.otherGreatest >= question.otherLeast))
        throw std::invalid_argument("the bounds of the amounts are wrong");
    return Search(question).run();
}

}  // namespace rackbook
