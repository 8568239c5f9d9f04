#include "calc/Minimum.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <stdexcept>

#include "support/MessageOf.h"

namespace rackbook {
namespace {

using Point = std::vector<double>;

constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

// Rosenbrock 1960 (Comput. J. 3:175), with the start that is given there; least at (1, 1).
double valleyAt(const Point& x) {
    return 100 * std::pow(x[1] - x[0] * x[0], 2) + std::pow(1 - x[0], 2);
}

MinimumQuestion valleyQuestion() {
    MinimumQuestion question;
    question.value = valleyAt;
    question.start = {-1.2, 1};
    question.least = {-2, -2};
    question.greatest = {2, 2};
    question.firstStep = {0.5, 0.5};
    return question;
}

MinimumQuestion lineQuestion(const std::function<double(double)>& value) {
    MinimumQuestion question;
    question.value = [value](const Point& x) { return value(x[0]); };
    question.start = {2};
    question.least = {0};
    question.greatest = {6};
    question.firstStep = {0.5};
    return question;
}

struct Broken : std::runtime_error {
    explicit Broken(int its) : std::runtime_error("broken"), number(its) {}
    int number;
};

TEST(Minimum, IsFoundAtTheEndOfRosenbrocksValley) {
    const Minimum found = minimumNear(valleyQuestion());
    EXPECT_NEAR(found.at[0], 1, 1e-3);
    EXPECT_NEAR(found.at[1], 1, 1e-3);
    EXPECT_LT(found.value, 1e-6);
    EXPECT_EQ(found.value, valleyAt(found.at));
}

TEST(Minimum, IsFoundAmongManyVariables) {
    MinimumQuestion question;
    constexpr std::size_t count = 5;
    question.value = [](const Point& x) {
        double sum = 0;
        for (std::size_t i = 0; i < x.size(); ++i)
            sum +=
                std::pow(x[i] - 0.1 * static_cast<double>(i + 1), 2) * static_cast<double>(i + 1);
        return sum;
    };
    question.start.assign(count, -0.7);
    question.least.assign(count, -1);
    question.greatest.assign(count, 1);
    question.firstStep.assign(count, 0.2);
    const Minimum found = minimumNear(question);
    for (std::size_t i = 0; i < count; ++i)
        EXPECT_NEAR(found.at[i], 0.1 * static_cast<double>(i + 1), 1e-3);
}

// The least value of (x − 3)² + (y + 3)² in the square lies in its corner (1, −1).
TEST(Minimum, LiesOnTheBoundsWhereTheFunctionFallsPastThem) {
    MinimumQuestion question = valleyQuestion();
    question.value = [](const Point& x) { return std::pow(x[0] - 3, 2) + std::pow(x[1] + 3, 2); };
    question.least = {-1.5, -1};
    question.greatest = {1, 1.5};
    const Minimum found = minimumNear(question);
    EXPECT_NEAR(found.at[0], 1, 1e-6);
    EXPECT_NEAR(found.at[1], -1, 1e-6);
    EXPECT_NEAR(minimumNear(lineQuestion([](double x) { return x; })).at[0], 0, 1e-4);
    EXPECT_NEAR(minimumNear(lineQuestion([](double x) { return -x; })).at[0], 6, 1e-4);
}

TEST(Minimum, NeverTriesOutsideTheBounds) {
    MinimumQuestion question = valleyQuestion();
    question.least = {-1.25, 0.9};
    question.greatest = {0.8, 1.4};
    question.firstStep = {0.2, 0.2};
    int tried = 0;
    question.value = [&](const Point& x) {
        ++tried;
        for (std::size_t i = 0; i < x.size(); ++i) {
            EXPECT_GE(x[i], question.least[i]);
            EXPECT_LE(x[i], question.greatest[i]);
        }
        return valleyAt(x);
    };
    minimumNear(question);
    EXPECT_GT(tried, 10);
    MinimumQuestion line = lineQuestion([&](double x) {
        EXPECT_GE(x, 0);
        EXPECT_LE(x, 6);
        return std::sin(7 * x) - x;
    });
    line.firstStep = {5};
    minimumNear(line);
}

// cos x falls from 2 to its minimum at π.
TEST(Minimum, IsFoundWithOneVariable) {
    const Minimum found = minimumNear(lineQuestion([](double x) { return std::cos(x); }));
    ASSERT_EQ(found.at.size(), 1u);
    EXPECT_NEAR(found.at[0], 3.14159265, 1e-3);
    EXPECT_NEAR(found.value, -1, 1e-6);
}

TEST(Minimum, IsNeverWorseThanTheStart) {
    // Least at the start alone, steps, a hole, and nothing but noise around it.
    const std::function<double(const Point&)> hostile[] = {
        [](const Point& x) { return x[0] == -1.2 && x[1] == 1 ? 0.0 : 5.0; },
        [](const Point& x) { return std::floor(3 * x[0]) + std::floor(2 * x[1]); },
        [](const Point& x) { return x[0] > -1.1 ? infinite : x[0] * x[0]; },
        [](const Point& x) { return x[0] > -1.1 ? unknown : x[0] * x[0]; },
        [](const Point& x) { return std::fmod(1e6 * std::abs(x[0] * 7 + x[1]), 1.0); }};
    for (const auto& value : hostile) {
        MinimumQuestion question = valleyQuestion();
        question.value = value;
        const Minimum found = minimumNear(question);
        EXPECT_LE(found.value, value(question.start));
        EXPECT_EQ(found.value, value(found.at));
    }
}

TEST(Minimum, IsTheSameForTheSameQuestion) {
    const Minimum first = minimumNear(valleyQuestion());
    const Minimum again = minimumNear(valleyQuestion());
    EXPECT_EQ(first.at, again.at);
    EXPECT_EQ(first.value, again.value);
}

TEST(Minimum, PassesOnWhatTheValueThrows) {
    for (const int after : {1, 2, 7, 12}) {
        for (const bool isLine : {false, true}) {
            int tried = 0;
            MinimumQuestion question =
                isLine ? lineQuestion([](double x) { return std::cos(x); }) : valleyQuestion();
            question.value = [&, inner = question.value](const Point& x) {
                if (++tried >= after)
                    throw Broken(after);
                return inner(x);
            };
            question.closeEnough = 1e-12;
            try {
                minimumNear(question);
                ADD_FAILURE() << "nothing was thrown after " << after;
            } catch (const Broken& broken) {
                EXPECT_EQ(broken.number, after);
                EXPECT_EQ(tried, after) << "tried on after a failure";
            }
        }
    }
}

TEST(Minimum, StopsAtTheMostTrials) {
    for (const std::size_t most : {1u, 5u, 50u}) {
        std::size_t tried = 0;
        MinimumQuestion question = valleyQuestion();
        question.mostTrials = most;
        question.value = [&](const Point& x) {
            ++tried;
            return valleyAt(x);
        };
        EXPECT_LE(minimumNear(question).value, valleyAt(question.start));
        EXPECT_LE(tried, most);
    }
}

void expectRefused(const MinimumQuestion& question, const std::string& what) {
    EXPECT_EQ(test::messageOf<std::invalid_argument>([&] { minimumNear(question); }),
              "a search for a minimum needs bounds around its start")
        << what;
}

TEST(Minimum, RefusesAQuestionThatIsWrong) {
    MinimumQuestion question = valleyQuestion();
    question.start.clear();
    expectRefused(question, "no variables");
    question = valleyQuestion();
    question.least = {-2};
    expectRefused(question, "too few bounds");
    question = valleyQuestion();
    question.firstStep = {0.5};
    expectRefused(question, "too few steps");
    question = valleyQuestion();
    question.start = {-3, 1};
    expectRefused(question, "start outside");
    question = valleyQuestion();
    std::swap(question.least, question.greatest);
    expectRefused(question, "bounds swapped");
    question = valleyQuestion();
    question.firstStep = {0, 0.5};
    expectRefused(question, "a step of 0");
    MinimumQuestion line = lineQuestion([](double x) { return x; });
    line.start = {7};
    expectRefused(line, "start outside, one variable");
}

TEST(Minimum, RefusesWhatIsNoNumber) {
    MinimumQuestion question = valleyQuestion();
    question.start = {unknown, 1};
    expectRefused(question, "start");
    question = valleyQuestion();
    question.greatest = {2, unknown};
    expectRefused(question, "bound");
    question = valleyQuestion();
    question.firstStep = {-0.5, 0.5};
    expectRefused(question, "a step below 0");
}

}  // namespace
}  // namespace rackbook
