#include "core/studies/catalogue_search.h"

#include <algorithm>
#include <mutex>
#include <numeric>

#include <fmt/format.h>

#include "core/studies/coarse_cycle.h"
#include "core/studies/combination_screen.h"
#include "core/studies/ratio_sweep.h"

namespace jw {
namespace {

std::optional<InputError> badSpace(const Project& project, const SearchSpace& space) {
  const int stages = static_cast<int>(project.active().transmission.size());
  const auto refuse = [](std::string what, std::string where, std::string remedy) {
    return InputError{std::move(what), std::move(where), std::move(remedy)};
  };
  if (space.motors.empty()) return refuse("there is no motor to try", "motors", "give a catalogue");
  if (space.reducers.empty()) {
    return refuse("there is no reducer to try", "reducers", "give a catalogue");
  }
  if (space.reducerStage < 0 || space.reducerStage >= stages) {
    return refuse("there is no such stage for the reducers", "transmission",
                  fmt::format("the chain has {} stages, counted from 0", stages));
  }
  if (space.beltStage < 0) return std::nullopt;
  if (space.beltStage >= stages || space.beltStage == space.reducerStage) {
    return refuse("there is no such stage for the belt", "transmission",
                  "name another stage than that of the reducers");
  }
  const auto bad = [](double ratio) { return !(ratio > 0); };
  if (space.beltRatios.empty() ||
      std::any_of(space.beltRatios.begin(), space.beltRatios.end(), bad)) {
    return refuse("the belt's ratios are not above 0", "belt", "give ratios such as 1..3:0.5");
  }
  return std::nullopt;
}

/// What keeps every combination from being judged: the cycle or the load.
std::optional<InputError> badJob(const Evaluation& evaluation) {
  for (const MissingInput& missing : evaluation.missing) {
    if (missing.part == Part::Cycle || missing.part == Part::Load) return missing;
  }
  return std::nullopt;
}

double massOf(const SearchSpace& space, const Combination& which) {
  const double mass = space.motors[which.motor].motor.mass + space.reducers[which.reducer].mass;
  return isSet(mass) ? mass : 1e9;  // those that do not state it come last
}

bool before(const Combination& a, const Combination& b) {
  return std::tie(a.motor, a.reducer, a.ratio) < std::tie(b.motor, b.reducer, b.ratio);
}

/// The search at work.
/// The design that is there.
struct Present {
  DesignPoint point;
  bool evaluated = false;  ///< whether its motor's torque is known

  static Present of(const Evaluation& e) { return {designPoint(e), e.demand.has_value()}; }
};

class Search {
 public:
  Search(const Project& project, const SearchSpace& space, const SearchRequest& request,
         const StudyRun& run)
      : project_(project),
        space_(space),
        request_(request),
        run_(run),
        present_(Present::of(evaluate(project))) {
    result_.counts.total = space.size();
  }

  SearchResult run() {
    screen();
    if (!run_.stop.stop_requested()) evaluateSurvivors();
    std::sort(result_.candidates.begin(), result_.candidates.end(),
              [](const Candidate& a, const Candidate& b) { return before(a.which, b.which); });
    result_.stopped = run_.stop.stop_requested();
    return std::move(result_);
  }

 private:
  void screen() {
    const CombinationScreen screen(project_, space_, run_);
    StudyRun inner = run_;
    inner.progress = [this](const StudyProgress& p) { report(p); };
    forEachPoint(space_.reducers.size(), inner, [&](std::size_t reducer) {
      ReducerVerdicts verdicts = screen.verdicts(static_cast<std::uint32_t>(reducer), run_.stop);
      const std::lock_guard lock(mutex_);
      for (const auto& [check, count] : verdicts.rejected) result_.rejected[check] += count;
      survivors_.insert(survivors_.end(), verdicts.survivors.begin(), verdicts.survivors.end());
      result_.counts.screened += verdicts.screened;
      result_.counts.survivors = survivors_.size();
    });
    std::sort(survivors_.begin(), survivors_.end(), before);
    if (request_.mostEvaluated == 0 || survivors_.size() <= request_.mostEvaluated) return;
    std::stable_sort(survivors_.begin(), survivors_.end(), [&](const auto& a, const auto& b) {
      return massOf(space_, a) < massOf(space_, b);
    });
    survivors_.resize(request_.mostEvaluated);
  }

