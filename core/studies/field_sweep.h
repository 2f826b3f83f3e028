#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <Eigen/Core>
#include <tl/expected.hpp>

#include "core/model/field_catalogue.h"
#include "core/studies/contour_lines.h"
#include "core/studies/design_points.h"

namespace jw {

/// Most points of one axis of a sweep, and of a map in all.
inline constexpr std::size_t kMostSweepPoints = 100'000;

/// One field and the values it takes.
struct SweepAxis {
  std::string path;
  const FieldInfo* info = nullptr;
  std::vector<double> value;  ///< [internal unit] rising
};

/// Reads "40..160:1" (steps of 1) or "40..160/25" (25 values, evenly spread), each number with a
/// unit or in the field's own: "0.5 kg..5 kg:0.5 kg". The last value is kept even if no step meets
/// it within a millionth of one. Fails, saying what is expected, on fields that are no numbers, on
/// values that the field does not allow, on ranges that do not rise and on more than
/// kMostSweepPoints.
tl::expected<SweepAxis, InputError> readSweepAxis(const Project& project, std::string_view path,
                                                  std::string_view range);

/// The values of a range alone, for a quantity with no field of its own.
tl::expected<std::vector<double>, InputError> readSweepRange(const FieldInfo& info,
                                                             std::string_view range);

/// The joint over a range of one field.
struct FieldSweep {
  SweepAxis axis;
  std::vector<DesignPoint> points;
  std::vector<MarginColumn> checks;
  std::vector<QuantityColumn> quantities;
  bool stopped = false;
};

/// Every check and headline figure over the axis. A stage's ratio is changed as withStageRatio
/// does.
FieldSweep fieldSweep(const Project& project, const SweepAxis& axis, const StudyRun& run = {});

/// The smallest margin over two fields.
struct FieldMap {
  SweepAxis across;                  ///< columns
  SweepAxis up;                      ///< rows
  Eigen::ArrayXXd worst;             ///< smallest margin; NaN if a check became open, none short
  Eigen::ArrayXXi worstAt;           ///< index into checks, of the open one if so; -1 = none known
  std::vector<MarginColumn> checks;  ///< margins without values: ids and titles
  std::vector<ContourLine> edge;     ///< where the smallest margin is 0
  bool stopped = false;
};

/// The map and the contour on which it begins to hold. Both axes must name different fields.
FieldMap fieldMap(const Project& project, const SweepAxis& across, const SweepAxis& up,
                  const StudyRun& run = {});

}  // namespace jw
