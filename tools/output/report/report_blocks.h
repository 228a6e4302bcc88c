// SPDX-License-Identifier: Apache-2.0
// What a report page shows, as values: the C++ side of the contract in src/data.ts, entry by entry. Whoever
// makes a page (a run, a comparison, a trial, a lesson) fills a Page and hands it to report_html
// (report_page.h). Texts are plain text for people, numbers are in the unit beside them; every number must be
// finite.
#pragma once

#include "tools/output/results/run_record.h"
#include "tools/rigs/shown.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace solemech::tools::report
{
enum class PageKind { run, comparison, trial, lesson };
enum class Origin { model, measured };

/// One reading of every run of a series.
struct SeriesReading
{
  std::string         name;   ///< machine name
  std::string         label;  ///< for people
  std::string         unit;   ///< display unit
  std::vector<double> values; ///< one a run, in `unit`
  std::vector<double> errors =
    {}; ///< estimated, one a run; empty: not known. Not shown, but sentences heed it
};

/// A chart of readings over what a series varies.
struct ChartSeries
{
  std::string                quantity; ///< "drop energy"
  std::string                unit;     ///< "J"
  std::vector<double>        values;   ///< one a run
  std::vector<std::string>   groups;   ///< one a run: runs of one group are joined by a line
  std::vector<SeriesReading> readings;
  std::string                sentence;
};

/// A table of ready texts.
struct TableBlock
{
  std::string                           heading, sentence;
  std::vector<std::string>              columns;
  std::vector<std::vector<std::string>> rows;
};

/// One entry that differs between two runs.
struct Difference
{
  std::string what, from, to;
};

/// One reading of two runs; the verdict is a word or two ("higher", "cannot tell", "no difference").
struct ComparedReading
{
  std::string name, label, unit;
  int         digits = 0;                 ///< decimals to print
  double      from = 0, to = 0, band = 0; ///< in `unit`; the difference is good to +- band
  std::string verdict;
};

struct ChangeShare
{
  std::string change;              ///< "core -> pressurised unit"
  double      share = 0, band = 0; ///< in the unit of the table
  std::string verdict;
};

/// What several changes do together beyond what each does on its own.
struct Interaction
{
  std::vector<std::string> changes;
  double                   value = 0, band = 0;
};

/// How much of the difference of one reading each change makes; the shares add up to `total`.
struct ShareTable
{
  std::string              reading, label, unit;
  int                      digits = 0;
  double                   total = 0, band = 0;
  std::vector<ChangeShare> rows;
  std::vector<Interaction> interactions;
  std::string              sentence;
};

/// Energy turned into heat or kept by one part, in per cent of the drop energy.
struct ComparedPart
{
  std::string name;
  double      from = 0, to = 0;
};

/// Run `to` against run `from` (numbers of Page::runs).
struct Comparison
{
  std::size_t                  from = 0, to = 1;
  std::string                  sentence;
  std::vector<std::string>     sentences; ///< what each change does
  std::vector<Difference>      differences;
  std::vector<ComparedReading> readings;
  std::vector<ShareTable>      shares;
  std::vector<ComparedPart>    parts;
  std::vector<std::string>     impossible; ///< mixtures that could not be built or run, with the reason
  std::string                  runs;       ///< how many runs it took, in words
  std::string                  rule;       ///< how mixtures are closed, in words
};

enum class Verdict { better, worse, same, unknown, fact };

struct TrialRow
{
  std::string name, now, then, note;
  Verdict     verdict = Verdict::unknown;
};

/// What a change costs in room: stack height, heel-to-toe drop, counter depth.
struct GeometryCost
{
  std::string name, value, note;
};

/// A change before cutting a shoe: now, with the change, what to know.
struct Trial
{
  std::vector<std::string>   swaps;
  std::vector<TrialRow>      rows;
  std::vector<GeometryCost>  geometry;
  std::optional<ChartSeries> range;
  std::string                bottoms; ///< where it bottoms, in words
  std::vector<std::string>   cautions;
};

/// A teaching case: question, guess, answer.
struct Lesson
{
  std::string                question;
  std::vector<std::string>   choices;    ///< guesses to choose from before the answer is shown
  std::size_t                answer = 0; ///< index into choices
  std::vector<std::string>   explanation;
  std::optional<std::size_t> guess; ///< made at the terminal before the run
};

/// What the page was made from.
struct RecordFacts
{
  std::string                        program;
  std::map<std::string, std::string> versions;
  std::string                        hash, case_text, resolved_text;
};

/// A whole page. Runs are pointed to: their pictures are large, and they must outlive the page.
struct Page
{
  PageKind                     kind = PageKind::run;
  std::string                  title;
  std::string                  label; ///< short, for file names of saved pictures
  Origin                       origin = Origin::model;
  std::string                  sentence; ///< the answer in one sentence
  std::vector<rigs::Headline>  headline; ///< three
  std::vector<std::string>     story;    ///< plain paragraphs: what happened and why
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
} // namespace solemech::tools::report
