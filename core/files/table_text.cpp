#include "core/files/table_text.h"

#include <algorithm>

#include <fast_float/fast_float.h>

namespace jw::table_text {
namespace {

constexpr std::string_view kBlank = " \t\r\f\v";
constexpr std::string_view kBlankOrQuote = " \t\r\f\v\"";

std::string_view without(std::string_view text, std::string_view ends) {
  const std::size_t first = text.find_first_not_of(ends);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(ends) - first + 1);
}

/// Bytes of the UTF-8 character at the front of `text`; 0 if there is none.
std::size_t characterLength(std::string_view text) {
  const auto lead = static_cast<unsigned char>(text.front());
  if (lead < 0x80) return lead < 0x20 || lead == 0x7f ? 0 : 1;
  const std::size_t length = lead >= 0xf0 ? 4 : lead >= 0xe0 ? 3 : 2;
  if (lead < 0xc2 || lead > 0xf4 || text.size() < length) return 0;
  for (const char c : text.substr(1, length - 1))
    if ((static_cast<unsigned char>(c) & 0xc0) != 0x80) return 0;
  return length;
}

bool parts(char c, char delimiter) { return c == delimiter || (delimiter == kBlanks && c == '\t'); }

/// Where the cell that begins at `begin` ends: at the next delimiter outside quotation marks.
std::size_t cellEnd(std::string_view line, std::size_t begin, char delimiter) {
  bool inside = false;
  for (std::size_t i = begin; i < line.size(); ++i) {
    if (line[i] == '"') inside = !inside;
    if (!inside && parts(line[i], delimiter)) return i;
  }
  return line.size();
}

/// Whether quotation marks come in pairs; a single one is an inch or an arcsecond.
bool hasQuotes(std::string_view line) {
  return line.find('"') != std::string_view::npos &&
         std::count(line.begin(), line.end(), '"') % 2 == 0;
}

void splitSlowly(std::string_view line, char delimiter, Cells& cells) {
  if (delimiter == kBlanks) line = without(line, kBlank);
  for (std::size_t begin = 0; begin <= line.size();) {
    const std::size_t end = cellEnd(line, begin, delimiter);
    cells.push_back(trimmed(line.substr(begin, end - begin)));
    begin = end + 1;
    if (delimiter == kBlanks)
      while (begin < line.size() && parts(line[begin], delimiter)) ++begin;
  }
}

}  // namespace

std::string_view trimmed(std::string_view text) { return without(text, kBlankOrQuote); }

std::string smallLetters(std::string_view text) {
  std::string result(text);
  for (char& c : result)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return result;
}

std::string quoted(std::string_view text) {
  constexpr std::size_t kLongest = 40;
  std::string result = "\"";
  while (!text.empty() && result.size() < kLongest) {
    const std::size_t length = characterLength(text);
    length == 0 ? result += '?' : result += text.substr(0, length);
    text.remove_prefix(std::max<std::size_t>(length, 1));
  }
  return result + (text.empty() ? "\"" : "…\"");
}

LineReader::LineReader(std::string_view text) : rest_(text) {
  constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
  if (rest_.starts_with(kByteOrderMark)) rest_.remove_prefix(kByteOrderMark.size());
}

bool LineReader::nextOrNote() {
  while (!rest_.empty()) {
    const std::size_t end = std::min(rest_.find('\n'), rest_.size());
    line_ = rest_.substr(0, end);
    ended_ = end < rest_.size();
    rest_.remove_prefix(std::min(end + 1, rest_.size()));
    ++number_;
    if (!trimmed(line_).empty()) return true;
  }
  return false;
}

bool LineReader::next() {
  while (nextOrNote())
    if (trimmed(line_).front() != '#') return true;
  return false;
}

void split(std::string_view line, char delimiter, Cells& cells) {
  cells.clear();
  if (delimiter == kBlanks || hasQuotes(line)) return splitSlowly(line, delimiter, cells);
  for (std::size_t begin = 0; begin <= line.size();) {
    const std::size_t end = std::min(line.find(delimiter, begin), line.size());
    cells.push_back(trimmed(line.substr(begin, end - begin)));
    begin = end + 1;
  }
}

std::optional<double> readNumber(std::string_view cell, char decimalSign) {
  if (cell.starts_with('+')) cell.remove_prefix(1);
  double value = 0;
  const fast_float::parse_options options(fast_float::chars_format::general, decimalSign);
  const auto [end, code] =
      fast_float::from_chars_advanced(cell.data(), cell.data() + cell.size(), value, options);
  if (end != cell.data() + cell.size() || cell.empty()) return std::nullopt;
  if (code != std::errc() && code != std::errc::result_out_of_range) return std::nullopt;
  return value;
}

}  // namespace jw::table_text
