#include "scheduler/cuts.h"

#include <algorithm>

#include "base/index.h"

namespace scheduler {
namespace {

using base::at;

constexpr std::uint64_t kRescaleAbove = std::uint64_t{1} << 50;

}  // namespace

void CutOrder::add_variable(int low, int high, bool decided) {
  Range range{static_cast<int>(cuts_.size()), low + 1, 0, decided};
  const std::int64_t width = std::max<std::int64_t>(std::int64_t{high} - low, 1);
  while ((width >> range.shift) > kMostCuts) ++range.shift;
  ranges_.push_back(range);
  if (!decided) return;
  const int variable = static_cast<int>(ranges_.size()) - 1;
  cuts_.resize(cuts_.size() + static_cast<std::size_t>(((width - 1) >> range.shift) + 1));
  for (std::size_t i = at(range.first); i < cuts_.size(); ++i) cuts_[i].cut.variable = variable;
}

void CutOrder::bump(int variable, int value) {
  const Range& range = ranges_[at(variable)];
  if (!range.decided) return;
  const int index = range.first + ((value - range.low) >> range.shift);
  Entry& entry = cuts_[at(index)];
  const bool fresh = entry.activity == 0 || entry.cut.value != value;
  entry.cut.value = value;
  entry.activity += increment_;
  if (entry.place >= 0) {
    up(entry.place);
  } else if (fresh) {
    insert(index);
  }
}

// Whole numbers keep the search the same under every compiler. Shifting all of them keeps the order
// up to ties, which are broken by index, so the heap is built anew.
void CutOrder::rescale() {
  for (Entry& entry : cuts_) entry.activity >>= 30;
  increment_ = std::max<std::uint64_t>(increment_ >> 30, 1024);
  const std::vector<int> members = heap_;
  heap_.clear();
  for (const int member : members) cuts_[at(member)].place = -1;
  for (const int member : members) insert(member);
}

void CutOrder::decay() {
  increment_ += increment_ / 16;
  if (increment_ > kRescaleAbove) rescale();
}

bool CutOrder::before(int a, int b) const {
  const Entry &x = cuts_[at(a)], &y = cuts_[at(b)];
  if (x.activity != y.activity) return x.activity > y.activity;
  return a < b;
}

void CutOrder::insert(int cut) {
  heap_.push_back(cut);
  up(static_cast<int>(heap_.size()) - 1);
}

int CutOrder::pop() {
  const int best = heap_[0];
  cuts_[at(best)].place = -1;
  const int last = heap_.back();
  heap_.pop_back();
  if (!heap_.empty()) {
    heap_[0] = last;
    down(0);
  }
  return best;
}

void CutOrder::up(int place) {
  const int cut = heap_[at(place)];
  while (place > 0) {
    const int parent = (place - 1) / 2;
    if (!before(cut, heap_[at(parent)])) break;
    heap_[at(place)] = heap_[at(parent)];
    cuts_[at(heap_[at(place)])].place = place;
    place = parent;
  }
  heap_[at(place)] = cut;
  cuts_[at(cut)].place = place;
}

void CutOrder::down(int place) {
  const int cut = heap_[at(place)];
  const int size = static_cast<int>(heap_.size());
  for (int child = 2 * place + 1; child < size; child = 2 * place + 1) {
    if (child + 1 < size && before(heap_[at(child + 1)], heap_[at(child)])) ++child;
    if (!before(heap_[at(child)], cut)) break;
    heap_[at(place)] = heap_[at(child)];
    cuts_[at(heap_[at(place)])].place = place;
    place = child;
  }
  heap_[at(place)] = cut;
  cuts_[at(cut)].place = place;
}

}  // namespace scheduler
