// SPDX-License-Identifier: Apache-2.0
#include "materials/hardness.h"
#include "solver/layer_parts.h"
#include "tools/answers/sheet/blank_sheet.h"
#include "tools/answers/sheet/default_doubts.h"
#include "tools/answers/sheet/doubted.h"
#include "tools/answers/sheet/pair_file.h"
#include "tools/answers/sheet/plausible.h"
#include "tools/answers/sheet/reading_reader.h"
#include "tools/answers/sheet/sheet.h"
#include "tools/answers/sheet/sheet_text.h"
#include "tools/language/described_case.h"
#include "tools/language/nearest_name.h"
#include "tools/language/schema.h"
#include "tools/language/sheet.h"
#include "tools/language/sheet_entries.h"
#include "tools/language/small_letters.h"
#include "tools/language/stack_text.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <optional>
#include <sstream>

namespace solemech::tools
{
using namespace materials;
namespace fs = std::filesystem;

namespace
{
const std::string unknown_words = "unknown ";

/// Family of "unknown foam" and "unknown rubber B"; empty for anything else.
std::string unknown_family(const std::string &material)
{
  for (const std::string family : {"foam", "rubber"})
    if (material == unknown_words + family || material.starts_with(unknown_words + family + " "))
      return family;
  return {};
}

/// "unknown foam" for "unknwon foam" and "unknown fom"; empty when the words are right or something else.
std::string misspelt_unknown(const std::string &material)
{
  std::istringstream words(material);
  std::string        first, second;
  words >> first >> second;
  if (second.empty() || !unknown_family(material).empty())
    return {};
  const auto meant = nearest_name(first + " " + second, {unknown_words + "foam", unknown_words + "rubber"});
  return meant.empty() || nearest_name(second, {"foam", "rubber"}).empty() ? std::string() : meant;
}

/// "reading" for "reding"; empty when the block is one of a case or of a sheet, or something else.
std::string misspelt_block(std::string_view key)
{
  if (find_entry("", key) || key == "reading" || key == "pair" || key == "format")
    return {};
  return nearest_name(key, {"reading", "pair"});
}

std::string text_of(const toml::table &table, const char *name)
{
  return table[name].value_or(std::string());
}

/// A value with +- that may stand in a case, and what it is a doubt of.
struct DoubtedEntry
{
  std::string_view block, name;
  Dimension        dimension;
  DoubtedNumber    kind;
};

template <typename Struct>
void add_doubted_entries(std::string_view block, std::vector<DoubtedEntry> &list)
{
  for_each_member<Struct>([&](const auto &item) {
    if (item.doubt)
      list.push_back({block, item.entry.name, item.entry.dimension, *item.doubt});
  });
}

const std::vector<DoubtedEntry> &doubted_entries()
{
  static const auto entries = [] {
    std::vector<DoubtedEntry> list;
    add_doubted_entries<solver::Layer>("layer", list);
    add_doubted_entries<solver::AirUnit>("unit", list);
    add_doubted_entries<solver::DropRig>("drop", list);
    return list;
  }();
  return entries;
}

class SheetReader
{
public:
  /// @param part  empty: as the sheet says
  SheetReader(const fs::path &path, const ReadOptions &options, std::string text, const std::string &part)
    : options_(options), given_(options.overrides), is_of_pair_(!part.empty()), rewritten_(text)
  {
    sheet_.path = path;
    sheet_.part = part;
    sheet_.text = std::move(text);
  }

