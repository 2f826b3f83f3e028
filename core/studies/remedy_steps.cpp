// Remedies that go in the steps of what there is: ratios that can be built, motors of a list.
#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/studies/ratio_sweep.h"
#include "core/studies/realizable_ratios.h"
#include "core/studies/remedy_search.h"

namespace jw {
namespace {

const Stage& stageOf(const Project& project, int stage) {
  return project.active().transmission[static_cast<std::size_t>(stage)];
}

/// One stage whose parts are looked for anew.
class PartsSearch {
 public:
  PartsSearch(const RemedyCase& about, int stage)
      : about_(about),
        stage_(stage),
        present_((*about.base.stages)[static_cast<std::size_t>(stage)].stage.ratio) {
    const Stage& built = stageOf(about.project, stage);
    if (built.family == StageFamily::Planetary) {
      limits_.leastSets = limits_.mostSets = static_cast<int>(built.planetary.sets);
    }
  }

  std::vector<RemedyFinding> run() {
    const ChangeRange range{std::max(-0.9, 1.0 / present_ - 1), 9};
    const auto scanned = scanChange([this](double change) { return withRatio(change); }, range,
                                    about_.basePoint, about_.wanted, about_.target, about_.stop);
    std::vector<RemedyFinding> findings(scanned.size());
    for (std::size_t k = 0; k < scanned.size(); ++k) {
      if (scanned[k].smallest) {
        findings[k].remedy = built(about_.wanted[k], present_ * (1 + *scanned[k].smallest));
      }
      if (!findings[k].remedy && scanned[k].matters) findings[k].none = none(k, scanned[k]);
    }
    return findings;
  }

 private:
  DesignPoint withRatio(double change) const {
    const Project changed = withStageRatio(about_.project, stage_, present_ * (1 + change));
    return designPoint(evaluate(changed, about_.stop));
  }

  /// The nearest to `wanted` on its far side; the list is asked again further out if need be.
  std::optional<Remedy> built(const WantedMargin& wanted, double ratio) const {
    const double way = ratio > present_ ? 1 : -1;
    for (const double further : {0.0, 0.02, 0.1}) {
      if (about_.stop.stop_requested()) return std::nullopt;
      const double aim = ratio * (1 + way * further);
      for (const RealizableRatio& one :
           realizableRatios(stageOf(about_.project, stage_).family, aim, limits_, 12)) {
        if (way * (one.ratio - ratio) < 0 || about_.stop.stop_requested()) continue;
        if (auto remedy = withParts(wanted, one)) return remedy;
      }
    }
    return std::nullopt;
  }

  std::optional<Remedy> withParts(const WantedMargin& wanted, const RealizableRatio& one) const {
    Remedy draft;
    draft.kind = RemedyKind::Parts;
    draft.path = path();
    draft.label = label();
    draft.quantity = Quantity::Ratio;
    draft.unit = "1";
    draft.from = present_;
    draft.to = one.ratio;
    draft.change = one.ratio / present_ - 1;
    Project changed = about_.project;
    for (const StageEdit& edit : one.edits) {
      const FieldEdit field{fmt::format("transmission[{}].{}", stage_, edit.key), edit.text};
      if (!setField(changed, field.path, field.text)) return std::nullopt;
      draft.edits.push_back(field);
    }
    return judgedRemedy(about_, wanted, changed, std::move(draft));
  }

  NoRemedy none(std::size_t k, const ScannedMargin& scanned) const {
    const double base = about_.basePoint.marginOf(about_.wanted[k].id, about_.wanted[k].stage);
    const bool helps = scanned.best > base;
    return {InputRole::Design,
            path(),
            label(),
            Quantity::Ratio,
            "1",
            present_,
            helps ? present_ * (1 + scanned.bestAt) : present_,
            helps ? scanned.best : base};
  }

  std::string path() const { return fmt::format("transmission[{}].ratio", stage_); }
  std::string label() const {
    const std::string& name = stageOf(about_.project, stage_).name;
    return (name.empty() ? fmt::format("stage {}", stage_ + 1) : name) + " ratio by its parts";
  }

  const RemedyCase& about_;
  const int stage_;
  const double present_;
  SizeLimits limits_;
};

/// By which motors are near to one another: mass, or lasting torque where a mass is not stated.
struct MotorSize {
  double from = kUnset, to = kUnset;
  bool byMass = true;

