// SPDX-License-Identifier: Apache-2.0
// What a report page shows, as values, each block described beside its struct: the page's JSON and the types
// of its view (src/data.ts) follow from these lists. Whoever makes a page (a run, a comparison, a trial, a
// lesson) fills a Page and hands it to report_html (report_page.h). Texts are plain text for people, numbers
// are in the unit beside them; every number must be finite.
#pragma once

#include "tools/output/report/comparison_block.h"
#include "tools/output/report/run_block.h"

#include <optional>
#include <string>
#include <vector>

namespace solemech::tools::report
{
// Tables: a row is read as one line.
// clang-format off

struct SeriesReading
{
  std::string         name, label, unit;
  std::vector<double> values, errors = {}; ///< errors: estimated, none when not known; sentences heed them
};
constexpr auto block_of(const SeriesReading *)
{
  using S = SeriesReading;
  return block<S>("SeriesReading", "One reading of every run of a series.",
    field(&S::name, "name", "machine name"),
    field(&S::label, "label", "for people"),
    field(&S::unit, "unit", "display unit"),
    field(&S::values, "values", "one a run, in `unit`"),
    kept(&S::errors));
}

struct ChartSeries
{
  std::string                quantity, unit;
  std::vector<double>        values;
  std::vector<std::string>   groups;
  std::vector<SeriesReading> readings;
  std::string                sentence;
};
constexpr auto block_of(const ChartSeries *)
{
  using S = ChartSeries;
  return block<S>("Series", "A chart of readings over what a series varies.",
    field(&S::quantity, "quantity", "\"drop energy\""),
    field(&S::unit, "unit", "\"J\""),
    field(&S::values, "values", "one a run"),
    field(&S::groups, "groups", "one a run: runs of one group are joined by a line"),
    field(&S::readings, "readings"), field(&S::sentence, "sentence"));
}

struct TableBlock
{
  std::string                           heading, sentence;
  std::vector<std::string>              columns;
  std::vector<std::vector<std::string>> rows;
};
constexpr auto block_of(const TableBlock *)
{
  using S = TableBlock;
  return block<S>("TableBlock", "A table of ready texts.",
    field(&S::heading, "heading"), field(&S::sentence, "sentence"), field(&S::columns, "columns"),
    field(&S::rows, "rows"));
}

enum class Verdict { better, worse, same, unknown, fact };
constexpr std::array<std::string_view, 5> words_of(Verdict) { return {"better", "worse", "same", "unknown", "fact"}; }

struct TrialRow
{
  std::string name, now, then, note;
  Verdict     verdict = Verdict::unknown;
};
constexpr auto block_of(const TrialRow *)
{
  using S = TrialRow;
  return block<S>("TrialRow", "One reading before and after a change.",
    field(&S::name, "name"), field(&S::now, "now"), field(&S::then, "then"), field(&S::note, "note"),
    field(&S::verdict, "verdict"));
}

struct GeometryLine { std::string name, value, note; };
constexpr auto block_of(const GeometryLine *)
{
  using S = GeometryLine;
  return block<S>("GeometryLine", "What a change costs in room: stack height, heel-to-toe drop, counter depth.",
    field(&S::name, "name"), field(&S::value, "value"), field(&S::note, "note"));
}

struct Trial
{
  std::vector<std::string>   swaps;
  std::vector<TrialRow>      rows;
  std::vector<GeometryLine>  geometry;
  std::optional<ChartSeries> range;
  std::string                bottoms;
  std::vector<std::string>   cautions;
};
constexpr auto block_of(const Trial *)
{
  using S = Trial;
  return block<S>("Trial", "A change before cutting a shoe: before, after, what to know.",
    field(&S::swaps, "swaps"), field(&S::rows, "rows"), field(&S::geometry, "geometry"),
    field(&S::range, "range"),
    field(&S::bottoms, "bottoms", "where it bottoms, in words"),
    field(&S::cautions, "cautions"));
}

struct Lesson
{
  std::string                question;
  std::vector<std::string>   choices;
  std::size_t                answer = 0;
  std::vector<std::string>   explanation;
  std::optional<std::size_t> guess;
};
constexpr auto block_of(const Lesson *)
{
  using S = Lesson;
  return block<S>("Lesson", "A teaching case: question, guess, answer.",
    field(&S::question, "question"),
    field(&S::choices, "choices", "guesses to choose from before the answer is shown"),
    field(&S::answer, "answer", "index into choices"),
    field(&S::explanation, "explanation"),
    field(&S::guess, "guess", "made at the terminal before the run"));
}

enum class PageKind { run, comparison, trial, lesson };
constexpr std::array<std::string_view, 4> words_of(PageKind) { return {"run", "comparison", "trial", "lesson"}; }

enum class Origin { model, measured };
constexpr std::array<std::string_view, 2> words_of(Origin) { return {"model", "measured"}; }

/// Runs are pointed to: their pictures are large, and they must outlive the page.
struct Page
{
  PageKind                     kind = PageKind::run;
  std::string                  title, label;
  Origin                       origin = Origin::model;
  std::string                  sentence;
  std::vector<rigs::Headline>  headline;
  std::vector<std::string>     story;
  std::vector<const Run *>     runs;
  std::optional<ChartSeries>   series;
  std::vector<TableBlock>      tables;
  std::vector<rigs::LineBlock> lines;
  std::vector<Comparison>      comparison;
  std::optional<Trial>         trial;
  std::optional<Lesson>        lesson;
  std::vector<std::string>     cautions;
  RecordFacts                  record;
};

/// What of the page is invented; "" for a stack and materials of somebody's own.
std::string invented_of(const Page &page);

/// The blocks of its runs; of many runs only the first and the last move, or the file grows too large.
std::vector<RunBlock> run_blocks(const Page &page);

constexpr auto block_of(const Page *)
{
  using S = Page;
  return block<S>("Report", "A whole page.",
    field([](const Page &) { return 1; }, "format", "rises when an entry changes its name or meaning"),
    field(&S::kind, "kind"), field(&S::title, "title"),
    field(&S::label, "label", "short name, used for file names of saved pictures"),
    field(&S::origin, "origin"),
    field(&invented_of, "invented", "what of it is invented, \"\" for a stack and materials of somebody's own"),
    field(&S::sentence, "sentence", "the answer in one sentence"),
    field(&S::headline, "headline", "three numbers"),
    field(&S::story, "story", "plain paragraphs: what happened and why"),
    kept(&S::runs), field(&run_blocks, "runs"),
    field(&S::series, "series", "the runs are points of a series"),
    field(&S::comparison, "comparison", "one for every other run against the first; empty for one run"),
    field(&S::tables, "tables"), field(&S::lines, "lines"), field(&S::trial, "trial"),
    field(&S::lesson, "lesson"), field(&S::cautions, "cautions"), field(&S::record, "record"));
}
// clang-format on
} // namespace solemech::tools::report
