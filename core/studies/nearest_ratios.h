#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <vector>

namespace jw {

/// Counts that make a ratio, before they are put into words.
struct RatioCandidate {
  double ratio = 0;
  double size = 0;
  int variant = 0;              ///< sets, or which part is held
  std::array<int, 9> counts{};  ///< as the family uses them
  double error = 0;             ///< set by NearestRatios
};

/// Keeps the nearest of many candidates.
class NearestRatios {
 public:
  NearestRatios(double wanted, double tolerance, std::size_t most);

  void add(RatioCandidate candidate);
  /// Whether a candidate of this ratio can still be among the nearest.
  bool mayTake(double ratio) const { return std::abs(ratio / wanted_ - 1) <= bound_; }
  /// Size of the error above which no candidate can be among the nearest any more.
  double bound() const { return bound_; }
  double wanted() const { return wanted_; }
  std::size_t most() const { return most_; }
  /// The nearest, best first.
  std::vector<RatioCandidate> sorted();

 private:
  void prune();
  double rank(const RatioCandidate& candidate) const;

  double wanted_;
  double tolerance_;
  std::size_t most_;
  double bound_;
  std::vector<RatioCandidate> kept_;
};

}  // namespace jw
