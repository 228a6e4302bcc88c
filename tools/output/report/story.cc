// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/story.h"

#include "solver/results/catalogue.h"
#include "tools/output/report/air_story.h"
#include "tools/output/report/energy_flow.h"
#include "tools/output/report/plain_text.h"
#include "tools/output/results/energy_picture.h"
#include "tools/output/results/knee.h"
#include "tools/output/results/readings_table.h"
#include "tools/output/results/text_layout.h"
#include "tools/rigs/facts.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools::report
{
namespace
{
constexpr double worth_telling = 0.02; ///< share of the energy below which a part is not named

std::string striker_of(const Run &run)
{
  return rigs::kind_of(run.setup).striker(run.setup);
}

/// Name and number of what gives way or takes energy, greatest first.
using Ranking = std::vector<std::pair<std::string, double>>;

Ranking ranked(Ranking entries)
{
  std::stable_sort(entries.begin(), entries.end(),
                   [](const auto &a, const auto &b) { return a.second > b.second; });
  return entries;
}

/// Layers by how much they are squeezed under the middle of the striker at the peak [m].
Ranking squeezed_layers(const Run &run)
{
  Ranking     layers;
  const auto &family = solver::catalogue.compression_of_layer;
  for (const auto &reading : run.result.readings)
    if (family.is_named(reading.name))
      layers.emplace_back(reading.name.substr(family.name.size()), reading.value);
  return ranked(std::move(layers));
}

/// "the core 6.2 mm, the carrier 1.6 mm": entries of at least `least`, at most three.
std::string told(const Ranking &ranking, double least, std::string (*number)(double))
{
  std::vector<std::string> texts;
  for (const auto &[name, value] : ranking)
    if (value >= least && texts.size() < 3)
      texts.push_back(fmt::format("the {} {}", name, number(value)));
  return listed(texts);
}

std::string bottoming_words(const Run &run)
{
  const auto *margin = run.result.find(solver::catalogue.bottoming_margin);
  if (!margin)
    return "";
  const std::string layer = margin->part.empty() ? "tightest layer" : margin->part;
  if (margin->value <= 0)
    return fmt::format("The {} bottoms out: it is squeezed to the end of its travel{}.", layer,
                       has_knee(run.result) ? ", and there the force climbs steeply"
                                            : ". The force shows no knee yet");
  if (margin->value < 0.25)
    return fmt::format(
      "The {} is close to bottoming: {:.0f} % of its useful travel is left. A harder drop uses it up.", layer,
      100 * margin->value);
  return fmt::format("No layer bottoms. The {} comes nearest, with {:.0f} % of its useful travel left.",
                     layer, 100 * margin->value);
}

/// What every part has taken up to a recorded time: held and turned into heat [J].
Ranking taken_by_parts(const EnergyFlow &flow, std::size_t at)
{
  Ranking taken;
  for (const auto &part : flow.parts)
    taken.emplace_back(part.name, part.stored[at] + part.lost[at]);
  return ranked(std::move(taken));
}

Ranking heated_parts(const EnergyFlow &flow, std::size_t at)
{
  Ranking lost;
  for (const auto &part : flow.parts)
    lost.emplace_back(part.name, part.lost[at]);
  return ranked(std::move(lost));
}

double sum_lost(const EnergyFlow &flow, std::size_t at)
{
  double sum = 0;
  for (const auto &part : flow.parts)
    sum += part.lost[at];
  return sum;
}

/// The moment of greatest compression: who holds the energy, how much is heat already.
std::string peak_words(const Run &run, const EnergyFlow &flow)
{
  const std::size_t peak = recorded_at(run.result, run.result.time_of_peak);
  const auto        taken = taken_by_parts(flow, peak);
  const double      heat = sum_lost(flow, peak) / flow.input;
  if (taken.empty() || taken.front().second <= worth_telling * flow.input)
    return "";
  const auto &[name, energy] = taken.front();
  std::string text =
    fmt::format("At that moment the {} has taken most of the energy, {} ({:.0f} % of the energy put in)",
                name, energy_text(energy), 100 * energy / flow.input);
  if (taken.size() > 1 && taken[1].second > worth_telling * flow.input)
    text += fmt::format("; next is the {} with {}", taken[1].first, energy_text(taken[1].second));
  return text + fmt::format(". By then, {} of the energy put in has turned into heat.", share_words(heat));
}

/// Share of what a part had taken at the peak that it gave back until the end.
double given_back(const PartFlow &part, std::size_t peak, std::size_t end)
{
  const double taken = part.stored[peak] + part.lost[peak];
  return taken > 0 ? std::clamp((taken - part.stored[end] - part.lost[end]) / taken, 0.0, 1.0) : 0.0;
}

/// Which part turned most into heat, and how much of what the leading parts took they gave back.
std::string heat_words(const Run &run, const EnergyFlow &flow)
{
  const std::size_t peak = recorded_at(run.result, run.result.time_of_peak), end = recorded_end(run.result);
  const auto        heated = heated_parts(flow, end);
  if (heated.empty() || heated.front().second < 1e-3 * flow.input)
    return "Hardly anything turned into heat in the stack.";
  const auto &[name, lost] = heated.front();
  std::string text = fmt::format("The {} turned the most into heat, {} or {} of the energy put in", name,
                                 energy_text(lost), share_words(lost / flow.input));
  if (heated.size() > 1 && heated[1].second > worth_telling * flow.input)
    text +=
      fmt::format("; the {} is next with {}", heated[1].first, share_words(heated[1].second / flow.input));
  text += ".";
  const auto taken = taken_by_parts(flow, peak);
  if (end <= peak || taken.empty() || taken.front().second <= worth_telling * flow.input)
    return text;
  const std::string &main = taken.front().first;
  if (main == name)
    return text + fmt::format(" Of the {} that it had taken, it gave {} back. Most of the energy went "
                              "through it, so this decides the return.",
                              energy_text(taken.front().second),
                              share_words(given_back(*flow.find(name), peak, end)));
  return text + fmt::format(" Most of the energy went through the {}. It gave back {} of what it had taken, "
                            "the {} {}: this decides the return.",
                            main, share_words(given_back(*flow.find(main), peak, end)), name,
                            share_words(given_back(*flow.find(name), peak, end)));
}

std::string left_words(const Run &run, const EnergyPicture &picture)
{
  for (const auto &share : picture.shares)
    if (share.kind == ShareKind::left_in_stack)
    {
      if (std::abs(picture.share(share)) < 5e-4)
        return "Hardly any energy is still in the stack at the end.";
      return fmt::format(
        "{} ({}) is still stored or moving in the stack when {}. It comes too late and is lost afterwards.",
        capital(share_words(picture.share(share))), energy_text(share.energy),
        rigs::fall_of(run.setup) ? "the " + striker_of(run) + " leaves" : "the load is off");
    }
  return "";
}

std::string guide_words(const EnergyPicture &picture)
{
  for (const auto &share : picture.shares)
    if (share.kind == ShareKind::lost_in_guide && share.energy > 0)
      return fmt::format(
        " The guide of the rig takes {} on the way down and up together; this is not the stack's doing.",
        share_words(picture.share(share)));
  return "";
}

std::string give_words(const Run &run, double way)
{
  const auto   layers = squeezed_layers(run);
  const double least = std::max(0.02 * way, 5e-5);
  std::string  text;
  if (!layers.empty() && layers.front().second >= least)
  {
    text = fmt::format(" Under the middle of the striker {}", layers.size() > 1 ? "the layers give: " : "");
    text += told(layers, least, [](double value) { return rigs::length(value); }) +
            (layers.size() > 1 ? "" : " is squeezed");
    text += ".";
  }
  return text;
}

std::string touch_words(const Run &run, const solver::DropRig &drop, const EnergyFlow &flow)
{
  const auto  speed = rigs::value_of(run, solver::catalogue.impact_speed);
  std::string text =
    fmt::format("The {} falls {}, which is {} and 100 % below{}{}.", striker_of(run),
                rigs::length(drop.height), energy_text(run.result.input_energy),
                drop.guide_loss > 0
                  ? fmt::format("; the guide takes {:.0f} % of it on the way down", 100 * drop.guide_loss)
                  : "",
                speed ? fmt::format("; it touches the stack at {:.2f} m/s", *speed) : "");
  if (const double before = flow.input - run.result.input_energy; before > 0.005 * flow.input)
    text += fmt::format(" Before that, the leaking unit holds {}: shares below are of {}.",
                        energy_text(before), energy_text(flow.input));
  if (flow.sink_gain > 0.005 * flow.input)
    text += fmt::format(" Sinking in, it gains {} more.", energy_text(flow.sink_gain));
  if (drop.hits + drop.discarded > 1 || drop.conditioned)
    text += " This describes the last hit; the readings cover all counted hits.";
  return text;
}

std::vector<std::string> drop_story(const Run &run, const solver::DropRig &drop, const EnergyFlow &flow,
                                    const EnergyPicture &picture)
{
  std::vector<std::string> story{touch_words(run, drop, flow)};
  const double             way = rigs::greatest_compression(run);
  const std::string        who = striker_of(run);
  std::string              depth =
    fmt::format("After {} it has stopped, {} deep", time_text(run.result.time_of_peak), rigs::length(way));
  if (const auto share = rigs::value_of(run, solver::catalogue.compression_share))
    depth += fmt::format(": {:.0f} % of the height of the stack", 100 * *share);
  depth += "." + give_words(run, way);
  if (flow.input > 0)
    if (const auto words = peak_words(run, flow); !words.empty())
      depth += " " + words;
  story.push_back(depth);

  const auto rebound = rigs::value_of(run, solver::catalogue.rebound_by_height),
             rise = rigs::value_of(run, solver::catalogue.rebound_height);
  if (run.result.time_of_loss > 0 && rebound && rise)
  {
    std::string back = fmt::format("Then the stack pushes back. Contact ends {} after first touch",
                                   time_text(run.result.time_of_loss));
    if (const auto speed = rigs::value_of(run, solver::catalogue.rebound_speed))
      back += fmt::format(" with the {} going up at {:.2f} m/s", who, *speed);
    story.push_back(back + fmt::format("; it rises {}, {} of the drop height.", rigs::length(*rise),
                                       share_words(*rebound)));
  }
  if (flow.input > 0 && picture.input > 0)
    story.push_back(heat_words(run, flow) + guide_words(picture) + " " + left_words(run, picture));
  return story;
}

std::vector<std::string> press_story(const Run &run, const EnergyFlow &flow, const EnergyPicture &picture)
{
  std::vector<std::string> story;
  const double             way = rigs::greatest_compression(run);
  const double             force = rigs::peak_force(run);
  std::string              text = fmt::format("The {} goes in {}", striker_of(run), rigs::length(way));
  if (run.result.input_energy > 0)
    text += fmt::format(" and puts in {}: that is 100 %", energy_text(run.result.input_energy));
  text += fmt::format(". The peak force is {}.", force_text(force)) + give_words(run, way);
  if (flow.input > 0)
    if (const auto words = peak_words(run, flow); !words.empty())
      text += " " + words;
  story.push_back(text);
  if (const auto back = rigs::value_of(run, solver::catalogue.loop_return))
  {
    text = fmt::format("On the way out the stack gives back {} of the work.", share_words(*back));
    if (const auto lost = rigs::value_of(run, solver::catalogue.loop_energy_lost))
      text += fmt::format(" {} stays in the stack: the area inside the loop of force and compression.",
                          energy_text(*lost));
    story.push_back(text);
  }
  if (flow.input > 0 && picture.input > 0)
    story.push_back(heat_words(run, flow) + " " + left_words(run, picture));
  return story;
}

/// What any stack does that is struck or pressed.
std::vector<std::string> stack_story(const Run &run)
{
  const auto  flow = energy_flow(run);
  const auto  picture = energy_picture(run.setup, run.result);
  const auto *drop = rigs::fall_of(run.setup);
  auto        story = drop ? drop_story(run, *drop, flow, picture) : press_story(run, flow, picture);
  for (auto &paragraph : air_story(run))
    story.push_back(std::move(paragraph));
  if (auto words = bottoming_words(run); !words.empty())
    story.push_back(std::move(words));
  return story;
}
} // namespace

std::vector<std::string> story_of(const Run &run)
{
  if (!run.result.complete)
    return {stopped_early(run), so_far(run)};
  if (run.result.time.empty())
    return {"The run gave no curves, so the course of events cannot be described."};
  const auto &kind = rigs::kind_of(run.setup);
  auto        story = kind.tells(run) ? kind.story(run) : std::vector<std::string>();
  return story.empty() ? stack_story(run) : story;
}

} // namespace solemech::tools::report
