// SPDX-License-Identifier: Apache-2.0
#include "tools/picture/pictures.h"

#include "solver/result_check.h"
#include "tools/picture/charts.h"
#include "tools/results/run_folder.h"

#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <sstream>

namespace solemech::tools
{
namespace
{
namespace fs = std::filesystem;

constexpr std::size_t drawn_sections = 4; ///< of a long series only the first and the last are drawn

std::string shell_quoted(const std::string &text)
{
  std::string result = "'";
  for (const char c : text)
    result += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return result + "'";
}
} // namespace

fs::path find_gnuplot()
{
  const char        *path = std::getenv("PATH");
  std::istringstream folders(path ? path : "");
  for (std::string folder; std::getline(folders, folder, ':');)
    if (const fs::path candidate = fs::path(folder.empty() ? "." : folder) / "gnuplot";
        access(candidate.c_str(), X_OK) == 0)
      return candidate;
  return {};
}

std::string picture_script(const std::vector<Run> &runs, const Series *series)
{
  std::string script = "# Redraw with:  gnuplot data/pictures.gp   from inside the folder of the run.\n";
  script += force_time_chart(runs, series) + loop_chart(runs, series) + energy_chart(runs);
  script += face_pressure_chart(runs) + worn_face_chart(runs) + grip_map_chart(runs);
  if (series)
    script += series_chart(runs, *series);
  for (std::size_t i = 0; i < runs.size(); ++i)
    if (runs.size() <= drawn_sections || i == 0 || i + 1 == runs.size())
      script += section_chart(runs[i], "section-" + folder_name(runs[i].label));
  return script;
}

std::string draw_script(const fs::path &folder, const std::string &name, const std::string &text)
{
  if (text.empty())
    return "";
  std::error_code error;
  for (const char *inner : {"data", "pictures"})
    fs::create_directories(folder / inner, error);
  const fs::path script = folder / "data" / name;
  std::ofstream  stream(script);
  stream << text;
  stream.close();
  if (error || !stream)
    throw solver::ResultsError(
      fmt::format("cannot write {}: {}", script.string(), error ? error.message() : std::strerror(errno)));

  const fs::path gnuplot = find_gnuplot();
  if (gnuplot.empty())
    return "no pictures: gnuplot is not installed (package gnuplot-nox); the curves are in data/";
  const std::string command =
    fmt::format("cd {} && {} {} 2>&1", shell_quoted(folder.string()),
                shell_quoted(fs::absolute(gnuplot).string()), shell_quoted("data/" + name));
  std::string said;
  std::FILE  *pipe = popen(command.c_str(), "r");
  if (!pipe)
    return fmt::format("no pictures: gnuplot did not start ({}); the curves are in data/",
                       std::strerror(errno));
  for (char buffer[512]; std::fgets(buffer, sizeof buffer, pipe);)
    said += buffer;
  if (pclose(pipe) == 0)
    return "";
  // The last line that says anything is gnuplot's reason.
  std::string        reason;
  std::istringstream lines(said);
  for (std::string line; std::getline(lines, line);)
    if (line.find_first_not_of(" ^\t") != std::string::npos)
      reason = line;
  return fmt::format("some pictures are missing: gnuplot stopped ({}); the curves are in data/", reason);
}

std::string draw_pictures(const fs::path &folder, const std::vector<Run> &runs, const Series *series)
{
  return draw_script(folder, "pictures.gp", picture_script(runs, series));
}
} // namespace solemech::tools