  Sheet read(Problems &problems)
  {
    problems_ = &problems;
    const auto tree = parse_sheet(sheet_.text, sheet_.path.string(), problems);
    if (tree.empty())
      problems.throw_if_any();
    misspelt_blocks(tree);
    pair(tree);
    if (const auto *changes = tree.get_as<toml::table>("change"))
      own_changes(*changes, "");
    if (const auto *layers = tree.get_as<toml::array>("layer"))
      for (const auto &element : *layers)
        if (const auto *table = element.as_table())
          layer(*table);
    if (const auto *drop = tree.get_as<toml::table>("drop"))
      own_bench(*drop);
    if (const auto *readings = tree.get("reading"))
      rewritten_.remove_block(tree.find("reading")->first, *readings);
    sheet_.case_text = rewritten_.text();
    if (!sheet_.case_text.ends_with('\n'))
      sheet_.case_text += '\n';
    for (const auto &material : sheet_.materials)
      sheet_.case_text +=
        fmt::format("\n[[material]]\nname = \"{}\"\nfrom = \"{}\"\n", material.name, material.start.name);
    const bool has_case = read_case();
    if (has_case)
      sheet_.asked = asked_of_stack(sheet_.setup);
    sheet_.benches.push_back([](solver::Case &) {});
    ReadingReader reader(sheet_, has_case, problems, options_.library);
    for (const auto &noted : notes_)
      reader.layer_note(noted.layer, noted.entry, *noted.node);
    reader.readings(tree);
    still_invented(sheet_.path, sheet_.text);
    for (const auto &used : sheet_.file.sheets)
      if (used.kind != "reading")
        still_invented(used.name, used.text);
    return std::move(sheet_);
  }

private:
  struct Note
  {
    std::string       layer, entry;
    const toml::node *node;
  };

  /// Numbers that came with a blank sheet go into the answer like any other: that is said.
  void still_invented(const fs::path &path, const std::string &text)
  {
    if (const auto lines = invented_text(text); !lines.empty())
      sheet_.assumptions.push_back(fmt::format("{}: {}", path.filename().string(), lines));
  }

  /// What the case reader cannot suggest, as it knows of no sheets.
  void misspelt_blocks(const toml::table &tree)
  {
    for (const auto &[key, node] : tree)
      if (const auto meant = misspelt_block(key.str()); !meant.empty())
        problems_->add(
          problem_at(key.source(), std::string(key.str()), "there is no such entry",
                     fmt::format("Did you mean {}?", meant == "reading" ? "[[reading]]" : "[pair]")));
  }

  void pair(const toml::table &tree)
  {
    const auto found = tree.find("pair");
    if (found == tree.end())
      return;
    if (const auto *table = found->second.as_table())
    {
      const Fields fields(*table, "pair", "pair", sheet_entries(), *problems_);
      sheet_.pair = fields.text("label");
      sheet_.cut = fields.text("cut");
      tools(fields);
      if (is_of_pair_ && fields.given("part"))
        fields.problem("part", "the file holds both parts", "Leave this line out");
      else if (!is_of_pair_)
      {
        sheet_.part = fields.text("part");
        other_part(tree, fields);
      }
    }
    rewritten_.remove_block(found->first, found->second);
  }

  void tools(const Fields &fields)
  {
    static const std::vector<std::string> known{"rule",   "callipers", "scales", "gauge",
                                                "sensor", "camera",    "press"};
    if (!fields.given("tools"))
      return;
    sheet_.tools = fields.texts("tools");
    for (const auto &tool : sheet_.tools)
      if (std::find(known.begin(), known.end(), tool) == known.end())
      {
        const auto near = nearest_name(tool, known);
        fields.problem("tools", fmt::format("\"{}\" is not a tool that a plan can use", tool),
                       near.empty() ? fmt::format("Use one of {}", fmt::join(known, ", "))
                                    : fmt::format("Did you mean \"{}\"?", near));
      }
  }

  /// A sheet whose own words name the other part was filled in for that one.
  void other_part(const toml::table &tree, const Fields &fields)
  {
    const std::string other = sheet_.part == "heel" ? "forefoot" : "heel";
    const auto        says = [](const std::string &words, const std::string &part) {
      return in_small_letters(words).find(part) != std::string::npos;
    };
    if (sheet_.part.empty())
      return;
    for (const auto &[what, words] : {std::pair<std::string, std::string>{"title", text_of(tree, "title")},
                                      {"stack", text_of(tree, "stack")},
                                      {"file name", sheet_.path.stem().string()}})
      if (says(words, other) && !says(words, sheet_.part))
      {
        fields.problem("part",
                       fmt::format("is \"{}\", but the {} \"{}\" says {}", sheet_.part, what, words, other),
                       fmt::format("Write part = \"{}\", or correct the {}", other, what));
        return;
      }
  }

