// SPDX-License-Identifier: Apache-2.0
#include "solver/results/catalogue.h"
#include "tools/output/report/plain_text.h"
#include "tools/output/report/story.h"
#include "tools/output/results/energy_picture.h"
#include "tools/output/results/parts.h"
#include "tools/output/results/readings_table.h"
#include "tools/output/results/text_layout.h"
#include "tools/rigs/facts.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools::report
{
namespace
{
constexpr double worth_telling = 0.02; ///< share of the energy below which a part is not named
} // namespace

BlockCaptions captions_block(const Run &run)
{
  const auto              &kind = rigs::kind_of(run.setup);
  const bool               drop = kind.energy_basis() == rigs::EnergyBasis::blow;
  const double             height = stack_height(run.setup.layers);
  const double             way = rigs::greatest_compression(run);
  const double             force = rigs::peak_force(run);
  std::vector<std::string> layers;
  for (const auto &layer : run.setup.layers)
    layers.push_back(layer.name + " " + rigs::length(layer.thickness));
  std::string section =
    fmt::format("{}: {} high at rest. From the foot down: {}.",
                run.setup.title.empty() ? run.label : run.setup.title, rigs::length(height), listed(layers));
  if (layers_are_assumed(run))
    section += " An invented demo stack.";

  std::string moment = "The moment of greatest compression was not recorded.", loop = "No loop was recorded.";
  std::string motion = "No pictures were recorded.", energy = "No energy account was recorded.";
  if (!run.result.time.empty())
  {
    moment =
      fmt::format("Greatest compression, {} after first touch: the stack gives {}. The peak force is {}.",
                  time_text(run.result.time_of_peak), rigs::of_stack(run, way), force_text(force));
    const auto back = drop ? rigs::value_of(run, solver::catalogue.return_by_loop)
                           : rigs::value_of(run, solver::catalogue.loop_return);
    loop = back ? fmt::format("The stack gives back {} of the work that presses it in. The area inside the "
                              "loop is the energy it keeps.",
                              share_words(*back))
                : "Force against compression. The area inside the loop is the energy that the stack keeps.";
    const double end = run.result.time_of_loss > 0 ? run.result.time_of_loss : run.result.time.back();
    motion = fmt::format("The section in slow motion: {} from first touch to {}.", time_text(end),
                         drop && run.result.time_of_loss > 0 ? "contact loss" : "the end of the record");
  }
  if (const auto own = kind.tells(run) ? kind.captions(run) : rigs::Captions(); !own.moment.empty())
    moment = own.moment, loop = own.loop, motion = own.motion, energy = own.energy;
  const auto picture = energy_picture(run.setup, run.result);
  if (picture.input > 0)
  {
    std::vector<std::pair<double, std::string>> shares;
    for (const auto &share : picture.shares)
      if (picture.share(share) >= worth_telling)
        shares.emplace_back(picture.share(share), share.name);
    std::stable_sort(shares.begin(), shares.end(),
                     [](const auto &a, const auto &b) { return a.first > b.first; });
    std::vector<std::string> texts;
    for (const auto &[share, name] : shares)
      if (texts.size() < 4)
        texts.push_back(fmt::format("{} {}", name, share_words(share)));
    energy =
      fmt::format("Of the {} put in: {}. The account adds up to {:.1f} %{}.", energy_text(picture.input),
                  texts.empty() ? "no part takes a share worth mentioning" : listed(texts),
                  100 * picture.accounted(), share_error_words(picture));
  }
  return {section, moment, loop, motion, energy};
}
} // namespace solemech::tools::report
