// SPDX-License-Identifier: Apache-2.0
#include "tools/language/case_file.h"

#include "tools/language/addresses.h"
#include "tools/language/assumptions.h"
#include "tools/language/case_builder.h"
#include "tools/language/case_tree.h"
#include "tools/language/schema.h"
#include "tools/language/sheet.h"
#include "tools/language/shown_text.h"
#include "tools/language/small_letters.h"
#include "tools/language/swap_option.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <iterator>
#include <set>

namespace solemech::tools
{
namespace fs = std::filesystem;
using materials::Fields;
using materials::Problems;

namespace
{
constexpr std::size_t most_cases = 500;

/// A part of a label that is safe in file names: "2 J" -> "2J".
std::string label_part(const std::string &text)
{
  std::string part;
  for (const char c : text)
    if (std::isalnum(static_cast<unsigned char>(c)) || c == '-' || c == '_' || c == '.' || c == '+')
      part += c;
  return part.empty() ? "case" : part;
}

/// Address of the entry that says the same as this one ("drop.height" for "drop.energy"); else the address
/// itself.
std::string other_address(const std::string &address)
{
  const auto  dot = address.find('.');
  const auto *entry =
    dot == std::string::npos ? nullptr : find_entry(address.substr(0, dot), address.substr(dot + 1));
  return entry && !entry->instead_of.empty() ? fmt::format("{}.{}", entry->section, entry->instead_of)
                                             : address;
}

std::string_view stripped(std::string_view text, std::string_view off)
{
  const auto first = text.find_first_not_of(off), last = text.find_last_not_of(off);
  return first == std::string_view::npos ? std::string_view() : text.substr(first, last - first + 1);
}

/// A change of the command line as told to people: "core.thickness = 18 mm" for core.thickness="18 mm".
std::string change_text(const std::string &option)
{
  const auto equals = option.find('=');
  if (equals == std::string::npos)
    return option;
  const std::string_view whole(option);
  std::string            text =
    fmt::format("{} = {}", stripped(whole.substr(0, equals), " "), stripped(whole.substr(equals + 1), " \""));
  // One line each: they stand in comments and headings.
  std::replace_if(
    text.begin(), text.end(), [](unsigned char c) { return c < ' ' || c == 0x7f; }, ' ');
  return text;
}

/// One series of a file: what is varied, and how many values there are.
struct Series
{
  std::size_t              block = 0; ///< number of the block in the file
  std::string              address;
  std::vector<std::string> labels;
  bool                     is_list = true;   ///< [[series]] rather than [series]
  bool                     is_range = false; ///< the range of the command line, in no block of the file
};

class CaseFileReader
{
public:
  CaseFileReader(const std::string &text, const std::string &file, const ReadOptions &options)
    : text_(text), name_(file), options_(options),
      folder_(options.case_roots, fs::path(file).parent_path(), options.copies)
  {
  }

  CaseFile read()
  {
    const auto tree = materials::parse_sheet(text_, name_, problems_);
    if (tree.empty())
      problems_.throw_if_any();
    head(tree);
    find_series(tree);
    read_swaps(options_.swaps, problems_);
    if (!options_.range.empty())
      add_range();
    std::vector<std::size_t> pick(series_.size(), 0);
    do
    {
      add_case(pick);
    } while (problems_.empty() && next(pick));
    expected(tree);
    read_lesson_block(tree);
    problems_.throw_if_any();
    result_.sheets = folder_.used();
    return std::move(result_);
  }

private:
  void head(const toml::table &tree)
  {
    Problems     told_later; // the same entries are read once more, completed, for each case
    const Fields top(tree, "", "", case_entries(), told_later);
    result_.label = materials::shown_text(fs::path(name_).stem().string());
    result_.text = text_;
    for (const auto &option : options_.overrides)
      result_.changes.push_back(change_text(option));
    result_.title = top.text("title");
    result_.group = top.text("group");
    result_.question = top.text("question");
    result_.note = top.text("note");
    if (result_.title.empty())
      result_.title = result_.label;
    for (const auto &problem : told_later.list())
      problems_.add(problem);
  }

