#include "core/files/log_layout.h"

#include <algorithm>
#include <array>
#include <optional>

#include <fmt/format.h>

#include "core/files/log_titles.h"
#include "core/files/table_text.h"

namespace jw {
namespace {

using table_text::Cells;
using table_text::LineReader;
using table_text::readNumber;
using table_text::split;
using table_text::trimmed;

constexpr std::size_t kSampleLines = 200;
/// In the order in which they are preferred when they do equally well.
constexpr std::array<char, 5> kDelimiters{'\t', ';', '|', ',', table_text::kBlanks};

struct SampleLine {
  std::string_view text;
  std::size_t number;
  bool note;  ///< begins with '#'
};

std::vector<SampleLine> sampleOf(std::string_view text) {
  std::vector<SampleLine> lines;
  LineReader reader(text);
  while (lines.size() < kSampleLines && reader.nextOrNote()) {
    std::string_view line = trimmed(reader.line());
    const bool note = line.starts_with('#');
    lines.push_back({note ? trimmed(line.substr(1)) : reader.line(), reader.number(), note});
  }
  return lines;
}

/// Numbers among cells, with either decimal sign.
struct Numbers {
  std::size_t cells = 0, points = 0, commas = 0, whole = 0;
  std::size_t all() const { return points + commas + whole; }
};

Numbers countNumbers(const Cells& cells) {
  Numbers n;
  for (const std::string_view cell : cells) {
    n.cells += !cell.empty();
    const bool point = cell.find('.') != std::string_view::npos;
    const bool comma = cell.find(',') != std::string_view::npos && cell.back() != ',';
    if (!readNumber(cell, comma ? ',' : '.')) continue;
    (point ? n.points : comma ? n.commas : n.whole) += 1;
  }
  return n;
}

Cells cellsOf(std::string_view line, char delimiter) {
  Cells cells;
  split(line, delimiter, cells);
  return cells;
}

/// How well a delimiter parts the sample: share of numbers in the lines of the commonest width.
double scoreOf(const std::vector<SampleLine>& sample, char delimiter) {
  std::vector<std::size_t> widths(1);
  double numbers = 0, cells = 0;
  for (const SampleLine& line : sample) {
    if (line.note) continue;
    const Cells parts = cellsOf(line.text, delimiter);
    if (parts.size() < 2) continue;
    if (parts.size() >= widths.size()) widths.resize(parts.size() + 1);
    ++widths[parts.size()];
    const Numbers n = countNumbers(parts);
    numbers += static_cast<double>(n.all());
    cells += static_cast<double>(n.cells);
  }
  const auto common = static_cast<double>(*std::max_element(widths.begin(), widths.end()));
  return cells > 0 ? numbers / cells * common / static_cast<double>(sample.size()) : 0;
}

std::string nameOf(char delimiter) {
  switch (delimiter) {
    case '\t': return "tabs";
    case ';': return "semicolons";
    case '|': return "upright bars";
    case table_text::kBlanks: return "blanks";
    default: return "commas";
  }
}

InputError refusal(const LogSource& source, std::string what, std::string remedy,
                   std::size_t line = 0) {
  std::string where(source.name);
  if (line > 0) where += fmt::format(", line {}", line);
  return {std::move(what), std::move(where), std::move(remedy)};
}

std::string sizeText(std::uint64_t bytes) {
  const auto value = static_cast<double>(bytes);
  return bytes < 1'000'000 ? fmt::format("{} bytes", bytes) : fmt::format("{:.4g} MB", value / 1e6);
}

/// Finds rows and names in the sample for one delimiter.
class LayoutFinder {
 public:
  LayoutFinder(const LogSource& source, const std::vector<SampleLine>& sample, char delimiter)
      : source_(source), sample_(sample) {
    layout_.delimiter = delimiter;
  }

  tl::expected<LogLayout, InputError> find(char decimalSign) {
    const std::size_t first = firstRow();
    if (first == sample_.size()) return tl::unexpected(noRows());
    const std::size_t width = commonWidth(first);
    if (width < 2)
      return tl::unexpected(refusal(source_, "the rows have one column only",
                                    "give time and position in two columns",
                                    sample_[first].number));
    layout_.firstRowLine = sample_[first].number;
    layout_.titles.resize(width);
    layout_.units.resize(width);
    layout_.decimalSign = decimalSign != 0 ? decimalSign : guessDecimalSign(first);
    layout_.reasons.push_back(fmt::format("columns are parted by {}", nameOf(layout_.delimiter)));
    layout_.reasons.push_back(layout_.decimalSign == ',' ? "decimals have a comma"
                                                         : "decimals have a point");
    findTitles(first);
    return std::move(layout_);
  }

