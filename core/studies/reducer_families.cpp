#include "core/studies/reducer_families.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/studies/catalogue_search.h"
#include "core/studies/coarse_cycle.h"
#include "core/studies/ratio_sweep.h"

namespace jw {
namespace {

/// One reducer to try: of the catalogue, or of a ratio and yet to be sized.
struct Trial {
  std::size_t family = 0;  ///< index into the rules
  double ratio = 0;
  Stage stage;
  DesignPoint point;
  bool known = false;
};

/// A direct drive gets its reducer as its only stage.
Project withStage(const Project& project, int at, const Stage& stage) {
  Project changed = project;
  if (changed.active().transmission.empty()) changed.active().transmission.emplace_back();
  Stage& slot = changed.active().transmission[static_cast<std::size_t>(at)];
  const std::string name = slot.name;
  slot = stage;
  if (slot.name.empty()) slot.name = name;
  return changed;
}

/// The verdicts that a larger reducer helps.
bool growsWithSize(std::string_view id) {
  return id == "drive.torque_peak" || id == "drive.torque_average" ||
         id == "drive.torque_momentary" || id == "drive.life";
}

/// Whether the reducer carries the load with the target margin.
bool carries(const Project& project, int at) {
  const Evaluation evaluation = evaluate(project);
  for (const Check& check : evaluation.checks) {
    if (check.stage != at || !growsWithSize(check.id)) continue;
    if (check.margin < project.requirements.targetMargin) return false;
  }
  return evaluation.chain.has_value();
}

/// [N·m] the smallest rated torque that carries the load; NaN if none within reason does.
double sizeFor(const Project& coarse, int at, const FamilyRule& rule, double ratio,
               double largest) {
  const auto fits = [&](double torque) {
    return carries(withStage(coarse, at, reducerByRule(rule, ratio, torque)), at);
  };
  double high = std::max(largest, 1e-3);
  for (int pass = 0; !fits(high); ++pass) {
    if (pass == 8) return kUnset;
    high *= 2;
  }
  double low = high / 1e3;
  while (high > 1.01 * low) {
    const double middle = std::sqrt(low * high);
    (fits(middle) ? high : low) = middle;
  }
  return high;
}

std::vector<Trial> trialsOf(const FamilyRequest& request) {
  std::vector<Trial> trials;
  for (std::size_t f = 0; f < request.rules.size(); ++f) {
    const FamilyRule& rule = request.rules[f];
    for (const Stage& stage : request.catalogue) {
      if (stage.family == rule.family) trials.push_back({f, stage.ratio, stage, {}, false});
    }
    if (!request.catalogue.empty()) continue;
    for (const double ratio : realizableTicks(rule.family, rule.ratioLow, rule.ratioHigh,
                                              SizeLimits{}, request.ratios)) {
      trials.push_back({f, ratio, {}, {}, false});
    }
  }
  return trials;
}

/// Sum of what every margin lacks, none by more than all of it.
double lackOf(const DesignPoint& point) {
  double lack = 0;
  for (const PointMargin& one : point.margins) {
    if (isSet(one.margin)) lack -= std::clamp(one.margin, -1.0, 0.0);
  }
  return lack;
}

/// By the smallest margin; where two can do nothing at all, as at standstill, by all of them.
bool better(const Trial& a, const Trial& b) {
  if (a.known != b.known) return a.known;
  const double worstA = isSet(a.point.worst) ? a.point.worst : -2;
  const double worstB = isSet(b.point.worst) ? b.point.worst : -2;
  if (worstA != worstB || worstA > -1) return worstA > worstB;
  return lackOf(a.point) < lackOf(b.point);
}

double drivingEfficiency(const Evaluation& e, const StageLoad& load) {
  const Eigen::ArrayXd out = load.outputTorque * load.outputSpeed;
  const Eigen::ArrayXd in = load.inputTorque * load.inputSpeed;
  const Eigen::ArrayXd driving = (out > 0).cast<double>() * e.cycle->weight;
  const double taken = (driving * in).sum();
  return taken > 0 ? (driving * out).sum() / taken : kUnset;
}

/// The figures of the stage as `e` has it.
FamilyChoice figuresOf(const Evaluation& e, int at, const Stage& stage) {
  FamilyChoice choice;
  choice.family = stage.family;
  choice.found = e.chain.has_value();
  choice.stage = stage;
  choice.point = designPoint(e);
  choice.verdicts = marginColumns({choice.point}, e);
  choice.torquePerMass = stage.ratedTorque / stage.mass;
  for (const Check& check : e.checks) {
    if (check.id == "drive.life" && check.stage == at) choice.life = check.capacity;
  }
  choice.backdriving = quantityValue(e, "chain.backdriving_torque");
  choice.stiffness = quantityValue(e, "chain.stiffness");
  choice.backlash = quantityValue(e, "chain.backlash");
  choice.windingPeak = quantityValue(e, "motor.temperature_winding_peak");
  if (!choice.found) return choice;
  const StageLoad& load = e.chain->stages[static_cast<std::size_t>(at)];
  choice.efficiency = drivingEfficiency(e, load);
  choice.stageLoss = (e.cycle->weight * load.loss).sum() / e.cycle->period;
  return choice;
}

FamilyChoice choiceOf(const Project& project, int at, const FamilyRule& rule, const Trial* best) {
  if (best == nullptr || !best->known) {
    FamilyChoice none;
    none.family = rule.family;
    return none;
  }
  return figuresOf(evaluate(withStage(project, at, best->stage)), at, best->stage);
}

tl::expected<int, InputError> stageOf(const Project& project, int stage) {
  if (stage < 0 && project.active().transmission.empty()) return 0;
  if (stage < 0) return leadingStage(project);
  if (stage < static_cast<int>(project.active().transmission.size())) return stage;
  return tl::unexpected(InputError{"there is no such stage", fmt::format("transmission[{}]", stage),
                                   "name one that is there, counted from 0"});
}

/// [N·m] a first guess of the size: the largest torque at the joint.
double firstSize(const Evaluation& e) { return e.load ? e.load->total.abs().maxCoeff() : 1; }

}  // namespace

tl::expected<std::vector<FamilyChoice>, InputError> reducerFamilies(const Project& project,
                                                                    const FamilyRequest& request,
                                                                    const StudyRun& run) {
  const auto at = stageOf(project, request.stage);
  if (!at) return tl::unexpected(at.error());
  const Project coarse = withCoarseCycle(project, 100);
  const double largest = firstSize(evaluate(coarse));
  std::vector<Trial> trials = trialsOf(request);
  forEachPoint(trials.size(), run, [&](std::size_t k) {
    Trial& trial = trials[k];
    const FamilyRule& rule = request.rules[trial.family];
    if (request.catalogue.empty()) {
      const double size = sizeFor(coarse, *at, rule, trial.ratio, largest);
      if (!isSet(size)) return;
      trial.stage = reducerByRule(rule, trial.ratio, size);
    }
    trial.point = designPoint(evaluate(withStage(project, *at, trial.stage), run.stop));
    trial.known = true;
  });
  std::vector<FamilyChoice> choices;
  for (std::size_t f = 0; f < request.rules.size(); ++f) {
    const Trial* best = nullptr;
    for (const Trial& trial : trials) {
      if (trial.family == f && (best == nullptr || better(trial, *best))) best = &trial;
    }
    choices.push_back(choiceOf(project, *at, request.rules[f], best));
  }
  return choices;
}

tl::expected<FamilyChoice, InputError> presentReducer(const Project& project, int stage) {
  const auto at =
      project.active().transmission.empty() ? leadingStage(project) : stageOf(project, stage);
  if (!at) return tl::unexpected(at.error());
  const Evaluation e = evaluate(project);
  const auto index = static_cast<std::size_t>(*at);
  return figuresOf(e, *at,
                   e.stages ? (*e.stages)[index].stage : project.active().transmission[index]);
}

tl::expected<Project, InputError> adoptFamily(const Project& project, const FamilyChoice& choice,
                                              int stage) {
  const auto at = stageOf(project, stage);
  if (!at) return tl::unexpected(at.error());
  if (project.variants.size() >= kMostVariantsKept) {
    return tl::unexpected(InputError{"there is no room for another variant", "variants",
                                     "remove one that is no longer needed"});
  }
  Project adopted = withStage(project, *at, choice.stage);
  Variant variant = adopted.active();
  adopted.active() = project.active();
  variant.name = fmt::format("{} {:.4g}", familyKey(choice.family), choice.stage.ratio);
  variant.accepted.clear();
  adopted.variants.push_back(std::move(variant));
  adopted.activeVariant = static_cast<int>(adopted.variants.size()) - 1;
  return adopted;
}

}  // namespace jw
