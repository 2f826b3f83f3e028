#include "widgets/cycle/moves_view.h"

#include <algorithm>
#include <cmath>

#include "core/motion/segment_input.h"
#include "core/studies/shown_samples.h"
#include "widgets/figures/finite.h"
#include "widgets/inputs/field_text.h"

namespace jw {
namespace {

constexpr double kSameSpeed = 1e-6;  // of the peak speed, as broken joins are told
constexpr double kSameAngle = 1e-6;  // [rad]

std::vector<ShownRun> runsOf(const SampledCycle& cycle) {
  std::vector<ShownRun> runs;
  for (std::size_t k = 0; k < cycle.runs.size(); ++k) {
    const Eigen::Index first = cycle.runs[k].first;
    const bool last = k + 1 == cycle.runs.size();
    const Eigen::Index end = last ? cycle.size() - 1 : cycle.runs[k + 1].first;
    // The next run's first sample is where this one ends, unless its angle jumps.
    const Eigen::Index final = last ? end : end - 1;
    runs.push_back({cycle.runs[k].segment, cycle.time[first], cycle.time[end], cycle.angle[first],
                    cycle.angle[final], false});
  }
  return runs;
}

bool isNamed(const SampledCycle& cycle, int segment) {
  const std::string path = segmentPath(static_cast<std::size_t>(segment));
  return std::any_of(cycle.warnings.begin(), cycle.warnings.end(),
                     [&](const InputError& warning) { return warning.where == path; });
}

/// Marks the joins that the evaluation has found broken.
void markBroken(const SampledCycle& cycle, MovesView& view) {
  const double peak = cycle.speed.abs().maxCoeff();
  for (std::size_t k = 0; k < view.runs.size(); ++k) {
    const Eigen::Index first = cycle.runs[k].first;
    const Eigen::Index before = first == 0 ? cycle.size() - 1 : first - 1;
    const bool speed = std::abs(cycle.speed[first] - cycle.speed[before]) > kSameSpeed * peak;
    const bool angle = first > 0 && std::abs(cycle.angle[first] - cycle.angle[before]) > kSameAngle;
    view.runs[k].broken = (speed || angle) && isNamed(cycle, view.runs[k].segment);
  }
  view.endBroken = std::abs(cycle.angle[cycle.size() - 1] - cycle.angle[0]) > kSameAngle &&
                   isNamed(cycle, view.runs.back().segment);
}

void addCurve(const Snapshot& snapshot, MovesView& view) {
  const SampledCycle& cycle = *snapshot.evaluation->cycle;
  view.runs = runsOf(cycle);
  view.time = plotValues(picked(cycle.time, snapshot.shownSamples()));
  view.angle = plotValues(picked(cycle.angle, snapshot.shownSamples()),
                          fromInternal(1, "deg", Quantity::Angle));
  view.period = cycle.period;
  markBroken(cycle, view);
  for (const InputError& warning : cycle.warnings) view.remarks.push_back(errorText(warning));
}

}  // namespace

const ShownRun* MovesView::firstRun(int segment) const {
  const auto found = std::find_if(runs.begin(), runs.end(),
                                  [&](const ShownRun& run) { return run.segment == segment; });
  return found == runs.end() ? nullptr : &*found;
}

MovesView movesView(const Snapshot& snapshot) {
  MovesView view;
  view.project = snapshot.project;
  view.stale = snapshot.stale;
  if (!snapshot.evaluation) return view;
  if (snapshot.evaluation->cycle) {
    addCurve(snapshot, view);
    return view;
  }
  for (const MissingInput& missing : snapshot.evaluation->missing) {
    if (missing.part == Part::Cycle && view.lacking.isEmpty()) view.lacking = errorText(missing);
  }
  return view;
}

}  // namespace jw
