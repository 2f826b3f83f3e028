#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/studies/field_sweep.h"
#include "core/studies/ratio_sweep.h"

namespace jw {

/// From where to where something is varied [internal unit].
struct StudyRange {
  double from = kUnset;
  double to = kUnset;
  bool rises() const { return to > from; }
  bool operator==(const StudyRange&) const = default;
};

/// Points of a ratio sweep and of a sweep of one field; of a map on each side.
inline constexpr std::size_t kRatioPoints = 200;
inline constexpr std::size_t kSweepPoints = 100;
inline constexpr std::size_t kMapSide = 40;

/// Ratio of one stage, or from motor to joint (`stage` -1), as the evaluation found it; unset where
/// it is not known.
double presentRatio(const Evaluation& evaluation, int stage);

/// From a quarter to four times the present ratio, not beyond what one reducer of the stage's
/// family reaches (FamilyRule; of the leading stage for the ratio from motor to joint), but always
/// around the present one. Two digits. Empty where the ratio is not known.
std::optional<StudyRange> usualRatioRange(const Project& project, const Evaluation& evaluation,
                                          int stage);

/// `count` ratios from one end to the other, each larger than the last by the same factor.
std::vector<double> ratiosBetween(const StudyRange& range, std::size_t count = kRatioPoints);

/// The sweep that a picture shows when nobody has asked for another one. Empty where no ratio is
/// known.
std::optional<RatioSweepRequest> usualRatioSweep(const Project& project,
                                                 const Evaluation& evaluation);

/// Every number of the project that has a value and matters with the other values.
std::vector<FieldRef> sweepFields(const Project& project);

/// From half to twice the value, within what the field allows; 30 K to either side of a
/// temperature; a value of 0 goes up to 1 of the display unit.
StudyRange usualFieldRange(const FieldRef& field);

/// Values of one field, evenly spread; whole numbers where the field asks for them.
SweepAxis axisBetween(const FieldRef& field, const StudyRange& range, std::size_t count);

/// The axis over the usual range of the field that tells most: the payload's mass, else the first
/// field of sweepFields. `other` is left out. Empty where there is none.
std::optional<SweepAxis> usualAxis(const Project& project, std::size_t count,
                                   const std::string& other = {});

}  // namespace jw
