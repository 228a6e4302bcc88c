// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/sheet/sheet_text.h"

#include "tools/language/sheet.h"
#include "tools/language/shown_text.h"

#include <algorithm>

namespace solemech::tools
{
SheetText::SheetText(std::string text) : text_(std::move(text)), line_starts_{0}
{
  for (std::size_t i = 0; i < text_.size(); ++i)
    if (text_[i] == '\n')
      line_starts_.push_back(i + 1);
}

std::size_t SheetText::offset(const toml::source_position &position) const
{
  if (position.line == 0 || position.line > line_starts_.size())
    return text_.size();
  std::size_t at = line_starts_[position.line - 1];
  // Columns count characters.
  for (unsigned column = 1; column < position.column && at < text_.size(); ++column)
    at += std::max<std::size_t>(1, materials::utf8_length(text_, at));
  return at;
}

std::string SheetText::blanks(std::size_t begin, std::size_t end) const
{
  std::string out = text_.substr(begin, end - begin);
  std::replace_if(
    out.begin(), out.end(), [](char c) { return c != '\n' && c != '\r'; }, ' ');
  return out;
}

void SheetText::remove(const toml::key &key, const toml::node &value)
{
  const auto begin = offset(key.source().begin), end = offset(value.source().end);
  changes_.push_back({begin, end, blanks(begin, end)});
}

void SheetText::remove_entries(const toml::table &table)
{
  for (const auto &[key, node] : table)
    if (const auto *inner = node.as_table(); inner && !inner->is_inline())
      remove_block(key, node);
    else
      remove(key, node);
}

void SheetText::remove_table(const toml::table &table)
{
  const auto at = offset(table.source().begin);
  const auto begin = text_.rfind('\n', at == 0 ? 0 : at - 1);
  const auto from = begin == std::string::npos ? 0 : begin + 1;
  const auto line_end = std::min(text_.find('\n', from), text_.size());
  const auto comment = std::min(text_.find('#', from), line_end);
  changes_.push_back({from, comment, blanks(from, comment)});
  remove_entries(table);
}

void SheetText::remove_block(const toml::key &key, const toml::node &block)
{
  if (const auto *table = block.as_table(); table && !table->is_inline())
    remove_table(*table);
  else if (const auto *list = block.as_array();
           list && !list->empty() && list->get(0)->is_table() && !list->get(0)->as_table()->is_inline())
    for (const auto &element : *list)
      remove_table(*element.as_table());
  else
    remove(key, block);
}

void SheetText::replace(const toml::node &value, const std::string &with)
{
  const auto begin = offset(value.source().begin), end = offset(value.source().end);
  auto       filled = with;
  while (filled.size() < end - begin)
    filled += ' ';
  changes_.push_back({begin, end, filled});
}

std::string SheetText::text() const
{
  auto ordered = changes_;
  std::stable_sort(ordered.begin(), ordered.end(),
                   [](const Change &a, const Change &b) { return a.begin < b.begin; });
  std::string out;
  std::size_t done = 0;
  for (const auto &change : ordered)
  {
    if (change.begin < done)
      continue;
    out += text_.substr(done, change.begin - done) + change.with;
    done = change.end;
  }
  return out + text_.substr(done);
}

std::string naming_copies(const std::string &case_text, const std::vector<NamedFile> &files)
{
  materials::Problems told_before;
  const auto          tree = materials::parse_sheet(case_text, "", told_before);
  SheetText           rewritten(case_text);
  for (std::size_t i = 0; i < files.size(); ++i)
  {
    const auto &file = files[i];
    const auto *node = file.kind == "history" ? tree["press"]["history"].node() : tree.get(file.kind);
    if (node && !file.is_prepared && node->value_or(std::string()) == file.name)
      rewritten.replace(*node, '"' + copy_name(file, i) + '"');
  }
  return rewritten.text();
}
} // namespace solemech::tools
