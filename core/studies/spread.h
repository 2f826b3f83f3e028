#pragma once

#include <cstddef>
#include <vector>

namespace jw {

/// How drawn values spread. Values that are NaN are left out; with an infinite one among them mean
/// and deviation are NaN.
struct Spread {
  std::size_t count = 0;  ///< values that are known
  double mean = 0;
  double deviation = 0;  ///< standard, of the sample
  double low = 0;        ///< 2.5 % lie below
  double median = 0;
  double high = 0;  ///< 2.5 % lie above
};

/// Mean, standard deviation and the probabilistically symmetric 95 % coverage interval
/// (JCGM 101:2008, 7.6 and 7.7; from memory). All NaN where no value is known.
Spread spreadOf(const std::vector<double>& values);

/// A share estimated from draws, with its 95 % confidence interval.
struct Proportion {
  double share = 0;
  double low = 0, high = 1;
};

/// `hits` of `count` with the exact interval of Clopper and Pearson (1934; from memory). With
/// evenly spread points in place of independent ones it errs on the wide side. NaN without draws.
Proportion proportionOf(std::size_t hits, std::size_t count);

/// Ranks from 1; equal values share their mean rank. NaN stays NaN.
std::vector<double> ranksOf(const std::vector<double>& values);

/// Spearman's rank correlation, -1 to 1, of the pairs in which both are known; 0 where one of them
/// does not vary.
double rankCorrelation(const std::vector<double>& a, const std::vector<double>& b);

/// The same of ranks, none of them NaN.
double correlationOfRanks(const std::vector<double>& a, const std::vector<double>& b);

}  // namespace jw
