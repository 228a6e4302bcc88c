// SPDX-License-Identifier: Apache-2.0
// Heel and forefoot as a pair on a bench whose answer is a formula: what falls loses its share to the guide
// on both ways, what rebounds falls with the loss of the foam, compression with the root of its stiffness.
// Truth is known by construction; how far a shared number narrows follows from adding information (C. F.
// Gauss).
#include "tests/support/catch.h"
#include "tests/unit/output/results/temporary_folder.h"
#include "tools/answers/pair/settle_pair.h"
#include "tools/language/library.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <random>

using namespace solemech;
using namespace solemech::tools;

namespace
{
const std::filesystem::path source = SOLEMECH_SOURCE;

Pair read(const std::vector<std::pair<std::string, std::string>> &files,
          const std::vector<std::string>                         &changes = {})
{
  static const auto                  library = materials::Library::load(source / "materials/library");
  const tests::TemporaryFolder       folder;
  std::vector<std::filesystem::path> paths;
  for (const auto &[name, text] : files)
  {
    paths.push_back(folder.path / name);
    std::ofstream(paths.back()) << text;
  }
  return read_pair(paths, {changes, {source / "cases"}, library.source()});
}

std::string mistakes_of(const std::vector<std::pair<std::string, std::string>> &files)
{
  try
  {
    read(files);
  }
  catch (const materials::CaseError &error)
  {
    return error.what();
  }
  return "";
}

const std::string rod = "[drop]\nmass = \"1.20 kg\"\nheight = \"400 mm\"\ndiameter = \"40 mm\"\n";

/// A sheet of one part: a foam of this name under a rod.
std::string sheet(const std::string &part, const std::string &foam, const std::string &drop,
                  const std::string &readings = "", const std::string &label = "pair 22")
{
  return fmt::format("format = 1\n[pair]\nlabel = \"{}\"\npart = \"{}\"\n{}[[layer]]\nname = \"core\"\n"
                     "material = \"{}\"\nthickness = \"18 mm\"\n{}",
                     label, part, drop, foam, readings);
}

std::string rebound(double millimetres, const std::string &more = "")
{
  return fmt::format("[[reading]]\nkind = \"rebound\"\nvalue = \"{:.2f} mm +- 4\"\n{}", millimetres, more);
}

std::string compression(double millimetres)
{
  return fmt::format("[[reading]]\nkind = \"compression\"\nvalue = \"{:.3f} mm +- 0.2\"\n", millimetres);
}

struct Foam
{
  double loss = 0, stiffness = 0;
};

double rebound_by_formula(const solver::DropRig &drop, const Foam &foam)
{
  return drop.height * std::pow(1 - drop.guide_loss, 2) / (1 + 0.25 * foam.loss);
}

double compression_by_formula(const Foam &foam)
{
  return 7e-3 * std::sqrt(4e5 / foam.stiffness);
}

solver::Result bench(const solver::Case &setup, const SolveWish &, const RunProgress &)
{
  const auto &data = std::get<materials::FoamData>(setup.layers.front().material.data);
  Foam        foam{0, data.network.front().shear_modulus};
  for (const auto &term : data.slipping)
    foam.loss += term.share;
  solver::Result result;
  result.readings = {
    {"rebound_height", rebound_by_formula(std::get<solver::DropRig>(setup.rig), foam), "m", ""},
    {"greatest_compression", compression_by_formula(foam), "m", ""},
    {"peak_force", 1000, "N", ""}};
  return result;
}

template <typename Answer>
auto with_job(const Answer &answer)
{
  const std::atomic<bool> go_on{false};
  Job                     job(bench, {}, {}, go_on);
  return answer(job);
}

SettledTogether settled(const Pair &pair)
{
  return with_job([&](Job &job) { return settle_pair(pair, job, {}); });
}

const settle::SettledParameter &guide_in(const settle::Settled &settled)
{
  return *std::ranges::find(settled.parameters, std::string("drop guide loss"),
                            &settle::SettledParameter::name);
}
} // namespace

