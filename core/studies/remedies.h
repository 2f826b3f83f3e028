#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <tl/expected.hpp>

#include "core/checks/check.h"
#include "core/model/catalogue_entry.h"
#include "core/studies/study_inputs.h"
#include "core/studies/study_run.h"

namespace jw {

/// What is changed.
enum class RemedyKind {
  Field,  ///< one number
  Parts,  ///< the teeth, pins or diameters of a stage: the nearest ratio that can be built
  Motor,  ///< the whole motor, to one of a catalogue
};

/// A text for a field.
struct FieldEdit {
  std::string path;
  std::string text;
};

/// A verdict that a remedy moves, other than the one it is for.
struct MovedVerdict {
  std::string_view id;
  int stage = -1;
  std::string title;
  double before = kUnset;  ///< margin; NaN = open
  double after = kUnset;
  CheckState was = CheckState::Open;
  CheckState becomes = CheckState::Open;

  bool worsens() const { return becomes > was; }  ///< holds, close, short, open
};

/// One change after which a margin reaches the target.
struct Remedy {
  RemedyKind kind = RemedyKind::Field;
  InputRole role = InputRole::Design;
  std::string path;   ///< field; of parts the stage's ratio, of a motor its mass
  std::string label;  ///< "motor rotor inertia", "stage 2 ratio", the motor's name
  Quantity quantity = Quantity::Number;
  std::string_view unit;  ///< display unit
  double from = kUnset;   ///< [internal unit]
  double to = kUnset;
  double change = 0;             ///< [1] relative, of the value's scale (StudyInput)
  std::vector<FieldEdit> edits;  ///< what to type; empty for a motor
  std::optional<MotorEntry> motor;
  double margin = kUnset;            ///< of the check it is for
  std::vector<MovedVerdict> others;  ///< those it makes worse first
};

/// An input on which the margin depends and which does not restore it alone.
struct NoRemedy {
  InputRole role = InputRole::Design;
  std::string path;
  std::string label;
  Quantity quantity = Quantity::Number;
  std::string_view unit;
  double from = kUnset;
  double reached = kUnset;  ///< [internal unit] where the margin is best, within what was tried
  double margin = kUnset;   ///< there
};

/// What would make one verdict hold.
struct CheckRemedies {
  std::string_view id;
  int stage = -1;
  std::string title;
  double margin = kUnset;
  CheckState state = CheckState::Open;
  std::vector<Remedy> remedies;  ///< the designer's own first, each by size of the change
  std::vector<NoRemedy> cannot;
};

struct Remedies {
  double target = 0;  ///< margin that is restored
  std::vector<CheckRemedies> checks;
  bool stopped = false;

  const CheckRemedies* of(std::string_view id, int stage) const;
};

struct RemedyRequest {
  std::string check;  ///< id; empty = every short or close verdict
  int stage = -1;
  std::vector<MotorEntry> motors;  ///< to choose from; may be empty
};

/// For each short or close verdict the smallest change of one input that restores the target
/// margin, by root search on the full evaluation (change_scan.h). Inputs are those of studyInputs
/// that are not given by nature; each may go from a tenth to ten times its value, within its range,
/// losses and play only to better ones. A value is rounded outward to seven digits, so that it
/// reads well and the margin is reached. A ratio that follows from parts goes to the nearest one
/// that can be built (realizableRatios) with as many sets. Of the motors the nearest in mass is
/// taken (in lasting torque, where a mass is not stated), among the 512 nearest;
/// one that spoils no
/// other verdict goes before all others, then one with a brake where there is a brake now. Other verdicts are judged by the same
/// evaluation. The result does not depend on the number of threads. A stop takes effect after the
/// evaluations at work.
Remedies remedies(const Project& project, const RemedyRequest& request = {},
                  const StudyRun& run = {});

/// Changes the project as the remedy says. Fails only if the project is not the one it was found
/// for.
tl::expected<void, InputError> applyRemedy(Project& project, const Remedy& remedy);

}  // namespace jw
