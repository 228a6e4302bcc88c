// SPDX-License-Identifier: Apache-2.0
// Elements by themselves: homogeneous states on a distorted mesh, a manufactured solution with its order, and
// the stresses of the foam formula in one element and in a small mesh.
#include "tests/external/check.h"
#include "tests/support/plain_materials.h"
#include "tests/support/single_body.h"

#include <deal.II/base/quadrature_lib.h>
#include <fmt/format.h>

#include <cmath>

using namespace solemech;
using namespace solemech::tests;

TEST_CASE("a distorted mesh carries a homogeneous state exactly", "[patch]")
{
  // Newton stops at 1e-10 of the force; displacements follow with the condition of a small system.
  constexpr double exact = 1e-8;
  const double     size = 0.01;
  for (const auto &stuff : plain_materials())
    for (const auto section : {MeshSection::axisymmetric, MeshSection::plane_strain})
    {
      INFO(stuff.name << (section == MeshSection::axisymmetric ? ", round" : ", plane"));
      StaticProblem problem(grid(even_lines(0, size, 3), even_lines(0, size, 3)), section, all_held);
      Random        random;
      // Mid nodes move by random numbers of their own, which curves the edges inside.
      map_nodes(problem.mesh, [&](const Point &x) {
        const bool inside = x[0] > 1e-9 && x[0] < size - 1e-9 && x[1] > 1e-9 && x[1] < size - 1e-9;
        return inside ? Point{x[0] + 0.03 * size * random(), x[1] + 0.03 * size * random()} : x;
      });
      // Compression with shear (plane) or even lateral stretch (round); rubber keeps its volume nearly.
      const double down = -0.2, out = stuff.bulk_modulus > 0
                                        ? (section == MeshSection::axisymmetric ? 0.118 : 0.25)
                                        : 0.05;
      const double shear = section == MeshSection::axisymmetric ? 0.0 : 0.1;
      const auto   wanted = field(problem.mesh, [&](const Point &x) {
        return Point{out * x[0] + shear * x[1], down * x[1]};
      });
      problem.fill(stuff.kernel<2>(), held_values(problem.mesh, wanted));
      const Vector exact_x = unknown_values(problem.mesh, wanted);
      Random       disturb;
      // Stress times side length [N]; of rubber a thousandth of its bulk modulus, whose rounding is 1e-12 of
      // this.
      const double scale = stuff.bulk_modulus > 0 ? 1e-3 * stuff.bulk_modulus * size : 1.0;
      const Vector x = problem.solve(exact_x + 1e-5 * size * disturb.vector(exact_x.size()), scale);
      CHECK((x - exact_x).cwiseAbs().maxCoeff() < exact * size);
      for (const auto &element : problem.body->fields(x))
        for (const auto &point : element)
          CHECK(point.vertical_stretch == Approx(1 + down).epsilon(exact));
    }
}

namespace
{
/// Manufactured displacement and its F on the unit square (scaled), smooth and zero at the axis.
struct Manufactured
{
  bool   round, volume_keeping;
  double size = 0.01;

