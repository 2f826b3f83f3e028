#include "core/checks/check_order.h"

#include <algorithm>

namespace jw {
namespace {

bool worse(const Check* a, const Check* b) {
  if (a->state != b->state) return rankOf(a->state) < rankOf(b->state);
  return a->margin < b->margin;  // NaN only among open ones: their order is kept
}

}  // namespace

int rankOf(CheckState state) {
  switch (state) {
    case CheckState::Short: return 0;
    case CheckState::Close: return 1;
    case CheckState::Open: return 2;
    case CheckState::Holds: break;
  }
  return 3;
}

std::vector<const Check*> worstFirst(const std::vector<Check>& checks) {
  std::vector<const Check*> order;
  for (const Check& check : checks) order.push_back(&check);
  std::stable_sort(order.begin(), order.end(), worse);
  return order;
}

}  // namespace jw