TEST_CASE("a rod that two sheets share is known from both", "[pair]")
{
  // The foams are of the library: only the guide is open. Its information adds: 1 / s^2 + n (slope /
  // doubt)^2.
  const auto drop = rod + "guide_loss = \"5 % +- 3\"\n";
  const auto both_with = [&](const std::string &readings) {
    return read({{"heel.toml", sheet("heel", "eva-soft", drop, readings)},
                 {"forefoot.toml", sheet("forefoot", "eva-soft", drop, readings)}});
  };
  const auto expected = bench(both_with("").heel().setup, {}, {}).find("rebound_height")->value;
  const auto pair = both_with(rebound(1e3 * expected));
  const auto both = settled(pair);
  const auto one = with_job([&](Job &job) { return settle_sheet(pair.heel(), {}, job, {}); });
  const auto numbers = both.settled.parameters;
  CHECK(std::ranges::count(numbers, std::string("drop guide loss"), &settle::SettledParameter::name) == 1);
  const auto at = [](const settle::Settled &of) { return std::size_t(&guide_in(of) - of.parameters.data()); };
  const auto variance = [&](const settle::Settled &of) { return of.covariance[at(of)][at(of)]; };
  CHECK(guide_in(both.settled).doubt_left < 0.85 * guide_in(one.settled).doubt_left);

  const auto  &prior = pair.heel().unknowns;
  const auto   guide = std::ranges::find(prior, DoubtedNumber::guide_loss, &Unknown::kind);
  const double information = std::pow(guide->parameter.spread, -2);
  // What one reading adds: the same reading of the other sheet adds as much, but for the numbers of the
  // instruments, which differ from sheet to sheet and hardly show here.
  const double of_one = 1 / variance(one.settled) - information,
               of_both = 1 / variance(both.settled) - information;
  CHECK(of_both / of_one == Approx(2).epsilon(0.1));
  // Each sheet says the same of the rod.
  for (const auto &part : both.sheets)
    CHECK(guide_in(part.settled).band.value == guide_in(both.settled).band.value);
}

TEST_CASE("numbers that readings with scatter were made from lie in their bands", "[pair]")
{
  std::mt19937                     chance(7);
  std::normal_distribution<double> normal;
  int                              n_held = 0, n_all = 0;
  const auto                       drop = rod + "guide_loss = \"4 % +- 2\"\n";
  for (int trial = 0; trial < 12; ++trial)
  {
    solver::DropRig truth_rod;
    truth_rod.height = 0.4;
    truth_rod.guide_loss = 0.04 * std::exp(0.25 * normal(chance));
    const auto made = [&](const Foam &foam) {
      // ± 4 and ± 0.2 are 1.645 standard deviations.
      return rebound(1e3 * rebound_by_formula(truth_rod, foam) + 4 / 1.645 * normal(chance)) +
             compression(1e3 * compression_by_formula(foam) + 0.2 / 1.645 * normal(chance));
    };
    const Foam heel{2.0, 4.6e5}, forefoot{1.2, 6.5e5};
    const auto pair = read({{"heel.toml", sheet("heel", "unknown foam", drop, made(heel))},
                            {"forefoot.toml", sheet("forefoot", "unknown foam", drop, made(forefoot))}});
    const auto answer = settled(pair);
    CHECK(answer.settled.converged);
    const auto held = [&](const settle::Band &band, double truth) {
      n_held += band.low <= truth && truth <= band.high;
      ++n_all;
    };
    held(guide_in(answer.settled).band, truth_rod.guide_loss);
    for (std::size_t part = 0; part < 2; ++part)
      for (std::size_t k = 0; k < pair.parts[part].unknowns.size(); ++k)
        if (pair.parts[part].unknowns[k].kind == DoubtedNumber::modulus)
          held(answer.sheets[part].settled.parameters[k].band, (part == 0 ? heel : forefoot).stiffness);
  }
  // 90 % bands: of 36 fewer than 27 would come up once in a thousand such tests (binomial).
  CHECK(n_all == 36);
  CHECK(n_held >= 27);
}

