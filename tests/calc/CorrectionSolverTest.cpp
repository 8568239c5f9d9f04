// Corrections against a linear programme solved by GLPK, the GNU Linear Programming Kit.
#include <glpk.h>
#include <gtest/gtest.h>

#include <cmath>
#include <memory>
#include <optional>
#include <random>

#include "calc/Correction.h"

namespace rackbook {
namespace {

struct Deleter {
    void operator()(glp_prob* problem) const { glp_delete_prob(problem); }
};

// Least Σ y with a_i + y_i = p_i M, 0 ≤ y_i ≤ stock, M at least what is wanted; nothing where there
// is no solution.
std::optional<double> leastAdded_g(const CorrectionQuestion& question) {
    const int parts = static_cast<int>(question.shares.size());
    const std::unique_ptr<glp_prob, Deleter> problem(glp_create_prob());
    glp_set_obj_dir(problem.get(), GLP_MIN);
    glp_add_cols(problem.get(), parts + 1);
    glp_add_rows(problem.get(), parts);
    const int total = parts + 1;
    glp_set_col_bnds(problem.get(), total, GLP_LO, question.atLeast_g.value_or(0), 0);
    for (int i = 1; i <= parts; ++i) {
        const auto part = static_cast<std::size_t>(i - 1);
        const double stock_g = question.inStock_g.empty() ? INFINITY : question.inStock_g[part];
        const int bounds = std::isinf(stock_g) ? GLP_LO : stock_g > 0 ? GLP_DB : GLP_FX;
        glp_set_col_bnds(problem.get(), i, bounds, 0, bounds == GLP_LO ? 0 : stock_g);
        glp_set_obj_coef(problem.get(), i, 1);
        const int columns[] = {0, i, total};
        const double factors[] = {0, -1, question.shares[part]};
        glp_set_mat_row(problem.get(), i, 2, columns, factors);
        glp_set_row_bnds(problem.get(), i, GLP_FX, question.inDish_g[part],
                         question.inDish_g[part]);
    }
    glp_smcp settings;
    glp_init_smcp(&settings);
    settings.msg_lev = GLP_MSG_OFF;
    EXPECT_EQ(glp_simplex(problem.get(), &settings), 0);
    if (glp_get_status(problem.get()) != GLP_OPT)
        return std::nullopt;
    return glp_get_obj_val(problem.get());
}

CorrectionQuestion randomQuestion(std::mt19937& random) {
    std::uniform_real_distribution<double> unit(0, 1);
    CorrectionQuestion question;
    const std::size_t parts = 2 + random() % 5;
    double sum = 0;
    for (std::size_t i = 0; i < parts; ++i) {
        question.shares.push_back(i > 0 && random() % 10 == 0 ? 0 : 0.02 + unit(random));
        sum += question.shares.back();
        question.inDish_g.push_back(random() % 4 == 0 ? 0 : 20 * unit(random));
    }
    for (std::size_t i = 0; i < parts; ++i) {
        question.shares[i] /= sum;
        // A stray part in one case of three.
        if (question.shares[i] == 0 && random() % 3 != 0)
            question.inDish_g[i] = 0;
    }
    if (random() % 2 == 0)
        for (std::size_t i = 0; i < parts; ++i)
            question.inStock_g.push_back(random() % 3 == 0 ? INFINITY : 150 * unit(random));
    if (random() % 2 == 0)
        question.atLeast_g = 1 + 100 * unit(random);
    return question;
}

TEST(CorrectionSolver, AddsAsLittleAsALinearProgrammeDoes) {
    std::mt19937 random(2026);
    int possible = 0;
    int impossible = 0;
    for (int i = 0; i < 500; ++i) {
        SCOPED_TRACE(i);
        const CorrectionQuestion question = randomQuestion(random);
        const Correction correction = correctionFor(question);
        const std::optional<double> least_g = leastAdded_g(question);
        ASSERT_EQ(correction.isPossible(), least_g.has_value());
        if (!least_g) {
            ++impossible;
            continue;
        }
        ++possible;
        ASSERT_NEAR(correction.added_g, *least_g, 1e-6 * std::max(1.0, *least_g));
        for (std::size_t part = 0; part < question.shares.size(); ++part)
            ASSERT_NEAR(question.inDish_g[part] + correction.add_g[part],
                        question.shares[part] * correction.total_g, 1e-9 * correction.total_g);
    }
    glp_free_env();
    EXPECT_GT(possible, 100);
    EXPECT_GT(impossible, 100);
}

}  // namespace
}  // namespace rackbook
