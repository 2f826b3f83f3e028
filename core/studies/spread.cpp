#include "core/studies/spread.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include <boost/math/distributions/beta.hpp>

#include "core/model/unset.h"

namespace jw {
namespace {

/// Value below which the share lies, linear between the sorted values at (k - 1/2) / n.
double quantile(const std::vector<double>& sorted, double share) {
  const double place = share * static_cast<double>(sorted.size()) - 0.5;
  const double last = static_cast<double>(sorted.size() - 1);
  const double at = std::clamp(place, 0.0, last);
  const auto low = static_cast<std::size_t>(at);
  const double part = at - static_cast<double>(low);
  if (part == 0 || sorted[low] == sorted[low + 1]) return sorted[low];
  return (1 - part) * sorted[low] + part * sorted[low + 1];
}

}  // namespace

Spread spreadOf(const std::vector<double>& values) {
  std::vector<double> known;
  std::copy_if(values.begin(), values.end(), std::back_inserter(known), isSet);
  const double n = static_cast<double>(known.size());
  if (known.empty()) return {0, kUnset, kUnset, kUnset, kUnset, kUnset};
  std::sort(known.begin(), known.end());
  Spread spread{known.size(),          kUnset, kUnset, quantile(known, 0.025), quantile(known, 0.5),
                quantile(known, 0.975)};
  if (!std::isfinite(known.front()) || !std::isfinite(known.back())) return spread;
  spread.mean = std::accumulate(known.begin(), known.end(), 0.0) / n;
  double squares = 0;
  for (const double value : known) squares += (value - spread.mean) * (value - spread.mean);
  spread.deviation = n > 1 ? std::sqrt(squares / (n - 1)) : 0;
  return spread;
}

Proportion proportionOf(std::size_t hits, std::size_t count) {
  if (count == 0) return {kUnset, kUnset, kUnset};
  const double k = static_cast<double>(hits), n = static_cast<double>(count);
  Proportion proportion{k / n, 0, 1};
  using Beta = boost::math::beta_distribution<>;
  if (hits > 0) proportion.low = boost::math::quantile(Beta(k, n - k + 1), 0.025);
  if (hits < count) proportion.high = boost::math::quantile(Beta(k + 1, n - k), 0.975);
  return proportion;
}

std::vector<double> ranksOf(const std::vector<double>& values) {
  std::vector<std::size_t> order;
  for (std::size_t k = 0; k < values.size(); ++k) {
    if (isSet(values[k])) order.push_back(k);
  }
  std::sort(order.begin(), order.end(),
            [&](std::size_t a, std::size_t b) { return values[a] < values[b]; });
  std::vector<double> ranks(values.size(), kUnset);
  for (std::size_t k = 0; k < order.size();) {
    std::size_t end = k + 1;
    while (end < order.size() && values[order[end]] == values[order[k]]) ++end;
    const double rank = static_cast<double>(k + 1 + end) / 2;
    for (; k < end; ++k) ranks[order[k]] = rank;
  }
  return ranks;
}

double rankCorrelation(const std::vector<double>& a, const std::vector<double>& b) {
  std::vector<double> x, y;
  for (std::size_t k = 0; k < a.size(); ++k) {
    if (!isSet(a[k]) || !isSet(b[k])) continue;
    x.push_back(a[k]);
    y.push_back(b[k]);
  }
  return correlationOfRanks(ranksOf(x), ranksOf(y));
}

double correlationOfRanks(const std::vector<double>& x, const std::vector<double>& y) {
  const double middle = (static_cast<double>(x.size()) + 1) / 2;
  double xx = 0, yy = 0, xy = 0;
  for (std::size_t k = 0; k < x.size(); ++k) {
    xx += (x[k] - middle) * (x[k] - middle);
    yy += (y[k] - middle) * (y[k] - middle);
    xy += (x[k] - middle) * (y[k] - middle);
  }
  return xx > 0 && yy > 0 ? xy / std::sqrt(xx * yy) : 0;
}

}  // namespace jw