 private:
  Cells cells(std::size_t line) const { return cellsOf(sample_[line].text, layout_.delimiter); }

  bool isRow(const Numbers& n) const {
    return (n.all() >= 2 && 3 * n.all() >= n.cells) || (n.all() == 1 && n.cells == 1);
  }

  /// The first row of numbers; the sample's size if there is none.
  std::size_t firstRow() const {
    std::size_t first = 0;
    while (first < sample_.size() && (sample_[first].note || !isRow(countNumbers(cells(first)))))
      ++first;
    if (first == sample_.size()) return first;
    // A line with a number above it is a spoilt row rather than names.
    const std::size_t width = cells(first).size();
    while (first > 0 && !sample_[first - 1].note && countNumbers(cells(first - 1)).all() > 0 &&
           cells(first - 1).size() == width)
      --first;
    return first;
  }

  /// Cells of most rows. A delimiter at the end of every row parts nothing.
  std::size_t commonWidth(std::size_t first) const {
    std::vector<std::size_t> widths(1), closed(1);
    for (std::size_t i = first; i < sample_.size(); ++i) {
      if (sample_[i].note) continue;
      const Cells row = cells(i);
      if (row.size() >= widths.size()) {
        widths.resize(row.size() + 1);
        closed.resize(row.size() + 1);
      }
      ++widths[row.size()];
      closed[row.size()] += row.back().empty();
    }
    const auto width =
        static_cast<std::size_t>(std::max_element(widths.begin(), widths.end()) - widths.begin());
    const bool named =
        first > 0 && cells(first - 1).size() == width && !cells(first - 1).back().empty();
    return width > 1 && closed[width] == widths[width] && !named ? width - 1 : width;
  }

  InputError noRows() const {
    if (sample_.empty())
      return refusal(source_, "the file holds no lines", "give a line for each row");
    return refusal(source_, "there are no rows of numbers below the names",
                   "give a line of numbers for each row", sample_.back().number);
  }

  char guessDecimalSign(std::size_t first) const {
    Numbers sum;
    for (std::size_t i = first; i < sample_.size(); ++i) {
      if (sample_[i].note) continue;
      const Numbers n = countNumbers(cells(i));
      sum.points += n.points;
      sum.commas += n.commas;
    }
    return sum.commas > sum.points ? ',' : '.';
  }

  /// Cells of names; a unit that blanks parted from its name is put back.
  std::vector<std::string> titleCells(std::size_t line) const {
    std::vector<std::string> joined;
    for (const std::string_view cell : cells(line)) {
      const bool unit = cell.starts_with('[') || cell.starts_with('(');
      if (layout_.delimiter == table_text::kBlanks && unit && !joined.empty()) {
        joined.back() += ' ' + std::string(cell);
      } else {
        joined.emplace_back(cell);
      }
    }
    // "a;b;" over rows "1;2": the empty cell is no column.
    while (joined.size() > layout_.titles.size() && joined.back().empty()) joined.pop_back();
    return joined;
  }

  bool isUnitLine(const std::vector<std::string>& texts) const {
    const auto unit = [](const std::string& t) { return t.empty() || !unitIn(t).empty(); };
    return std::any_of(texts.begin(), texts.end(), [](const auto& t) { return !t.empty(); }) &&
           std::all_of(texts.begin(), texts.end(), unit);
  }

  void findTitles(std::size_t first) {
    std::size_t line = first;
    std::size_t passed = 0;
    while (line > 0) {
      std::vector<std::string> texts = titleCells(--line);
      if (texts.size() != layout_.columns()) {
        ++passed;
        continue;
      }
      if (layout_.unitLine == 0 && layout_.titleLine == 0 && line > 0 && isUnitLine(texts) &&
          titleCells(line - 1).size() == layout_.columns()) {
        layout_.unitLine = sample_[line].number;
        std::transform(texts.begin(), texts.end(), layout_.units.begin(),
                       [](const std::string& t) { return unitIn(t); });
        continue;
      }
      layout_.titleLine = sample_[line].number;
      layout_.titles = std::move(texts);
      break;
    }
    passed += line;
    layout_.reasons.push_back(layout_.titleLine > 0
                                  ? fmt::format("line {} names the columns", layout_.titleLine)
                                  : "no line names the columns");
    if (passed > 0)
      layout_.reasons.push_back(fmt::format("{} lines in front are passed over", passed));
  }

