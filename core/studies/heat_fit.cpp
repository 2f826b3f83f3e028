#include "core/studies/heat_fit.h"

#include <cmath>

#include <fmt/format.h>
#include <Eigen/LU>
#include <Eigen/QR>
#include <unsupported/Eigen/NonLinearOptimization>
#include <unsupported/Eigen/NumericalDiff>

#include "core/physics/winding_heat.h"

namespace jw {
namespace {

using Eigen::ArrayXd;
using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::Vector2d;
using Eigen::VectorXd;

HeatNetwork networkOf(const VectorXd& logs, double ambient) {
  HeatNetwork n;
  n.windingToHousing = std::exp(logs[0]);
  n.housingToAmbient = std::exp(logs[1]);
  n.windingCapacity = std::exp(logs[2]);
  n.housingCapacity = std::exp(logs[3]);
  n.ambient = ambient;
  return n;
}

/// Housing at the first row: measured, or as far up as a resting network would have it.
double firstHousing(const HeatCurve& curve, const HeatNetwork& network) {
  if (curve.housing.size() > 0) return curve.housing[0];
  const double share =
      network.housingToAmbient / (network.housingToAmbient + network.windingToHousing);
  const double rise = curve.winding[0] - curve.ambient;
  // A cooling curve starts from rest under load; a heating curve starts all cold.
  return curve.ambient +
         (curve.winding[0] > curve.winding[curve.winding.size() - 1] ? share : 1) * rise;
}

/// Both temperatures [°C] at the curve's times: 2 x n.
Eigen::Array2Xd simulate(const HeatCurve& curve, const HeatNetwork& network) {
  const Index n = curve.time.size();
  Eigen::Array2Xd states(2, n);
  Vector2d at{curve.winding[0], firstHousing(curve, network)};
  for (Index i = 0; i < n; ++i) {
    states.col(i) = at.array();
    if (i + 1 == n) break;
    at = heatStep(network, curve.power[i], 0, curve.time[i + 1] - curve.time[i])(at);
  }
  return states;
}

/// Residuals for Eigen's Levenberg-Marquardt, with derivatives by differences.
struct Residuals {
  using Scalar = double;
  using InputType = VectorXd;
  using ValueType = VectorXd;
  using JacobianType = MatrixXd;
  enum { InputsAtCompileTime = Eigen::Dynamic, ValuesAtCompileTime = Eigen::Dynamic };

  const HeatCurve& curve;

