#include "core/studies/nearest_ratios.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace jw {

NearestRatios::NearestRatios(double wanted, double tolerance, std::size_t most)
    : wanted_(wanted),
      tolerance_(tolerance),
      most_(most),
      bound_(std::numeric_limits<double>::infinity()) {}

double NearestRatios::rank(const RatioCandidate& candidate) const {
  const double error = std::abs(candidate.error);
  return error <= tolerance_ ? 0 : error;
}

void NearestRatios::add(RatioCandidate candidate) {
  if (!mayTake(candidate.ratio)) return;
  candidate.error = candidate.ratio / wanted_ - 1;
  kept_.push_back(candidate);
  if (kept_.size() >= 8 * most_ + 64) prune();
}

void NearestRatios::prune() {
  constexpr double kSame = 1e-12;
  std::sort(kept_.begin(), kept_.end(), [](const auto& a, const auto& b) {
    if (a.variant != b.variant) return a.variant < b.variant;
    return a.ratio < b.ratio;
  });
  // Of a run of the same ratio the smallest is left.
  std::vector<RatioCandidate> distinct;
  for (const RatioCandidate& one : kept_) {
    const bool same = !distinct.empty() && distinct.back().variant == one.variant &&
                      one.ratio - distinct.back().ratio < kSame * one.ratio;
    if (!same) {
      distinct.push_back(one);
    } else if (one.size < distinct.back().size) {
      distinct.back() = one;
    }
  }
  std::sort(distinct.begin(), distinct.end(), [this](const auto& a, const auto& b) {
    const double rankA = rank(a), rankB = rank(b);
    return rankA != rankB ? rankA < rankB : a.size < b.size;
  });
  if (distinct.size() >= most_) {
    distinct.resize(most_);
    bound_ = std::max(tolerance_, rank(distinct.back()));
  }
  kept_ = std::move(distinct);
}

std::vector<RatioCandidate> NearestRatios::sorted() {
  prune();
  return kept_;
}

}  // namespace jw
