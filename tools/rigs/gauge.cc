// SPDX-License-Identifier: Apache-2.0
// Hardness gauge set onto the stack.
#include "solver/results/catalogue.h"
#include "tools/rigs/facts.h"
#include "tools/rigs/kind.h"
#include "tools/rigs/numbers.h"

#include <fmt/format.h>

namespace solemech::tools::rigs
{
namespace
{
using solver::DurometerRig;

/// "ShoreA" as people write it.
std::string scale_text(const materials::Gauge &gauge)
{
  std::string text(gauge.name);
  const auto  letter = text.find_last_not_of("ABCDO");
  return text.insert(letter + 1, " ");
}

class HardnessGauge final : public Kind
{
public:
  solver::RigKind id() const override { return solver::RigKind::gauge; }
  const char     *family() const override { return "gauge"; }
  std::string     striker(const solver::Case &) const override { return "tip of the gauge"; }
  const char     *force_title() const override { return "Force on the tip of the gauge"; }
  std::string     scale(const solver::Case &setup) const override
  {
    return scale_text(numbers_of<DurometerRig>(setup).gauge);
  }

  std::string text(const solver::Case &setup, Lengths lengths) const override
  {
    return fmt::format("{} gauge on a specimen of {}, read after {:.3g} s", scale(setup),
                       length_text(stack_height(setup.layers), lengths),
                       numbers_of<DurometerRig>(setup).read_after);
  }

  std::vector<std::string> cautions(const solver::Case &) const override
  {
    return {"The tip of a hardness gauge is hard and can be sharp. Press it on a shoe that stands on a "
            "table, never against a hand, and not where a unit under pressure lies close below."};
  }

  bool tells(const Run &run) const override
  {
    return run.result.complete && value_of(run, solver::catalogue.hardness);
  }

  std::string sentence(const Run &run) const override
  {
    return fmt::format("The gauge reads {}: its spring holds the tip {} deep.", points(run), depth(run));
  }

  std::vector<Headline> headline(const Run &run) const override
  {
    const auto modulus = value_of(run, solver::catalogue.youngs_modulus);
    return {{"hardness", points(run), "reading of the gauge"},
            {"depth of the tip", depth(run), "at the reading"},
            modulus ? Headline{"modulus", fmt::format("{:.2f} MPa", 1e-6 * *modulus), "of the rubber at rest"}
                    : Headline{"force of the spring",
                               fmt::format("{:.2f} N", number(run, solver::catalogue.tip_force)),
                               "at the reading"}};
  }

private:
  std::string points(const Run &run) const
  {
    return fmt::format("{:.1f} {}", number(run, solver::catalogue.hardness), scale(run.setup));
  }
  static std::string depth(const Run &run)
  {
    return length(value_of(run, solver::catalogue.tip_depth).value_or(greatest_compression(run)));
  }
};
} // namespace

const Kind &gauge()
{
  static const HardnessGauge kind;
  return kind;
}
} // namespace solemech::tools::rigs
