// SPDX-License-Identifier: Apache-2.0
// Hexahedra by themselves: homogeneous states on a distorted mesh and a manufactured solution with its order.
#include "tests/support/hex_mesh.h"
#include "tests/support/plain_materials.h"

#include <Eigen/SparseCholesky>
#include <deal.II/base/quadrature_lib.h>

#include <cmath>

using namespace solemech;
using namespace solemech::tests;

namespace
{
constexpr double size = 0.01; ///< of the cube [m]

bool inside(const Point3 &x)
{
  for (const double c : x)
    if (c < 1e-9 || c > size - 1e-9)
      return false;
  return true;
}

/// A cube of n^3 elements whose surface moves as given, under dead loads inside.
struct HeldCube
{
  HexMesh                                   mesh;
  std::vector<Point3>                       given; ///< displacement of every node; counts where held [m]
  std::unique_ptr<solver::SolidKernelOf<3>> kernel;
  solver::ElementGroupOf<3>                 group;

  explicit HeldCube(unsigned n, double distortion = 0)
    : mesh(hex_grid(even_lines(0, size, n), even_lines(0, size, n), even_lines(0, size, n)))
  {
    hold(mesh, [](const Point3 &x) {
      const bool held = !inside(x);
      return std::array{held, held, held};
    });
    Random random;
    auto   moves = mesh.nodes();
    for (auto &move : moves)
    {
      const bool free = inside(move);
      for (auto &component : move)
        component = free ? distortion * size * random() : 0;
    }
    mesh.move_nodes(moves);
  }

  template <typename Displacement>
  void fill(const PlainMaterial &material, Displacement &&displacement)
  {
    for (const auto &x : mesh.nodes())
      given.push_back(displacement(x));
    auto offset = given;
    for (unsigned node = 0; node < mesh.n_nodes(); ++node)
      if (mesh.dof(node, 0) >= 0)
        offset[node] = {};
    kernel = material.kernel<3>();
    group = mesh.group("body", all_cells(mesh), 0, mesh.nodes(), offset);
  }

  /// The given displacements where they are unknown.
  Vector wanted() const
  {
    Vector x = Vector::Zero(mesh.n_unknowns());
    for (unsigned node = 0; node < mesh.n_nodes(); ++node)
      for (unsigned c = 0; c < 3; ++c)
        if (const int dof = mesh.dof(node, c); dof >= 0)
          x[dof] = given[node][c];
    return x;
  }

  /// Newton's method from a guess; after a step of 1e-8 of the size the next one is lost in rounding.
  Vector solve(Vector x, const Vector &load)
  {
    solver::SparseMatrix                                      matrix = mesh.pattern();
    Eigen::SimplicialLDLT<solver::SparseMatrix, Eigen::Lower> factors;
    factors.analyzePattern(matrix);
    for (unsigned go = 0; go < 30; ++go)
    {
      Vector              force = -load;
      std::vector<double> values(matrix.nonZeros() + 1, 0.0);
      REQUIRE(kernel->assemble(group, x.data(), force.data(), values.data()));
      std::copy_n(values.begin(), matrix.nonZeros(), matrix.valuePtr());
      factors.factorize(matrix);
      const Vector step = factors.solve(force);
      x -= step;
      if (step.cwiseAbs().maxCoeff() < 1e-8 * size)
        return x;
    }
    FAIL("not converged");
    return x;
  }
};
} // namespace

TEST_CASE("a distorted mesh of hexahedra carries a homogeneous state exactly", "[patch]")
{
  // Rounding of forces over the condition of a small system; of rubber the condition has its bulk modulus.
  constexpr double exact = 1e-12;
  for (const auto &material : plain_materials())
  {
    INFO(material.name);
    const bool stiff = material.bulk_modulus > 0;
    // Squeezed, sheared two ways; rubber keeps its volume nearly.
    Eigen::Matrix3d gradient;
    gradient << (stiff ? 0.12 : 0.05), 0.06, 0.1, 0, (stiff ? 0.115 : 0.03), -0.05, 0, 0, -0.2;
    const auto displacement = [&](const Point3 &x) {
      const Eigen::Vector3d u = gradient * Eigen::Map<const Eigen::Vector3d>(x.data());
      return Point3{u[0], u[1], u[2]};
    };
    HeldCube cube(3, 0.03);
    cube.fill(material, displacement);
    Random       random;
    const Vector wanted = cube.wanted(), guess = wanted + 1e-4 * size * random.vector(wanted.size());
    const Vector x = cube.solve(guess, Vector::Zero(wanted.size()));
    CHECK((x - wanted).cwiseAbs().maxCoeff() < (stiff ? 100 : 1) * exact * size);

    const Real33 F = Real33::Identity() + gradient.cast<Real>();
    const Real33 cauchy = material.stress(F) * F.transpose() / F.determinant();
    const double scale = std::max(double(cauchy.cwiseAbs().maxCoeff()), material.bulk_modulus);
    const Real   expected[6] = {cauchy(0, 0), cauchy(1, 1), cauchy(2, 2),
                                cauchy(0, 1), cauchy(1, 2), cauchy(2, 0)};
    double       worst = 0;
    for (const auto &element : cube.kernel->fields(cube.group, x.data()))
      for (const auto &point : element)
        for (unsigned k = 0; k < 6; ++k)
          worst = std::max(worst, std::abs(point.stress[k] - double(expected[k])));
    CHECK(worst < 10 * exact * scale);
  }
}

