#include "core/quantity/number_text.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstddef>
#include <system_error>

#include <fmt/format.h>

#include "core/quantity/text_scan.h"
#include "core/quantity/wording.h"

namespace jw::detail {
namespace {

constexpr std::size_t kGroup = 3;

using Read = tl::expected<ReadNumber, InputError>;

auto wrong(std::string what, std::string remedy = {}) {
  return tl::unexpected(InputError{std::move(what), {}, std::move(remedy)});
}

bool isDecimalSign(char c) {
  return c == '.' || c == ',';
}

std::size_t leadingMinus(std::string_view text) {
  return leading(text, {"-", "\u2212"});
}

std::size_t leadingGroupSign(std::string_view text) {
  const auto length = leading(text, {"'", "\u2019", "_", "\u066C"});
  return length > 0 && leadingDigits(text.substr(length)) >= kGroup ? length : 0;
}

/// Length of "/8" when digits follow the slash; else 0.
std::size_t leadingDenominator(std::string_view text) {
  if (!text.starts_with('/')) return 0;
  const auto digits = leadingDigits(text.substr(1));
  return digits > 0 ? digits + 1 : 0;
}

/// Reads one number from left to right; `plain_` gathers what std::from_chars understands.
class NumberReader {
 public:
  explicit NumberReader(std::string_view text) : rest_(withoutLeadingSpace(text)) {}

  Read read() {
    if (rest_.empty()) return wrong("a number is expected");
    readSign();
    if (!startsLikeNumber()) return notANumber();
    const bool grouped = readWhole();
    if (hasGroupSigns()) return groupSigns();
    if (!grouped && !plain_.empty()) {
      if (const auto denominator = leadingDenominator(rest_)) return fraction(denominator);
      if (const auto length = leadingMixedPart()) return mixed(length);
    }
    readDecimals();
    readExponent();
    return finish();
  }

 private:
  void readSign() {
    if (const auto minus = leadingMinus(rest_)) {
      negative_ = true;
      rest_.remove_prefix(minus);
    } else if (rest_[0] == '+') {
      rest_.remove_prefix(1);
    }
  }

  bool startsLikeNumber() const {
    if (rest_.empty()) return false;
    if (isDigit(rest_[0])) return true;
    return isDecimalSign(rest_[0]) && leadingDigits(rest_.substr(1)) > 0;
  }

  Read notANumber() const {
    if (startsWithWord("nan") || startsWithWord("inf") || rest_.starts_with("∞")) {
      return wrong(fmt::format("{} is no finite number", quoted(rest_)));
    }
    if (rest_.empty()) return wrong("a number is expected after the sign");
    return wrong(fmt::format("a number is expected, not {}", quoted(rest_)));
  }

  bool startsWithWord(std::string_view word) const {
    return std::ranges::equal(rest_.substr(0, word.size()), word,
                              [](char a, char b) { return (a | 0x20) == b; });
  }

  /// Digits before the decimal sign; true if they were grouped by spaces.
  bool readWhole() {
    const auto start = rest_;
    take(leadingDigits(rest_));
    const bool groupable = plain_.size() <= kGroup && !plain_.empty();
    bool grouped = false;
    while (const auto length = groupable ? leadingGroup() : 0) {
      rest_.remove_prefix(length - kGroup);
      take(kGroup);
      grouped = true;
    }
    whole_ = start;
    return grouped;
  }

  /// Length of a space and exactly three digits that are no numerator of a mixed number.
  std::size_t leadingGroup() const {
    const auto space = leadingSpace(rest_);
    const auto after = rest_.substr(space);
    if (space == 0 || leadingDigits(after) != kGroup) return 0;
    return leadingDenominator(after.substr(kGroup)) > 0 ? 0 : space + kGroup;
  }

  std::size_t leadingMixedPart() const {
    const auto after = withoutLeadingSpace(rest_);
    const auto spaces = rest_.size() - after.size();
    const auto numerator = leadingDigits(after);
    const auto denominator = leadingDenominator(after.substr(numerator));
    return spaces && numerator && denominator ? spaces + numerator + denominator : 0;
  }

  /// "1'000", "1,234.5", "1.234,5", "1,234,567" and "1.2.3".
  bool hasGroupSigns() const {
    if (leadingGroupSign(rest_) > 0) return true;
    if (rest_.empty() || !isDecimalSign(rest_[0])) return false;
    const auto after = rest_.substr(1 + leadingDigits(rest_.substr(1)));
    if (leadingGroupSign(after) > 0) return true;
    return after.size() > 1 && isDecimalSign(after[0]) && isDigit(after[1]);
  }

  Read groupSigns() const {
    std::string number;  // decimal signs as typed, every other group sign as '
    for (auto text = whole_; !text.empty();) {
      const auto group = leadingGroupSign(text);
      if (group == 0 && !isDecimalSign(text[0]) && !isDigit(text[0])) break;
      number += group > 0 ? '\'' : text[0];
      text.remove_prefix(group > 0 ? group : 1);
    }
    const auto plain = ungrouped(number);
    if (plain.empty()) return wrong("more than one decimal sign is typed");
    return wrong("group signs between thousands are not read",
                 fmt::format("type {}{}", negative_ ? "-" : "", plain));
  }

