#include "calc/AmountSearch.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <set>
#include <stdexcept>

#include "InventedInks.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::Chance;
using Vector = std::vector<double>;

constexpr double infinite = std::numeric_limits<double>::infinity();

// Things that add up: each is a vector, and the amounts of them are to make the wanted vector.
struct Adding {
    std::vector<Vector> things;
    Vector wanted;

    double missOf(const std::vector<std::size_t>& chosen, const Vector& amounts) const {
        double sum = 0;
        for (std::size_t i = 0; i < wanted.size(); ++i) {
            double made = -wanted[i];
            for (std::size_t j = 0; j < chosen.size(); ++j)
                made += amounts[j] * things[chosen[j]][i];
            sum += made * made;
        }
        return sum;
    }

    AmountQuestion question(std::size_t mostAtOnce) const {
        AmountQuestion asked;
        asked.things = things.size();
        asked.mostAtOnce = mostAtOnce;
        asked.least = 1e-3;
        asked.greatest = 10;
        asked.value = [this](const AmountsTried& tried) {
            return missOf(tried.things, tried.amounts);
        };
        return asked;
    }
};

Adding invented(std::size_t things, std::size_t dimensions, std::uint32_t seed) {
    Chance chance(seed);
    Adding adding;
    for (std::size_t i = 0; i < things; ++i) {
        Vector vector;
        for (std::size_t j = 0; j < dimensions; ++j)
            vector.push_back(chance.between(0, 1));
        adding.things.push_back(vector);
    }
    for (std::size_t j = 0; j < dimensions; ++j)
        adding.wanted.push_back(chance.between(0.5, 2));
    return adding;
}

// Our own search, without a method: every point of a grid of even factors.
double leastOnGrid(const Adding& adding, const std::vector<std::size_t>& chosen,
                   const Vector& amountsSoFar = {}) {
    if (amountsSoFar.size() == chosen.size())
        return adding.missOf(chosen, amountsSoFar);
    double least = infinite;
    constexpr int steps = 80;
    for (int i = 0; i <= steps; ++i) {
        Vector amounts = amountsSoFar;
        amounts.push_back(1e-3 * std::pow(1e4, static_cast<double>(i) / steps));
        least = std::min(least, leastOnGrid(adding, chosen, amounts));
    }
    return least;
}

TEST(AmountSearch, IsNeverBeatenByAGridOverEverySet) {
    for (const std::uint32_t seed : {1u, 2u, 3u}) {
        const Adding adding = invented(5, 3, seed);
        const std::vector<AmountsFound> found = amountsFor(adding.question(2));
        // Every set of one and of two.
        EXPECT_EQ(found.size(), 5u + 10u);
        for (const AmountsFound& one : found)
            EXPECT_LE(one.value, leastOnGrid(adding, one.tried.things) + 1e-5);
    }
    const Adding adding = invented(3, 4, 9);
    for (const AmountsFound& one : amountsFor(adding.question(3)))
        EXPECT_LE(one.value, leastOnGrid(adding, one.tried.things) + 1e-5);
}

TEST(AmountSearch, LooksAtEverySetOnceInItsDocumentedOrder) {
    const Adding adding = invented(6, 4, 5);
    const std::vector<AmountsFound> found = amountsFor(adding.question(3));
    EXPECT_EQ(found.size(), 6u + 15u + 20u);
    std::set<std::vector<std::size_t>> sets;
    for (std::size_t i = 0; i < found.size(); ++i) {
        const AmountsTried& tried = found[i].tried;
        EXPECT_TRUE(sets.insert(tried.things).second);
        EXPECT_TRUE(std::is_sorted(tried.things.begin(), tried.things.end()));
        EXPECT_EQ(tried.amounts.size(), tried.things.size());
        EXPECT_LE(tried.things.size(), 3u);
        EXPECT_EQ(found[i].value, adding.missOf(tried.things, tried.amounts));
        if (i > 0) {
            EXPECT_LE(found[i - 1].value, found[i].value);
        }
    }
}

