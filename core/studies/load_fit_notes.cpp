#include "core/studies/load_fit_notes.h"

#include <algorithm>
#include <cmath>
#include <string>

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <Eigen/SVD>

namespace jw {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;

constexpr double kHardToTell = 30;   // condition index
constexpr double kTakesPart = 0.25;  // share of a direction that belongs to a term

LoadTerm termAt(Index index) { return static_cast<LoadTerm>(index); }

/// Terms in the order in which they are given up.
constexpr std::array kGivenUp{LoadTerm::Offset,  LoadTerm::GravitySin, LoadTerm::GravityCos,
                              LoadTerm::Coulomb, LoadTerm::Viscous,    LoadTerm::Inertia};

using Svd = Eigen::JacobiSVD<MatrixXd>;

Svd decompose(const ScaledColumns& columns) { return Svd(columns.matrix, Eigen::ComputeThinV); }

/// The terms that make up a direction of the columns.
std::vector<LoadTerm> termsIn(const Svd& svd, Index direction, const ScaledColumns& columns) {
  std::vector<LoadTerm> terms;
  for (std::size_t k = 0; k < columns.terms.size(); ++k)
    if (std::abs(svd.matrixV()(static_cast<Index>(k), direction)) > kTakesPart)
      terms.push_back(termAt(columns.terms[k]));
  return terms;
}

std::string listOf(const std::vector<LoadTerm>& terms) {
  std::vector<std::string_view> names;
  for (const LoadTerm term : terms) names.push_back(nameOf(term));
  return fmt::format("{}", fmt::join(names, ", "));
}

bool holds(const std::vector<LoadTerm>& terms, LoadTerm term) {
  return std::find(terms.begin(), terms.end(), term) != terms.end();
}

double rangeOf(std::span<const double> values) {
  const auto [low, high] = std::minmax_element(values.begin(), values.end());
  return *high - *low;
}

/// Why the rows can hardly tell these terms apart, and what would.
InputError hardToTell(const std::vector<LoadTerm>& terms, const LoadFitData& data, double index) {
  std::string because, remedy;
  if (holds(terms, LoadTerm::GravityCos) || holds(terms, LoadTerm::GravitySin)) {
    because = fmt::format("the joint moved only {}",
                          formatQuantity(rangeOf(data.position), Quantity::Angle, "deg", 3));
    remedy = "measure over a wider angle, or leave one of them out";
  } else if (holds(terms, LoadTerm::Coulomb) && holds(terms, LoadTerm::Offset)) {
    because = "the joint turned one way nearly all the time";
    remedy = "measure moves in both directions, or leave the constant torque out";
  } else {
    because = "they change together in these rows";
    remedy = "measure moves of different speeds and accelerations, or leave one of them out";
  }
  return {fmt::format("can hardly be told apart: {} ({}; condition index {:.0f})", listOf(terms),
                      because, index),
          "load fit", remedy};
}

void noteConditions(LoadFit& fit, const LoadFitData& data, const ScaledColumns& columns) {
  const Svd svd = decompose(columns);
  const auto& values = svd.singularValues();
  fit.condition = values[0] / values[values.size() - 1];
  for (Index i = values.size() - 1; i > 0 && values[0] > kHardToTell * values[i]; --i)
    fit.notes.push_back(hardToTell(termsIn(svd, i, columns), data, values[0] / values[i]));
}

void noteSigns(LoadFit& fit) {
  for (const LoadTerm term : {LoadTerm::Inertia, LoadTerm::Viscous, LoadTerm::Coulomb}) {
    const FittedValue& found = fit[term];
    if (!fit.has(term) || found.value >= 0) continue;
    const bool clear = found.value < -2 * found.uncertainty;
    fit.notes.push_back(
        {fmt::format("the {} comes out negative: {}", nameOf(term),
                     formatQuantity(found.value, quantityOf(term), unitOf(term), 3)),
         "load fit",
         clear ? "check the signs of torque and motion, or leave terms out"
               : "it is lost in the noise: leave it out, or measure longer"});
  }
}

void noteNoise(LoadFit& fit) {
  std::vector<LoadTerm> lost;
  for (std::size_t k = 0; k < kLoadTerms; ++k)
    if (fit.fitted[k] && std::abs(fit.terms[k].value) < 2 * fit.terms[k].uncertainty)
      lost.push_back(static_cast<LoadTerm>(k));
  if (lost.empty()) return;
  fit.notes.push_back({fmt::format("smaller than twice the uncertainty: {}", listOf(lost)),
                       "load fit", "take it for 0, measure longer, or move more"});
}

}  // namespace

ScaledColumns scaledColumns(const MatrixXd& triangle, const std::vector<Index>& terms) {
  ScaledColumns columns{MatrixXd(triangle.rows(), static_cast<Index>(terms.size())),
                        Eigen::VectorXd(static_cast<Index>(terms.size())), terms};
  for (std::size_t k = 0; k < terms.size(); ++k) {
    const auto at = static_cast<Index>(k);
    columns.length[at] = triangle.col(terms[k]).norm();
    columns.matrix.col(at) = triangle.col(terms[k]) / columns.length[at];
  }
  return columns;
}

void dropEmptyTerms(LoadFit& fit, const MatrixXd& triangle) {
  for (std::size_t k = 0; k < kLoadTerms; ++k) {
    if (!fit.fitted[k] || triangle.col(static_cast<Index>(k)).norm() > 0) continue;
    fit.fitted[k] = false;
    fit.notes.push_back({fmt::format("left out: {} (nothing in these rows shows it)",
                                     nameOf(static_cast<LoadTerm>(k))),
                         "load fit", "choose a stretch in which the joint moves"});
  }
}

void dropOneTerm(LoadFit& fit, const ScaledColumns& columns) {
  const Svd svd = decompose(columns);
  const std::vector<LoadTerm> terms = termsIn(svd, svd.singularValues().size() - 1, columns);
  const auto given =
      std::find_if(kGivenUp.begin(), kGivenUp.end(), [&](LoadTerm t) { return holds(terms, t); });
  fit.fitted[static_cast<std::size_t>(*given)] = false;
  fit.notes.push_back({fmt::format("left out: {} (these rows cannot tell apart: {})",
                                   nameOf(*given), listOf(terms)),
                       "load fit", "measure moves of different angles, speeds and directions"});
}

void noteDoubts(LoadFit& fit, const LoadFitData& data, const ScaledColumns& columns) {
  noteConditions(fit, data, columns);
  noteSigns(fit);
  noteNoise(fit);
}

}  // namespace jw
