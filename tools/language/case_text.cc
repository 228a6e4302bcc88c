// SPDX-License-Identifier: Apache-2.0
#include "tools/language/case_text.h"

#include "tools/language/checksum.h"
#include "tools/language/described_sole.h"
#include "tools/language/sole_file.h"

#include <fmt/format.h>

#include <concepts>
#include <type_traits>

namespace solemech::tools
{
namespace
{
/// Whether a text is of what a run sees, or of what an answer shows too.
enum class Seen { by_run, in_answer };

/// Collects lines below a prefix that grows and shrinks with the nesting of the data.
class CanonicalWriter
{
public:
  explicit CanonicalWriter(Seen seen) : seen_(seen) {}

  std::string text;

  template <Described Struct>
  void members(const Struct &object)
  {
    [[maybe_unused]] static const Struct fresh{};
    for_each_member<Struct>([&](const auto &each) {
      if (!each.applies || each.applies(object))
        write(object.*each.at, each, fresh.*each.at);
    });
    if (seen_ == Seen::in_answer)
      for_each_shown<Struct>([&](const auto &each) { write(object.*each.at, each, fresh.*each.at); });
  }

private:
  void line(std::string_view name, std::string_view value)
  {
    text += fmt::format("{}{} = {}\n", prefix_, name, value);
  }
  void number(std::string_view name, double value)
  {
    line(name, fmt::format("{:.17g}", value + 0.0)); // no minus before 0
  }

  /// What `write_it` writes stands below the name, if there is one.
  template <typename Write>
  void inside(std::string_view name, const Write &write_it)
  {
    const auto length = prefix_.size();
    if (!name.empty())
      prefix_ += fmt::format("{}.", name);
    write_it();
    prefix_.resize(length);
  }

  /// A value by its type; `each` knows its name, `fresh` is what a new struct holds.
  template <typename Value, typename Each, typename Fresh>
  void write(const Value &value, const Each &each, const Fresh &fresh)
  {
    if constexpr (std::floating_point<Value>)
    {
      if (!each.is_quiet || value != fresh)
        number(each.name, value);
    }
    else if constexpr (std::is_enum_v<Value> || std::integral<Value>)
      line(each.name, fmt::format("{}", static_cast<long>(value)));
    else if constexpr (std::convertible_to<Value, std::string_view>)
      line(each.name, value);
    else if constexpr (Described<Value>)
      inside(each.name, [&] { members(value); });
    else
      several(value, each);
  }

  /// Nothing or one, one of several kinds, rows of a table, or a list.
  template <typename Value, typename Each>
  void several(const Value &value, const Each &each)
  {
    if constexpr (detail::is_optional<Value>)
    {
      if (value)
        write(*value, each, *value);
    }
    else if constexpr (requires { value.index(); })
      inside(each.name, [&] {
        std::visit(
          [&]<typename Kind>(const Kind &kind) {
            line(each.first, Description<Kind>::kind);
            members(kind);
          },
          value);
      });
    else
      for (const auto &element : value)
        if constexpr (requires { std::get<1>(element); })
          inside(each.name, [&] {
            number(each.first, std::get<0>(element));
            number(each.second, std::get<1>(element));
          });
        else
          write(element, each, element);
  }

  Seen        seen_;
  std::string prefix_;
};

template <typename Piece>
std::string text_of(const Piece &piece, Seen seen = Seen::by_run)
{
  CanonicalWriter out(seen);
  out.members(piece);
  return std::move(out.text);
}
} // namespace

std::string canonical_text(const solver::Case &data)
{
  return "solemech case, SI\n" + text_of(data);
}

std::string answer_text(const solver::Case &data)
{
  return "solemech case, SI, as shown\n" + text_of(data, Seen::in_answer);
}

std::string labelled_text(const std::vector<solver::Case> &cases, std::string (*text)(const solver::Case &))
{
  std::string all;
  for (const solver::Case &data : cases)
    all += fmt::format("# {}\n{}", data.label, text(data));
  return all;
}

std::string canonical_text(const solver::Layer &layer)
{
  return text_of(layer);
}

std::string canonical_text(const solver::Plug &plug)
{
  return text_of(plug);
}

std::string canonical_text(const solver::Rig &rig)
{
  return std::visit(
    []<typename Kind>(const Kind &kind) {
      return std::string(Description<Kind>::kind) + "\n" + text_of(kind);
    },
    rig);
}

std::string canonical_text(const materials::Material &material)
{
  return text_of(material);
}

std::string canonical_text(const solver::Sole &sole)
{
  return "solemech sole, SI\n" + text_of(sole);
}

std::string case_hash(const solver::Case &data, const std::string &result_version)
{
  return sha256_of_text(canonical_text(data) + "result version = " + result_version + "\n");
}
} // namespace solemech::tools
