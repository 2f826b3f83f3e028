#pragma once

#include <vector>

#include <Eigen/Core>

namespace jw {

/// Samples that are extreme in at least one of 26 directions of the space of three values, each
/// scaled to its largest size: the corners of a cycle. At most `most`, in rising order, those of
/// single values first where there are more. Real samples only: a limit broken at one is broken.
std::vector<Eigen::Index> extremeSamples(const Eigen::ArrayXd& a, const Eigen::ArrayXd& b,
                                         const Eigen::ArrayXd& c, std::size_t most);

}  // namespace jw