  void layer(const toml::table &table)
  {
    const auto name = text_of(table, "name");
    for (const char *entry : {"hardness", "density"})
      if (const auto found = table.find(entry); found != table.end())
      {
        notes_.push_back({name, entry, &found->second});
        rewritten_.remove(found->first, found->second);
      }
    for (const char *entry : {"material", "ring"})
      if (const auto *node = table.get(entry))
      {
        const auto meant = misspelt_unknown(text_of(table, entry));
        if (!meant.empty() && !options_.library.find(text_of(table, entry)))
          problems_->add(problem_at(
            node->source(), fmt::format("{}.{}", name, entry),
            fmt::format("there is no material \"{}\"", text_of(table, entry)),
            fmt::format("Did you mean \"{}\"? Write it so for a foam or rubber that is not known", meant)));
        if (const auto family = unknown_family(text_of(table, entry));
            !family.empty() && !is_given(name, entry))
          unknown_material(table, *node, name, family, entry == std::string("ring"));
      }
    values(table, "layer", name, name);
    const auto *unit = table["unit"].as_table();
    if (unit)
      values(*unit, "unit", name + ".unit", name);
    if (!table.contains("thickness"))
      missing(name, "thickness", missing_thickness(family_of(text_of(table, "material")), unit != nullptr));
    if (unit && !unit->contains("gauge_pressure") && text_of(*unit, "state") != "open")
      missing(name, "unit.gauge_pressure", missing_gauge_pressure());
  }

  std::string family_of(const std::string &material) const
  {
    if (const auto family = unknown_family(material); !family.empty())
      return family;
    const auto *known = options_.library.find(material);
    return known ? known->family : "foam";
  }

  /// The addresses in the sheet's own [change]; nested tables are addresses too.
  void own_changes(const toml::table &table, const std::string &before)
  {
    for (const auto &[key, node] : table)
      if (const auto *inner = node.as_table(); inner && !inner->is_inline())
        own_changes(*inner, fmt::format("{}{}.", before, key.str()));
      else
        given_.push_back(before + std::string(key.str()));
  }

  /// Whether a change gives an entry of a layer, whatever stands there.
  bool is_given(const std::string &layer, const std::string &entry) const
  {
    const auto address = layer + "." + entry;
    return std::ranges::any_of(given_, [&](const std::string &given) {
      return given.starts_with(address) || given.starts_with("layer." + address);
    });
  }

  /// An entry of a layer that nobody wrote: the case gets its middle, the readings may settle it.
  void missing(const std::string &layer, const std::string &entry, const MissingValue &value)
  {
    if (layer.empty() || is_given(layer, entry))
      return;
    const bool  is_thickness = entry == "thickness";
    const auto &known = *std::ranges::find_if(doubted_entries(), [&](const DoubtedEntry &one) {
      return one.kind == (is_thickness ? DoubtedNumber::thickness : DoubtedNumber::gauge_pressure);
    });
    sheet_.taken.push_back(fmt::format("layer.{}.{}=\"{}\"", layer, entry, split_doubted(value.text).value));
    add_doubted(parse_doubted(value.text, known.dimension), known, layer + "." + entry, layer);
    sheet_.assumptions.push_back(fmt::format("{}: not given; {} assumed, a wide band for {}",
                                             sheet_.unknowns.back().parameter.name, value.text, value.words));
  }

