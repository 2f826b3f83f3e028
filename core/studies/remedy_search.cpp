#include "core/studies/remedy_search.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include <fmt/format.h>

#include "core/studies/ratio_sweep.h"

namespace jw {
namespace {

constexpr double kReachedClosely = 1e-6;  // of the margin

/// A tenth to ten times the value, as far as the field allows; losses and play only get smaller.
ChangeRange rangeOf(const StudyInput& input) {
  const Range& range = input.info->range;
  const double toLow = (range.low - input.value) / input.scale;
  const double toHigh = (range.high - input.value) / input.scale;
  ChangeRange changes;
  changes.low = std::max(changes.low, std::min(toLow, toHigh));
  changes.high = std::min(changes.high, std::max(toLow, toHigh));
  if (input.way == BetterWay::Up) changes.low = 0;
  if (input.way == BetterWay::Down) changes.high = 0;
  // An end that is itself excluded is left by a hair.
  if (range.lowExcluded && changes.low == std::min(toLow, toHigh)) changes.low *= 1 - 1e-9;
  return changes;
}

/// The value after a change; a whole number moves by one at least.
double valueAfter(const StudyInput& input, double change) {
  if (!input.isWhole()) return input.changed(change);
  const double step = std::max(1.0, std::round(std::abs(change * input.scale)));
  return input.value + std::copysign(step, change * input.scale);
}

/// The joint with one field changed; whole numbers are evaluated once each.
class ChangedField {
 public:
  ChangedField(const RemedyCase& about, const StudyInput& input)
      : input_(input), stop_(about.stop), changed_(about.project, input) {}

  DesignPoint operator()(double change) {
    const double value = valueAfter(input_, change);
    if (!input_.info->range.contains(value)) return {};
    if (!input_.isWhole()) return evaluated(value);
    const auto known = known_.find(value);
    return known != known_.end() ? known->second
                                 : known_.emplace(value, evaluated(value)).first->second;
  }

 private:
  DesignPoint evaluated(double value) { return designPoint(evaluate(changed_.with(value), stop_)); }

  const StudyInput& input_;
  std::stop_token stop_;
  ChangedInput changed_;
  std::map<double, DesignPoint> known_;
};

/// The value in the field's unit, `digits` long, not nearer to `from` than `to` is.
std::string outwardText(const StudyInput& input, double to, int digits) {
  const FieldInfo& info = *input.info;
  if (input.isWhole()) return fmt::format("{:.0f}", to);
  const double shown = fromInternal(to, info.unit, info.quantity);
  if (shown == 0) return typedForm(to, info.quantity, info.unit);
  const double unit = std::pow(10.0, std::floor(std::log10(std::abs(shown))) + 1 - digits);
  const double steps = to > input.value ? std::ceil(shown / unit) : std::floor(shown / unit);
  const std::string number = fmt::format("{:.{}g}", steps * unit, digits);
  return info.unit == "1" ? number : fmt::format("{} {}", number, info.unit);
}

Remedy draftOf(const RemedyCase& about, const StudyInput& input) {
  Remedy draft;
  draft.role = input.role;
  draft.path = input.path;
  draft.label = inputLabel(about.project, input);
  draft.quantity = input.info->quantity;
  draft.unit = input.info->unit;
  draft.from = input.value;
  return draft;
}

std::optional<Remedy> typedRemedy(const RemedyCase& about, const WantedMargin& wanted,
                                  const StudyInput& input, const std::string& text) {
  Remedy draft = draftOf(about, input);
  Project changed = about.project;
  if (!setField(changed, input.path, text)) return std::nullopt;
  draft.to = findField(changed, input.path)->number();
  draft.change = (draft.to - input.value) / input.scale;
  draft.edits = {{input.path, text}};
  return judgedRemedy(about, wanted, changed, std::move(draft));
}

/// The shortest text that reaches the margin closely; where it jumps, the shortest that reaches it.
std::optional<Remedy> roundedRemedy(const RemedyCase& about, const WantedMargin& wanted,
                                    const StudyInput& input, double to) {
  std::optional<Remedy> best;
  for (const int digits : {7, 11}) {
    auto remedy = typedRemedy(about, wanted, input, outwardText(input, to, digits));
    if (!remedy) continue;
    if (remedy->margin - about.target <= kReachedClosely || input.isWhole()) return remedy;
    if (!best) best = std::move(remedy);
  }
  if (best) return best;
  return typedRemedy(about, wanted, input, typedForm(to, input.info->quantity, input.info->unit));
}

NoRemedy noneOf(const RemedyCase& about, const StudyInput& input, const ScannedMargin& scanned) {
  return {input.role,       input.path,  inputLabel(about.project, input),  input.info->quantity,
          input.info->unit, input.value, valueAfter(input, scanned.bestAt), scanned.best};
}

bool improves(const RemedyCase& about, const WantedMargin& wanted, double margin) {
  return margin > about.basePoint.marginOf(wanted.id, wanted.stage);
}

std::vector<MovedVerdict> movedVerdicts(const RemedyCase& about, const WantedMargin& wanted,
                                        const Evaluation& after) {
  constexpr double kRounding = 1e-9;
  std::vector<MovedVerdict> moved;
  for (const Check& now : about.base.checks) {
    if (now.id == wanted.id && now.stage == wanted.stage) continue;
    const auto then = std::find_if(
        after.checks.begin(), after.checks.end(),
        [&](const Check& check) { return check.id == now.id && check.stage == now.stage; });
    if (then == after.checks.end()) continue;
    const bool open = !isSet(now.margin) && !isSet(then->margin);
    if (open || now.margin == then->margin) continue;
    if (std::abs(now.margin - then->margin) <= kRounding) continue;
    moved.push_back(
        {now.id, now.stage, now.title, now.margin, then->margin, now.state, then->state});
  }
  std::stable_partition(moved.begin(), moved.end(), [](const auto& one) { return one.worsens(); });
  return moved;
}

}  // namespace

std::optional<Remedy> judgedRemedy(const RemedyCase& about, const WantedMargin& wanted,
                                   const Project& changed, Remedy draft) {
  const Evaluation after = evaluate(changed, about.stop);
  if (after.stopped) return std::nullopt;
  for (const Check& check : after.checks) {
    if (check.id == wanted.id && check.stage == wanted.stage) draft.margin = check.margin;
  }
  if (!(draft.margin >= about.target)) return std::nullopt;
  draft.others = movedVerdicts(about, wanted, after);
  return draft;
}

std::vector<RemedyFinding> changeField(const RemedyCase& about, const StudyInput& input) {
  ChangedField field(about, input);
  const auto scanned = scanChange([&](double change) { return field(change); }, rangeOf(input),
                                  about.basePoint, about.wanted, about.target, about.stop);
  std::vector<RemedyFinding> findings(scanned.size());
  for (std::size_t k = 0; k < scanned.size() && !about.stop.stop_requested(); ++k) {
    const ScannedMargin& one = scanned[k];
    const WantedMargin& wanted = about.wanted[k];
    if (one.smallest) {
      findings[k].remedy = roundedRemedy(about, wanted, input, valueAfter(input, *one.smallest));
    }
    const bool helps = one.matters && improves(about, wanted, one.best);
    if (!findings[k].remedy && helps) findings[k].none = noneOf(about, input, one);
  }
  return findings;
}

}  // namespace jw
