// SPDX-License-Identifier: Apache-2.0
#include "tools/language/doubt_reader.h"

#include "tools/language/described_case.h"
#include "tools/language/doubted_case.h"
#include "tools/language/member_differences.h"
#include "tools/language/schema.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace solemech::tools
{
using materials::Fields;
using solver::Doubt;
using solver::DoubtedNumber;

namespace
{
constexpr double      least_doubt = 1e-4; ///< that the reader of a case takes
constexpr const char *of_rig = "rig";     ///< what a number of the rig is of

using NumberWords = std::vector<std::pair<DoubtedNumber, std::string>>;

/// The doubted members of a struct by the names that people have for them.
template <typename Struct>
void add_words(NumberWords &words)
{
  for_each_member<Struct>([&](const auto &item) {
    if (item.doubt)
      words.emplace_back(*item.doubt, told_name(item));
  });
}

/// Numbers of a material by hand, since they follow from its law; the others as they are described.
const NumberWords &number_words()
{
  static const NumberWords all = [] {
    NumberWords words{{DoubtedNumber::modulus, "stiffness"},
                      {DoubtedNumber::loss, "loss"},
                      {DoubtedNumber::density, "density"}};
    add_words<solver::Layer>(words);
    add_words<solver::AirUnit>(words);
    for_each_rig_block([&]<typename Struct>() { add_words<Struct>(words); });
    return words;
  }();
  return all;
}

const char *word_of(DoubtedNumber number)
{
  for (const auto &[known, word] : number_words())
    if (known == number)
      return word.c_str();
  return nullptr;
}

/// One number for each block before this one, -1..1.
std::vector<double> read_together(const Fields &fields, std::size_t n_before)
{
  const auto texts = fields.texts("together");
  if (texts.size() != n_before)
  {
    fields.problem("together",
                   fmt::format("{} number{} for {} [[settled]] block{} before this one", texts.size(),
                               texts.size() == 1 ? "" : "s", n_before, n_before == 1 ? "" : "s"),
                   "Give one number from -1 to 1 for each block before this one, in their order");
    return {};
  }
  std::vector<double> together;
  for (const auto &text : texts)
    try
    {
      together.push_back(materials::parse_quantity(text, materials::Dimension::number));
      if (std::abs(together.back()) > 1)
        fields.problem(
          "together", fmt::format("{} is not between -1 and 1", text),
          "1: the two rise and fall together; 0: independent; -1: one rises when the other falls");
    }
    catch (const materials::InvalidQuantity &error)
    {
      fields.problem("together", error.what(), error.cure);
    }
  return together;
}
} // namespace

std::vector<Doubt> read_doubts(const std::vector<const toml::table *> &blocks, materials::Problems &problems)
{
  const auto         n_before = problems.n_noted();
  std::vector<Doubt> doubts;
  for (const auto *block : blocks)
  {
    const Fields fields(*block, "settled", "settled", case_entries(), problems);
    Doubt        doubt;
    const auto   word = fields.text("number");
    for (const auto &[number, known] : number_words())
      if (word == known)
        doubt.number = number;
    doubt.of = fields.text("of");
    if (is_of_rig(doubt.number))
      doubt.of.clear();
    // Nine of ten cases of a log-normal number lie between the value over and times (1 + doubt).
    doubt.spread = std::log1p(fields.value("doubt")) / doubts_in_half_band;
    doubt.together = read_together(fields, doubts.size());
    doubts.push_back(std::move(doubt));
  }
  if (problems.n_noted() == n_before && !doubts.empty() && independent_doubts(doubts).empty())
    problems.add(materials::problem_at(
      blocks.back()->source(), "settled.together", "these numbers contradict each other",
      "Two numbers that vary with a third also vary with each other. Lower the numbers of `together`"));
  return problems.n_noted() == n_before ? doubts : std::vector<Doubt>();
}

bool names_the_rig(const toml::table &settled)
{
  const auto number = settled["number"].value_or(std::string());
  return std::any_of(number_words().begin(), number_words().end(),
                     [&](const auto &known) { return number == known.second && is_of_rig(known.first); });
}

std::string doubts_text(const std::vector<Doubt> &doubts)
{
  std::string              text;
  std::vector<std::size_t> written;
  for (std::size_t i = 0; i < doubts.size(); ++i)
  {
    const auto *word = word_of(doubts[i].number);
    if (!word)
      continue;
    text += fmt::format("\n[[settled]]\nnumber = \"{}\"\nof = \"{}\"\ndoubt = \"{:.6g} %\"\n", word,
                        is_of_rig(doubts[i].number) ? of_rig : doubts[i].of,
                        100 * std::max(least_doubt, std::expm1(doubts[i].spread * doubts_in_half_band)));
    std::string together;
    for (const std::size_t before : written)
      together += fmt::format("{}{:.4f}", together.empty() ? "" : ", ", doubts[i].together[before]);
    if (!written.empty())
      text += fmt::format("together = [{}]\n", together);
    written.push_back(i);
  }
  return text;
}

std::vector<materials::Entry> doubt_entries()
{
  static const std::string words = [] {
    std::string text;
    for (const auto &[number, word] : number_words())
      text += (text.empty() ? "" : "|") + word;
    return text;
  }();
  return {
    {"settled", "number", Dimension::choice, any_value, required, "Which number is uncertain.", words},
    {"settled", "of", Dimension::text, any_value, required,
     "Of which material (stiffness, loss, density) or layer (thickness, gauge pressure), or \"rig\" (the "
     "others). A name that is not in the stack has no effect."},
    {"settled", "doubt", Dimension::share, within(1e-4, 9), required,
     "Half of the 90 % band, as a share of the value."},
    {"settled", "together", Dimension::list, any_value, "none",
     "Correlation with each [[settled]] number above: 1 rise and fall together, 0 independent, -1 one "
     "rises when the other falls."}};
}
} // namespace solemech::tools
