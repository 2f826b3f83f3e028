#include "core/studies/load_fit.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <fmt/format.h>
#include <Eigen/QR>

#include "core/studies/load_fit_notes.h"

namespace jw {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr Index kColumns = static_cast<Index>(kLoadTerms) + 1;  // and the torque
constexpr std::size_t kFewestRows = 20;
constexpr double kRestShare = 0.02;      // of the fastest speed
constexpr double kSameDirection = 1e-7;  // of scaled columns: cannot be told apart

using Row = std::array<double, kLoadTerms>;

double signOf(double speed, double rest) {
  return std::abs(speed) < rest || speed == 0 ? 0 : std::copysign(1.0, speed);
}

/// Triangle of a QR decomposition of many rows, taken in blocks.
class RowTriangle {
 public:
  RowTriangle() : block_(MatrixXd::Zero(kBlock, kColumns)) {}

  void add(const Row& row, double torque) {
    for (std::size_t k = 0; k < kLoadTerms; ++k) block_(used_, static_cast<Index>(k)) = row[k];
    block_(used_, kColumns - 1) = torque;
    if (++used_ == kBlock) reduce();
  }

  MatrixXd triangle() {
    reduce();
    return block_.topRows(kColumns);
  }

 private:
  static constexpr Index kBlock = 2048;

  void reduce() {
    block_.bottomRows(kBlock - used_).setZero();
    Eigen::HouseholderQR<Eigen::Ref<MatrixXd>> qr(block_);
    const MatrixXd triangle = qr.matrixQR().topRows(kColumns).triangularView<Eigen::Upper>();
    block_.topRows(kColumns) = triangle;
    used_ = kColumns;
  }

  MatrixXd block_;
  Index used_ = 0;
};

InputError refuse(std::string what, std::string remedy) {
  return {std::move(what), "load fit", std::move(remedy)};
}

class LoadFitter {
 public:
  LoadFitter(const LoadFitData& data, const LoadFitOptions& options)
      : data_(data), options_(options) {}

  tl::expected<LoadFit, InputError> fit() {
    if (auto valid = validate(); !valid) return tl::unexpected(valid.error());
    findRest();
    accumulate();
    if (fit_.rows < kFewestRows)
      return tl::unexpected(
          refuse(fmt::format("{} rows are too few", fit_.rows),
                 fmt::format("choose a stretch with {} moving rows or more", kFewestRows)));
    fit_.fitted = options_.terms;
    if (auto solved = solve(); !solved) return tl::unexpected(solved.error());
    evaluateRows();
    if (!(fit_.rSquared <= 1))
      return tl::unexpected(refuse("the torque does not change", "check the column of torque"));
    widen();
    noteDoubts(fit_, data_, columns_);
    return std::move(fit_);
  }

 private:
  bool coulomb() const { return options_.terms[static_cast<std::size_t>(LoadTerm::Coulomb)]; }

  tl::expected<void, InputError> validate() const {
    const std::size_t n = data_.position.size();
    if (data_.speed.size() != n || data_.acceleration.size() != n || data_.torque.size() != n)
      return tl::unexpected(
          refuse("the columns differ in length", "measure torque and motion in the same rows"));
    if (std::none_of(options_.terms.begin(), options_.terms.end(), [](bool b) { return b; }))
      return tl::unexpected(refuse("no term is to be fitted", "choose at least one"));
    for (std::size_t i = 0; i < n; ++i)
      if (!std::isfinite(data_.position[i] + data_.speed[i] + data_.acceleration[i]) ||
          std::isinf(data_.torque[i]))
        return tl::unexpected(refuse(fmt::format("row {} holds a value that is no number", i + 1),
                                     "leave the row out"));
    return {};
  }

  void findRest() {
    double fastest = 0;
    for (const double v : data_.speed) fastest = std::max(fastest, std::abs(v));
    fit_.restSpeed = isSet(options_.restSpeed) ? options_.restSpeed : kRestShare * fastest;
  }

  /// Whether a row takes part.
  bool counts(std::size_t i) const {
    return std::isfinite(data_.torque[i]) &&
           !(coulomb() && signOf(data_.speed[i], fit_.restSpeed) == 0);
  }

  Row rowAt(std::size_t i) const {
    const double q = data_.position[i], v = data_.speed[i];
    return {data_.acceleration[i], std::cos(q), std::sin(q), v, signOf(v, fit_.restSpeed), 1};
  }

  /// What is known of the torque beforehand.
  double knownAt(std::size_t i) const {
    const double extension =
        options_.extension.given() ? options_.extension.torqueAt(data_.position[i]) : 0;
    return options_.springStiffness * (data_.position[i] - options_.springAngle) + extension +
           options_.reflectedInertia * data_.acceleration[i];
  }

  void accumulate() {
    RowTriangle rows;
    for (std::size_t i = 0; i < data_.position.size(); ++i) {
      if (counts(i)) {
        rows.add(rowAt(i), data_.torque[i] - knownAt(i));
        ++fit_.rows;
      } else if (std::isfinite(data_.torque[i])) {
        ++fit_.restRows;
      }
    }
    triangle_ = rows.triangle();
  }

  std::vector<Index> chosen() const {
    std::vector<Index> terms;
    for (std::size_t k = 0; k < kLoadTerms; ++k)
      if (fit_.fitted[k]) terms.push_back(static_cast<Index>(k));
    return terms;
  }

