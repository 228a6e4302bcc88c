// SPDX-License-Identifier: Apache-2.0
#include "tools/output/write_run.h"

#include "solver/results/field_files.h"
#include "solver/results/result_file.h"
#include "tools/language/shown_text.h"
#include "tools/output/picture/pictures.h"
#include "tools/output/report/record_summary.h"
#include "tools/output/report/report_page.h"
#include "tools/output/results/tables.h"

#include <future>

namespace solemech::tools
{
namespace
{
constexpr std::size_t drawn_runs = 4; ///< of a longer series only the first and the last go to paraview/

solver::ResultRecord stored(const RunRecord &record)
{
  solver::ResultRecord result{record.label, record.case_text, record.canonical_text,
                              record.hash,  record.versions,  {}};
  for (const auto &run : record.runs)
    result.runs.push_back({run.label, run.result});
  return result;
}

void write_data(RunFolder &folder, const RunRecord &record)
{
  folder.write("data/case.toml", record.case_text);
  folder.tell_sheet(materials::shown_text(record.sheet));
  for (const auto &file : record.sheets)
    folder.keep_input(file);
  folder.write("data/resolved.txt", record.canonical_text);
  solver::write_result_file(folder.file("data/results.h5"), stored(record));

  for (std::size_t i = 0; i < record.runs.size(); ++i)
  {
    const Run                  &run = record.runs[i];
    const bool                  alone = record.runs.size() == 1;
    const std::filesystem::path inner = alone ? "data" : "data/" + folder_name(run.label);
    folder.write(inner / "curves.csv", curves_table(run.result));
    folder.write(inner / "ledger.csv", ledger_table(run.result));
    folder.write(inner / "readings.csv", readings_csv(run.result));
    if (!run.result.picture.snapshots.empty() &&
        (record.runs.size() <= drawn_runs || i == 0 || i + 1 == record.runs.size()))
    {
      const std::filesystem::path script = folder.file("paraview/view.py");
      solver::write_field_files(script.parent_path(), alone ? "stack" : folder_name(run.label),
                                run.result.picture);
      solver::write_view_script(script.parent_path());
    }
  }
}
} // namespace

std::string write_run(RunFolder &folder, const RunRecord &record, const std::function<void()> &write_pages)
{
  for (const auto &run : record.runs)
    solver::require_writable(run.label, run.result);
  // The plot program is a process of its own: it draws while the rest is written.
  auto pictures = std::async(std::launch::async, [&, place = folder.file("summary.txt").parent_path()] {
    return draw_pictures(place, record.runs, record.series ? &*record.series : nullptr);
  });
  write_data(folder, record);
  write_pages();
  return pictures.get();
}

std::string write_run(RunFolder &folder, const RunRecord &record)
{
  return write_run(folder, record, [&] {
    folder.write("summary.txt", report::record_summary(record, {}));
    folder.write("report.html", report::report_html(report::run_page(record)));
  });
}
} // namespace solemech::tools