  void unknown_material(const toml::table &table, const toml::node &node, const std::string &layer,
                        const std::string &family, bool is_ring)
  {
    const auto written = node.value_or(std::string());
    const auto prefix = unknown_words.size() + family.size();
    const auto mark = written.size() > prefix ? written.substr(prefix + 1) : "";
    const auto shown = is_ring ? solver::ring_part(layer) : layer;
    const auto name = mark.empty() ? layer + (is_ring ? "-ring-" : "-") + family : family + "-" + mark;
    rewritten_.replace(node, "\"" + name + "\"");
    for (const auto &known : sheet_.materials)
      if (known.name == name)
        return;
    const auto *start =
      starting_material(options_.library, family, is_ring ? nan_ : hinted_modulus(table, family),
                        is_ring ? nan_ : hinted_density(table));
    if (!start)
    {
      problems_->add(problem_at(node.source(), layer + ".material",
                                fmt::format("the library has no {} to start from", family),
                                "Name a material of your own"));
      return;
    }
    sheet_.materials.push_back({name, shown, family, *start});
    for (auto &unknown : material_unknowns(options_.library, *start, name, shown))
      sheet_.unknowns.push_back(std::move(unknown));
    sheet_.assumptions.push_back(
      fmt::format("{}: unknown {}; the fit starts from {} and allows the whole range of {}s in the library",
                  shown, family, start->name, family));
  }

  /// A hint only chooses where to start from; slips in it are told where it is read as a reading.
  double hinted_modulus(const toml::table &table, const std::string &family) const
  {
    try
    {
      const auto hint = parse_doubted(text_of(table, "hardness"), Dimension::hardness);
      for (const auto &gauge : gauges)
        if (gauge.name == hint.scale)
          return modulus_from_reading(gauge, hint.value, family == "rubber" ? 0.5 : 0.1);
    }
    catch (const std::exception &)
    {
    }
    return nan_;
  }
  double hinted_density(const toml::table &table) const
  {
    try
    {
      return parse_doubted(text_of(table, "density"), Dimension::density).value;
    }
    catch (const std::exception &)
    {
      return nan_;
    }
  }

  void values(const toml::table &table, const std::string &block, const std::string &title,
              const std::string &layer)
  {
    for (const auto &entry : doubted_entries())
      if (const auto *node = table.get(entry.name); node && entry.block == block && node->is_string())
      {
        const auto written = node->as_string()->get();
        const auto parts = split_doubted(written);
        if (parts.value == written && parts.doubt.empty())
          continue;
        const auto address = fmt::format("{}.{}", title, entry.name);
        try
        {
          const auto value = parse_doubted(written, entry.dimension);
          add_doubted(value, entry, address, layer);
        }
        catch (const InvalidQuantity &error)
        {
          problems_->add(problem_at(node->source(), address, error.what(), error.cure));
        }
        rewritten_.replace(*node, "\"" + parts.value + "\"");
      }
  }

  /// Doubts about a rig that the command line replaces are left behind with it.
  void own_bench(const toml::table &drop)
  {
    const auto n_before = sheet_.unknowns.size();
    values(drop, "drop", "drop", "");
    if (std::none_of(options_.overrides.begin(), options_.overrides.end(), [](const std::string &option) {
          return option.starts_with("rig=") || option.starts_with("rig =");
        }))
      return;
    sheet_.unknowns.resize(n_before);
  }

  void add_doubted(const Doubted &value, const DoubtedEntry &entry, const std::string &address,
                   const std::string &layer)
  {
    Unknown unknown;
    unknown.kind = entry.kind;
    unknown.target = layer;
    unknown.dimension = entry.dimension;
    auto words = address;
    std::replace(words.begin(), words.end(), '.', ' ');
    std::replace(words.begin(), words.end(), '_', ' ');
    unknown.parameter =
      measured_number(entry.kind == DoubtedNumber::gauge_pressure ? unit_pressure_name(layer) : words, value);
    sheet_.unknowns.push_back(unknown);
  }