  Point displacement(const Point &x) const
  {
    const double a = (volume_keeping ? 0.02 : 0.08) * size, r = x[0] / size, z = x[1] / size;
    if (volume_keeping && !round) // curl of a stream function
      return {a * std::sin(1.5 * r) * std::cos(2 * z) * 2, -a * 1.5 * std::cos(1.5 * r) * std::sin(2 * z)};
    if (volume_keeping) // Stokes stream function r^2 g(r) h(z): u_r = -r g h', u_z = (2 g + r g') h
      return {-a * r * std::cos(r) * std::cos(2 * z) * 2,
              a * (2 * std::cos(r) - r * std::sin(r)) * std::sin(2 * z)};
    return {a * r * std::cos(1.5 * r + z), a * (std::sin(2 * z + r * r) - 1.5 * z)};
  }
  Real33 deformation(const Point &x) const
  {
    // Differences of sixth order: 1e-13.
    Real33       F = Real33::Identity();
    const double h = 2e-3 * size;
    for (int d = 0; d < 2; ++d)
    {
      Point slope{};
      for (const auto &[k, c] : {std::pair{1, 3. / 4}, std::pair{2, -3. / 20}, std::pair{3, 1. / 60}})
      {
        Point up = x, down = x;
        up[d] += k * h, down[d] -= k * h;
        const auto a = displacement(up), b = displacement(down);
        for (int i = 0; i < 2; ++i)
          slope[i] += c * (a[i] - b[i]) / h;
      }
      F(0, d) += slope[0], F(1, d) += slope[1];
    }
    if (round)
      F(2, 2) += displacement(x)[0] / x[0];
    return F;
  }
};

double displacement_error(const PlainMaterial &stuff, bool round, unsigned n)
{
  const Manufactured exact{round, stuff.bulk_modulus > 0};
  StaticProblem      problem(grid(even_lines(0, exact.size, n), even_lines(0, exact.size, n)),
                        round ? MeshSection::axisymmetric : MeshSection::plane_strain, all_held);
  const auto        &mesh = problem.mesh;
  const auto         wanted = field(mesh, [&](const Point &x) { return exact.displacement(x); });
  problem.fill(stuff.kernel<2>(), held_values(mesh, wanted));

  // Held all round, the work of the body force in a test function is that of the stress in its gradient,
  // which needs no divergence of the stress.
  const dealii::QGauss<2> rule(6);
  Vector                  load = Vector::Zero(mesh.n_unknowns());
  const double            h = exact.size / n;
  const auto              over_points = [&](auto &&visit) {
    for (const auto &cell : mesh.cells())
      for (unsigned q = 0; q < rule.size(); ++q)
      {
        const auto   s = solver::edge_shapes(rule.point(q)[0]), t = solver::edge_shapes(rule.point(q)[1]);
        const Point  x{mesh.nodes()[cell[0]][0] + h * rule.point(q)[0],
                      mesh.nodes()[cell[0]][1] + h * rule.point(q)[1]};
        const double weight = rule.weight(q) * h * h * (round ? 2 * M_PI * x[0] : 2.0);
        visit(cell, x, s, t, weight);
      }
  };
  over_points([&](const auto &cell, const Point &x, const auto &s, const auto &t, double weight) {
    const Real33 P = stuff.stress(exact.deformation(x));
    for (unsigned a = 0; a < 9; ++a)
    {
      const double value = s.value[a % 3] * t.value[a / 3], dr = s.slope[a % 3] * t.value[a / 3] / h,
                   dz = s.value[a % 3] * t.slope[a / 3] / h;
      for (unsigned c = 0; c < 2; ++c)
        if (const int dof = mesh.dof(cell[a], c); dof >= 0)
          load[dof] += weight * double(P(c, 0) * dr + P(c, 1) * dz +
                                       (round && c == 0 ? P(2, 2) * value / x[0] : Real(0)));
    }
  });
  const double scale = load.norm();
  problem.equation.contributions.push_back(std::make_unique<DeadLoad>(load));
  const Vector x = problem.solve(unknown_values(mesh, wanted), scale, 1e-9);

  double sum = 0, size = 0;
  over_points([&](const auto &cell, const Point &p, const auto &s, const auto &t, double weight) {
    Point u{};
    for (unsigned a = 0; a < 9; ++a)
      for (unsigned c = 0; c < 2; ++c)
      {
        const int dof = mesh.dof(cell[a], c);
        u[c] += s.value[a % 3] * t.value[a / 3] * (dof >= 0 ? x[dof] : wanted[cell[a]][c]);
      }
    const auto v = exact.displacement(p);
    sum += weight * (std::pow(u[0] - v[0], 2) + std::pow(u[1] - v[1], 2));
    size += weight * (v[0] * v[0] + v[1] * v[1]);
  });
  return std::sqrt(sum / size);
}
} // namespace

