// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/page_template.h"

#include "tools/output/report/plain_text.h"

#include <kainjow/mustache.hpp>
#include <nlohmann/json.hpp>

#include <stdexcept>

namespace solemech::tools::report
{
namespace
{
using kainjow::mustache::data;

data data_of(const nlohmann::json &value)
{
  if (value.is_object())
  {
    data object;
    for (const auto &[name, entry] : value.items())
      object.set(name, data_of(entry));
    return object;
  }
  if (value.is_array())
  {
    data list(data::type::list);
    for (const auto &entry : value)
      list << data_of(entry);
    return list;
  }
  if (value.is_string())
    return data(value.get<std::string>());
  return value.is_number() ? data(value.dump()) : data(value == true);
}
} // namespace

std::string html(const std::string &text)
{
  return kainjow::mustache::html_escape(readable(text));
}

std::string filled(const std::string &page_template, const nlohmann::json &values)
{
  kainjow::mustache::mustache page(page_template);
  page.set_custom_escape(html);
  auto text = page.render(data_of(values));
  if (!page.is_valid())
    throw std::logic_error("a page cannot be made: " + page.error_message());
  return text;
}
} // namespace solemech::tools::report
