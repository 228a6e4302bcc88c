// SPDX-License-Identifier: Apache-2.0
#include "solver/rigs/abrasion.h"

#include "solver/case.h"
#include "solver/results/catalogue.h"
#include "solver/results/energy_rows.h"
#include "solver/results/result.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::solver
{
namespace
{
using materials::AbradedDepth;
using materials::AbradedLayer;
using materials::AbrasiveWear;

constexpr int    n_times = 100; ///< recorded, after the start
constexpr double smearing_rise =
  120; ///< from which rubber smears on the abrasive [K]; common practice, no source

/// What the abrasive takes from each layer, when it takes `coefficient` from the reference rubber. The band
/// of the abrasive is that of all layers.
std::vector<AbradedLayer> abraded_layers(const Case &input, const AbrasionRig &rig, double coefficient)
{
  const auto abrasive =
    materials::Abrasive::from_known({.youngs_modulus = rig.reference_modulus}, AbrasiveWear(coefficient));
  std::vector<AbradedLayer> layers;
  for (const auto &layer : input.layers)
  {
    const auto *rubber = std::get_if<materials::RubberData>(&layer.material.data);
    if (!rubber && !(layer.abraded > 0))
      throw materials::InvalidParameter("what the abrasive takes off " + layer.name, layer.abraded,
                                        "a number above 0, as it is not a rubber");
    layers.push_back({layer.thickness, layer.abraded > 0
                                         ? AbrasiveWear(layer.abraded * coefficient / rig.coefficient)
                                         : abrasive.wear_of({.youngs_modulus = rubber->youngs_modulus()})});
  }
  return layers;
}

/// Depth of the piece on the drum: an even face, layer after layer.
AbradedDepth drum_depth(const materials::DrumBench &drum, double seconds,
                        const std::vector<AbradedLayer> &layers)
{
  const double rate = drum.load * drum.rim_speed() / drum.piece_area(); // over k [Pa m/s]
  AbradedDepth out;
  for (const auto &layer : layers)
  {
    const double needed = layer.thickness / (layer.wear.value() * rate);
    if (const double left = seconds - out.seconds; needed > left)
    {
      out.depth += left * layer.wear.value() * rate;
      out.seconds = seconds;
      return out;
    }
    out.depth += layer.thickness;
    out.seconds += needed;
  }
  out.wore_through = true;
  return out;
}

class Bench
{
public:
  Bench(const Case &input, const AbrasionRig &rig) : input_(input), rig_(rig) {}

  Result run()
  {
    end_ = is_drum() ? rig_.drum.duration() : rig_.seconds;
    as_given_ = abraded_layers(input_, rig_, rig_.coefficient);
    const auto least = abraded_layers(input_, rig_, rig_.lowest),
               most = abraded_layers(input_, rig_, rig_.highest);
    Curve depth{"depth", "m", "ground away", {}}, low{"depth_lowest", "m", "at the lower bound", {}},
      high{"depth_highest", "m", "at the upper bound", {}},
      rise{"temperature_rise", "K", "of the face, at most", {}};
    std::vector<double> work;
    for (int i = 0; i <= n_times; ++i)
    {
      const double time = end_ * i / n_times;
      result_.time.push_back(time);
      depth.values.push_back(depth_after(time, as_given_).depth);
      low.values.push_back(depth_after(time, least).depth);
      high.values.push_back(depth_after(time, most).depth);
      rise.values.push_back(rise_after(time, depth.values.back()));
      work.push_back(power() * std::min(time, depth_after(time, as_given_).seconds));
    }
    readings(depth_after(end_, as_given_), low.values.back(), high.values.back(), rise.values);
    result_.curves = {depth, low, high};
    if (!is_drum())
      result_.curves.push_back(rise);
    account(std::move(work));
    return std::move(result_);
  }

private:
  bool   is_drum() const { return rig_.tool == AbrasionTool::drum; }
  double way_a_second() const { return is_drum() ? rig_.drum.rim_speed() : rig_.sleeve.surface_speed(); }
  double force() const { return is_drum() ? rig_.drum.load : rig_.sleeve.force; }
  double power() const { return rig_.friction * force() * way_a_second(); }

  AbradedDepth depth_after(double seconds, const std::vector<AbradedLayer> &layers) const
  {
    if (!(seconds > 0))
      return {};
    return is_drum() ? drum_depth(rig_.drum, seconds, layers) : rig_.sleeve.depth_after(seconds, layers);
  }

  /// Volume taken when the piece is ground `depth` deep [m3].
  double volume_of(double depth) const
  {
    return is_drum() ? depth * rig_.drum.piece_area()
                     : rig_.sleeve.groove_section(depth) * rig_.sleeve.sleeve_width;
  }

  const AbradedLayer &layer_at(double depth, std::size_t &index) const
  {
    double bottom = 0;
    for (index = 0; index + 1 < as_given_.size(); ++index)
      if (bottom += as_given_[index].thickness; depth < bottom)
        break;
    return as_given_[index];
  }

  /// Of the face under the sleeve; nothing is said of the drum, where the cloth is ever fresh and takes the
  /// heat along.
  double rise_after(double time, double depth) const
  {
    if (is_drum() || !(time > 0))
      return 0;
    std::size_t                     index = 0;
    const auto                     &layer = layer_at(depth, index);
    const double                    area = rig_.sleeve.groove_width(depth) * rig_.sleeve.sleeve_width;
    const materials::HeatProperties piece{rig_.conductivity, input_.layers[index].material.density,
                                          rig_.specific_heat};
    return ground_face_rise(piece, rig_.heat_share * power() / area, time,
                            rig_.sleeve.removal(layer.wear) / area);
  }

  void readings(const AbradedDepth &end, double lowest, double highest, const std::vector<double> &rises)
  {
    add_reading(result_, catalogue.ground_depth, end.depth, "depth ground by the abrasive");
    add_reading(result_, catalogue.ground_depth_lowest, lowest, "the same at the lower bound of the loss");
    add_reading(result_, catalogue.ground_depth_highest, highest, "the same at the upper bound of the loss");
    add_reading(result_, catalogue.ground_volume, volume_of(end.depth), "volume ground off");
    add_reading(result_, catalogue.rubbing_speed, way_a_second(), "of the abrasive over the piece");
    add_reading(result_, catalogue.rubbing_power, power(), "friction times force times speed");
    add_reading(result_, catalogue.abrasive_loss, as_given_.front().wear.value(),
                "volume per force and sliding distance that this abrasive takes off the outermost layer");
    add_reading(result_, catalogue.loss_over_reference, as_given_.front().wear.value() / rig_.coefficient,
                "loss of the outermost layer divided by the loss of the reference rubber");
    if (end.wore_through)
    {
      add_reading(result_, catalogue.through_time, end.seconds, "time until the piece was worn through");
      result_.warnings.push_back(
        {catalogue.ground_depth,
         fmt::format("worn through after {:.1f} s: the depth is a lower bound", end.seconds)});
    }
    if (!is_drum())
    {
      add_reading(result_, catalogue.groove_width, rig_.sleeve.groove_width(end.depth),
                  "width of the groove at the surface");
      const double greatest = *std::max_element(rises.begin(), rises.end());
      add_reading(result_, catalogue.face_rise, greatest,
                  "upper bound of the warming of the face: heat flows straight down");
      if (greatest > smearing_rise)
        result_.warnings.push_back(
          {catalogue.face_rise,
           fmt::format("the face may get {:.0f} K warmer: rubber then smears and smokes and is not ground as "
                       "calculated. Grind in one-second bursts or turn slower; never touch the hot face",
                       greatest)});
    }
    found();
  }

  /// What a bench says of the outermost layer.
  void found()
  {
    double loss = 0;
    if (!is_drum() && rig_.found_depth > 0)
    {
      loss = rig_.sleeve.wear_from(rig_.found_depth, rig_.seconds).value();
      if (rig_.found_depth >= input_.layers.front().thickness * (1 - 1e-9))
        result_.warnings.push_back(
          {catalogue.found_loss, "the depth found is the whole outermost layer: the loss is a lower bound"});
    }
    if (is_drum() && rig_.mass_lost > 0)
    {
      const double volume =
        rig_.drum.volume_loss(rig_.mass_lost, input_.layers.front().material.density, rig_.cloth_loss);
      add_reading(result_, catalogue.found_volume, volume,
                  "relative volume loss by ISO 4649, from the masses lost");
      loss = rig_.drum.coefficient(volume).value();
    }
    if (loss > 0)
    {
      add_reading(result_, catalogue.found_loss, loss,
                  "volume per force and sliding distance that the bench found for the outermost layer on "
                  "this abrasive");
      add_reading(result_, catalogue.found_over_expected, loss / as_given_.front().wear.value(),
                  "loss found on the bench divided by the loss expected from this abrasive");
    }
  }

  /// All work of friction becomes heat.
  void account(const std::vector<double> &work)
  {
    result_.input_energy = work.back();
    result_.time_of_peak = end_;
    add_rubbed(result_.ledger, "abrasive", "friction", "drive", work);
    result_.facts.steps = n_times;
  }

  const Case               &input_;
  const AbrasionRig        &rig_;
  double                    end_ = 0; ///< of the test [s]
  std::vector<AbradedLayer> as_given_;
  Result                    result_;
};
} // namespace

double ground_face_rise(const materials::HeatProperties &piece, double flux, double time, double recession)
{
  const double still = materials::constant_flux_rise(piece, flux, time);
  return recession > 0 ? std::min(still, flux / (piece.density * piece.specific_heat * recession)) : still;
}

Result run_rig(const Case &input, const AbrasionRig &rig, const Resolution &, const RunOptions &)
{
  return Bench(input, rig).run();
}
} // namespace solemech::solver
