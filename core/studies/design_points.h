#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "core/checks/evaluation.h"
#include "core/studies/study_run.h"

namespace jw {

/// One check of one design.
struct PointMargin {
  std::string_view id;
  int stage = -1;
  double margin = kUnset;  ///< NaN = open
  bool is(std::string_view otherId, int otherStage) const {
    return id == otherId && stage == otherStage;
  }
};

/// What studies keep of one evaluation.
struct DesignPoint {
  std::vector<PointMargin> margins;
  std::vector<double> quantities;  ///< in the order of headlineQuantities
  double worst = kUnset;           ///< smallest margin that is known; NaN if none is
  int worstAt = -1;                ///< index into margins
  int openAt = -1;                 ///< of a check that other points of the study know; -1 = none
  int opened = 0;                  ///< how many of these there are
  double lossMean = kUnset;        ///< [W] mean of the supply's power that does not reach the load

  /// Margin of one check; NaN if it is open or not there.
  double marginOf(std::string_view id, int stage) const;
  /// None is short, none became open and one at least is known.
  bool holds() const { return worst >= 0 && openAt < 0; }
  /// None that is known is short.
  bool noneShort() const { return worst >= 0; }
};

DesignPoint designPoint(const Evaluation& evaluation);

/// Notes in a point which checks are open there although `known` knows them: something cannot be
/// worked out there, such as a ratio beyond what a stage's data allow.
void noteOpenCheck(DesignPoint& point, const DesignPoint& known);

/// The same for all points of a study, against what any of them knows.
void noteOpenChecks(std::vector<DesignPoint>& points);

/// What people call a check: "Drive life, stage 2", as in `base` if it has it.
std::string checkTitle(std::string_view id, int stage, const Evaluation& base);

/// One check's margin over the points of a study.
struct MarginColumn {
  std::string_view id;
  int stage = -1;
  std::string title;
  std::vector<double> margin;  ///< one for each point; NaN = open, or not asked there
};

/// One headline figure over the points of a study [internal unit].
struct QuantityColumn {
  std::string_view id;
  std::string_view label;
  Quantity quantity = Quantity::Number;
  std::string_view unit;
  std::vector<double> value;
};

/// The columns of all checks that any point has, in the order of the power path; `base` gives the
/// titles.
std::vector<MarginColumn> marginColumns(const std::vector<DesignPoint>& points,
                                        const Evaluation& base);

std::vector<QuantityColumn> quantityColumns(const std::vector<DesignPoint>& points,
                                            const Evaluation& base);

/// Evaluates `count` designs, each made by `design`, on all cores. Where a stop was asked for, the
/// points left out are without margins.
std::vector<DesignPoint> evaluatePoints(std::size_t count,
                                        const std::function<Project(std::size_t)>& design,
                                        const StudyRun& run);

}  // namespace jw
