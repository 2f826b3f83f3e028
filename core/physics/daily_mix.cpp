#include "core/physics/daily_mix.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include <fmt/format.h>

namespace jw {
namespace {

constexpr double kHour = 3600;           // [s]
constexpr double kShareRounding = 1e-9;  // of shares typed as decimals

std::string titleOf(const Cycle& cycle, std::size_t number) {
  return cycle.name.empty() ? fmt::format("cycle {}", number) : fmt::format("\"{}\"", cycle.name);
}

std::string percent(double share) { return formatQuantity(share, Quantity::Fraction, "%", 4); }

tl::expected<double, InputError> shareOf(const MixEntry& entry, double period) {
  const bool counts = entry.cycle->use == MixUse::PerHour;
  const double given = counts ? entry.cycle->perHour : entry.cycle->dayShare;
  if (given > 0) return counts ? given * period / kHour : given;
  return tl::unexpected(
      InputError{fmt::format("how often {} runs in the daily mix is not set", entry.title),
                 fmt::format("{}.{}", entry.path, counts ? "perHour" : "dayShare"),
                 counts ? "give the runs per hour" : "give its share of the day"});
}

InputError tooMuch(const std::vector<MixEntry>& entries, const std::vector<double>& share,
                   double sum) {
  std::string list;
  for (std::size_t k = 0; k < entries.size(); ++k) {
    if (k > 0) list += k + 1 == entries.size() ? " and " : ", ";
    list += fmt::format("{} {}", entries[k].title, percent(share[k]));
  }
  const auto largest = std::max_element(share.begin(), share.end()) - share.begin();
  const MixEntry& entry = entries[static_cast<std::size_t>(largest)];
  return {fmt::format("the daily mix takes {} of the day: {}", percent(sum), list),
          fmt::format("{}.{}", entry.path,
                      entry.cycle->use == MixUse::PerHour ? "perHour" : "dayShare"),
          "let them take 100 % together at most"};
}

}  // namespace

std::vector<MixEntry> mixEntries(const Project& project) {
  std::vector<MixEntry> entries;
  const auto add = [&](const Cycle& cycle, std::string path, std::size_t number) {
    if (cycle.use != MixUse::NotUsed)
      entries.push_back({&cycle, std::move(path), titleOf(cycle, number)});
  };
  add(project.cycle, "cycle", 1);
  for (std::size_t k = 0; k < project.otherCycles.size(); ++k)
    add(project.otherCycles[k], fmt::format("otherCycles[{}]", k), k + 2);
  return entries;
}

tl::expected<MixShares, InputError> mixShares(const std::vector<MixEntry>& entries,
                                              const std::vector<double>& periods) {
  MixShares shares;
  for (std::size_t k = 0; k < entries.size(); ++k) {
    const auto share = shareOf(entries[k], periods[k]);
    if (!share) return tl::unexpected(share.error());
    shares.share.push_back(*share);
  }
  const double sum = std::accumulate(shares.share.begin(), shares.share.end(), 0.0);
  if (!(sum <= 1 + kShareRounding)) return tl::unexpected(tooMuch(entries, shares.share, sum));
  shares.idle = sum >= 1 - kShareRounding ? 0 : 1 - sum;
  return shares;
}

WearMeans mixedWear(const std::vector<WearMeans>& cycles, const std::vector<double>& share,
                    double exponent) {
  WearMeans mixed;
  double peak = 0, damage = 0;
  for (const WearMeans& cycle : cycles) peak = std::max(peak, cycle.load);
  for (std::size_t k = 0; k < cycles.size(); ++k) {
    const double way = share[k] * cycles[k].speed;
    mixed.speed += way;
    // Relative to the largest, so that no power can overflow.
    if (peak > 0) damage += way * std::pow(cycles[k].load / peak, exponent);
  }
  if (mixed.speed > 0) mixed.load = peak * std::pow(damage / mixed.speed, 1 / exponent);
  return mixed;
}

double mixedMean(const std::vector<double>& values, const std::vector<double>& share) {
  return std::inner_product(values.begin(), values.end(), share.begin(), 0.0);
}

double mixedRms(const std::vector<double>& values, const std::vector<double>& share) {
  double sum = 0;
  for (std::size_t k = 0; k < values.size(); ++k) sum += share[k] * values[k] * values[k];
  return std::sqrt(sum);
}

}  // namespace jw