  void find_series(const toml::table &tree)
  {
    const Fields top(tree, "", "", case_entries(), problems_);
    std::size_t  n_cases = 1;
    const auto   blocks = top.blocks("series");
    for (std::size_t i = 0; i < blocks.size(); ++i)
    {
      const Fields fields(*blocks[i], "series", "series", case_entries(), problems_);
      Series       series;
      series.block = i;
      series.is_list = tree.get("series")->is_array();
      series.address = fields.text("vary");
      const auto values = fields.texts("values");
      series.labels = fields.given("labels") ? fields.texts("labels") : values;
      if (values.empty())
      {
        if (fields.given("values"))
          fields.problem("values", "there are no values", "Write values = [\"2 J\", \"4 J\"], for example");
        continue;
      }
      if (series.labels.size() != values.size())
      {
        fields.problem("labels", fmt::format("{} labels for {} values", series.labels.size(), values.size()),
                       "Give one label for each value");
        series.labels = values;
      }
      std::set<std::string> parts;
      for (auto &label : series.labels)
        if (!parts.insert(in_small_letters(label = label_part(label))).second)
          fields.problem(fields.given("labels") ? "labels" : "values",
                         fmt::format("\"{}\" is given twice", label),
                         "Make the labels differ, by more than capital letters");
      n_cases *= values.size();
      if (n_cases > most_cases)
      {
        fields.problem("values", fmt::format("the series give more than {} cases", most_cases),
                       "Split the file into several");
        return;
      }
      const bool fixed =
        std::any_of(options_.overrides.begin(), options_.overrides.end(), [&](const auto &option) {
          const auto set = stripped(std::string_view(option).substr(0, option.find('=')), " ");
          return set == series.address || set == other_address(series.address);
        });
      if (!fixed && !series.address.empty())
      {
        series_.push_back(series);
        result_.series.push_back({series.address, values});
      }
    }
  }

  /// The range of a trial is one more series; its entry may be one that a swap brought in.
  void add_range()
  {
    range_ = read_range(options_.range, problems_);
    if (range_.values.empty())
      return;
    Series series;
    series.is_range = true;
    VariedEntry varied{range_.entry.text, {}};
    for (const auto &value : range_.values)
    {
      series.labels.push_back(label_part(value.text));
      varied.values.push_back(value.text);
    }
    series_.push_back(series);
    result_.series.push_back(varied);
  }

  bool next(std::vector<std::size_t> &pick) const
  {
    for (std::size_t i = pick.size(); i-- > 0;)
    {
      if (++pick[i] < series_[i].labels.size())
        return true;
      pick[i] = 0;
    }
    return false;
  }

  void add_case(const std::vector<std::size_t> &pick)
  {
    auto    tree = materials::parse_sheet(text_, name_, problems_);
    auto    label = result_.label;
    Variant variant;
    for (std::size_t i = 0; i < series_.size(); ++i)
    {
      label += "-" + series_[i].labels[pick[i]];
      if (series_[i].is_range)
        continue;
      auto *node = tree.get("series");
      auto *block =
        series_[i].is_list ? node->as_array()->get(series_[i].block)->as_table() : node->as_table();
      auto  *values = block->get_as<toml::array>("values");
      Change change;
      change.address = split_address(series_[i].address);
      change.written = "series.vary: " + series_[i].address;
      change.is_of_series = true;
      values->get(pick[i])->visit(
        [&](auto &value) { change.holder.insert_or_assign("value", std::move(value)); });
      variant.emplace_back(std::move(change));
    }
    for (const auto &option : options_.overrides)
      variant.emplace_back(change_from_option(option, problems_));
    Problems known; // a slip of an option's text was told before the first case
    std::ranges::move(read_swaps(options_.swaps, known), std::back_inserter(variant));
    if (!range_.values.empty())
      variant.emplace_back(change_of_range(range_, pick.back()));
    const auto last = complete_tree(tree, std::move(variant), folder_, options_.library.names, problems_);
    if (!range_.values.empty() && !last.empty())
      result_.series.back().address = last;
    if (result_.cases.empty())
      result_.assumed = assumed_entries(tree);
    for (const char *name : {"series", "expect", "lesson"})
      tree.erase(name);
    auto data = build_case(tree, options_.library, folder_, problems_);
    data.label = label;
    data.title = result_.title;
    data.note = result_.note;
    result_.cases.push_back(std::move(data));
  }