TEST_CASE("doubts of a pair move heel and forefoot as they go together", "[pair]")
{
  const auto   drop = rod + "guide_loss = \"4 % +- 2\"\n";
  const auto   pair = read({{"heel.toml", sheet("heel", "unknown foam", drop, rebound(235) + compression(7))},
                            {"forefoot.toml", sheet("forefoot", "unknown foam", drop, rebound(260))}});
  const auto   answer = settled(pair);
  const auto   comparison = heel_against_forefoot(pair, answer);
  const auto   height = [](const solver::Case &setup) { return bench(setup, {}, {}).readings.front().value; };
  const double at_rest = height(comparison.plan.b) - height(comparison.plan.a);
  double       squares = 0;
  for (const auto &moved : comparison.moved)
  {
    CHECK(std::get<solver::DropRig>(moved.a.rig).guide_loss ==
          std::get<solver::DropRig>(moved.b.rig).guide_loss);
    squares += std::pow(height(moved.b) - height(moved.a) - at_rest, 2);
  }
  // The same from the covariance of all numbers: the band of the difference of the two predictions.
  const auto row_of = [&](const std::string &name) -> const std::vector<double> & {
    std::size_t last = 0; // what is asked comes behind the readings
    for (std::size_t i = 0; i < answer.settled.observations.size(); ++i)
      if (answer.settled.observations[i].name == name)
        last = i;
    return answer.settled.jacobian[last];
  };
  auto        gradient = row_of("forefoot rebound");
  const auto &heel = row_of("heel rebound");
  for (std::size_t k = 0; k < gradient.size(); ++k)
    gradient[k] -= heel[k];
  const auto band = settle::propagate(answer.settled, at_rest, gradient);
  // Linear against moved by a whole half band, and without the numbers that hardly show.
  CHECK(std::sqrt(squares) == Approx(0.5 * (band.high - band.low)).epsilon(0.1));
}

TEST_CASE("what cannot be a pair is refused with its cure", "[pair]")
{
  const auto heel = sheet("heel", "unknown foam", rod, rebound(235));
  struct Wrong
  {
    std::vector<std::pair<std::string, std::string>> files;
    std::vector<const char *>                        said;
  };
  const Wrong all[] = {
    {{{"a.toml", heel}, {"b.toml", heel}},
     {"b.toml:4:8: ", "both sheets are of a heel", "a.toml", "solemech compare"}},
    {{{"a.toml", heel}}, {"holds one part, the heel, only", "solemech sheet --pair"}},
    {{{"a.toml", heel},
      {"b.toml", sheet("forefoot", "eva-soft",
                       "[drop]\nmass = \"1.05 kg\"\nheight = \"400 mm\"\n"
                       "diameter = \"40 mm\"\n")}},
     {"b.toml:5:1: ", "different rods", "1.2 kg at the heel, 1.05 kg at the forefoot", "solemech compare"}},
    {{{"a.toml", heel}, {"b.toml", sheet("forefoot", "eva-soft", rod, "", "pair 9")}},
     {"b.toml:3:9: ", "\"pair 9\"", "\"pair 22\"", "same label"}},
  };
  for (const auto &[files, said] : all)
  {
    const auto text = mistakes_of(files);
    INFO(text);
    for (const auto *part : said)
      CHECK(text.find(part) != std::string::npos);
  }
}

TEST_CASE("what can be put right is, and said", "[pair]")
{
  const auto heel = sheet("heel", "unknown foam", rod, rebound(235)),
             forefoot = sheet("forefoot", "unknown foam",
                              "[drop]\nmass = \"1.20 kg\"\nheight = \"250 mm\"\ndiameter = \"40 mm\"\n");
  const auto pair = read({{"b.toml", forefoot}, {"a.toml", heel}});
  CHECK(pair.heel().part == "heel");
  std::string notes;
  for (const auto &note : pair.notes)
    notes += note + "\n";
  INFO(notes);
  for (const char *said : {"a.toml is the heel and b.toml the forefoot",
                           "from 400 mm, the forefoot from 250 mm", "The forefoot has no reading to fit to"})
    CHECK(notes.find(said) != std::string::npos);
  // Each is fitted from its own height, and both are compared from that of the heel.
  const auto comparison = heel_against_forefoot(pair, settled(pair));
  CHECK(std::get<solver::DropRig>(comparison.plan.b.rig).height == Approx(0.4).epsilon(0.02));
}

