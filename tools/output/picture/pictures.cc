// SPDX-License-Identifier: Apache-2.0
#include "tools/output/picture/pictures.h"

#include "solver/results/result_check.h"
#include "solver/results/write_file.h"
#include "tools/output/picture/charts.h"
#include "tools/output/results/run_folder.h"

#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <iterator>
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

/// True when a picture ends as its kind does: SVG with its closing tag, PNG with the chunk IEND (RFC 2083).
bool is_whole(const fs::path &picture)
{
  const std::string ending = picture.extension() == ".png" ? "IEND\xae\x42\x60\x82" : "</svg>";
  std::ifstream     file(picture, std::ios::binary);
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  return text.find(ending, text.size() - std::min(text.size(), ending.size() + 4)) != std::string::npos;
}

/// gnuplot takes no notice of a full disk: where it left half a picture, a file of our own tells.
void require_room(const fs::path &pictures)
{
  constexpr std::size_t size = 1 << 16; // bytes, as a picture may have
  std::error_code       ignored;
  for (const auto &entry : fs::directory_iterator(pictures, ignored))
    if (!is_whole(entry.path()))
    {
      solver::write_file(entry.path(), std::string(size, ' '));
      fs::remove(entry.path(), ignored);
    }
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
  const Looks looks(runs);
  for (std::size_t i = 0; i < runs.size(); ++i)
    if (runs.size() <= drawn_sections || i == 0 || i + 1 == runs.size())
      script += section_chart(runs[i], "section-" + folder_name(runs[i].label), looks);
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
  if (error)
    throw solver::ResultsError(solver::cannot_write(script, error.value()));
  solver::write_file(script, text);

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
  const bool went_well = pclose(pipe) == 0;
  require_room(folder / "pictures");
  if (went_well)
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