// 1001 sets of four among 14, more than all are looked at of; other things cannot make it.
TEST(AmountSearch, FindsFourAmongMoreSetsThanAreLookedAt) {
    for (const std::uint32_t seed : {11u, 12u, 13u}) {
        Adding adding = invented(14, 12, seed);
        Chance chance(seed);
        std::vector<std::size_t> planted;
        while (planted.size() < 4) {
            const std::size_t thing = chance.below(14);
            if (std::find(planted.begin(), planted.end(), thing) == planted.end())
                planted.push_back(thing);
        }
        std::sort(planted.begin(), planted.end());
        Vector amounts;
        for (std::size_t i = 0; i < 4; ++i)
            amounts.push_back(chance.between(0.3, 3));
        for (std::size_t j = 0; j < adding.wanted.size(); ++j) {
            adding.wanted[j] = 0;
            for (std::size_t i = 0; i < 4; ++i)
                adding.wanted[j] += amounts[i] * adding.things[planted[i]][j];
        }
        const std::vector<AmountsFound> found = amountsFor(adding.question(4));
        EXPECT_GT(found.size(), 14u + 91u + 364u);
        EXPECT_LT(found.size(), 14u + 91u + 364u + 1001u);
        EXPECT_EQ(found.front().tried.things, planted);
        EXPECT_LT(found.front().value, 1e-3);
        for (std::size_t i = 0; i < 4; ++i)
            EXPECT_NEAR(found.front().tried.amounts[i], amounts[i], 0.02 * amounts[i]);
    }
}

// Of four, those are looked at that add one thing to one of the 60 best sets of three.
TEST(AmountSearch, LooksAtWhatComesFromTheBestSetsWhereThereAreTooMany) {
    const Adding adding = invented(14, 6, 15);
    std::vector<std::vector<std::size_t>> ofThree;
    std::set<std::vector<std::size_t>> ofFour;
    for (const AmountsFound& one : amountsFor(adding.question(4)))
        if (one.tried.things.size() == 3)
            ofThree.push_back(one.tried.things);
        else if (one.tried.things.size() == 4)
            ofFour.insert(one.tried.things);
    ASSERT_EQ(ofThree.size(), 364u);
    std::set<std::vector<std::size_t>> expected;
    for (std::size_t i = 0; i < 60; ++i)
        for (std::size_t thing = 0; thing < 14; ++thing) {
            std::vector<std::size_t> four = ofThree[i];
            if (std::find(four.begin(), four.end(), thing) != four.end())
                continue;
            four.push_back(thing);
            std::sort(four.begin(), four.end());
            expected.insert(four);
        }
    EXPECT_EQ(ofFour, expected);
}

TEST(AmountSearch, StaysWithinItsBounds) {
    Adding adding = invented(4, 3, 21);
    for (double& wanted : adding.wanted)
        wanted *= 100;
    AmountQuestion question = adding.question(2);
    question.least = 0.5;
    question.greatest = 4;
    question.otherLeast = 2;
    question.otherGreatest = 7;
    question.value = [&](const AmountsTried& tried) {
        for (const double amount : tried.amounts) {
            EXPECT_GE(amount, 0.5 * (1 - 1e-12));
            EXPECT_LE(amount, 4 * (1 + 1e-12));
        }
        EXPECT_GE(tried.other, 2);
        EXPECT_LE(tried.other, 7);
        return adding.missOf(tried.things, tried.amounts) * (1 + std::pow(tried.other - 3, 2));
    };
    const std::vector<AmountsFound> found = amountsFor(question);
    // All of it is wanted, and more.
    for (const double amount : found.front().tried.amounts)
        EXPECT_NEAR(amount, 4, 0.01);
    EXPECT_NEAR(found.front().tried.other, 3, 0.01);
}

