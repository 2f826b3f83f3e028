#include "core/studies/combination_screen.h"

#include "core/studies/coarse_cycle.h"
#include "core/studies/ratio_sweep.h"

namespace jw {
namespace {

/// The belt as stage 0 at each of its ratios; empty where that cannot be.
std::vector<std::optional<StageData>> beltsOf(const Project& project, const SearchSpace& space) {
  std::vector<std::optional<StageData>> belts;
  if (space.beltStage != 0) return belts;
  for (const double ratio : space.beltRatios) {
    const Project changed = withStageRatio(project, 0, ratio);
    const auto data = completeStage(changed.active().transmission.front(),
                                    project.requirements.ambient, "transmission[0]");
    belts.push_back(data ? std::optional(*data) : std::nullopt);
  }
  return belts;
}

bool hasChain(const Evaluation& e) { return e.cycle && e.load && e.stages && e.chain; }

}  // namespace

CombinationScreen::CombinationScreen(const Project& project, const SearchSpace& space,
                                     const StudyRun& run)
    : project_(project), space_(space), motors_(space.motors.size()) {
  const Project coarse = withCoarseCycle(project, 8);
  const StudyRun quiet{run.stop, {}, run.threads};
  forEachPoint(space.motors.size(), quiet, [&](std::size_t k) {
    Project changed = coarse;
    changed.active().motor = fittedMotor(space.motors[k], project.active().motor);
    motors_[k] = motorScreen(changed, evaluate(changed));
  });
  belts_ = beltsOf(project, space);
}

Project CombinationScreen::withReducer(std::uint32_t reducer) const {
  Project changed = project_;
  changed.active().transmission[static_cast<std::size_t>(space_.reducerStage)] =
      space_.reducers[reducer];
  return changed;
}

ScreenedChain CombinationScreen::closed(const Project& project) const {
  const Evaluation evaluation = evaluate(project);
  if (!hasChain(evaluation)) return {};
  return {closedChain(evaluation), chainRejectedBy(evaluation, -1)};
}

ScreenedChain CombinationScreen::open(const OpenChain& chain, std::size_t ratio) const {
  const auto& belt = belts_[ratio];
  if (!belt) return {};
  ScreenedChain screened{chain.atRatio(*belt), {}};
  const double most = belt->stage.peakSpeed * (1 + 1e-9);
  if (screened.chain->speedPeak > most) screened.rejected = "drive.speed_peak";
  return screened;
}

std::vector<ScreenedChain> CombinationScreen::chains(std::uint32_t reducer,
                                                     std::stop_token stop) const {
  const Project project = withReducer(reducer);
  if (space_.beltStage < 0) return {closed(project)};
  std::vector<ScreenedChain> all(space_.beltRatios.size());
  if (space_.beltStage > 0) {
    for (std::size_t k = 0; k < all.size() && !stop.stop_requested(); ++k) {
      all[k] = closed(withStageRatio(project, space_.beltStage, space_.beltRatios[k]));
    }
    return all;
  }
  const Evaluation evaluation = evaluate(withStageRatio(project, 0, space_.beltRatios.front()));
  if (!hasChain(evaluation) || evaluation.stages->front().creepAtSlip > 0) return all;
  const std::string_view rejected = chainRejectedBy(evaluation, 0);
  const OpenChain chain(evaluation);
  for (std::size_t k = 0; k < all.size(); ++k) {
    all[k] = open(chain, k);
    if (!rejected.empty()) all[k].rejected = rejected;
  }
  return all;
}

ReducerVerdicts CombinationScreen::verdicts(std::uint32_t reducer, std::stop_token stop) const {
  ReducerVerdicts verdicts;
  std::array<std::size_t, kRejections> counts{};
  const std::vector<ScreenedChain> all = chains(reducer, stop);
  for (std::uint32_t ratio = 0; ratio < all.size() && !stop.stop_requested(); ++ratio) {
    const ScreenedChain& chain = all[ratio];
    verdicts.screened += motors_.size();
    if (!chain.rejected.empty()) {
      verdicts.rejected[chain.rejected] += motors_.size();
      continue;
    }
    for (std::uint32_t motor = 0; motor < motors_.size(); ++motor) {
      const Rejection why =
          chain.chain ? rejectedBy(*chain.chain, motors_[motor]) : Rejection::None;
      ++counts[static_cast<std::size_t>(why)];
      if (why == Rejection::None) verdicts.survivors.push_back({motor, reducer, ratio});
    }
  }
  for (std::size_t k = 1; k < kRejections; ++k) {
    if (counts[k] > 0) verdicts.rejected[checkOf(static_cast<Rejection>(k))] += counts[k];
  }
  return verdicts;
}

}  // namespace jw