  /// "1,234.5" -> "1234.5": all signs but a last, different one are group signs. Empty if they are
  /// not followed by three digits each.
  static std::string ungrouped(const std::string& number) {
    const auto first = number.find_first_of(",.'");
    const auto last = number.find_last_of(",.'");
    const bool decimal = number[last] != number[first] && number[last] != '\'';
    const auto whole = decimal ? number.substr(0, last) : number;
    std::string plain = whole.substr(0, first);
    for (auto at = first; at < whole.size(); at += kGroup + 1) {
      const auto group = whole.substr(at + 1, kGroup);
      if (isDigit(whole[at]) || leadingDigits(group) != kGroup) return {};
      plain += group;
    }
    return decimal ? plain + '.' + number.substr(last + 1) : plain;
  }

  Read fraction(std::size_t denominator) {
    const double over = toDouble(rest_.substr(1, denominator - 1));
    rest_.remove_prefix(denominator);
    return finish(toDouble(plain_) / over, over);
  }

  Read mixed(std::size_t length) {
    const auto part = withoutLeadingSpace(rest_.substr(0, length));
    const auto slash = part.find('/');
    const double over = toDouble(part.substr(slash + 1));
    rest_.remove_prefix(length);
    return finish(toDouble(plain_) + toDouble(part.substr(0, slash)) / over, over);
  }

  Read finish(double value, double denominator) const {
    if (denominator == 0.0) return wrong("the fraction divides by zero");
    return finish(value);
  }

  Read finish(double value) const {
    if (!std::isfinite(value)) return wrong("the number is too large or too small to be kept");
    return ReadNumber{negative_ ? -value : value, trimmed(rest_)};
  }

  Read finish() const { return finish(toDouble(plain_)); }

  void readDecimals() {
    if (rest_.empty() || !isDecimalSign(rest_[0])) return;
    plain_ += '.';
    rest_.remove_prefix(1);
    take(leadingDigits(rest_));
  }

  void readExponent() {
    if (rest_.starts_with('e') || rest_.starts_with('E')) return readPower(rest_.substr(1));
    const auto after = withoutLeadingSpace(rest_);
    const auto times = leading(after, {"×", "·", "*"});
    if (times == 0) return;
    const auto ten = withoutLeadingSpace(after.substr(times));
    if (ten.starts_with("10^")) return readPower(ten.substr(3));
    if (ten.starts_with("10")) readSuperscripts(ten.substr(2));
  }

  void readPower(std::string_view text) {
    const auto minus = leadingMinus(text);
    text.remove_prefix(minus > 0 ? minus : leading(text, {"+"}));
    const auto digits = leadingDigits(text);
    if (digits == 0) return;
    plain_ += minus > 0 ? "e-" : "e";
    rest_ = text;
    take(digits);
  }

  void readSuperscripts(std::string_view text) {
    const auto minus = leading(text, {"⁻"});
    text.remove_prefix(minus);
    std::string digits;
    while (const auto length = takeSuperscript(text, digits)) text.remove_prefix(length);
    if (digits.empty()) return;
    plain_ += (minus > 0 ? "e-" : "e") + digits;
    rest_ = text;
  }

  static std::size_t takeSuperscript(std::string_view text, std::string& digits) {
    for (int digit = 0; digit < 10; ++digit) {
      const auto sign = superscript(digit);
      if (!text.starts_with(sign)) continue;
      digits += static_cast<char>('0' + digit);
      return sign.size();
    }
    return 0;
  }

  void take(std::size_t count) {
    plain_ += rest_.substr(0, count);
    rest_.remove_prefix(count);
  }

  /// NaN when the number does not fit a double. Never depends on the locale.
  static double toDouble(std::string_view digits) {
    double value = 0.0;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    return error == std::errc() ? value : std::nan("");
  }

  std::string_view rest_;
  std::string_view whole_;
  std::string plain_;
  bool negative_ = false;
};

/// The digit a letter is easily typed for, or 0.
char digitLike(char c) {
  if (c == 'O' || c == 'o') return '0';
  return c == 'l' || c == 'I' ? '1' : '\0';
}

}  // namespace

Read readNumber(std::string_view text) {
  return NumberReader(text).read();
}

std::string withDigitsForLetters(std::string_view text) {
  std::string digits;
  bool replaced = false;
  bool sure = false;
  std::size_t at = 0;
  for (; at < text.size(); ++at) {
    const char like = digitLike(text[at]);
    const bool digit = isDigit(text[at]);
    if (like == '\0' && !digit && !isDecimalSign(text[at])) break;
    replaced = replaced || like != '\0';
    sure = sure || digit || like == '0';
    digits += like != '\0' ? like : text[at];
  }
  const bool wordGoesOn = at < text.size() && isAsciiLetter(text[at]);
  if (!replaced || !sure || wordGoesOn) return {};
  return digits + std::string(text.substr(at));
}

}  // namespace jw::detail
