// SPDX-License-Identifier: Apache-2.0
// Linear models against closed forms: weighted least squares with a normal prior, u = C (A^T W y + P m) with
// C = (A^T W A + P)^-1 (Gauss-Markov; any text on Bayesian linear regression), and a certified regression.
#include "tests/support/catch.h"
#include "tests/unit/study/models.h"

#include <Eigen/Dense>

using namespace solemech;
using namespace solemech::settle;
using namespace solemech::tests;

TEST_CASE("linear readings settle where weighted least squares with a prior does, with its covariance")
{
  Eigen::MatrixXd a(4, 3);
  a << 1, 0.2, 0, 0.5, -1, 0.1, 0.3, 0.4, 0.02, 2, 1, 0;
  const Eigen::Vector4d b(10, 12, 14, 20), y(10.6, 11.1, 14.3, 21.9), doubt(0.2, 0.3, 0.15, 0.5);
  const Eigen::Vector3d median(1.5, 0.8, 3), spread(0.4, 0.6, 0.3);

  std::vector<Parameter> parameters;
  for (int k = 0; k < 3; ++k)
    parameters.push_back({"p" + std::to_string(k), median[k], spread[k], 0.01, 100});
  std::vector<Observation>         readings;
  std::vector<std::vector<double>> rows;
  for (int i = 0; i < 4; ++i)
  {
    readings.push_back({"r" + std::to_string(i), y[i], doubt[i]});
    rows.push_back({a(i, 0), a(i, 1), a(i, 2)});
  }
  const auto answer = settled(parameters, readings, linear_model(rows, {b[0], b[1], b[2], b[3]}));

  const Eigen::Vector3d m = median.array().log();
  const Eigen::MatrixXd p = spread.array().square().inverse().matrix().asDiagonal();
  const Eigen::MatrixXd w = doubt.array().square().inverse().matrix().asDiagonal();
  const Eigen::MatrixXd c = (a.transpose() * w * a + p).inverse();
  const Eigen::Vector3d u = c * (a.transpose() * w * (y - b) + p * m);

  CHECK(answer.converged);
  for (int k = 0; k < 3; ++k)
  {
    // Ends when a step changes half the sum of squares by less than 1e-4: within 1.5 % of a standard
    // deviation.
    const double deviation = std::sqrt(c(k, k));
    CHECK(std::log(answer.values[k]) == Approx(u[k]).margin(0.015 * deviation));
    for (int j = 0; j < 3; ++j)
      CHECK(answer.covariance[k][j] == Approx(c(k, j)).margin(1e-6 * deviation * std::sqrt(c(j, j))));
    CHECK(answer.parameters[k].band.high == Approx(std::exp(u[k] + 1.645 * deviation)).epsilon(0.01));
    CHECK(answer.parameters[k].doubt_left == Approx(deviation / spread[k]).epsilon(1e-6));
    CHECK(answer.correlation[k][k] == Approx(1).epsilon(1e-9));
  }
  // The third parameter is hardly seen.
  CHECK_FALSE(answer.parameters[2].settled);
  CHECK(answer.parameters[0].settled);

  SECTION("bands of a further prediction: variance along its gradient")
  {
    const Eigen::Vector3d g(1, -2, 0.5);
    const auto            band = propagate(answer, 7, {1, -2, 0.5});
    CHECK(band.high - 7 == Approx(1.6448536 * std::sqrt(g.dot(c * g))).epsilon(1e-6));
    CHECK(band.low == Approx(14 - band.high).epsilon(1e-12));
  }
  SECTION("sampling gives the same bands as linear propagation, and a linear model has no error")
  {
    CHECK(answer.check.done);
    CHECK(answer.check.surrogate_error < 1e-9);
    // 4000 samples: an end of a 90 % band is known to about 3 % of a half band (binomial quantile, 1 sigma 2
    // %).
    CHECK(answer.check.linear_error < 0.09);
    CHECK(answer.check.effective_share > 0.7);
  }
  SECTION("the next reading: the update of one row, by the full inverse")
  {
    const Eigen::Vector3d                 q(0.3, 1, 0);
    const std::vector<Eigen::RowVector3d> rows_to_come{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
    std::vector<Candidate>                candidates;
    for (int i = 0; i < 3; ++i)
      candidates.push_back(
        {"c" + std::to_string(i), {i == 0 ? 1. : 0, i == 1 ? 1. : 0, i == 2 ? 1. : 0}, 0.1});
    const auto ranked = rank_readings(answer, candidates, {0.3, 1, 0});
    REQUIRE(ranked.size() == 3);
    for (const auto &next : ranked)
    {
      const Eigen::RowVector3d g = rows_to_come[next.candidate];
      const Eigen::Matrix3d    after = (c.inverse() + g.transpose() * g / 0.01).inverse();
      CHECK(next.doubt_left == Approx(std::sqrt(q.dot(after * q) / q.dot(c * q))).epsilon(1e-6));
    }
    CHECK(ranked[0].doubt_left <= ranked[1].doubt_left);
    CHECK(ranked[1].doubt_left <= ranked[2].doubt_left);
  }
}

TEST_CASE(
  "a straight line through the Norris data of the NIST StRD has the certified coefficients and deviations")
{
  // Data and certified values from memory; that the one gives the other to ten digits confirms both.
  const std::vector<std::pair<double, double>> y_x{
    {0.1, 0.2},     {338.8, 337.4}, {118.1, 118.2}, {888.0, 884.6}, {9.2, 10.1},    {228.1, 226.5},
    {668.5, 666.3}, {998.5, 996.3}, {449.1, 448.6}, {778.9, 777.0}, {559.2, 558.2}, {0.3, 0.4},
    {0.1, 0.6},     {778.1, 775.5}, {668.8, 666.9}, {339.3, 338.0}, {448.9, 447.5}, {10.8, 11.6},
    {557.7, 556.0}, {228.3, 228.1}, {998.0, 995.8}, {888.8, 887.6}, {119.6, 120.2}, {0.3, 0.3},
    {0.6, 0.3},     {557.6, 556.8}, {339.3, 339.1}, {888.0, 887.2}, {998.5, 999.0}, {778.9, 779.0},
    {10.2, 11.1},   {117.6, 118.3}, {228.9, 229.2}, {668.4, 669.1}, {449.2, 448.9}, {0.2, 0.5}};
  const double b0 = -0.262323073774029, b1 = 1.00211681802045;
  const double deviation_0 = 0.232818234301152, deviation_1 = 0.429796848199937e-3,
               residual = 0.884796396144373;

  // Parameters are positive: the line is lifted by 10. The prior is so wide that it says nothing.
  std::vector<Observation> readings;
  for (const auto &[y, x] : y_x)
    readings.push_back({"at " + std::to_string(x), y + 10, residual});
  const auto line = predict_with([&](const std::vector<double> &p) {
    std::vector<double> y;
    for (const auto &point : y_x)
      y.push_back(p[0] + p[1] * point.second);
    return y;
  });
  Wish       plain;
  plain.robust_at = 100;
  const auto answer =
    settled({{"lifted intercept", 5, 30, 1e-3, 1e3}, {"slope", 2, 30, 1e-3, 1e3}}, readings, line, plain);
  CHECK(answer.converged);
  CHECK(answer.values[0] - 10 == Approx(b0).margin(0.02 * deviation_0));
  CHECK(answer.values[1] == Approx(b1).margin(0.02 * deviation_1));
  CHECK(std::sqrt(answer.covariance[0][0]) * answer.values[0] == Approx(deviation_0).epsilon(0.01));
  CHECK(std::sqrt(answer.covariance[1][1]) * answer.values[1] == Approx(deviation_1).epsilon(0.01));
  CHECK(answer.misfit == Approx(std::sqrt(34. / 36.)).epsilon(0.001)); // 36 points, 34 degrees of freedom
}