  void evaluateSurvivors() {
    StudyRun inner = run_;
    inner.progress = [this](const StudyProgress& p) { report(p); };
    forEachPoint(survivors_.size(), inner, [&](std::size_t k) { evaluateOne(survivors_[k]); });
  }

  void evaluateOne(const Combination& which) {
    const Project project = withCombination(project_, space_, which);
    const Evaluation evaluation = evaluate(project, run_.stop);
    if (evaluation.stopped) return;
    Candidate one{which, designPoint(evaluation), propertiesOf(project.active())};
    noteOpenCheck(one.point, present_.point);
    const bool passes = std::all_of(
        request_.filters.begin(), request_.filters.end(),
        [&](const CombinationFilter& f) { return f.passes(one.point, one.properties); });
    const std::lock_guard lock(mutex_);
    ++result_.counts.evaluated;
    const bool known = !present_.evaluated || evaluation.demand.has_value();
    if (!known) {
      ++result_.unknown;
    } else if (!one.point.noneShort()) {
      ++result_.fellShort[worstOf(one.point)];
    }
    if (!known || !one.point.noneShort()) {
      if (request_.fellShort && shortTold_++ < request_.mostShort) request_.fellShort(one);
    } else if (!passes) {
      ++result_.filteredOut;
    } else {
      ++result_.counts.found;
      if (request_.found) request_.found(one);
      result_.candidates.push_back(std::move(one));
    }
  }

  static std::string_view worstOf(const DesignPoint& point) {
    if (point.worstAt < 0) return "open";
    return point.margins[static_cast<std::size_t>(point.worstAt)].id;
  }

  void report(const StudyProgress& part) {
    if (!request_.progress) return;
    SearchProgress progress;
    {
      const std::lock_guard lock(mutex_);
      progress = result_.counts;
    }
    progress.secondsLeft = part.secondsLeft;
    request_.progress(progress);
  }

  const Project& project_;
  const SearchSpace& space_;
  const SearchRequest& request_;
  const StudyRun& run_;
  const Present present_;
  std::mutex mutex_;
  std::vector<Combination> survivors_;
  SearchResult result_;
  std::size_t shortTold_ = 0;
};

}  // namespace

Project withCombination(const Project& project, const SearchSpace& space,
                        const Combination& which) {
  Project changed = project;
  Variant& variant = changed.active();
  variant.motor = fittedMotor(space.motors[which.motor], project.active().motor);
  variant.transmission[static_cast<std::size_t>(space.reducerStage)] =
      space.reducers[which.reducer];
  if (space.beltStage < 0) return changed;
  return withStageRatio(changed, space.beltStage, space.beltRatios[which.ratio]);
}

std::string combinationName(const SearchSpace& space, const Combination& which) {
  std::string name =
      fmt::format("{} + {}", space.motors[which.motor].name, space.reducers[which.reducer].name);
  if (space.beltStage >= 0) name += fmt::format(" + belt {:.4g}", space.beltRatios[which.ratio]);
  return name;
}

tl::expected<Project, InputError> adoptCombination(const Project& project, const SearchSpace& space,
                                                   const Combination& which) {
  if (project.variants.size() >= kMostVariantsKept) {
    return tl::unexpected(InputError{"there is no room for another variant", "variants",
                                     "remove one that is no longer needed"});
  }
  Project adopted = project;
  Variant variant = withCombination(project, space, which).active();
  variant.name = combinationName(space, which);
  variant.accepted.clear();
  adopted.variants.push_back(std::move(variant));
  adopted.activeVariant = static_cast<int>(adopted.variants.size()) - 1;
  return adopted;
}

tl::expected<SearchResult, InputError> searchCatalogue(const Project& project,
                                                       const SearchSpace& space,
                                                       const SearchRequest& request,
                                                       const StudyRun& run) {
  if (const auto bad = badSpace(project, space)) return tl::unexpected(*bad);
  if (space.size() > kMostCombinations) {
    return tl::unexpected(InputError{
        fmt::format("{} million combinations are too many", space.size() / 1'000'000), "",
        fmt::format("at most {} million: shorten a catalogue or the list of belt ratios",
                    kMostCombinations / 1'000'000)});
  }
  if (const auto bad = badJob(evaluate(withCoarseCycle(project)))) return tl::unexpected(*bad);
  return Search(project, space, request, run).run();
}

}  // namespace jw
