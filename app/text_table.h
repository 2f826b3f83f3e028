#pragma once

#include <string>
#include <vector>

namespace jw {

/// Rows of cells as text with aligned columns. Cells count in characters, not bytes.
class TextTable {
 public:
  /// One letter for each column: 'l' left, 'r' right.
  explicit TextTable(std::string alignment) : alignment_(std::move(alignment)) {}
  void addRow(std::vector<std::string> cells);
  /// Every row on its own line, columns two blanks apart, no blanks at line ends.
  std::string text(const std::string& indent = "") const;

 private:
  std::string alignment_;
  std::vector<std::vector<std::string>> rows_;
};

}  // namespace jw
