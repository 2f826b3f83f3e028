#include "core/quantity/unit_text.h"

#include <cstddef>
#include <cstdlib>

#include "core/quantity/text_scan.h"
#include "core/quantity/unit_table.h"
#include "core/quantity/wording.h"

namespace jw::detail {
namespace {

constexpr int kLargestPower = 9;
constexpr int kDeepestNesting = 8;

/// Signs that are units by themselves; the longer ones first.
std::size_t leadingUnitSign(std::string_view text) {
  return leading(text, {"°C", "°F", "ºC", "ºF", "℃", "℉", "°", "º", "%", "'", "\"", "′", "″"});
}

std::size_t leadingMicro(std::string_view text) {
  return leading(text, {"\u00B5", "\u03BC"});
}

std::size_t leadingOhm(std::string_view text) {
  return leading(text, {"\u03A9", "\u2126"});
}

std::size_t leadingSeparator(std::string_view text) {
  return leading(text, {"*", "·", "⋅", "×", ".", "∙", "•", "-", "\u2010", "\u2011"});
}

std::size_t leadingMinus(std::string_view text) {
  return leading(text, {"-", "\u2212"});
}

/// A word of letters with micro signs as u and ohm signs as ohm, or one unit sign.
class Word {
 public:
  explicit Word(std::string_view text) : length(leadingUnitSign(text)) {
    if (length > 0) {
      spelling = text.substr(0, length);
      return;
    }
    while (length < text.size() && takeLetter(text.substr(length))) {
    }
  }

  std::size_t length = 0;
  std::string spelling;

 private:
  bool takeLetter(std::string_view text) {
    if (isAsciiLetter(text[0]) || text[0] == '_') return take(1, text.substr(0, 1));
    if (const auto micro = leadingMicro(text)) return take(micro, "u");
    if (const auto ohm = leadingOhm(text)) return take(ohm, "ohm");
    return false;
  }

  bool take(std::size_t bytes, std::string_view as) {
    length += bytes;
    spelling += as;
    return true;
  }
};

class UnitReader {
 public:
  explicit UnitReader(std::string_view text) : rest_(trimmed(text)) {}

  tl::expected<UnitText, UnitTextError> read() {
    while (!rest_.empty()) {
      if (!readOne()) return tl::unexpected(error_);
      rest_ = withoutLeadingSpace(rest_);
    }
    if (!afterFactor_ || depth_ != 0) return tl::unexpected(UnitTextError{});
    return out_;
  }

 private:
  bool readOne() {
    if (rest_[0] == '(') return open();
    if (rest_[0] == ')') return close();
    if (rest_[0] == '/') return divide(1);
    if (isDigit(rest_[0])) return readDigits();
    if (const auto length = leadingSeparator(rest_)) return multiply(length);
    return readWord();
  }

  bool open() {
    if (++depth_ > kDeepestNesting) return false;
    separate();
    rest_.remove_prefix(1);
    emit("(", "(");
    afterFactor_ = false;
    return true;
  }

  bool close() {
    if (--depth_ < 0 || !afterFactor_) return false;
    rest_.remove_prefix(1);
    emit(")", ")");
    return readPower();
  }

  bool divide(std::size_t length) {
    rest_.remove_prefix(length);
    if (!afterFactor_ && !atStart()) return false;
    const auto* sign = afterFactor_ ? "/" : "1/";
    emit(sign, sign);
    afterFactor_ = false;
    return true;
  }

  bool multiply(std::size_t length) {
    if (!afterFactor_) return false;
    rest_.remove_prefix(length);
    separate();
    afterFactor_ = false;
    return true;
  }

  /// "1" stands before a slash or alone; "1000rpm" is krpm. Other digits are no part of a unit.
  bool readDigits() {
    const auto digits = rest_.substr(0, leadingDigits(rest_));
    const auto after = withoutLeadingSpace(rest_.substr(digits.size()));
    if (digits == "1" && (after.empty() || after[0] == '/') && atStart()) {
      rest_ = after;
      emit("1", "1");
      afterFactor_ = true;
      return true;
    }
    if (digits != "1000") return false;
    const Word word(after);
    return findUnit("k" + word.spelling) != nullptr && take("k" + word.spelling, after, word);
  }

  bool readWord() {
    const Word word(rest_);
    if (word.spelling == "per") return divide(word.length);
    if (findUnit(word.spelling) == nullptr) {
      error_.unknown = word.spelling;
      return false;
    }
    return take(word.spelling, rest_, word);
  }

  bool take(const std::string& spelling, std::string_view from, const Word& word) {
    const auto* unit = findUnit(spelling);
    separate();
    emit(unit->symbol, unit->print);
    rest_ = from.substr(word.length);
    afterFactor_ = true;
    return readPower();
  }

  bool readPower() {
    auto text = rest_;
    const bool caret = text.starts_with('^');
    if (caret) text.remove_prefix(1);
    const auto minus = leadingMinus(text);
    const auto digits = leadingDigits(text.substr(minus));
    if (digits == 0) return !caret && readSuperscript();
    if (digits > 1) return false;
    const int power = text[minus] - '0';
    rest_ = text.substr(minus + digits);
    return emitPower(minus > 0 ? -power : power);
  }

  bool readSuperscript() {
    auto text = rest_;
    const auto minus = leading(text, {"⁻"});
    text.remove_prefix(minus);
    for (int power = 1; power <= kLargestPower; ++power) {
      if (!text.starts_with(superscript(power))) continue;
      rest_ = text.substr(superscript(power).size());
      return emitPower(minus > 0 ? -power : power);
    }
    return minus == 0;
  }

  bool emitPower(int power) {
    if (power == 0) return false;
    if (power == 1) return true;
    std::string print = power < 0 ? "⁻" : "";
    print += superscript(std::abs(power));
    emit("^" + std::to_string(power), print);
    return true;
  }

  bool atStart() const { return out_.canonical.empty() || out_.canonical.back() == '('; }

  void separate() {
    if (afterFactor_) emit("*", "·");
  }

  void emit(std::string_view canonical, std::string_view print) {
    out_.canonical += canonical;
    out_.print += print;
  }

  std::string_view rest_;
  UnitText out_;
  UnitTextError error_;
  bool afterFactor_ = false;
  int depth_ = 0;
};

}  // namespace

tl::expected<UnitText, UnitTextError> readUnitText(std::string_view text) {
  return UnitReader(text).read();
}

}  // namespace jw::detail