  bool read_case()
  {
    try
    {
      auto options = options_;
      options.overrides.insert(options.overrides.begin(), sheet_.taken.begin(), sheet_.taken.end());
      sheet_.file = read_case_text(sheet_.case_text, sheet_.path.string(), options);
      sheet_.file.changes.erase(sheet_.file.changes.begin(),
                                sheet_.file.changes.begin() + static_cast<long>(sheet_.taken.size()));
      if (sheet_.file.cases.size() == 1)
      {
        sheet_.setup = sheet_.file.cases.front();
        sheet_.bench_text = bench_text(sheet_.case_text, sheet_.path.string(), options);
        sheet_.stack_text = changed_stack_text(sheet_.case_text, sheet_.path.string(), options_);
        leave_what_was_set();
        add_instrument_doubts(sheet_);
        return true;
      }
      problems_->add({sheet_.path.string(), 0, 0, "series", "a bench sheet is about one stack, not a series",
                      "Remove [[series]]"});
    }
    catch (const CaseError &error)
    {
      for (const auto &problem : error.problems())
        if (problem.line == 0 || !problems_->has_line(problem.file, problem.line))
          problems_->add(problem);
    }
    return false;
  }

  /// A number that a change gives is known as it is given: the band of the written one is not of it.
  void leave_what_was_set()
  {
    constexpr double rounding = 1e-9;
    std::erase_if(sheet_.unknowns, [&](const Unknown &one) {
      const auto *now = doubted_member(sheet_.setup, one.kind, one.target);
      return now && std::abs(*now - one.parameter.median) > rounding * std::abs(*now);
    });
  }

  static constexpr double  nan_ = std::numeric_limits<double>::quiet_NaN();
  const ReadOptions       &options_;
  std::vector<std::string> given_; ///< addresses of changes, by the command line or the sheet's own
  bool                     is_of_pair_;
  SheetText                rewritten_;
  Sheet                    sheet_;
  std::vector<Note>        notes_;
  Problems                *problems_ = nullptr;
};

bool layer_is_unknown(const toml::table &table)
{
  for (const char *entry : {"material", "ring"})
    if (const auto material = text_of(table, entry);
        !unknown_family(material).empty() || !misspelt_unknown(material).empty())
      return true;
  return table.contains("hardness");
}
} // namespace

bool is_sheet(const std::string &text)
{
  Problems   told_later;
  const auto tree = parse_sheet(text, "", told_later);
  if (tree.contains("reading") || tree.contains("pair") || is_pair_file(text))
    return true;
  for (const auto &[key, node] : tree)
    if (!misspelt_block(key.str()).empty() && (node.is_table() || node.is_array()))
      return true;
  const auto doubted = [](const toml::table &table) {
    for (const auto &[key, node] : table)
      if (const auto *string = node.as_string(); string && key.str() != "note" && key.str() != "title" &&
                                                 !split_doubted(string->get()).doubt.empty())
        return true;
    return false;
  };
  if (const auto *drop = tree.get_as<toml::table>("drop"); drop && doubted(*drop))
    return true;
  if (const auto *layers = tree.get_as<toml::array>("layer"))
    for (const auto &element : *layers)
      if (const auto *table = element.as_table(); table && (layer_is_unknown(*table) || doubted(*table)))
        return true;
  return false;
}

namespace
{
Sheet read_text(const fs::path &path, std::string text, const std::string &part, const ReadOptions &options)
{
  Problems problems;
  problems.add_source(path.string(), text);
  auto sheet = SheetReader(path, options, std::move(text), part).read(problems);
  problems.throw_if_any();
  return sheet;
}

std::string text_in(const fs::path &path)
{
  Problems problems;
  auto     text = read_sheet_text(path, problems);
  problems.throw_if_any();
  return text;
}
} // namespace

Sheet read_sheet(const fs::path &path, const ReadOptions &options)
{
  auto text = text_in(path);
  if (is_pair_file(text))
  {
    Problems problems;
    problems.add({path.string(), 0, 0, "", "the file holds both parts of a pair",
                  fmt::format("Use `solemech pair {}`, which settles them together", path.string())});
    problems.throw_if_any();
  }
  return read_text(path, std::move(text), "", options);
}

Sheet read_part(const fs::path &path, const std::string &part, const ReadOptions &options)
{
  const auto text = text_in(path);
  Problems   problems;
  check_pair_file(text, path.string(), problems);
  problems.throw_if_any();
  return read_text(path, sheet_of_part(text, part), part, options);
}
} // namespace solemech::tools
