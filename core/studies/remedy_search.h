#pragma once

#include <optional>
#include <stop_token>
#include <vector>

#include "core/checks/evaluation.h"
#include "core/studies/change_scan.h"
#include "core/studies/remedies.h"

namespace jw {

/// What every search for a remedy starts from.
struct RemedyCase {
  const Project& project;
  const Evaluation& base;
  const DesignPoint& basePoint;
  const std::vector<WantedMargin>& wanted;
  double target = 0;
  std::stop_token stop;
};

/// What one input or part can do for one of the wanted margins; both empty if it does not move it.
struct RemedyFinding {
  std::optional<Remedy> remedy;
  std::optional<NoRemedy> none;
};

/// One finding for each wanted margin, likewise of the two below.
std::vector<RemedyFinding> changeField(const RemedyCase& about, const StudyInput& input);

/// The nearest ratio that can be built, of a stage whose ratio follows from its parts.
std::vector<RemedyFinding> changeParts(const RemedyCase& about, int stage);

/// Whether changeParts has something to change.
bool hasParts(const Project& project, int stage);

/// Motors of a list that are tried, nearest in size first: a second's work at 1,000 samples.
inline constexpr std::size_t kMostMotorsTried = 512;

/// The nearest motor of a list.
std::vector<RemedyFinding> changeMotor(const RemedyCase& about,
                                       const std::vector<MotorEntry>& motors, const StudyRun& run);

/// Fills in margin and moved verdicts from a full evaluation of `changed`; nothing if the wanted
/// margin is not reached.
std::optional<Remedy> judgedRemedy(const RemedyCase& about, const WantedMargin& wanted,
                                   const Project& changed, Remedy draft);

}  // namespace jw
