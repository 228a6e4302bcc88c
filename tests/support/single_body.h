// SPDX-License-Identifier: Apache-2.0
// One body on a tensor grid for solver tests: grid, held faces, moved nodes, given boundary displacements,
// quasi-static solution. Positions of the nodes may be anything; the grid only says what neighbours what.
#pragma once

#include "solver/contributions/solid_body.h"
#include "solver/mesh/discretisation.h"
#include "solver/time/generalised_alpha.h"
#include "tests/support/catch.h"
#include "tests/support/even_lines.h"

#include <random>

namespace solemech::tests
{
using solver::MeshSection;
using solver::Point;
using solver::Vector;

/// One part named "body" on the grid of these lines; both start at 0.
inline geometry::PlugMesh grid(const Lines &r, const Lines &z)
{
  geometry::PlugOutline outline;
  outline.strips = {{.thickness = z.back(), .zones = {{r.back(), 0}}, .chamber = {}}};
  outline.radius = r.back();
  outline.part_names = {"body"};
  outline.tup_contact_radius = r.back();
  return geometry::make_plug_mesh(outline, geometry::GridLines{r, z});
}

/// Which components are held on axis, base, side and top.
struct HeldFaces
{
  std::array<bool, 2> axis{true, false}, base{false, false}, side{false, false}, top{false, false};

  std::array<bool, 2> operator()(const geometry::BoundaryFace &face) const
  {
    const std::array<bool, 2> all[4] = {axis, base, side, top};
    return face.id < 4 ? all[face.id] : std::array<bool, 2>{false, false};
  }
};
inline constexpr HeldFaces all_held{{true, true}, {true, true}, {true, true}, {true, true}};

/// Node field from a function of the node's position.
template <typename Function>
std::vector<Point> field(const solver::Discretisation &mesh, Function &&f)
{
  std::vector<Point> values;
  for (const auto &x : mesh.nodes())
    values.push_back(f(x));
  return values;
}

/// Moves every node from x to f(x).
template <typename Function>
void map_nodes(solver::Discretisation &mesh, Function &&f)
{
  mesh.move_nodes(field(mesh, [&](const Point &x) {
    const Point y = f(x);
    return Point{y[0] - x[0], y[1] - x[1]};
  }));
}

/// Values of a node field at held components, zero elsewhere: the offset that prescribes them.
inline std::vector<Point> held_values(const solver::Discretisation &mesh, std::vector<Point> values)
{
  for (unsigned node = 0; node < mesh.n_nodes(); ++node)
    for (unsigned c = 0; c < 2; ++c)
      if (mesh.dof(node, c) >= 0)
        values[node][c] = 0;
  return values;
}

/// Values of a node field at the unknowns.
inline Vector unknown_values(const solver::Discretisation &mesh, const std::vector<Point> &values)
{
  Vector x = Vector::Zero(mesh.n_unknowns());
  for (unsigned node = 0; node < mesh.n_nodes(); ++node)
    for (unsigned c = 0; c < 2; ++c)
      if (const int dof = mesh.dof(node, c); dof >= 0)
        x[dof] = values[node][c];
  return x;
}

/// Dead load on the unknowns [N].
class DeadLoad : public solver::Contribution
{
public:
  explicit DeadLoad(Vector load) : load_(std::move(load)) {}
  bool add(const Vector &, Vector &force, solver::Tangent *) const override
  {
    force.head(load_.size()) -= load_;
    return true;
  }
  std::string name() const override { return "load"; }

private:
  Vector load_;
};

/// Consistent nodal load of a traction on faces of the reference shape, as a function of position [Pa].
inline Vector traction_load(const solver::Discretisation &mesh, int boundary,
                            const std::function<Point(const Point &)> &traction)
{
  constexpr double s[3] = {0.1127016653792583, 0.5, 0.8872983346207417}, w[3] = {5. / 18, 8. / 18, 5. / 18};
  Vector           load = Vector::Zero(mesh.n_unknowns());
  for (const auto &face : mesh.mesh().faces)
  {
    if (face.id != boundary)
      continue;
    const auto nodes = mesh.edge(face);
    for (unsigned q = 0; q < 3; ++q)
    {
      const auto shapes = solver::edge_shapes(s[q]);
      Point      x{}, along{};
      for (unsigned a = 0; a < 3; ++a)
        for (unsigned c = 0; c < 2; ++c)
        {
          x[c] += shapes.value[a] * mesh.nodes()[nodes[a]][c];
          along[c] += shapes.slope[a] * mesh.nodes()[nodes[a]][c];
        }
      const double around = mesh.around(x[0]);
      const Point  t = traction(x);
      for (unsigned a = 0; a < 3; ++a)
        for (unsigned c = 0; c < 2; ++c)
          if (const int dof = mesh.dof(nodes[a], c); dof >= 0)
            load[dof] += w[q] * around * std::hypot(along[0], along[1]) * shapes.value[a] * t[c];
    }
  }
  return load;
}

/// A static problem: the mesh and what acts on it.
struct StaticProblem
{
  solver::Discretisation   mesh;
  solver::EquationOfMotion equation;
  solver::SolidBody       *body = nullptr;

  StaticProblem(const geometry::PlugMesh &plug, MeshSection section, const solver::Held &held)
    : mesh(plug, section, held)
  {
    equation.numbering = &mesh;
    equation.mass.assign(mesh.pattern().nonZeros() + 1, 0.0);
  }
  StaticProblem(const StaticProblem &) = delete;

  /// Fills the grid; `given` holds displacements at held components.
  void fill(std::unique_ptr<solver::SolidKernel> kernel, const std::vector<Point> &given = {})
  {
    auto group = mesh.group(0, kernel->n_branches(), mesh.nodes(), given);
    auto owned = std::make_unique<solver::SolidBody>(std::move(group), std::move(kernel));
    body = owned.get();
    equation.contributions.push_back(std::move(owned));
  }

  /// Equilibrium from the guess (displacements, then bodies), which prescribes the bodies.
  Vector solve(const Vector &guess, double force_scale, double tolerance = 1e-10)
  {
    solver::TimeIntegrator integrator(equation, 1.0);
    integrator.x = guess;
    for (int k = 0; k < equation.n_freedoms(); ++k)
      equation.boundary.hold(equation.n_unknowns() + k, guess[equation.n_unknowns() + k]);
    integrator.start();
    const auto outcome = integrator.step(1.0, {.newton = {.tolerance = tolerance, .n_iterations = 60},
                                               .force_scale = force_scale,
                                               .quasi_static = true});
    INFO(outcome.reason);
    REQUIRE(outcome.advanced);
    return integrator.x;
  }

  /// Stored energy after solve() [J].
  double stored_energy() const
  {
    double total = 0;
    for (const auto &entry : equation.energies())
      if (entry.type == solver::EnergyKind::stored)
        total += entry.value;
    return total;
  }
};

/// Reproducible numbers in [-1, 1].
class Random
{
public:
  double operator()() { return spread_(generator_); }
  Vector vector(int n)
  {
    Vector v(n);
    for (auto &value : v)
      value = (*this)();
    return v;
  }

private:
  std::mt19937                           generator_{20240517};
  std::uniform_real_distribution<double> spread_{-1, 1};
};
} // namespace solemech::tests
