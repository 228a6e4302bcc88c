// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/sheet/reading_reader.h"

#include "tools/answers/sheet/reading_kinds.h"
#include "tools/language/sheet.h"
#include "tools/language/sheet_entries.h"

#include <fmt/format.h>

namespace solemech::tools
{
using namespace materials;

namespace
{
struct Kind
{
  const char *name;
  void (*read)(ReadingDesk &desk, const Fields &fields);
};
constexpr Kind kinds[] = {
  {"rebound", read_drop},          {"peak force", read_drop},
  {"deceleration", read_drop},     {"compression", read_drop},
  {"contact time", read_drop},     {"hardness", read_hardness},
  {"density", read_density},       {"impact record", read_impact_record},
  {"press loop", read_press_loop}, {"bend", read_bend},
  {"abrasion", read_abrasion},     {"tread left", read_tread_left},
};
} // namespace

void read_bend(ReadingDesk &desk, const Fields &fields)
{
  desk.sheet.kept.push_back(fmt::format("bend: {}; kept, not used: the model has no bending bench",
                                        fields.given("value") ? fields.text("value") : "no value"));
}

void ReadingReader::readings(const toml::table &tree)
{
  const auto *node = tree.get("reading");
  if (!node)
    return;
  if (const auto *list = node->as_array())
  {
    for (const auto &element : *list)
      if (const auto *table = element.as_table())
        reading(*table);
      else
        desk_.problems.add(problem_at(element.source(), "reading", "is not a block",
                                      "Write [[reading]] on a line above its entries"));
  }
  else if (const auto *table = node->as_table())
    reading(*table);
  else
    desk_.problems.add(problem_at(node->source(), "reading", "is not a block",
                                  "Write [[reading]] on a line above its entries"));
}

void ReadingReader::reading(const toml::table &table)
{
  const Fields fields(table, "reading", "reading", sheet_entries(), desk_.problems);
  const auto   word = fields.text("kind");
  if (const auto part = fields.text("part");
      !part.empty() && !desk_.sheet.part.empty() && part != desk_.sheet.part)
  {
    fields.problem("part",
                   fmt::format("was read on the {}, but this is the sheet of the {}", part, desk_.sheet.part),
                   "Put it into the sheet of that part");
    return;
  }
  for (const auto &kind : kinds)
    if (word == kind.name)
      kind.read(desk_, fields);
}

void ReadingReader::layer_note(const std::string &layer, const std::string &entry, const toml::node &node)
{
  const auto title = layer + "." + entry;
  const auto text = node.is_string() ? node.as_string()->get() : std::string();
  if (text.empty())
    desk_.problems.add(problem_at(node.source(), title, "is not text in quotes",
                                  entry == "hardness" ? "Write \"42 AskerC\", for example"
                                                      : "Write \"170 kg/m3\", for example"));
  else if (entry == "hardness")
    take_hardness(desk_, {text, layer, node, title}, "");
  else
    take_density(desk_, {text, layer, node, title});
}
} // namespace solemech::tools
