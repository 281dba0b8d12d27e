#include "rcpsp_options.h"

#include <charconv>
#include <cmath>

namespace projects {

const char* const
    kHelp = R"(rcpsp: solves project scheduling instances and writes what was proved and found

  rcpsp FILE... [--seconds S] [--threads N] [--seed K] [--csv OUT] [--schedule DIR]
                [--known TABLE --set NAME] [--proof OUT]

FILE           .sm (PSPLIB, single mode), .sch or .SCH (ProGen/max, minimum and maximum
               lags), .rcp (either ProGen/max or the short form)
--seconds S    wall clock an instance, 10 unless told
--threads N    2: one thread looks for schedules, another for bounds; they tell each other
               what they find. More than 2 are not used. 1 unless told
--seed K       1 unless told
--csv OUT      the table goes to this file, line by line; otherwise to standard output
--schedule DIR writes DIR/INSTANCE.csv for each instance with a schedule: a line "job,start",
               then a line a job, numbered as in the file (from 1 in .sm, from 0 in ProGen/max)
--proof OUT    writes the proof of the lower bound, for proof_checker to judge
               (docs/methods/proof.md); one instance and one thread
--known TABLE  best known values (set,instance,lb,ub,proved,...), of the set --set NAME:
               counts at the end, and every answer that contradicts the table

Columns: instance,lower,upper,proved,first_upper,first_seconds,best_seconds,seconds
  instance      file name without folder
  lower, upper  bounds on the makespan, the start of the last dummy job; upper and the three
                figures about schedules are empty while none is known, and lower and upper
                when there is none
  proved        optimal, infeasible or no
  first_upper   makespan of the first schedule, found after first_seconds; the best one after
                best_seconds; seconds: all of it

Every schedule is checked against the file by a check that shares nothing with the engine.
Exit: 0 all files were read; 2 wrong arguments or a file that cannot be read, of which
nothing was solved; 3 a schedule broke a rule, or an answer contradicts the table.

Examples:
  rcpsp j30/j301_1.sm
  rcpsp j60/*.sm --seconds 10 --csv j60.csv --known best_known.csv --set j60
  rcpsp ubo200/psp1.sch --seconds 60 --threads 2 --seed 7 --schedule starts
)";

namespace {

class Words {
 public:
  explicit Words(const std::vector<std::string>& words) : words_(words) {}

  bool more() const { return next_ < words_.size(); }
  const std::string& take() { return words_[next_++]; }

  const std::string& value(const std::string& option) {
    if (!more()) throw UsageError(option + " needs a value");
    return take();
  }

  template <class T>
  T number(const std::string& option, T low, T high) {
    const std::string& word = value(option);
    T result{};
    const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), result);
    if (error != std::errc() || end != word.data() + word.size() || !(result >= low) ||
        !(result <= high))
      throw UsageError(option + ": \"" + word + "\" is not a number in its range");
    return result;
  }

 private:
  const std::vector<std::string>& words_;
  std::size_t next_ = 0;
};

}  // namespace

Arguments read_arguments(const std::vector<std::string>& words) {
  Arguments result;
  Words in(words);
  while (in.more()) {
    const std::string word = in.take();
    if (word == "--help" || word == "-h")
      result.help = true;
    else if (word == "--seconds")
      result.seconds = in.number<double>(word, 0.001, 1e6);
    else if (word == "--threads")
      result.threads = in.number<int>(word, 1, 64);
    else if (word == "--seed")
      result.seed = in.number<std::uint64_t>(word, 0, UINT64_MAX);
    else if (word == "--csv")
      result.csv = in.value(word);
    else if (word == "--proof")
      result.proof = in.value(word);
    else if (word == "--schedule")
      result.schedule = in.value(word);
    else if (word == "--known")
      result.known = in.value(word);
    else if (word == "--set")
      result.set = in.value(word);
    else if (word.size() > 1 && word.front() == '-')
      throw UsageError("unknown option " + word);
    else
      result.files.emplace_back(word);
  }
  if (result.help || words.empty()) return result;
  if (result.files.empty()) throw UsageError("no instance file given");
  if (result.known.empty() != result.set.empty()) throw UsageError("--known and --set go together");
  if (!result.proof.empty() && (result.files.size() != 1 || result.threads != 1))
    throw UsageError("--proof goes with one instance and one thread");
  return result;
}

}  // namespace projects
