#include "core/files/catalogue_rows.h"

#include <algorithm>

#include <fmt/format.h>

namespace jw {
namespace {

using table_text::quoted;
using table_text::trimmed;

char delimiterOf(std::string_view line) {
  for (const char c : {'\t', ';'}) {
    if (line.find(c) != line.npos) return c;
  }
  return ',';
}

CatalogueTitle titleOf(std::string_view text) {
  const std::size_t open = text.find('[');
  const std::size_t close = text.rfind(']');
  if (open == text.npos || close == text.npos || close < open) return {std::string(text), {}};
  return {std::string(trimmed(text.substr(0, open))),
          std::string(trimmed(text.substr(open + 1, close - open - 1)))};
}

}  // namespace

CatalogueRows::CatalogueRows(std::string_view text, std::string_view file)
    : lines_(text), file_(file) {}

std::optional<InputError> CatalogueRows::readTitles() {
  if (!lines_.next()) return whole("the file holds no lines", "name the columns in the first line");
  delimiter_ = delimiterOf(lines_.line());
  table_text::split(lines_.line(), delimiter_, cells_);
  for (const std::string_view cell : cells_) titles_.push_back(titleOf(cell));
  for (std::size_t k = 0; k < titles_.size(); ++k) {
    const auto same = [&](const CatalogueTitle& other) { return other.label == titles_[k].label; };
    const auto end = titles_.begin() + static_cast<long>(k);
    if (titles_[k].label.empty() || std::none_of(titles_.begin(), end, same)) continue;
    return at(k, "this column is there twice", "keep one of them");
  }
  return std::nullopt;
}

bool CatalogueRows::next() {
  if (error_ || !lines_.next()) return false;
  table_text::split(lines_.line(), delimiter_, cells_);
  while (!cells_.empty() && cells_.back().empty()) cells_.pop_back();
  if (cells_.size() <= titles_.size()) return true;
  error_ = InputError{
      fmt::format("{} values where there are {} columns", cells_.size(), titles_.size()),
      fmt::format("{}, line {}", file_, lines_.number()),
      "give one value for each column; where the comma parts columns, decimals take a point"};
  return false;
}

std::string_view CatalogueRows::cell(std::size_t column) const {
  return column < cells_.size() ? cells_[column] : std::string_view();
}

InputError CatalogueRows::at(std::size_t column, std::string what, std::string remedy) const {
  return {
      std::move(what),
      fmt::format("{}, line {}, column {}", file_, lines_.number(), quoted(titles_[column].label)),
      std::move(remedy)};
}

InputError CatalogueRows::whole(std::string what, std::string remedy) const {
  return {std::move(what), file_, std::move(remedy)};
}

}  // namespace jw
