#pragma once

#include <string>
#include <string_view>

#include "core/checks/check.h"
#include "core/checks/evaluation.h"

namespace jw {

/// What a check looks at.
struct CheckContext {
  const Project& project;
  const Evaluation& result;
  int stage = -1;

  const Variant& variant() const { return project.active(); }
  /// The stage, completed from its parts where that could be done.
  const Stage& drive() const {
    const auto at = static_cast<std::size_t>(stage);
    return result.stages ? (*result.stages)[at].stage : variant().transmission[at];
  }
  const StageData& driveData() const { return (*result.stages)[static_cast<std::size_t>(stage)]; }
  const StageLoad& driveLoad() const {
    return result.chain->stages[static_cast<std::size_t>(stage)];
  }
};

/// How a symbol that is no input came about.
struct Derived {
  std::string_view symbol;
  std::string_view label;
  Quantity quantity;
  std::string_view unit;
  std::string_view origin = "derived";
  std::string_view expression = {};  ///< in the symbols shown before, as in WorkingSymbol
};

/// a_1 of ISO 281 over the reliability R.
inline constexpr std::string_view kReliability = "0.05 + 0.95 · (ln(R) / ln(0.9))^{2/3}";

/// Takes down one check as it is worked out: the numbers always, the working only if one is wanted.
/// One function per check thus gives the verdict and its explanation.
class CheckWriter {
 public:
  /// `working` may be null.
  CheckWriter(const CheckContext& context, Check& check, Working* working)
      : context_(context), check_(check), working_(working) {}

  /// An input by path, "motor.maxSpeed"; if it is unset the check is open. Returns the value.
  double input(double value, std::string_view path);
  /// The same for a field of the context's stage.
  double stageInput(double value, std::string_view key);
  /// An input that may be left out: shown if set.
  double optionalInput(double value, std::string_view path);
  /// Whether a part was evaluated; if not, the check is open for want of that part's inputs.
  bool has(Part part);
  /// A value on the way to the result. Returns it.
  double value(double value, const Derived& about);
  /// The same where it may be just what the field at `path` says: then it has that field's origin.
  double valueOf(std::string_view path, double value, const Derived& about);

  /// Origin of a value at one sample: "from the cycle at 0.53 s".
  std::string cycleOrigin(Eigen::Index sample) const;
  /// Origin of a mean: the daily mix where there is one.
  std::string_view meanOrigin() const;
  /// Whether the daily mix, if one is wanted, was evaluated; says in the note what it is.
  bool hasDay();

  void formula(std::string_view text);
  void source(std::string_view text);
  void note(std::string_view text);
  void at(Eigen::Index sample);  ///< the instant at which it is tightest
  void compare(double demand, double capacity);
  /// With a margin that also counts where the demand is 0, as on a ray along the speed.
  void compare(double demand, double capacity, double margin);
  /// For values on a scale with a zero of its own: both count from `base` (ambient, bus at rest).
  void compareRise(double demand, double capacity, double base);

  /// What demand and capacity follow from, in the symbols shown: "S_h · |T_stat| / N" and "T_b".
  void follows(std::string_view demand, std::string_view capacity);
  /// The same of a headline figure, which is one value.
  void follows(std::string_view figure) { follows(figure, {}); }
  const std::string& demandFrom() const { return demandFrom_; }
  const std::string& capacityFrom() const { return capacityFrom_; }

  bool explains() const { return working_ != nullptr; }

 private:
  void miss(std::string path);
  void show(double value, std::string_view path);

  const CheckContext& context_;
  Check& check_;
  Working* working_;
  std::string demandFrom_;
  std::string capacityFrom_;
};

/// One kind of check; the list of all kinds is checkKinds().
struct CheckKind {
  std::string_view id;
  std::string_view title;  ///< "Motor speed"; of a stage: "life", the stage's noun goes before it
  Quantity quantity;
  std::string_view unit;
  bool perStage = false;
  bool capacityIsResult = false;
  bool (*applies)(const CheckContext&) = nullptr;  ///< null = always
  void (*work)(const CheckContext&, CheckWriter&) = nullptr;
};

std::span<const CheckKind> motorChecks();
std::span<const CheckKind> controllerChecks();
std::span<const CheckKind> driveChecks();
std::span<const CheckKind> stageChecks();
std::span<const CheckKind> heatChecks();
std::span<const CheckKind> supplyChecks();
std::span<const CheckKind> jointChecks();
std::span<const CheckKind> endStopChecks();

/// Every kind of check, in the order of the power path.
const std::vector<CheckKind>& checkKinds();

/// Works out one check; `working` may be null.
Check workOut(const CheckKind& kind, const CheckContext& context, Working* working);

}  // namespace jw