  /// Solves for the terms that the rows tell apart; the others are taken out of fit_.fitted.
  tl::expected<void, InputError> solve() {
    dropEmptyTerms(fit_, triangle_);
    for (;;) {
      const std::vector<Index> terms = chosen();
      if (terms.empty())
        return tl::unexpected(refuse("nothing moves in these rows", "choose another stretch"));
      columns_ = scaledColumns(triangle_, terms);
      Eigen::ColPivHouseholderQR<MatrixXd> qr(columns_.matrix);
      qr.setThreshold(kSameDirection);
      if (qr.rank() == columns_.matrix.cols()) {
        take(qr, terms);
        return {};
      }
      dropOneTerm(fit_, columns_);
    }
  }

  void take(const Eigen::ColPivHouseholderQR<MatrixXd>& qr, const std::vector<Index>& terms) {
    const VectorXd right = triangle_.col(kColumns - 1);
    const VectorXd solution = qr.solve(right).cwiseQuotient(columns_.length);
    const MatrixXd inverse = (columns_.matrix.transpose() * columns_.matrix)
                                 .ldlt()
                                 .solve(MatrixXd::Identity(solution.size(), solution.size()));
    constexpr double kNone = std::numeric_limits<double>::quiet_NaN();
    fit_.terms.fill({kNone, kNone});
    fit_.covariance.setZero();
    for (std::size_t i = 0; i < terms.size(); ++i) {
      const auto a = static_cast<Index>(i);
      fit_.terms[static_cast<std::size_t>(terms[i])].value = solution[a];
      for (std::size_t j = 0; j < terms.size(); ++j) {
        const auto b = static_cast<Index>(j);
        fit_.covariance(terms[i], terms[j]) =
            inverse(a, b) / (columns_.length[a] * columns_.length[b]);
      }
    }
  }

  double modelAt(std::size_t i) const {
    const Row row = rowAt(i);
    double torque = knownAt(i);
    for (std::size_t k = 0; k < kLoadTerms; ++k)
      if (fit_.fitted[k]) torque += fit_.terms[k].value * row[k];
    return torque;
  }

  /// Modelled torque of every row, and what the residuals are like.
  void evaluateRows() {
    fit_.torque.resize(data_.position.size());
    double sum = 0, squares = 0, left = 0, products = 0, before = 0;
    for (std::size_t i = 0; i < fit_.torque.size(); ++i) {
      fit_.torque[i] = modelAt(i);
      if (!counts(i)) continue;
      const double residual = data_.torque[i] - fit_.torque[i];
      sum += data_.torque[i];
      squares += data_.torque[i] * data_.torque[i];
      left += residual * residual;
      products += residual * before;
      before = residual;
      fit_.residualPeak = std::max(fit_.residualPeak, std::abs(residual));
    }
    const auto n = static_cast<double>(fit_.rows);
    const double about = squares - sum * sum / n;
    fit_.residualRms = std::sqrt(left / n);
    fit_.rSquared =
        about > 1e-24 * squares ? 1 - left / about : std::numeric_limits<double>::quiet_NaN();
    fit_.autocorrelation = left > 0 ? products / left : 0;
  }

  /// Turns the inverse of X'X into the covariance and fills in the uncertainties.
  void widen() {
    const auto n = static_cast<double>(fit_.rows);
    const auto terms = static_cast<double>(chosen().size());
    const double r = std::clamp(fit_.autocorrelation, 0.0, 1 - 1 / n);
    fit_.effectiveRows = n * (1 - r) / (1 + r);
    const double variance = fit_.residualRms * fit_.residualRms * n / (n - terms);
    fit_.covariance *= variance * (1 + r) / (1 - r);
    for (std::size_t k = 0; k < kLoadTerms; ++k) {
      const auto at = static_cast<Index>(k);
      if (fit_.fitted[k]) fit_.terms[k].uncertainty = std::sqrt(fit_.covariance(at, at));
    }
  }

  const LoadFitData& data_;
  const LoadFitOptions& options_;
  LoadFit fit_;
  MatrixXd triangle_;
  ScaledColumns columns_;
};

}  // namespace

std::string_view nameOf(LoadTerm term) {
  static constexpr std::array<std::string_view, kLoadTerms> kNames{
      "inertia",          "gravity (cos q)",  "gravity (sin q)",
      "viscous friction", "Coulomb friction", "constant torque"};
  return kNames[static_cast<std::size_t>(term)];
}

Quantity quantityOf(LoadTerm term) {
  if (term == LoadTerm::Inertia) return Quantity::Inertia;
  return term == LoadTerm::Viscous ? Quantity::TorsionalDamping : Quantity::Torque;
}

std::string_view unitOf(LoadTerm term) { return quantityInfo(quantityOf(term)).internalUnit; }

LoadFitData loadFitData(const LogMotion& motion, const std::vector<double>& torque,
                        std::size_t first, std::size_t last) {
  const auto part = [&](const std::vector<double>& column) {
    return std::span(column).subspan(first, last + 1 - first);
  };
  return {part(motion.position), part(motion.speed), part(motion.acceleration), part(torque)};
}

std::vector<double> jointTorque(const std::vector<double>& current, double torqueConstant,
                                double ratio, double efficiency) {
  std::vector<double> torque(current);
  for (double& value : torque) value *= torqueConstant * ratio * efficiency;
  return torque;
}

tl::expected<LoadFit, InputError> fitLoad(const LoadFitData& data, const LoadFitOptions& options) {
  return LoadFitter(data, options).fit();
}

}  // namespace jw
