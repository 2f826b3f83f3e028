#include "core/studies/pareto_front.h"

#include <algorithm>
#include <limits>
#include <stdexcept>

#include "core/model/unset.h"

namespace jw {

std::vector<std::size_t> paretoFront(const ParetoAxis& first, const ParetoAxis& second) {
  if (first.value.size() != second.value.size()) {
    throw std::logic_error("paretoFront: the figures have different sizes");
  }
  const auto x = [&](std::size_t k) {
    return first.moreIsBetter ? -first.value[k] : first.value[k];
  };
  const auto y = [&](std::size_t k) {
    return second.moreIsBetter ? -second.value[k] : second.value[k];
  };
  std::vector<std::size_t> order;
  for (std::size_t k = 0; k < first.value.size(); ++k) {
    if (isSet(first.value[k]) && isSet(second.value[k])) order.push_back(k);
  }
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return x(a) != x(b) ? x(a) < x(b) : y(a) < y(b);
  });
  std::vector<std::size_t> front;
  double least = std::numeric_limits<double>::infinity();
  for (const std::size_t k : order) {
    const bool same = !front.empty() && x(k) == x(front.back()) && y(k) == y(front.back());
    if (!(y(k) < least) && !same && !front.empty()) continue;
    front.push_back(k);
    least = std::min(least, y(k));
  }
  return front;
}

}  // namespace jw
