#pragma once

#include <Eigen/Core>

namespace jw {

/// A measured heating or cooling curve; equal sizes, at least six rows.
struct HeatCurve {
  Eigen::ArrayXd time;     ///< [s] strictly rising
  Eigen::ArrayXd winding;  ///< [°C]
  Eigen::ArrayXd housing;  ///< [°C]; empty when it was not measured
  Eigen::ArrayXd power;    ///< [W] heat into the winding from each row to the next
  double ambient = 0;      ///< [°C]
};

}  // namespace jw