  int inputs() const { return 4; }
  int values() const { return static_cast<int>(curve.winding.size() + curve.housing.size()); }
  int operator()(const VectorXd& logs, VectorXd& out) const {
    const Eigen::Array2Xd states = simulate(curve, networkOf(logs, curve.ambient));
    out.head(curve.winding.size()) = curve.winding - states.row(0).transpose();
    if (curve.housing.size() > 0) {
      out.tail(curve.housing.size()) = curve.housing - states.row(1).transpose();
    }
    return out.allFinite() ? 0 : -1;
  }
};

InputError refuse(std::string what, std::string remedy) {
  return {std::move(what), "heating curve", std::move(remedy)};
}

tl::expected<void, InputError> validate(const HeatCurve& curve) {
  const Index n = curve.time.size();
  if (curve.winding.size() != n || curve.power.size() != n ||
      (curve.housing.size() != 0 && curve.housing.size() != n)) {
    return tl::unexpected(refuse("the columns differ in length", "give every row all its values"));
  }
  if (!std::isfinite(curve.ambient)) {
    return tl::unexpected(refuse("the ambient is no number", "give the ambient temperature"));
  }
  if (n < 6) {
    return tl::unexpected(refuse(fmt::format("{} rows are too few", n), "give six rows or more"));
  }
  for (Index i = 0; i < n; ++i) {
    const bool finite = std::isfinite(curve.time[i]) && std::isfinite(curve.winding[i]) &&
                        std::isfinite(curve.power[i]) &&
                        (curve.housing.size() == 0 || std::isfinite(curve.housing[i]));
    if (!finite) {
      return tl::unexpected(refuse(fmt::format("row {} holds a value that is no number", i + 1),
                                   "remove or correct the row"));
    }
    if (i > 0 && curve.time[i] <= curve.time[i - 1]) {
      return tl::unexpected(
          refuse(fmt::format("time does not rise at row {}", i + 1), "sort the rows by time"));
    }
  }
  if ((curve.power.head(n - 1) == 0).all()) {
    return tl::unexpected(
        refuse("no power in any row: cooling alone shows time constants, but no "
               "resistance or heat capacity",
               "add rows of heating with their power"));
  }
  // A wrong ambient fits as smoothly as the right one, with wrong values.
  constexpr double kAmbientSlip = 2;  // [K]
  if (curve.winding.minCoeff() < curve.ambient - kAmbientSlip) {
    return tl::unexpected(
        refuse(fmt::format("the winding is at {}, below the ambient of {}",
                           formatQuantity(curve.winding.minCoeff(), Quantity::Temperature),
                           formatQuantity(curve.ambient, Quantity::Temperature)),
               "type the ambient of the measurement"));
  }
  if ((curve.winding - curve.winding[0]).abs().maxCoeff() < 1) {
    return tl::unexpected(refuse("the winding's temperature hardly changes",
                                 "measure a heating or a cooling of several kelvin"));
  }
  return {};
}

/// Rough values to start from: end rise over mean power, and the whole length as time scale.
VectorXd firstGuess(const HeatCurve& curve) {
  const Index n = curve.time.size();
  const double rise = (curve.winding - curve.ambient).abs().maxCoeff();
  const double power = curve.power.abs().maxCoeff();
  const double total = power > 0 ? rise / power : 1;
  const double length = curve.time[n - 1] - curve.time[0];
  VectorXd logs(4);
  logs << std::log(total / 3), std::log(total * 2 / 3), std::log(length / 30 / (total / 3)),
      std::log(length / 3 / total);
  return logs;
}

FittedValue fitted(double log, double variance) {
  return {std::exp(log), std::exp(log) * std::sqrt(variance)};
}

}  // namespace

tl::expected<HeatFit, InputError> fitHeat(const HeatCurve& curve) {
  if (auto valid = validate(curve); !valid) return tl::unexpected(valid.error());
  Residuals residuals{curve};
  Eigen::NumericalDiff<Residuals, Eigen::Central> derived(residuals, 1e-10);
  Eigen::LevenbergMarquardt<decltype(derived)> solver(derived);
  solver.parameters.maxfev = 4000;
  VectorXd logs = firstGuess(curve);
  solver.minimize(logs);
  VectorXd left(residuals.values());
  MatrixXd slope(residuals.values(), 4);
  if (residuals(logs, left) != 0) {
    return tl::unexpected(refuse("no network fits this curve", "check units and signs"));
  }
  derived.df(logs, slope);
  const double variance = left.squaredNorm() / std::max<double>(1, residuals.values() - 4.0);
  Eigen::ColPivHouseholderQR<MatrixXd> factors(slope);
  factors.setThreshold(1e-6);  // derivatives by differences are no better
  const MatrixXd covariance = variance * (slope.transpose() * slope).inverse();
  // A value known to no better than its own size is not known.
  if (factors.rank() < 4 || !(covariance.diagonal().maxCoeff() < 1)) {
    return tl::unexpected(refuse("the curve cannot tell all four values apart",
                                 "measure longer, or the housing's temperature too"));
  }
  HeatFit fit;
  fit.windingToHousing = fitted(logs[0], covariance(0, 0));
  fit.housingToAmbient = fitted(logs[1], covariance(1, 1));
  fit.windingCapacity = fitted(logs[2], covariance(2, 2));
  fit.housingCapacity = fitted(logs[3], covariance(3, 3));
  fit.winding = simulate(curve, networkOf(logs, curve.ambient)).row(0).transpose();
  fit.residual = curve.winding - fit.winding;
  fit.residualRms = std::sqrt(fit.residual.square().mean());
  return fit;
}

}  // namespace jw
