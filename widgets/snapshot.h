#pragma once

#include <memory>

#include <QtGlobal>

#include "core/checks/evaluation.h"
#include "core/model/project.h"
#include "core/studies/plot_studies.h"

namespace jw {

struct Sensitivities;
struct RatioSweep;
struct FieldSweep;
struct FieldMap;
struct Tolerance;
struct ToleranceEnvelope;
struct FamilyStudy;
struct SearchStudy;

/// What every view shows: one project value and the evaluation that belongs to it (or, when
/// `stale`, the last good one, of an earlier revision). Immutable, shared between views.
struct Snapshot {
  std::shared_ptr<const Project> project;
  std::shared_ptr<const Evaluation> evaluation;  ///< of evaluatedProject; null before the first
  std::shared_ptr<const Project> evaluatedProject;
  std::shared_ptr<const PlotStudies> studies;          ///< of evaluatedProject; null until computed
  std::shared_ptr<const Sensitivities> sensitivities;  ///< of evaluatedProject; null until known
  std::shared_ptr<const RatioSweep> ratios;  ///< what the Ratio figure shows; null = none yet
  std::shared_ptr<const FieldSweep> sweep;   ///< likewise, its picture of one input
  std::shared_ptr<const FieldMap> map;       ///< likewise, of two
  std::shared_ptr<const ToleranceEnvelope> toleranceEnvelope;
  std::shared_ptr<const Tolerance> tolerance;   ///< likewise of Tolerance
  std::shared_ptr<const FamilyStudy> families;  ///< likewise of Families
  std::shared_ptr<const SearchStudy> search;    ///< likewise of Search
  quint64 revision = 0;
  double evaluationSeconds = 0;
  double instant =
      kUnset;          ///< [s] of pictures on paper that show one; unset = the cycle's extremes
  bool stale = false;  ///< evaluation belongs to an earlier revision, or an entry is wrong

  /// Samples of the cycle from which its curves are drawn; empty = all.
  const std::vector<Eigen::Index>& shownSamples() const {
    static const std::vector<Eigen::Index> kAll;
    return studies ? studies->shownSamples : kAll;
  }
};

}  // namespace jw