TEST(AmountSearch, FindsAlsoWithinNarrowBounds) {
    Adding adding = invented(3, 3, 31);
    for (std::size_t j = 0; j < 3; ++j)
        adding.wanted[j] = 1.2 * adding.things[0][j] + 1.7 * adding.things[2][j];
    AmountQuestion question = adding.question(2);
    question.least = 1;
    question.greatest = 2;
    const std::vector<AmountsFound> found = amountsFor(question);
    EXPECT_EQ(found.front().tried.things, (std::vector<std::size_t>{0, 2}));
    EXPECT_LT(found.front().value, 1e-4);
}

TEST(AmountSearch, HoldsTheFurtherQuantityWhereItsBoundsAreEqual) {
    const Adding adding = invented(4, 3, 41);
    AmountQuestion question = adding.question(2);
    question.otherLeast = question.otherGreatest = 3.25;
    int tries = 0;
    question.value = [&](const AmountsTried& tried) {
        EXPECT_EQ(tried.other, 3.25);
        ++tries;
        return adding.missOf(tried.things, tried.amounts);
    };
    for (const AmountsFound& one : amountsFor(question))
        EXPECT_EQ(one.tried.other, 3.25);
    EXPECT_GT(tries, 100);
}

TEST(AmountSearch, IsTheSameForTheSameQuestion) {
    const Adding adding = invented(6, 4, 51);
    const std::vector<AmountsFound> one = amountsFor(adding.question(3));
    const std::vector<AmountsFound> other = amountsFor(adding.question(3));
    ASSERT_EQ(one.size(), other.size());
    for (std::size_t i = 0; i < one.size(); ++i) {
        EXPECT_EQ(one[i].tried.things, other[i].tried.things);
        EXPECT_EQ(one[i].tried.amounts, other[i].tried.amounts);
    }
}

TEST(AmountSearch, HasNothingToFindAmongNothing) {
    const Adding alone = invented(1, 2, 1);
    AmountQuestion question = alone.question(4);
    EXPECT_EQ(amountsFor(question).size(), 1u);
    question.things = 0;
    EXPECT_TRUE(amountsFor(question).empty());
}

TEST(AmountSearch, PassesOnWhatTheValueThrows) {
    const Adding adding = invented(4, 3, 61);
    for (const int after : {1, 30, 120}) {
        int tried = 0;
        AmountQuestion question = adding.question(2);
        question.value = [&](const AmountsTried& amounts) -> double {
            if (++tried == after)
                throw std::out_of_range("this one");
            return amounts.amounts.front();
        };
        EXPECT_EQ(test::messageOf<std::out_of_range>([&] { amountsFor(question); }), "this one");
        EXPECT_EQ(tried, after);
    }
}

TEST(AmountSearch, RefusesWrongBounds) {
    const Adding adding = invented(3, 3, 71);
    const auto refusalOf = [&](const std::function<void(AmountQuestion&)>& spoil) {
        AmountQuestion question = adding.question(2);
        spoil(question);
        return test::messageOf<std::invalid_argument>([&] { amountsFor(question); });
    };
    const std::string wrongBounds = "the bounds of the amounts are wrong";
    EXPECT_EQ(refusalOf([](AmountQuestion& question) { question.least = 0; }), wrongBounds);
    EXPECT_EQ(refusalOf([](AmountQuestion& question) { question.greatest = 1e-3; }), wrongBounds);
    EXPECT_EQ(refusalOf([](AmountQuestion& question) { question.least = std::nan(""); }),
              wrongBounds);
    EXPECT_EQ(refusalOf([](AmountQuestion& question) { question.otherLeast = 1; }), wrongBounds);
    EXPECT_EQ(refusalOf([](AmountQuestion& question) { question.mostAtOnce = 0; }), wrongBounds);
    EXPECT_EQ(refusalOf([](AmountQuestion& question) {
                  question.value = [](const AmountsTried&) { return std::nan(""); };
              }),
              "what is tried has no value");
}

}  // namespace
}  // namespace rackbook