  double change() const { return to / from - 1; }
};

MotorSize sizeOf(const Motor& now, const Motor& then) {
  if (isSet(now.mass) && isSet(then.mass)) return {now.mass, then.mass, true};
  return {now.continuousTorque, then.continuousTorque, false};
}

Remedy motorDraft(const Motor& now, const MotorEntry& entry) {
  const MotorSize size = sizeOf(now, entry.motor);
  Remedy draft;
  draft.kind = RemedyKind::Motor;
  draft.path = size.byMass ? "motor.mass" : "motor.continuousTorque";
  draft.label = "motor " + entry.name;
  draft.quantity = size.byMass ? Quantity::Mass : Quantity::Torque;
  draft.unit = size.byMass ? "kg" : "N*m";
  draft.from = size.from;
  draft.to = size.to;
  draft.change = size.change();
  draft.motor = entry;
  return draft;
}

/// The motors whose size is known, nearest first; those that lack a brake that is there now follow
/// after all others.
std::vector<const MotorEntry*> nearestFirst(const Motor& now,
                                            const std::vector<MotorEntry>& motors) {
  std::vector<const MotorEntry*> order;
  for (const MotorEntry& entry : motors) {
    if (isSet(sizeOf(now, entry.motor).change())) order.push_back(&entry);
  }
  std::stable_sort(order.begin(), order.end(), [&](const MotorEntry* a, const MotorEntry* b) {
    return std::abs(sizeOf(now, a->motor).change()) < std::abs(sizeOf(now, b->motor).change());
  });
  std::stable_partition(order.begin(), order.end(), [&](const MotorEntry* one) {
    return !isSet(now.brakeTorque) || isSet(one->motor.brakeTorque);
  });
  return order;
}

/// Whether every verdict that holds now can be told and is not short there.
bool spoilsNothing(const DesignPoint& before, const DesignPoint& after) {
  return std::all_of(before.margins.begin(), before.margins.end(), [&](const PointMargin& one) {
    return !(one.margin >= 0) || after.marginOf(one.id, one.stage) >= 0;
  });
}

/// The nearest motor that restores one margin, and the nearest of those that spoil nothing.
struct MotorFound {
  const MotorEntry* any = nullptr;
  const MotorEntry* spotless = nullptr;

  const MotorEntry* best() const { return spotless ? spotless : any; }

  void see(const RemedyCase& about, std::size_t w, const DesignPoint& point,
           const MotorEntry& entry) {
    const WantedMargin& wanted = about.wanted[w];
    if (spotless || !(point.marginOf(wanted.id, wanted.stage) >= about.target)) return;
    if (!any) any = &entry;
    if (spoilsNothing(about.basePoint, point)) spotless = &entry;
  }
};

}  // namespace

bool hasParts(const Project& project, int stage) {
  const Stage& one = stageOf(project, stage);
  return !isSet(one.ratio) && one.family != StageFamily::Coupling &&
         one.family != StageFamily::GivenRatio;
}

std::vector<RemedyFinding> changeParts(const RemedyCase& about, int stage) {
  if (!about.base.stages) return std::vector<RemedyFinding>(about.wanted.size());
  return PartsSearch(about, stage).run();
}

std::vector<RemedyFinding> changeMotor(const RemedyCase& about,
                                       const std::vector<MotorEntry>& motors, const StudyRun& run) {
  constexpr std::size_t kAtOnce = 64;
  const Motor& now = about.project.active().motor;
  const std::vector<const MotorEntry*> order = nearestFirst(now, motors);
  const auto with = [&](const MotorEntry& entry) {
    Project changed = about.project;
    changed.active().motor = fittedMotor(entry, now);
    return changed;
  };
  std::vector<MotorFound> found(about.wanted.size());
  const auto complete = [&] {
    return std::all_of(found.begin(), found.end(), [](const auto& one) { return one.spotless; });
  };
  const std::size_t most = std::min(order.size(), kMostMotorsTried);
  for (std::size_t from = 0; from < most && !complete(); from += kAtOnce) {
    const std::size_t count = std::min(kAtOnce, most - from);
    const std::vector<DesignPoint> points = evaluatePoints(
        count, [&](std::size_t k) { return with(*order[from + k]); }, run);
    if (about.stop.stop_requested()) break;
    for (std::size_t w = 0; w < found.size(); ++w) {
      for (std::size_t k = 0; k < count; ++k) found[w].see(about, w, points[k], *order[from + k]);
    }
  }
  std::vector<RemedyFinding> findings(about.wanted.size());
  for (std::size_t w = 0; w < findings.size() && !about.stop.stop_requested(); ++w) {
    const MotorEntry* entry = found[w].best();
    if (entry == nullptr) continue;
    findings[w].remedy =
        judgedRemedy(about, about.wanted[w], with(*entry), motorDraft(now, *entry));
  }
  return findings;
}

}  // namespace jw
