// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/sheet/unknowns.h"

#include "materials/pad_hardness.h"
#include "tools/language/doubted_case.h"

#include <algorithm>
#include <cmath>
#include <functional>

namespace solemech::tools
{
using namespace materials;

namespace
{
constexpr double least_spread =
  0.25; // of the logarithm; a library of a few invented foams is no proof of less
/// Of the logarithm of the loss, at the least: a library of some foams is no proof that there are no others.
/// The band reaches to 3.7 times the loss, and to a quarter.
constexpr double least_loss_spread = 0.8;

double network_modulus(const Material &material)
{
  if (const auto *foam = std::get_if<FoamData>(&material.data))
  {
    double sum = 0;
    for (const auto &term : foam->network)
      sum += term.shear_modulus;
    return sum;
  }
  if (const auto *rubber = std::get_if<RubberData>(&material.data))
    return 2 * (rubber->c10 + rubber->c01);
  return 0;
}

struct LogSpread
{
  double mean = 0, spread = least_spread;
};

LogSpread library_spread(const MaterialSource &library, const std::string &family,
                         const std::function<double(const Material &)> &number)
{
  std::vector<double> logs;
  for (const auto &name : library.names)
    if (const auto *material = library.find(name); material && material->family == family)
      logs.push_back(std::log(number(*material)));
  LogSpread out;
  if (logs.empty())
    return out;
  for (const double value : logs)
    out.mean += value / static_cast<double>(logs.size());
  double squares = 0;
  for (const double value : logs)
    squares += (value - out.mean) * (value - out.mean);
  if (logs.size() > 1)
    out.spread = std::max(least_spread, std::sqrt(squares / static_cast<double>(logs.size() - 1)));
  return out;
}
/// How far the library's materials of a family lie from one of them in loss, ln(1/ball rebound): root mean
/// square of the logarithms of the ratios. A start that is duller or livelier than the rest leaves more open.
double loss_spread(const MaterialSource &library, const Material &start)
{
  const auto loss = [](const Material &material) {
    const double ball = material.readings.ball_rebound;
    return ball > 0 && ball < 1 ? -std::log(ball) : 0.0;
  };
  double squares = 0;
  int    n = 0;
  for (const auto &name : library.names)
    if (const auto *material = library.find(name);
        material && material->family == start.family && loss(*material) > 0 && loss(start) > 0)
    {
      const double apart = std::log(loss(*material) / loss(start));
      squares += apart * apart;
      ++n;
    }
  return n == 0 ? least_loss_spread : std::max(least_loss_spread, std::sqrt(squares / n));
}
} // namespace

settle::Parameter measured_number(const std::string &name, const Doubted &value)
{
  const double spread = value.one_sigma() / value.value;
  return {name, value.value, spread, value.value * std::exp(-4 * spread), value.value * std::exp(4 * spread)};
}

std::string unit_pressure_name(const std::string &layer)
{
  return layer + (layer.ends_with("unit") ? "" : " unit") + " gauge pressure";
}

void set_unknown(solver::Case &setup, const Unknown &unknown, double value)
{
  scale_number(setup, unknown.kind, unknown.target, value / unknown.parameter.median);
}

solver::Case case_at(const solver::Case &setup, const std::vector<Unknown> &unknowns,
                     const std::vector<double> &values)
{
  solver::Case out = setup;
  for (std::size_t i = 0; i < unknowns.size(); ++i)
    set_unknown(out, unknowns[i], values[i]);
  return out;
}

const Material *starting_material(const MaterialSource &library, const std::string &family,
                                  double youngs_modulus, double density)
{
  const auto &gauge = family == "rubber" ? shore_a_gauge : asker_c_gauge;
  const auto  stiffness = [&](const Material &material) {
    const double reading = std::clamp(pad_reading(gauge, material), 1.0, 99.0);
    return modulus_from_reading(gauge, reading, slow_stiffness(material).poisson_ratio);
  };
  const auto weight = [](const Material &material) { return material.density; };
  const auto moduli = library_spread(library, family, stiffness),
             densities = library_spread(library, family, weight);
  const double wanted_modulus = youngs_modulus > 0 ? std::log(youngs_modulus) : moduli.mean;
  const double wanted_density = density > 0 ? std::log(density) : densities.mean;

  const Material *best = nullptr;
  double          least = 0;
  for (const auto &name : library.names)
  {
    const auto *material = library.find(name);
    if (!material || material->family != family)
      continue;
    const double distance = std::hypot((std::log(stiffness(*material)) - wanted_modulus) / moduli.spread,
                                       (std::log(weight(*material)) - wanted_density) / densities.spread);
    if (!best || distance < least)
      best = material, least = distance;
  }
  return best;
}

std::vector<Material> nearest_materials(const std::vector<Material> &library, const std::string &family,
                                        const Material &wanted, std::size_t n)
{
  const auto apart = [&](const Material &material) {
    return std::hypot(
      std::log(slow_stiffness(material).youngs_modulus / slow_stiffness(wanted).youngs_modulus),
      std::log(material.density / wanted.density));
  };
  std::vector<Material> near;
  for (const auto &material : library)
    if (material.family == family)
      near.push_back(material);
  std::stable_sort(near.begin(), near.end(),
                   [&](const Material &a, const Material &b) { return apart(a) < apart(b); });
  near.resize(std::min(n, near.size()));
  return near;
}

std::vector<Unknown> material_unknowns(const MaterialSource &library, const Material &start,
                                       const std::string &name, const std::string &layer)
{
  const auto parameter = [](const std::string &title, double median, double spread) {
    // Four spreads each way: beyond them lies no material of the family.
    return settle::Parameter{title, median, spread, median * std::exp(-4 * spread),
                             median * std::exp(4 * spread)};
  };
  std::vector<Unknown> out;
  const auto           moduli = library_spread(library, start.family, network_modulus);
  out.push_back({parameter(layer + " stiffness", network_modulus(start), moduli.spread),
                 DoubtedNumber::modulus, name, Dimension::pressure});
  out.push_back({parameter(layer + " loss", 1, loss_spread(library, start)), DoubtedNumber::loss, name,
                 Dimension::number});
  if (std::holds_alternative<FoamData>(start.data))
  {
    const auto densities =
      library_spread(library, start.family, [](const Material &foam) { return foam.density; });
    auto       density = parameter(layer + " density", start.density, densities.spread);
    const auto relative = std::get<FoamData>(start.data).relative_density;
    if (relative > 0)
      density.highest = std::min(density.highest, 0.6 / relative * start.density);
    out.push_back({density, DoubtedNumber::density, name, Dimension::density});
  }
  return out;
}

const Gauge &gauge_named(const std::string &scale)
{
  return *std::find_if(gauges.begin(), gauges.end(), [&](const Gauge &gauge) { return gauge.name == scale; });
}

std::function<double(const solver::Case &)> pad_hardness(const Gauge &gauge, const std::string &layer)
{
  return [gauge, layer](const solver::Case &setup) {
    for (const auto &one : setup.layers)
      if (one.name == layer)
        return pad_reading(gauge, one.material);
    return 0.0;
  };
}
} // namespace solemech::tools
