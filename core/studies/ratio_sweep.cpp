#include "core/studies/ratio_sweep.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <fmt/format.h>

#include "core/studies/coarse_cycle.h"
#include "core/studies/ratio_marks.h"

namespace jw {
namespace {

/// The sweep at work: from a ratio on the axis to a project.
struct Sweeper {
  Project project;
  int stage = -1;
  double others = 1;  ///< axis ratio over the stage's ratio

  Project at(double ratio) const { return withStageRatio(project, stage, ratio / others); }
};

tl::expected<std::vector<StageData>, InputError> completed(const Project& project) {
  return completeStages(project.active().transmission, project.requirements.ambient);
}

tl::expected<Sweeper, InputError> sweeperFor(const Project& project,
                                             const RatioSweepRequest& request) {
  const auto leading = request.stage < 0 ? leadingStage(project) : request.stage;
  if (!leading) return tl::unexpected(leading.error());
  const int stages = static_cast<int>(project.active().transmission.size());
  if (*leading >= stages) {
    return tl::unexpected(InputError{
        fmt::format("there is no stage {}", *leading + 1),
        fmt::format("transmission[{}].ratio", *leading),
        stages == 0 ? "add a stage first" : fmt::format("name one from 0 to {}", stages - 1)});
  }
  const auto data = completed(project);
  if (!data) return tl::unexpected(data.error());
  Sweeper sweeper{request.preview ? withCoarseCycle(project) : project, *leading, 1};
  if (request.stage >= 0) return sweeper;
  for (int k = 0; k < stages; ++k) {
    if (k != *leading) sweeper.others *= (*data)[static_cast<std::size_t>(k)].stage.ratio;
  }
  return sweeper;
}

std::optional<InputError> badRatios(const std::vector<double>& ratios) {
  const auto refuse = [](const char* what) {
    return InputError{what, "ratios", "give ratios above 0 that rise, e.g. 40..160:1"};
  };
  if (ratios.size() < 2) return refuse("a sweep needs two ratios at least");
  if (!(ratios.front() > 0) || !std::isfinite(ratios.back()))
    return refuse("a ratio is not above 0");
  if (std::adjacent_find(ratios.begin(), ratios.end(), std::greater_equal<>()) != ratios.end()) {
    return refuse("the ratios do not rise");
  }
  return std::nullopt;
}

std::string titleIn(const std::vector<MarginColumn>& columns, const PointMargin& check) {
  for (const MarginColumn& column : columns) {
    if (check.is(column.id, column.stage)) return column.title;
  }
  return std::string(check.id);
}

/// Between a ratio that holds and its neighbour that does not.
BandEnd bandEnd(const Sweeper& sweeper, const StudyRun& run, const RatioSweep& sweep,
                std::size_t good, std::size_t bad) {
  double inside = sweep.ratio[good];
  double outside = sweep.ratio[bad];
  DesignPoint beyond = sweep.points[bad];
  while (std::abs(outside - inside) > 1e-4 * inside && !run.stop.stop_requested()) {
    const double middle = (inside + outside) / 2;
    DesignPoint point = designPoint(evaluate(sweeper.at(middle)));
    noteOpenCheck(point, sweep.points[good]);
    if (point.holds()) {
      inside = middle;
    } else {
      outside = middle;
      beyond = std::move(point);
    }
  }
  BandEnd end{inside, {}, -1, {}, false};
  end.open = beyond.openAt >= 0 && !(beyond.worst < 0);
  const int at = end.open ? beyond.openAt : beyond.worstAt;
  if (at < 0) return end;
  const PointMargin& limit = beyond.margins[static_cast<std::size_t>(at)];
  end.check = limit.id;
  end.stage = limit.stage;
  end.title = titleIn(sweep.checks, limit);
  return end;
}

void findBands(const Sweeper& sweeper, const StudyRun& run, RatioSweep& sweep) {
  const std::size_t n = sweep.points.size();
  for (std::size_t k = 0; k < n && !run.stop.stop_requested(); ++k) {
    if (!sweep.points[k].holds()) continue;
    std::size_t last = k;
    while (last + 1 < n && sweep.points[last + 1].holds()) ++last;
    FeasibleBand band{{sweep.ratio[k], {}, -1, {}, false}, {sweep.ratio[last], {}, -1, {}, false}};
    if (k > 0) band.low = bandEnd(sweeper, run, sweep, k, k - 1);
    if (last + 1 < n) band.high = bandEnd(sweeper, run, sweep, last, last + 1);
    sweep.bands.push_back(std::move(band));
    k = last;
  }
}

void findTicks(const Sweeper& sweeper, RatioSweep& sweep) {
  const Stage& stage = sweeper.project.active().transmission[static_cast<std::size_t>(sweep.stage)];
  sweep.realizable = realizableTicks(stage.family, sweep.ratio.front() / sweeper.others,
                                     sweep.ratio.back() / sweeper.others, SizeLimits{});
  for (double& ratio : sweep.realizable) ratio *= sweeper.others;
}

}  // namespace

Project withStageRatio(const Project& project, int stage, double ratio) {
  Project changed = project;
  auto& transmission = changed.active().transmission;
  if (stage < 0 || stage >= static_cast<int>(transmission.size())) {
    throw std::logic_error("withStageRatio: no such stage");
  }
  Stage& one = transmission[static_cast<std::size_t>(stage)];
  if (!isSet(one.ratio)) {
    const auto data = completeStage(one, project.requirements.ambient, "");
    if (data) one.reverses = data->stage.reverses;
  }
  one.ratio = ratio;
  one.asWritten.typed.erase("ratio");
  one.asWritten.from.change("ratio");
  return changed;
}

tl::expected<int, InputError> leadingStage(const Project& project) {
  const auto data = completed(project);
  if (!data) return tl::unexpected(data.error());
  int leading = -1;
  for (std::size_t k = 0; k < data->size(); ++k) {
    if ((*data)[k].stage.family == StageFamily::Coupling) continue;
    const bool larger = leading < 0 || (*data)[k].stage.ratio >
                                           (*data)[static_cast<std::size_t>(leading)].stage.ratio;
    if (larger) leading = static_cast<int>(k);
  }
  if (leading >= 0) return leading;
  return tl::unexpected(InputError{"there is no stage with a ratio", "transmission",
                                   "add a reducer or a belt to sweep its ratio"});
}

namespace {

/// What an evaluation lacks at the first ratio with a check that opened there.
std::string openReason(const Sweeper& sweeper, const RatioSweep& sweep) {
  for (std::size_t k = 0; k < sweep.points.size(); ++k) {
    if (sweep.points[k].openAt < 0) continue;
    const Evaluation there = evaluate(sweeper.at(sweep.ratio[k]));
    if (!there.missing.empty()) return there.missing.front().what;
  }
  return {};
}

}  // namespace

tl::expected<RatioSweep, InputError> ratioSweep(const Project& project,
                                                const RatioSweepRequest& request,
                                                const StudyRun& run) {
  if (const auto bad = badRatios(request.ratios)) return tl::unexpected(*bad);
  const auto sweeper = sweeperFor(project, request);
  if (!sweeper) return tl::unexpected(sweeper.error());
  RatioSweep sweep;
  sweep.stage = sweeper->stage;
  sweep.total = request.stage < 0;
  sweep.ratio = request.ratios;
  const Evaluation base = evaluate(sweeper->project);
  const double stageRatio = (*base.stages)[static_cast<std::size_t>(sweep.stage)].stage.ratio;
  sweep.present = stageRatio * sweeper->others;
  sweep.points = evaluatePoints(
      sweep.ratio.size(), [&](std::size_t k) { return sweeper->at(sweep.ratio[k]); }, run);
  noteOpenChecks(sweep.points);
  sweep.checks = marginColumns(sweep.points, base);
  sweep.quantities = quantityColumns(sweep.points, base);
  findBands(*sweeper, run, sweep);
  sweep.openReason = openReason(*sweeper, sweep);
  markRatios(project, base, sweep);
  if (!request.preview && !run.stop.stop_requested()) findTicks(*sweeper, sweep);
  sweep.stopped = run.stop.stop_requested();
  return sweep;
}

}  // namespace jw
