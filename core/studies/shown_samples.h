#pragma once

#include <vector>

#include <Eigen/Core>

#include "core/checks/evaluation.h"

namespace jw {

/// Cycles of more samples than this are drawn from some of them.
inline constexpr Eigen::Index kMostDrawnSamples = 20'000;

/// The samples from which the whole cycle is drawn with nothing lost from its peaks, rising: of
/// each of `columns` equal parts of the period the first and last, and of every curve over the
/// cycle the lowest and highest; parts of few samples whole. Empty where all samples are drawn.
/// O(samples x curves).
std::vector<Eigen::Index> shownSamples(const Evaluation& evaluation, int columns = 1500);

/// The values at `samples`, all of them if that is empty.
Eigen::ArrayXd picked(const Eigen::ArrayXd& values, const std::vector<Eigen::Index>& samples);

}  // namespace jw
