// SPDX-License-Identifier: Apache-2.0
// A run is complete or not there: numbering, refusal to overwrite, interruption, checksums, a full disk.
#include "tests/unit/output/results/synthetic.h"
#include "tests/unit/output/results/temporary_folder.h"
#include "tools/language/checksum.h"
#include "tools/output/results/run_folder.h"
#include "tools/output/write_run.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <sys/resource.h>

#include <chrono>
#include <csignal>
#include <set>
#include <stdexcept>

using namespace solemech;
using namespace solemech::tools;
using Catch::Matchers::Contains;
namespace fs = std::filesystem;

namespace
{
const ManifestFacts facts{"heel-drop", "hash", {{"solemech", "0.1.0"}}};

/// With the files that every run has.
void fill(const RunFolder &folder, const std::string &text = "one\n")
{
  folder.write("summary.txt", text);
  for (const char *name : {"report.html", "data/results.h5", "data/resolved.txt"})
    folder.write(name, "x");
}

fs::path finished(const fs::path &root, const std::string &text = "one\n")
{
  auto folder = RunFolder::create(root, "heel-drop");
  fill(folder, text);
  folder.write("data/curves.csv", "time\n");
  return folder.commit(facts);
}
} // namespace

TEST_CASE("SHA-256 of the standard's examples")
{
  // FIPS 180-4 examples ("abc" and the empty message), as published by NIST.
  CHECK(sha256_of_text("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  CHECK(sha256_of_text("") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
  const tests::TemporaryFolder folder;
  tests::put(folder.path / "abc", "abc");
  CHECK(sha256_of_file(folder.path / "abc") == sha256_of_text("abc"));
  CHECK_THROWS_AS(sha256_of_file(folder.path / "none"), solver::ResultsError);
}

TEST_CASE("runs are numbered, whatever else lies there")
{
  const tests::TemporaryFolder root;
  CHECK(finished(root.path) == root.path / "heel-drop" / "1");
  CHECK(finished(root.path) == root.path / "heel-drop" / "2");
  fs::create_directories(root.path / "heel-drop" / "10");
  tests::put(root.path / "heel-drop" / "notes.txt", "mine");
  CHECK(finished(root.path) == root.path / "heel-drop" / "11");
}

TEST_CASE("names of folders are plain, and no two texts share one")
{
  CHECK(folder_name("heel-drop") == "heel-drop");
  CHECK(folder_name("energy-ladder-2J") == "energy-ladder-2J");
  std::set<std::string> names;
  const std::string     texts[] = {"../my pair/ü",
                                   "my heel",
                                   "my-heel",
                                   "myheel",
                                   "my  heel",
                                   "my heel ",
                                   "ü",
                                   "ß",
                                   "a[1]",
                                   "a(1)",
                                   "..",
                                   ".",
                                   "",
                                   ".hidden",
                                   "con",
                                   "NUL.txt",
                                   "com1",
                                   "lpt9",
                                   "x.",
                                   "-o",
                                   "a\nb",
                                   "a/b",
                                   std::string(300, 'x'),
                                   std::string(301, 'x'),
                                   "$(ls)"};
  for (const auto &text : texts)
  {
    const auto name = folder_name(text);
    INFO(text << " -> " << name);
    CHECK(names.insert(name).second);
    CHECK(name.size() <= 80);
    CHECK(name.find_first_not_of("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789._-") ==
          std::string::npos);
    CHECK(name.front() != '.');
    CHECK(folder_name(name) == name);
  }
  CHECK(sheet_folder_name("heel.toml") == "heel");
  names.clear();
  for (const auto *sheet : {"heel.toml", "a/heel.toml", "b/heel.toml", "../heel.toml", "heel.txt",
                            "trial-heel.toml", "heel-changed.toml"})
    CHECK(names.insert(sheet_folder_name(sheet)).second);
}

TEST_CASE("a file of a run stays in its folder")
{
  const tests::TemporaryFolder root;
  const auto                   folder = RunFolder::create(root.path, "heel-drop");
  for (const char *name : {"../x", "/tmp/x", "data/../../x", ".."})
    CHECK_THROWS_AS(folder.write(name, "x"), std::logic_error);
}

TEST_CASE("an unfinished folder is swept when nobody holds it, and only then")
{
  const tests::TemporaryFolder root;
  const auto                   held = RunFolder::create(root.path, "heel-drop");
  held.write("summary.txt", "at work");
  tests::put(root.path / "heel-drop" / ".unfinished-0123456789abcdef" / "summary.txt", "half");
  tests::put(root.path / "forefoot-drop" / ".unfinished-fedcba9876543210.lock", "");
  tests::put(root.path / "heel-drop" / ".1.unfinished-4242" / "summary.txt", "of an earlier version");
  finished(root.path);
  std::size_t n_hidden = 0;
  for (const auto &entry : fs::recursive_directory_iterator(root.path))
    n_hidden += entry.path().filename().string().starts_with(".unfinished");
  CHECK(n_hidden == 2); // the folder at work and its lock
  CHECK(fs::exists(root.path / "heel-drop" / ".1.unfinished-4242"));
  fs::last_write_time(root.path / "heel-drop" / ".1.unfinished-4242",
                      fs::file_time_type::clock::now() - std::chrono::hours(25));
  finished(root.path);
  CHECK_FALSE(fs::exists(root.path / "heel-drop" / ".1.unfinished-4242"));
}

TEST_CASE("a manifest that lacks a file of every run is none")
{
  const tests::TemporaryFolder root;
  auto                         folder = RunFolder::create(root.path, "heel-drop");
  folder.write("summary.txt", "one\n");
  folder.write("data/results.h5", "x");
  const auto run = folder.commit(facts);
  CHECK_FALSE(is_finished(run, "hash", "0.1.0"));
  CHECK_FALSE(run_origin(run));
  CHECK(run_origin(finished(root.path)));
}

TEST_CASE("two runs at once both find a number")
{
  const tests::TemporaryFolder root;
  auto                         first = RunFolder::create(root.path, "heel-drop");
  first.write("summary.txt", "first\n");
  // Another process finishes meanwhile under the number that was free.
  tests::put(root.path / "heel-drop" / "1" / "manifest.json", "{}");
  CHECK(first.commit(facts) == root.path / "heel-drop" / "2");
}

TEST_CASE("a finished run of the same inputs is found, another is not")
{
  const tests::TemporaryFolder root;
  CHECK_FALSE(find_finished(root.path, "heel-drop", "hash", "0.1.0"));
  finished(root.path);
  const auto second = finished(root.path);
  CHECK(find_finished(root.path, "heel-drop", "hash", "0.1.0") == second);
  CHECK_FALSE(find_finished(root.path, "heel-drop", "other", "0.1.0"));
  CHECK_FALSE(find_finished(root.path, "heel-drop", "hash", "0.2.0"));
  CHECK_FALSE(find_finished(root.path, "forefoot-drop", "hash", "0.1.0"));
}

TEST_CASE("a changed, missing or half-written file makes a run unfinished")
{
  const tests::TemporaryFolder root;
  const auto                   run = finished(root.path);
  CHECK(is_finished(run, "hash", "0.1.0"));
  tests::put(run / "summary.txt", "two\n");
  CHECK_FALSE(is_finished(run, "hash", "0.1.0"));
  tests::put(run / "summary.txt", "one\n");
  CHECK(is_finished(run, "hash", "0.1.0"));
  fs::remove(run / "data" / "curves.csv");
  CHECK_FALSE(is_finished(run, "hash", "0.1.0"));
  tests::put(run / "data" / "curves.csv", "time\n");
  const auto manifest = tests::text_of(run / "manifest.json");
  CHECK(nlohmann::json::parse(manifest).at("files").at("summary.txt") == sha256_of_text("one\n"));
  for (const std::string &damaged : {manifest.substr(0, manifest.size() / 2), std::string("{}"),
                                     std::string("[1]"), std::string("{\"program\": 3}")})
  {
    tests::put(run / "manifest.json", damaged);
    CHECK_FALSE(is_finished(run, "hash", "0.1.0"));
  }
}

TEST_CASE("an interrupted run leaves nothing that looks complete")
{
  const tests::TemporaryFolder root;
  SECTION("stopped by an exception: nothing stays")
  {
    {
      const auto folder = RunFolder::create(root.path, "heel-drop");
      folder.write("summary.txt", "half");
    }
    CHECK(fs::is_empty(root.path / "heel-drop"));
  }
  SECTION("killed: the hidden folder has no manifest and no number")
  {
    tests::put(root.path / "heel-drop" / ".1.unfinished-4242" / "summary.txt", "half");
    CHECK_FALSE(find_finished(root.path, "heel-drop", "hash", "0.1.0"));
    CHECK(finished(root.path) == root.path / "heel-drop" / "1");
  }
}

TEST_CASE("a named folder must be new or empty")
{
  const tests::TemporaryFolder root;
  const auto                   target = root.path / "out";
  SECTION("new, also deep down")
  {
    auto folder = RunFolder::create_at(target / "a" / "b/");
    fill(folder);
    CHECK(folder.commit(facts) == target / "a" / "b");
    CHECK(is_finished(target / "a" / "b", "hash", "0.1.0"));
  }
  SECTION("empty")
  {
    fs::create_directories(target);
    auto folder = RunFolder::create_at(target);
    folder.write("summary.txt", "x");
    CHECK(folder.commit(facts) == target);
  }
  SECTION("holding something else: refused, untouched")
  {
    tests::put(target / "holiday.txt", "mine");
    CHECK_THROWS_WITH(
      RunFolder::create_at(target),
      "the folder " + target.string() +
        " holds something else; nothing was written there. Choose a new or an empty folder with "
        "-o FOLDER");
    CHECK(tests::text_of(target / "holiday.txt") == "mine");
    CHECK(std::distance(fs::directory_iterator(root.path), {}) == 1);
  }
  SECTION("holding a finished run: refused")
  {
    auto folder = RunFolder::create_at(target);
    folder.write("summary.txt", "x");
    folder.commit(facts);
    CHECK_THROWS_WITH(RunFolder::create_at(target),
                      Contains("holds another finished run; nothing was overwritten"));
  }
  SECTION("a file in its place")
  {
    tests::put(target, "a file");
    CHECK_THROWS_WITH(RunFolder::create_at(target), Contains("is a file, not a folder"));
    CHECK_THROWS_WITH(RunFolder::create_at(target / "inner"), Contains("cannot") && Contains("-o FOLDER"));
    CHECK_THROWS_WITH(RunFolder::create(target, "heel-drop"), Contains("-o FOLDER"));
  }
}

TEST_CASE("a folder in which nothing can be made is reported with the reason")
{
  // The kernel's process folder accepts no new entries, not even from root.
  CHECK_THROWS_WITH(RunFolder::create("/proc", "heel-drop"),
                    Contains("cannot make the folder /proc/heel-drop"));
}

TEST_CASE("a full disk ends in a message and leaves nothing behind")
{
  const tests::TemporaryFolder root;
  const auto                   before = std::signal(SIGXFSZ, SIG_IGN);
  rlimit                       old;
  getrlimit(RLIMIT_FSIZE, &old);
  rlimit tight = old;
  tight.rlim_cur = 20000; // bytes a file may grow to: stands for a disk that fills up
  setrlimit(RLIMIT_FSIZE, &tight);
  std::string said;
  try
  {
    auto folder = RunFolder::create(root.path, "heel-drop");
    write_run(folder, tests::record_of({tests::synthetic_heel()}));
  }
  catch (const solver::ResultsError &error)
  {
    said = error.what();
  }
  setrlimit(RLIMIT_FSIZE, &old);
  std::signal(SIGXFSZ, before);
  CHECK_THAT(said, Contains("results.h5"));
  CHECK(fs::is_empty(root.path / "heel-drop"));
}

TEST_CASE("a written run has its layout, and the manifest names every file")
{
  const tests::TemporaryFolder root;
  const auto                   record = tests::record_of({tests::synthetic_heel()}, "heel-drop");
  auto                         folder = RunFolder::create(root.path, record.label);
  write_run(folder, record);
  const auto run = folder.commit({record.label, record.hash, record.versions});
  for (const char *name :
       {"summary.txt", "data/results.h5", "data/curves.csv", "data/ledger.csv", "data/readings.csv",
        "data/case.toml", "data/resolved.txt", "data/pictures.gp", "paraview/stack.pvd",
        "paraview/stack_0000.vtu", "paraview/view.py", "manifest.json"})
  {
    INFO(name);
    CHECK(fs::is_regular_file(run / name));
  }
  CHECK(tests::text_of(run / "data" / "case.toml") == record.case_text);
  CHECK(is_finished(run, record.hash, "0.1.0"));
  const auto  manifest = nlohmann::json::parse(tests::text_of(run / "manifest.json"));
  std::size_t n_files = 0;
  for (const auto &entry : fs::recursive_directory_iterator(run))
    n_files += entry.is_regular_file();
  CHECK(manifest.at("files").size() + 1 == n_files);
  // Nothing in the folder knows where it lies or who made it.
  CHECK_THAT(tests::text_of(run / "manifest.json"), !Contains(root.path.string()));
  CHECK_THAT(tests::text_of(run / "data" / "pictures.gp"), !Contains(root.path.string()));
}
