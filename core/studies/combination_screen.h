#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/studies/catalogue_search.h"
#include "core/studies/screening.h"

namespace jw {

/// What screening says of one reducer with every ratio and motor.
struct ReducerVerdicts {
  std::vector<Combination> survivors;
  std::map<std::string_view, std::size_t> rejected;  ///< by check
  std::size_t screened = 0;
};

/// The chain of one reducer at one ratio of the belt, ready to be asked about motors.
struct ScreenedChain {
  std::optional<ChainScreen> chain;  ///< empty: nothing can be said, all motors survive
  std::string_view rejected;         ///< not empty: short whatever the motor is
};

/// The screens of a whole search space. Where the belt is the first stage, the cycle's samples are
/// gone through once for each reducer; else once for each chain.
class CombinationScreen {
 public:
  /// Prepares every motor, on all cores. Both must outlive this.
  CombinationScreen(const Project& project, const SearchSpace& space, const StudyRun& run = {});

  /// All combinations of one reducer; stops between two ratios.
  ReducerVerdicts verdicts(std::uint32_t reducer, std::stop_token stop = {}) const;

  /// The chains of one reducer, one for each ratio of the belt.
  std::vector<ScreenedChain> chains(std::uint32_t reducer, std::stop_token stop = {}) const;

  const std::vector<MotorScreen>& motors() const { return motors_; }

 private:
  Project withReducer(std::uint32_t reducer) const;
  ScreenedChain closed(const Project& project) const;
  ScreenedChain open(const OpenChain& chain, std::size_t ratio) const;

  const Project& project_;
  const SearchSpace& space_;
  std::vector<MotorScreen> motors_;
  std::vector<std::optional<StageData>> belts_;  ///< completed at each ratio, if it is stage 0
};

}  // namespace jw