  const LogSource& source_;
  const std::vector<SampleLine>& sample_;
  LogLayout layout_;
};

}  // namespace

std::optional<InputError> sourceError(const LogSource& source) {
  const std::uint64_t there = source.text.size();
  if (source.size > there) {
    const auto lines = std::count(source.text.begin(), source.text.end(), '\n');
    return refusal(source,
                   fmt::format("the file claims {}, but is cut short after {}",
                               sizeText(source.size), sizeText(there)),
                   "copy it again, whole", static_cast<std::size_t>(lines) + 1);
  }
  if (there > kLargestLog)
    return refusal(source,
                   fmt::format("the file has {}, more than the {} that can be read",
                               sizeText(there), sizeText(kLargestLog)),
                   "cut out the stretch that matters");
  if (source.text.substr(0, 4096).find('\0') != std::string_view::npos)
    return refusal(source, "this is no plain text", "save the log as text in UTF-8");
  return std::nullopt;
}

tl::expected<LogLayout, InputError> guessLayout(const LogSource& source) {
  if (auto error = sourceError(source)) return tl::unexpected(*error);
  const std::vector<SampleLine> sample = sampleOf(source.text);
  char best = kDelimiters.front();
  double most = -1;
  for (const char delimiter : kDelimiters) {
    const double score = scoreOf(sample, delimiter);
    if (score > most + 1e-9) {
      most = score;
      best = delimiter;
    }
  }
  return LayoutFinder(source, sample, best).find(0);
}

tl::expected<LogLayout, InputError> layoutWith(const LogSource& source, char delimiter,
                                               char decimalSign) {
  if (auto error = sourceError(source)) return tl::unexpected(*error);
  return LayoutFinder(source, sampleOf(source.text), delimiter).find(decimalSign);
}

namespace {

/// The cells of one line, the mark of a note left out; nothing if the line is empty or missing.
Cells cellsOfLine(std::string_view text, std::size_t number, char delimiter) {
  LineReader reader(text);
  while (reader.nextOrNote() && reader.number() <= number) {
    if (reader.number() < number) continue;
    std::string_view line = reader.line();
    if (trimmed(line).starts_with('#')) line = trimmed(trimmed(line).substr(1));
    Cells cells = cellsOf(line, delimiter);
    while (!cells.empty() && cells.back().empty()) cells.pop_back();
    return cells;
  }
  return {};
}

}  // namespace

tl::expected<LogLayout, InputError> layoutFrom(const LogSource& source, LogLayout layout,
                                               std::size_t titleLine, std::size_t firstRowLine) {
  if (titleLine >= firstRowLine)
    return tl::unexpected(refusal(source, "the names would not stand above the first row",
                                  "give the names a line above the rows", titleLine));
  const std::size_t width = cellsOfLine(source.text, firstRowLine, layout.delimiter).size();
  if (width < 2)
    return tl::unexpected(refusal(source,
                                  width == 0 ? "there is no row here" : "the row has one column",
                                  "give the line of a row of numbers", firstRowLine));
  const Cells names = cellsOfLine(source.text, titleLine, layout.delimiter);
  layout.titles.assign(names.begin(), names.end());
  layout.titles.resize(width);
  const bool units = layout.unitLine > titleLine && layout.unitLine < firstRowLine;
  if (!units || layout.units.size() != width) {
    layout.unitLine = 0;
    layout.units.assign(width, {});
  }
  layout.titleLine = titleLine;
  layout.firstRowLine = firstRowLine;
  layout.reasons.resize(std::min<std::size_t>(layout.reasons.size(), 2));
  layout.reasons.emplace_back("lines of names and first row were chosen by hand");
  return layout;
}

std::vector<std::vector<std::string>> previewRows(const LogSource& source, const LogLayout& layout,
                                                  std::size_t count) {
  std::vector<std::vector<std::string>> rows;
  LineReader reader(source.text);
  Cells cells;
  while (rows.size() < count && reader.next()) {
    if (reader.number() < layout.firstRowLine) continue;
    split(reader.line(), layout.delimiter, cells);
    rows.emplace_back(cells.begin(), cells.end());
  }
  return rows;
}

}  // namespace jw