TEST_CASE("a guide loss that both sheets give with ± is one number when the bands meet", "[pair]")
{
  const auto both = [](const std::string &heel, const std::string &forefoot) {
    const auto drop = [](const std::string &loss) { return rod + "guide_loss = \"" + loss + "\"\n"; };
    return std::vector<std::pair<std::string, std::string>>{
      {"heel.toml", sheet("heel", "unknown foam", drop(heel), rebound(235))},
      {"forefoot.toml", sheet("forefoot", "unknown foam", drop(forefoot), rebound(250))}};
  };
  const auto pair = read(both("3 % +- 1", "4 % +- 1"));
  // Mean of ln 3 and ln 4, weighed by 1 / spread^2 with spreads 1/3 and 1/4: 9 ln 3 + 16 ln 4 over 25.
  const double mean = 0.01 * std::exp((9 * std::log(3) + 16 * std::log(4)) / 25);
  for (const auto &part : pair.parts)
    CHECK(std::get<solver::DropRig>(part.setup.rig).guide_loss == Approx(mean));
  REQUIRE(pair.notes.size() == 1);
  INFO(pair.notes.front());
  CHECK(pair.notes.front().find("one number within their ±") != std::string::npos);
  const auto answer = settled(pair);
  CHECK(guide_in(answer.sheets[0].settled).band.value == guide_in(answer.sheets[1].settled).band.value);
  CHECK(guide_in(answer.sheets[0].settled).before.value == Approx(mean));

  CHECK(mistakes_of(both("3 % +- 1", "4 %")).empty());
  for (const auto &wrong : {both("3 %", "4 %"), both("3 % +- 1", "8 % +- 1")})
    CHECK(mistakes_of(wrong).find("different rods") != std::string::npos);
}

TEST_CASE("a change names its part, or is of both", "[pair]")
{
  const auto all = [](const std::vector<std::string> &changes) {
    return read(
      {{"forefoot.toml", sheet("forefoot", "eva-soft", rod)}, {"heel.toml", sheet("heel", "eva-firm", rod)}},
      changes);
  };
  const auto pair = all({"heel.core.thickness=20 mm", "drop.height=300 mm"});
  CHECK(pair.heel().setup.layers.front().thickness == Approx(20e-3));
  CHECK(pair.forefoot().setup.layers.front().thickness == Approx(18e-3));
  for (const auto &part : pair.parts)
    CHECK(std::get<solver::DropRig>(part.setup.rig).height == Approx(0.3));
}

TEST_CASE("one file holds both parts, and its mistakes stand where they are", "[pair]")
{
  const std::string text =
    "format = 1\n" + rod +
    "[pair]\nlabel = \"pair 22\"\n"
    "[[heel.layer]]\nname = \"core\"\nmaterial = \"unknown foam\"\nthickness = \"18 mm\"\n"
    "[[forefoot.layer]]\nname = \"bed\"\nmaterial = \"eva-frim\"\nthickness = \"12 mm\"\n"
    "[[forefoot.reading]]\nkind = \"rebound\"\nvalue = \"260 mm\"\n";
  const auto wrong = mistakes_of({{"pair.toml", text}});
  INFO(wrong);
  CHECK(wrong.find("pair.toml:14:12: ") != std::string::npos);
  CHECK(wrong.find("Did you mean \"eva-firm\"") != std::string::npos);

  auto right = text;
  right.replace(right.find("eva-frim"), 8, "eva-firm");
  const auto pair = read({{"pair.toml", right}});
  CHECK(pair.is_one_file());
  CHECK(pair.heel().setup.layers.front().name == "core");
  CHECK(pair.forefoot().setup.layers.front().name == "bed");
  CHECK(pair.heel().readings.empty());
  CHECK(pair.forefoot().readings.size() == 1);

  const auto whose =
    mistakes_of({{"pair.toml", right + "[[reading]]\nkind = \"rebound\"\nvalue = \"1 mm\"\n"}});
  INFO(whose);
  CHECK(whose.find("does not say of which part") != std::string::npos);
  CHECK(whose.find("heel.reading or forefoot.reading") != std::string::npos);
}
