#pragma once

#include <vector>

#include <Eigen/Core>

#include "core/studies/load_fit.h"

namespace jw {

/// Columns of some terms, each scaled to length 1.
struct ScaledColumns {
  Eigen::MatrixXd matrix;  ///< one column for each term
  Eigen::VectorXd length;  ///< of the columns before
  std::vector<Eigen::Index> terms;
};

/// The columns of `terms` out of the triangle of all.
ScaledColumns scaledColumns(const Eigen::MatrixXd& triangle,
                            const std::vector<Eigen::Index>& terms);

/// Takes terms out of the fit whose column is all 0: nothing in the rows tells them.
void dropEmptyTerms(LoadFit& fit, const Eigen::MatrixXd& triangle);

/// Takes one of the terms out that the rows cannot tell apart, the offset first, with a note.
void dropOneTerm(LoadFit& fit, const ScaledColumns& columns);

/// Notes terms that are hard to tell apart, negative where they cannot be, or lost in the noise.
void noteDoubts(LoadFit& fit, const LoadFitData& data, const ScaledColumns& columns);

}  // namespace jw
