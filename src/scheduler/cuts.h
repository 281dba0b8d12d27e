// Activity of bound literals: which cut [x >= v] of which variable took part in recent conflicts.
// The search branches on the most active cut that is still open. (M. Moskewicz and others 2001,
// "Chaff", on bound literals as in A. Schutt, T. Feydt, P. Stuckey, M. Wallace 2011; from memory.)
#pragma once

#include <cstdint>
#include <vector>

namespace scheduler {

class CutOrder {
 public:
  /// [variable >= value], low < value <= high of the variable.
  struct Cut {
    int variable = -1;
    int value = 0;
  };

  /// Variables are numbered as they are added. Cuts of one that is not `decided` are never offered.
  void add_variable(int low, int high, bool decided);
  /// The cut took part in a conflict.
  void bump(int variable, int value);
  /// A conflict is over: what comes later counts a little more.
  void decay();

  bool empty() const { return heap_.empty(); }
  /// The most active cut; ties go to the lower index, so that a run repeats.
  Cut top() const { return cuts_[static_cast<std::size_t>(heap_[0])].cut; }
  /// Takes the most active one out and returns a name to put it back with.
  int pop();
  void put_back(int cut) {
    if (cuts_[static_cast<std::size_t>(cut)].place < 0) insert(cut);
  }

  /// Cuts of one variable; beyond, neighbouring values share one. Memory, not speed, is the reason.
  static constexpr std::int64_t kMostCuts = 4096;

 private:
  struct Entry {
    Cut cut;
    int place = -1;  // in the heap, -1 = outside
    std::uint64_t activity = 0;
  };
  struct Range {
    int first, low;  // index of the first cut, least value
    int shift;       // neighbouring values of wide variables share a cut: the one bumped last
    bool decided;
  };

  bool before(int a, int b) const;
  void insert(int cut);
  void up(int place);
  void down(int place);
  void rescale();

  std::vector<Range> ranges_;
  std::vector<Entry> cuts_;
  std::vector<int> heap_;
  std::uint64_t increment_ = 1024;
};

}  // namespace scheduler