  void expected(const toml::table &tree)
  {
    Problems     known;
    const Fields top(tree, "", "", case_entries(), known);
    for (const auto *block : top.blocks("expect"))
    {
      const Fields             fields(*block, "expect", "expect", case_entries(), problems_);
      const auto               source = fields.text("source");
      const auto               ending = fields.text("label");
      std::vector<std::string> labels, endings;
      for (const auto &data : result_.cases)
      {
        endings.push_back(data.label);
        if (ending.empty() || data.label == ending || data.label == result_.label + "-" + ending)
          labels.push_back(data.label);
      }
      // With a changed or fixed series (--set) not every label needs to be there.
      if (labels.empty() && options_.overrides.empty() && problems_.empty())
      {
        const auto near = materials::nearest_name(result_.label + "-" + ending, endings);
        fields.problem("label", fmt::format("there is no case \"{}\"", ending),
                       near.empty() ? "See the labels of the series"
                                    : fmt::format("Did you mean \"{}\"?", near));
      }
      for (const auto &[key, node] : *block)
        range(fields, std::string(key.str()), labels, source);
    }
  }

  /// Runs as the texts of a lesson name them: by the ending of their label.
  std::vector<NamedRun> named_runs() const
  {
    std::vector<NamedRun> runs;
    for (const auto &data : result_.cases)
    {
      NamedRun run;
      if (result_.cases.size() > 1)
        run.ending = data.label.substr(std::min(data.label.size(), result_.label.size() + 1));
      run.rig = rig_kind(data.rig);
      for (const auto &layer : data.layers)
      {
        run.layers.push_back(layer.name);
        run.has_unit = run.has_unit || layer.unit.has_value();
      }
      runs.push_back(std::move(run));
    }
    return runs;
  }

  void read_lesson_block(const toml::table &tree)
  {
    const auto *block = tree.get_as<toml::table>("lesson");
    // With a broken or changed series the runs that the lesson names need not be there.
    if (!block || !problems_.empty() || !result_.changes.empty() || !options_.swaps.empty() ||
        !options_.range.empty())
      return;
    if (result_.question.empty())
      problems_.add(materials::problem_at(block->source(), "question",
                                          "is missing: a lesson needs a question",
                                          "Write question = \"...?\" at the top of the file"));
    result_.lesson = read_lesson(*block, named_runs(), text_, problems_);
  }

  void range(const Fields &fields, const std::string &reading, const std::vector<std::string> &labels,
             const std::string &source)
  {
    const auto *entry = find_entry("expect", reading);
    if (!entry || reading == "source" || reading == "label" || reading == "outside")
      return;
    const auto texts = fields.texts(reading);
    if (texts.size() != 2)
    {
      if (fields.table().get(reading)->is_array())
        fields.problem(reading, "is not a range",
                       fmt::format("Give the lowest and the highest value: {} = [\"{}\", \"{}\"]", reading,
                                   materials::dimension_example(entry->dimension),
                                   materials::dimension_example(entry->dimension)));
      return;
    }
    try
    {
      const double low = materials::parse_quantity(texts[0], entry->dimension);
      const double high = materials::parse_quantity(texts[1], entry->dimension);
      if (low > high)
        fields.problem(reading, "the lowest value is above the highest", "Swap the two");
      for (const auto &label : labels)
        result_.expected.push_back({label, reading, low, high, source});
    }
    catch (const materials::InvalidQuantity &error)
    {
      fields.problem(reading, error.what(), error.cure);
    }
  }

  const std::string  &text_;
  std::string         name_;
  const ReadOptions  &options_;
  SheetFolder         folder_;
  Problems            problems_;
  CaseFile            result_;
  std::vector<Series> series_;
  EntryRange          range_;
};
} // namespace

CaseFile read_case_text(const std::string &text, const std::string &file, const ReadOptions &options)
{
  return CaseFileReader(text, file, options).read();
}

CaseFile read_case_file(const fs::path &path, const ReadOptions &options)
{
  Problems   problems;
  const auto text = materials::read_sheet_text(path, problems);
  problems.throw_if_any();
  return read_case_text(text, path.string(), options);
}
} // namespace solemech::tools