TEST_CASE("displacements of a manufactured solution converge with the third order", "[order]")
{
  constexpr double least_order = 2.8; // theory: 3 for quadratic elements in the mean square
  for (const auto &stuff : plain_materials())
    for (const bool round : {true, false})
    {
      const double coarse = displacement_error(stuff, round, 4), fine = displacement_error(stuff, round, 8),
                   finest = displacement_error(stuff, round, 16);
      const double first = std::log2(coarse / fine), second = std::log2(fine / finest);
      INFO(stuff.name << (round ? ", round" : ", plane") << ": errors " << coarse << " " << fine << " "
                      << finest << ", orders " << first << " " << second);
      CHECK(second >= least_order);
    }
}

namespace
{
struct Compressed
{
  double nominal_stress, energy; ///< compressive [Pa], per volume [J/m3]
};

/// A cylinder of n x n elements between frictionless plates, its side free or held.
Compressed compress(const materials::Foam &foam, double strain, bool side_held, unsigned n)
{
  const double  size = 0.01;
  StaticProblem problem(grid(even_lines(0, size, n), even_lines(0, size, n)), MeshSection::axisymmetric,
                        HeldFaces{.base = {false, true}, .side = {side_held, false}, .top = {false, true}});
  const auto    down = field(problem.mesh, [&](const Point &x) { return Point{0, -strain * x[1]}; });
  problem.fill(solver::make_kernel(foam), held_values(problem.mesh, down));
  const Vector x = problem.solve(unknown_values(problem.mesh, down), 1.0, 1e-8);
  const auto   point = problem.body->fields(x).front().front();
  return {-point.vertical_stress * point.volume_ratio / point.vertical_stretch,
          problem.stored_energy() / (M_PI * size * size * size)};
}
} // namespace

TEST_CASE("elements carry the stresses of the foam formula", "[external]")
{
  // One element has one homogeneous state: only the digits of the printed table, and Newton's 1e-8.
  constexpr double  printed = 1e-3;
  const std::string source = "Ogden-Hill foam, closed form; 1050 kPa, exponent 4 (EVA; Verdejo & Mills 2004)";
  struct Row
  {
    double strain, free_0, free_02, held_02, energy_0, energy_02;
  };
  for (const auto &row : {Row{0.10, 200.608, 251.908, 288.591, 10.177, 12.575},
                          Row{0.25, 478.516, 659.664, 805.782, 61.311, 80.105},
                          Row{0.40, 761.600, 1203.301, 1615.645, 153.943, 217.035},
                          Row{0.50, 984.375, 1762.531, 2580.209, 240.855, 363.301}})
  {
    const materials::Foam flat{{{1.05e6, 4, 0}}, {.closed_share = 0}, {}, {}},
      spreading{{{1.05e6, 4, 0.2 / 0.6}}, {.closed_share = 0}, {}, {}};
    for (const unsigned n : {1u, 3u})
    {
      const auto check = [&](const char *what, double expected, double obtained, const char *unit) {
        external_check({source, fmt::format("{} elements, {}, strain {:.2f}", n * n, what, row.strain),
                        expected, obtained / 1e3, printed, unit});
      };
      const auto free_0 = compress(flat, row.strain, false, n),
                 free_02 = compress(spreading, row.strain, false, n);
      check("sides free, Poisson ratio 0", row.free_0, free_0.nominal_stress, "kPa");
      check("sides free, Poisson ratio 0.2", row.free_02, free_02.nominal_stress, "kPa");
      check("sides held, Poisson ratio 0.2", row.held_02,
            compress(spreading, row.strain, true, n).nominal_stress, "kPa");
      check("energy, sides free, Poisson ratio 0", row.energy_0, free_0.energy, "kJ/m3");
      check("energy, sides free, Poisson ratio 0.2", row.energy_02, free_02.energy, "kJ/m3");
    }
  }
}
