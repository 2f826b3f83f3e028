#include "core/studies/sensitivity.h"

#include <algorithm>
#include <cmath>

#include "core/checks/evaluation.h"
#include "core/studies/design_points.h"

namespace jw {
namespace {

constexpr double kStep = 1e-4;         // relative; second order: some 1e-8 of error
constexpr double kNoInfluence = 1e-7;  // rounding over the step stays below
constexpr double kCorner = 0.01;       // sides that differ by more, where smooth ones do by kStep

/// Margins of one change of an input, in the order of the base's checks.
using Margins = std::vector<double>;

Margins marginsLike(const std::vector<Check>& base, const DesignPoint& changed) {
  Margins margins;
  for (const Check& check : base) margins.push_back(changed.marginOf(check.id, check.stage));
  return margins;
}

struct Sides {
  Margins below2, below, above, above2;
};

class SlopeTrial {
 public:
  SlopeTrial(const Project& project, const StudyInput& input, const Evaluation& base,
             const StudyRun& run)
      : input_(input), base_(base), run_(run), changed_(project, input) {}

  Sides sides() {
    Sides sides{{}, at(-kStep), at(kStep), {}};
    if (sides.below.empty()) sides.above2 = at(2 * kStep);
    if (sides.above.empty()) sides.below2 = at(-2 * kStep);
    return sides;
  }

 private:
  /// Empty where the field does not allow the value.
  Margins at(double relative) {
    const double value = input_.changed(relative);
    if (!input_.info->range.contains(value) || run_.stop.stop_requested()) return {};
    return marginsLike(base_.checks, designPoint(evaluate(changed_.with(value), run_.stop)));
  }

  const StudyInput& input_;
  const Evaluation& base_;
  const StudyRun& run_;
  ChangedInput changed_;
};

double valueOf(const Margins& margins, std::size_t k) {
  return margins.empty() || !std::isfinite(margins[k]) ? kUnset : margins[k];
}

/// (4 f1 - f2 - 3 f0) / 2h, or the plain quotient without f2.
double oneSided(double at, double near, double far) {
  const double slope = isSet(far) ? (4 * near - far - 3 * at) / 2 : near - at;
  return slope / kStep;
}

InputSlope slopeOf(std::size_t input, std::size_t check, double at, const Sides& sides) {
  InputSlope slope{input, 0, kUnset, kUnset, false};
  slope.above = oneSided(at, valueOf(sides.above, check), valueOf(sides.above2, check));
  slope.below = -oneSided(at, valueOf(sides.below, check), valueOf(sides.below2, check));
  const bool up = isSet(slope.above), down = isSet(slope.below);
  slope.slope = up && down ? (slope.above + slope.below) / 2 : up ? slope.above : slope.below;
  if (!up && !down) slope.slope = 0;
  const double largest = std::max(std::abs(slope.above), std::abs(slope.below));
  slope.corner = up && down && std::abs(slope.above - slope.below) > kCorner * largest;
  return slope;
}

double strength(const InputSlope& slope) {
  const double sides = std::max(std::abs(slope.above), std::abs(slope.below));
  return slope.corner ? sides : std::abs(slope.slope);
}

MarginSlopes slopesOf(const Check& check, std::size_t at, const std::vector<Sides>& sides) {
  MarginSlopes slopes{check.id, check.stage, check.title, check.margin, {}};
  for (std::size_t i = 0; i < sides.size(); ++i) {
    const InputSlope slope = slopeOf(i, at, check.margin, sides[i]);
    if (strength(slope) > kNoInfluence * std::max(1.0, std::abs(1 + check.margin))) {
      slopes.inputs.push_back(slope);
    }
  }
  std::stable_sort(slopes.inputs.begin(), slopes.inputs.end(),
                   [](const auto& a, const auto& b) { return strength(a) > strength(b); });
  return slopes;
}

}  // namespace

const MarginSlopes* Sensitivities::of(std::string_view id, int stage) const {
  const auto found = std::find_if(checks.begin(), checks.end(), [&](const MarginSlopes& one) {
    return one.id == id && one.stage == stage;
  });
  return found == checks.end() ? nullptr : &*found;
}

Sensitivities sensitivities(const Project& project, const StudyRun& run) {
  Sensitivities result;
  result.inputs = studyInputs(project);
  std::erase_if(result.inputs, [](const StudyInput& input) { return input.isWhole(); });
  const Evaluation base = evaluate(project, run.stop);
  std::vector<Sides> sides(result.inputs.size());
  result.stopped = !forEachPoint(result.inputs.size(), run, [&](std::size_t k) {
    sides[k] = SlopeTrial(project, result.inputs[k], base, run).sides();
  }) || run.stop.stop_requested();
  if (result.stopped) return result;
  for (std::size_t k = 0; k < base.checks.size(); ++k) {
    const Check& check = base.checks[k];
    if (std::isfinite(check.margin)) result.checks.push_back(slopesOf(check, k, sides));
  }
  return result;
}

}  // namespace jw
