#pragma once

#include <vector>

#include "core/files/log_layout.h"

namespace jw {

/// Some stretches of a log's rows as plain numbers of the text; NaN where a cell is none.
struct LogSample {
  std::vector<std::vector<double>> columns;
  std::vector<std::size_t> starts;  ///< the first row of each stretch
  std::size_t rows() const { return columns.empty() ? 0 : columns.front().size(); }
};

/// Eight stretches of at most 500 rows, spread over the text.
LogSample sampleLog(const LogSource& source, const LogLayout& layout);

/// How the change of one column compares with the sum of another times the step in time.
struct LogRelation {
  double slope = 0;        ///< change = slope x sum of value x step
  double correlation = 0;  ///< -1 to 1; 0 if nothing moves
};

/// Compares over spans of several rows, so that rounded positions do not hide the relation.
LogRelation relate(const LogSample& sample, std::size_t time, std::size_t position,
                   std::size_t speed);

/// Whether a column has a number in each row and never falls, but rises.
bool neverFalls(const LogSample& sample, std::size_t column);

}  // namespace jw
