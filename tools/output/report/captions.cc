// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/abrasion_story.h"
#include "tools/output/report/parts.h"
#include "tools/output/report/plain_text.h"
#include "tools/output/report/run_facts.h"
#include "tools/output/report/slide_story.h"
#include "tools/output/report/tread_story.h"
#include "tools/output/report/story.h"
#include "tools/output/report/wear_story.h"
#include "tools/output/results/energy_picture.h"
#include "tools/output/results/readings_table.h"
#include "tools/output/results/text_layout.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>

namespace solemech::tools::report
{
namespace
{
constexpr double worth_telling = 0.02; ///< share of the energy below which a part is not named
} // namespace

Json captions_json(const Run &run)
{
  const double             height = stack_height(run.setup.layers);
  const double             way = greatest_compression(run);
  const double             force = peak_force(run);
  std::vector<std::string> layers;
  for (const auto &layer : run.setup.layers)
    layers.push_back(layer.name + " " + length(layer.thickness));
  std::string section =
    fmt::format("{}: {} high at rest. From the foot down: {}.",
                run.setup.title.empty() ? run.label : run.setup.title, length(height), listed(layers));
  if (layers_are_assumed(run))
    section += " An invented demo stack.";

  std::string moment = "No moment of greatest compression was recorded.", loop = "No loop was recorded.";
  std::string motion = "No pictures were recorded.", energy = "No energy account was recorded.";
  if (!run.result.time.empty())
  {
    moment =
      fmt::format("Greatest compression {} after first touch: the stack gives {}; the greatest force is {}.",
                  milliseconds(run.result.time_of_peak), of_stack(run, way), force_text(force));
    const auto back = is_drop(run) ? value_of(run, "return_by_loop") : value_of(run, "loop_return");
    loop =
      back ? fmt::format(
               "The stack gives back {} of the work that presses it in; the area inside the loop is what it "
               "keeps.",
               share_words(*back))
           : "Force against compression; the area inside the loop is what the stack keeps.";
    const double end = run.result.time_of_loss > 0 ? run.result.time_of_loss : run.result.time.back();
    motion =
      fmt::format("The section in slow motion: {} from first touch to {}.", milliseconds(end),
                  is_drop(run) && run.result.time_of_loss > 0 ? "contact loss" : "the end of the record");
  }
  if (has_slid(run))
  {
    moment = has_worn(run)        ? wear_moment(run)
             : has_tread_map(run) ? tread_sentence(run)
                                  : slide_moment(run);
    loop = "A slide has no loop.";
    motion = "Of a slide no pictures are kept.";
    energy = "What is put in becomes heat between face and floor.";
  }
  if (has_abraded(run))
  {
    moment = abrasion_moment(run);
    loop = "An abrasion bench has no loop.";
    motion = "Of an abrasion bench no pictures are kept.";
    energy = "What is put in becomes heat between abrasive and piece.";
  }
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
    energy = fmt::format("Of {} put in: {}. The account adds up to {:.1f} %{}.", energy_text(picture.input),
                         texts.empty() ? "no part takes a share worth naming" : listed(texts),
                         100 * picture.accounted(), share_error_words(picture));
  }
  return {{"section", section}, {"moment", moment}, {"loop", loop}, {"motion", motion}, {"energy", energy}};
}
} // namespace solemech::tools::report
