#pragma once

#include <string>
#include <vector>

#include "core/model/field_catalogue.h"

namespace jw {

/// Whose choice an input is.
enum class InputRole {
  Design,    ///< the designer's: supply, controller, motor, chain, build of the link
  AsksLess,  ///< of the job: payload, moves, requirements
  Given,     ///< surroundings, constants, conditions under which a data sheet states a figure
};

/// Where a designer would not go on purpose: more loss or play.
enum class BetterWay { Either, Up, Down };

/// A numeric input that is set, for studies that change one at a time.
struct StudyInput {
  std::string path;
  const FieldInfo* info = nullptr;
  double value = 0;  ///< [internal unit]
  double scale = 0;  ///< [internal unit] what counts as 100 %, with the sign of the value
  InputRole role = InputRole::Design;
  BetterWay way = BetterWay::Either;

  /// The value after a relative change [1].
  double changed(double relative) const { return value + relative * scale; }
  bool isWhole() const { return info->kind == FieldKind::Integer; }
};

/// "motor rotor inertia", "link inertia", "strain wave ratio": the field and whose it is, for lists
/// that stand apart from the form.
std::string inputLabel(const Project& project, const StudyInput& input);

/// Every numeric field that is set, not 0 and matters with its neighbours, in the order of the
/// catalogue. 100 % is the value itself; of a temperature its rise over the ambient, of the ambient
/// its distance below the winding limit. Left out are places on a scale without a zero of its own
/// (angles of mounting and of targets, directions), counts that only go together (teeth) or that
/// describe the cycle, what no margin reads (target margin, band of
/// acceptance), and constants (gravity, exponents of life, materials).
std::vector<StudyInput> studyInputs(const Project& project);

/// One input of a project, to be set again and again.
class ChangedInput {
 public:
  ChangedInput(const Project& project, const StudyInput& input);
  ChangedInput(const ChangedInput&) = delete;
  ChangedInput& operator=(const ChangedInput&) = delete;

  /// Sets the value [internal unit]; the text as typed stays behind. Does not look at the range.
  const Project& with(double value);

 private:
  Project project_;
  FieldRef field_;
};

}  // namespace jw