namespace
{
/// Manufactured displacement and its F, smooth; for rubber without divergence.
struct Manufactured
{
  bool volume_keeping;

  Point3 displacement(const Point3 &p) const
  {
    const double a = (volume_keeping ? 0.02 : 0.06) * size, x = p[0] / size, y = p[1] / size, z = p[2] / size;
    if (volume_keeping) // no component depends on its own coordinate
      return {a * std::sin(1.7 * y + 2 * z), a * std::cos(1.5 * z - x), a * std::sin(2 * x + 1.3 * y)};
    return {a * std::sin(1.5 * x + y) * std::cos(z), a * std::cos(x - 1.2 * y) * std::sin(1.3 * z),
            a * (std::sin(2 * z + x) - 1.5 * z + 0.3 * x * y)};
  }
  Real33 deformation(const Point3 &x) const
  {
    // Differences of sixth order: 1e-13.
    Real33       F = Real33::Identity();
    const double h = 2e-3 * size;
    for (unsigned d = 0; d < 3; ++d)
      for (const auto &[k, c] : {std::pair{1, 3. / 4}, std::pair{2, -3. / 20}, std::pair{3, 1. / 60}})
      {
        Point3 up = x, down = x;
        up[d] += k * h, down[d] -= k * h;
        const auto a = displacement(up), b = displacement(down);
        for (unsigned i = 0; i < 3; ++i)
          F(i, d) += c * (a[i] - b[i]) / h;
      }
    return F;
  }
};

/// Visits four points a direction of every cell: cell, place, shape functions, their gradients, weight.
template <typename Visit>
void over_points(const HexMesh &mesh, double h, Visit &&visit)
{
  const dealii::QGauss<3> rule(4);
  for (const auto &cell : mesh.cells())
    for (unsigned q = 0; q < rule.size(); ++q)
    {
      std::array<solver::EdgeShapes, 3> along;
      Point3                            x;
      for (unsigned d = 0; d < 3; ++d)
      {
        along[d] = solver::edge_shapes(rule.point(q)[d]);
        x[d] = mesh.nodes()[cell[0]][d] + h * rule.point(q)[d];
      }
      std::array<double, 27> value;
      std::array<Point3, 27> gradient;
      for (unsigned a = 0; a < 27; ++a)
      {
        const unsigned place[3] = {a % 3, a / 3 % 3, a / 9};
        const auto     product = [&](unsigned sloped) {
          double out = 1;
          for (unsigned d = 0; d < 3; ++d)
            out *= d == sloped ? along[d].slope[place[d]] / h : along[d].value[place[d]];
          return out;
        };
        value[a] = product(3);
        gradient[a] = {product(0), product(1), product(2)};
      }
      visit(cell, x, value, gradient, rule.weight(q) * h * h * h);
    }
}

double displacement_error(const PlainMaterial &material, unsigned n)
{
  const Manufactured exact{material.bulk_modulus > 0};
  HeldCube           cube(n);
  cube.fill(material, [&](const Point3 &x) { return exact.displacement(x); });

  // Held all round, the work of the body force in a test function is that of the stress in its gradient.
  const double h = size / n;
  Vector       load = Vector::Zero(cube.mesh.n_unknowns());
  over_points(cube.mesh, h,
              [&](const auto &cell, const Point3 &x, const auto &, const auto &gradient, double weight) {
                const Real33 P = material.stress(exact.deformation(x));
                for (unsigned a = 0; a < 27; ++a)
                  for (unsigned c = 0; c < 3; ++c)
                    if (const int dof = cube.mesh.dof(cell[a], c); dof >= 0)
                      for (unsigned d = 0; d < 3; ++d)
                        load[dof] += weight * double(P(c, d)) * gradient[a][d];
              });
  const Vector x = cube.solve(cube.wanted(), load);

  double sum = 0, whole = 0;
  over_points(cube.mesh, h,
              [&](const auto &cell, const Point3 &p, const auto &value, const auto &, double weight) {
                const auto v = exact.displacement(p);
                for (unsigned c = 0; c < 3; ++c)
                {
                  double u = 0;
                  for (unsigned a = 0; a < 27; ++a)
                  {
                    const int dof = cube.mesh.dof(cell[a], c);
                    u += value[a] * (dof >= 0 ? x[dof] : cube.given[cell[a]][c]);
                  }
                  sum += weight * (u - v[c]) * (u - v[c]);
                  whole += weight * v[c] * v[c];
                }
              });
  return std::sqrt(sum / whole);
}
} // namespace

TEST_CASE("displacements of a manufactured solution in three dimensions converge with the third order",
          "[order]")
{
  constexpr double least_order = 2.8; // theory: 3 for quadratic elements in the mean square
  for (const auto &material : plain_materials())
  {
    const double coarse = displacement_error(material, 2), fine = displacement_error(material, 4),
                 finest = displacement_error(material, 6);
    const double first = std::log(coarse / fine) / std::log(2),
                 second = std::log(fine / finest) / std::log(1.5);
    INFO(material.name << ": errors " << coarse << " " << fine << " " << finest << ", orders " << first << " "
                       << second);
    CHECK(second >= least_order);
  }
}
