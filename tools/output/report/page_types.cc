// SPDX-License-Identifier: Apache-2.0
// Prints the types of the values that the program writes into a page, as TypeScript: one interface a
// described block (tools/language/blocks.h). tools/output/report/src/data.ts is what it prints.
#include "tools/output/report/report_blocks.h"

#include <fmt/format.h>

#include <set>

namespace solemech::tools::report
{
namespace
{
constexpr const char *head = R"(// SPDX-License-Identifier: Apache-2.0
// The values that the program writes into the page. Made by solemech-page-types from the descriptions of the blocks in
// tools/output/report/*.h; change those and write this file anew. Every value is ready for people: display units,
// words of the trade, sentences computed from the numbers. Text is plain text; the page must never treat any of it as
// markup.
)";

class Types
{
public:
  /// The name of a type; an interface that is new is put down, before those that it names itself.
  template <typename Value>
  std::string name_of()
  {
    if constexpr (blocks::IsBlock<Value>)
      return interface_of<Value>();
    else if constexpr (blocks::IsChoice<Value>)
    {
      std::string words;
      for (const auto word : words_of(Value()))
        words += fmt::format("{}\"{}\"", words.empty() ? "" : " | ", word);
      return words;
    }
    else if constexpr (detail::is_optional<Value>)
      return name_of<typename Value::value_type>() + " | null";
    else if constexpr (blocks::is_pair<Value>)
      return fmt::format("[{0}, {0}]", name_of<typename Value::value_type>());
    else if constexpr (blocks::is_list<Value>)
      return name_of<typename Value::value_type>() + "[]";
    else if constexpr (std::is_same_v<Value, bool>)
      return "boolean";
    else if constexpr (std::is_arithmetic_v<Value>)
      return "number";
    else
      return "string";
  }

  std::string text() const
  {
    std::string all = head;
    for (const auto &one : interfaces_)
      all += "\n" + one;
    return all;
  }

private:
  template <typename Struct>
  std::string interface_of()
  {
    constexpr auto    block = block_of(static_cast<const Struct *>(nullptr));
    const std::string name(block.name);
    if (!known_.insert(name).second)
      return name;
    const auto place = interfaces_.size();
    interfaces_.emplace_back();
    std::string text = fmt::format("/** {} */\nexport interface {} {{\n", block.about, name);
    blocks::for_each_field<Struct>([&](const auto &field) {
      using Value = std::remove_cvref_t<std::invoke_result_t<decltype(field.from), const Struct &>>;
      text += fmt::format("  {}: {};", field.key, name_of<Value>());
      if (!field.meaning.empty() || !field.unit.empty())
        text += fmt::format(" // {}{}{}", field.meaning,
                            field.meaning.empty() || field.unit.empty() ? "" : ", ", field.unit);
      text += "\n";
    });
    interfaces_[place] = text + "}\n";
    return name;
  }

  std::set<std::string>    known_;
  std::vector<std::string> interfaces_;
};
} // namespace
} // namespace solemech::tools::report

int main()
{
  solemech::tools::report::Types types;
  types.name_of<solemech::tools::report::Page>();
  fmt::print("{}", types.text());
}
