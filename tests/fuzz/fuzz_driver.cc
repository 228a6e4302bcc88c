// SPDX-License-Identifier: Apache-2.0
// Runs a fuzz target without libFuzzer: first every seed as it is, then seeds with random bytes flipped,
// inserted, removed, spliced and repeated, for a number of seconds. The input at work is kept in a file, so
// that a crash leaves it behind.
//
//     fuzz_case_reader FOLDER SECONDS [RANDOM_SEED]
//     fuzz_case_reader FILE                          (one input again)
#include <algorithm>
#include <chrono>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>
#include <string>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size);

namespace
{
std::string read_file(const std::filesystem::path &path)
{
  std::ifstream      stream(path, std::ios::binary);
  std::ostringstream text;
  text << stream.rdbuf();
  return text.str();
}

void try_input(const std::string &text)
{
  LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t *>(text.data()), text.size());
}

class Mutator
{
public:
  Mutator(std::vector<std::string> seeds, unsigned int random_seed)
    : seeds_(std::move(seeds)), random_(random_seed)
  {
  }

  std::string next()
  {
    std::string text = seeds_[below(seeds_.size())];
    for (std::size_t n = 1 + below(6); n > 0; --n)
      mutate(text);
    return text;
  }

private:
  std::size_t below(std::size_t limit) { return limit == 0 ? 0 : random_() % limit; }

  void mutate(std::string &text)
  {
    // Pieces that stress units, TOML syntax and UTF-8.
    static const std::vector<std::string> pieces = {"\"",
                                                    "'",
                                                    "\"\"\"",
                                                    "=",
                                                    "[",
                                                    "]",
                                                    "[[",
                                                    "]]",
                                                    "{",
                                                    "}",
                                                    ",",
                                                    ".",
                                                    "\\",
                                                    "\n",
                                                    "\r\n",
                                                    "#",
                                                    "nan",
                                                    "inf",
                                                    "-",
                                                    "1e999",
                                                    "1,5",
                                                    "0x",
                                                    "12 mm",
                                                    "\"12 mm\"",
                                                    "\"-1 kPa\"",
                                                    "“",
                                                    "”",
                                                    "\xc2\xa0",
                                                    "\xc2",
                                                    "\xff",
                                                    "\xef\xb7\xbd",
                                                    std::string(1, '\0'),
                                                    "\t",
                                                    "[[layer]]\n",
                                                    "[layer.unit]\n",
                                                    "[change]\n",
                                                    "[[series]]\n",
                                                    "stack = \"pair-07-heel\"\n",
                                                    "é",
                                                    "1979-05-27",
                                                    "true",
                                                    "0.0000001",
                                                    "99999999999999999999",
                                                    "\\u001b",
                                                    "\\U00110000",
                                                    "format = 1\n",
                                                    "from = ",
                                                    "9223372036854775807"};
    const auto                            at = below(text.size() + 1);
    switch (below(200) == 0 ? 7 : below(7))
    {
    case 0:
      if (at < text.size())
        text[at] = static_cast<char>(random_());
      break;
    case 1:
      text.insert(at, pieces[below(pieces.size())]);
      break;
    case 2:
      text.erase(at, 1 + below(12));
      break;
    case 3:
      if (at < text.size())
        text.replace(at, 1 + below(6), pieces[below(pieces.size())]);
      break;
    case 4: // a run of another seed
    {
      const auto &other = seeds_[below(seeds_.size())];
      text.insert(at, other.substr(below(other.size()), 1 + below(200)));
      break;
    }
    case 5:
      text.insert(at, text.substr(below(text.size() + 1), 1 + below(60)));
      break;
    case 7: // a piece over and over: nesting, long keys, long lines
    {
      const auto &piece = pieces[below(pieces.size())];
      const auto  before = text.substr(at < 3 ? 0 : at - 3, below(4));
      std::string many;
      for (std::size_t n = 1 + below(60000); n > 0; --n)
        many += before + piece;
      text.insert(at, many);
      break;
    }
    default:
      text.resize(at);
    }
  }

  std::vector<std::string> seeds_;
  std::mt19937             random_;
};
} // namespace

int main(int argc, char **argv)
{
  if (argc < 2)
  {
    std::fprintf(stderr, "fuzz_case_reader FOLDER SECONDS [RANDOM_SEED], or fuzz_case_reader FILE\n");
    return 2;
  }
  if (std::filesystem::is_regular_file(argv[1]))
  {
    try_input(read_file(argv[1]));
    return 0;
  }
  std::vector<std::filesystem::path> files;
  for (const auto &entry : std::filesystem::recursive_directory_iterator(argv[1]))
    if (entry.is_regular_file())
      files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  std::vector<std::string> seeds;
  for (const auto &file : files)
  {
    seeds.push_back(read_file(file));
    try_input(seeds.back());
  }
  if (seeds.empty())
    return 2;
  const double seconds = argc > 2 ? std::atof(argv[2]) : 10;
  Mutator      mutator(seeds, argc > 3 ? static_cast<unsigned int>(std::atoi(argv[3])) : 1);
  const auto   begin = std::chrono::steady_clock::now();
  const auto   last = std::filesystem::temp_directory_path() / "fuzz_case_reader.last";
  long         n = 0;
  for (; std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count() < seconds; ++n)
  {
    const auto input = mutator.next();
    std::ofstream(last, std::ios::binary) << input;
    try_input(input);
  }
  std::printf("%ld inputs from %zu seeds in %.0f s\n", n, seeds.size(), seconds);
  return 0;
}
