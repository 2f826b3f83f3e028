#include "app/text_table.h"

#include <algorithm>
#include <stdexcept>

namespace jw {
namespace {

std::size_t width(const std::string& cell) {
  return static_cast<std::size_t>(
      std::count_if(cell.begin(), cell.end(), [](char c) { return (c & 0xC0) != 0x80; }));
}

void trimEnd(std::string& text) { text.erase(text.find_last_not_of(' ') + 1); }

}  // namespace

void TextTable::addRow(std::vector<std::string> cells) {
  if (cells.size() != alignment_.size()) throw std::logic_error("TextTable: wrong number of cells");
  rows_.push_back(std::move(cells));
}

std::string TextTable::text(const std::string& indent) const {
  std::vector<std::size_t> widths(alignment_.size(), 0);
  for (const auto& row : rows_) {
    for (std::size_t c = 0; c < row.size(); ++c) widths[c] = std::max(widths[c], width(row[c]));
  }
  std::string all;
  for (const auto& row : rows_) {
    std::string line = indent;
    for (std::size_t c = 0; c < row.size(); ++c) {
      const std::string blanks(widths[c] - width(row[c]), ' ');
      line += (alignment_[c] == 'r' ? blanks + row[c] : row[c] + blanks) + "  ";
    }
    trimEnd(line);
    all += line + "\n";
  }
  return all;
}

}  // namespace jw
