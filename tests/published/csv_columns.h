#pragma once

#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include <gtest/gtest.h>
#include <Eigen/Core>

namespace jw {

/// The columns of a file of numbers below one line of names, below the folder of test data.
inline std::vector<Eigen::ArrayXd> csvColumns(const std::string& path) {
  std::string whole = JW_TESTS_DIR "/data/";
  std::ifstream file(whole += path);
  std::string line;
  EXPECT_TRUE(std::getline(file, line)) << path;
  std::vector<std::vector<double>> rows;
  while (std::getline(file, line)) {
    std::istringstream cells(line);
    rows.emplace_back();
    for (std::string cell; std::getline(cells, cell, ',');) rows.back().push_back(std::stod(cell));
  }
  const std::size_t width = rows.empty() ? 0 : rows.front().size();
  std::vector<Eigen::ArrayXd> columns(width,
                                      Eigen::ArrayXd(static_cast<Eigen::Index>(rows.size())));
  for (std::size_t r = 0; r < rows.size(); ++r) {
    for (std::size_t c = 0; c < width; ++c) {
      columns[c][static_cast<Eigen::Index>(r)] = rows[r].at(c);
    }
  }
  return columns;
}

}  // namespace jw
