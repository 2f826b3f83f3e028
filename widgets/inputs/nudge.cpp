// Arrow keys, the wheel and other units: new text for a number field.
#include <algorithm>
#include <cmath>

#include "widgets/inputs/field_text.h"

namespace jw {
namespace {

/// A number field's text taken apart: the value in its own unit.
struct TextParts {
  double value;
  QString digits;
  QString unit;  ///< as typed, with the space before it; empty for a bare number
};

tl::expected<TextParts, InputError> takeApart(const FieldInfo& info, const QString& text) {
  const auto number = parseQuantity(text.toStdString(), info.quantity, info.unit);
  if (!number) return tl::unexpected(number.error());
  const std::string_view unit = number->unit.empty() ? info.unit : number->unit;
  TextParts parts{fromInternal(number->value, unit, info.quantity), text.trimmed(), {}};
  const auto at = number->unit.empty() ? -1 : text.lastIndexOf(toQString(number->unit));
  if (at > 0) {
    parts.digits = text.left(at).trimmed();
    parts.unit = " " + toQString(number->unit);
  }
  return parts;
}

/// 1, 2 or 5 times a power of ten, the nearest below or at `wanted`.
double roundStep(double wanted) {
  const double decade = std::pow(10.0, std::floor(std::log10(wanted) + 1e-9));
  const double lead = wanted / decade;
  return decade * (lead < 2 - 1e-9 ? 1 : lead < 5 - 1e-9 ? 2 : 5);
}

double stepFromZero(const FieldInfo& info) {
  if (info.quantity == Quantity::Fraction) return fromInternal(0.01, info.unit, info.quantity);
  const bool whole = info.quantity == Quantity::Angle || info.quantity == Quantity::Temperature;
  return whole || info.kind == FieldKind::Integer ? 1 : 0.1;
}

int decimalsOf(const QString& digits) {
  const auto sign = std::max(digits.lastIndexOf('.'), digits.lastIndexOf(','));
  const bool plain = !digits.contains('/') && !digits.contains('e', Qt::CaseInsensitive);
  return sign < 0 || !plain ? 0 : static_cast<int>(digits.size() - sign - 1);
}

int decimalsOfStep(double step) {
  return std::clamp(static_cast<int>(std::ceil(-std::log10(step) - 1e-9)), 0, 12);
}

QString movedNumber(double value, const QString& digits, double amount) {
  const int needed = decimalsOfStep(std::abs(amount));
  const int decimals = std::clamp(decimalsOf(digits), needed, needed + 2);
  if (std::abs(value) < 0.5 * std::pow(10.0, -decimals)) value = 0;
  QString text = std::abs(value) < 1e12 ? QString::number(value, 'f', decimals)
                                        : QString::number(value, 'g', 8);
  return digits.contains(',') ? text.replace('.', ',') : text;
}

}  // namespace

double nudgeStep(const FieldInfo& info, const QString& text) {
  const auto parts = takeApart(info, text);
  if (!parts || parts->value == 0) return stepFromZero(info);
  const double step = roundStep(std::abs(parts->value) / 50);
  return info.kind == FieldKind::Integer ? std::max(1.0, step) : step;
}

QString nudgedText(const FieldInfo& info, const QString& text, double amount) {
  const QString start = text.trimmed().isEmpty() ? "0" : text;
  const auto parts = takeApart(info, start);
  if (!parts || amount == 0) return {};
  if (info.kind == FieldKind::Integer)
    amount = std::copysign(std::max(1.0, std::abs(amount)), amount);
  const QString moved = movedNumber(parts->value + amount, parts->digits, amount) + parts->unit;
  return readField(info, moved.toStdString()) ? moved : QString();
}

QString textInUnit(const FieldInfo& info, const QString& text, std::string_view unit) {
  const auto number = parseQuantity(text.toStdString(), info.quantity, info.unit);
  if (!number) return text;
  const std::string pretty = prettyUnit(unit);
  const QString shown = toQString(isUnitOf(pretty, info.quantity) ? pretty : unit);
  const double inUnit = fromInternal(number->value, unit, info.quantity);
  QString rewritten;
  for (int digits = 6; digits <= 17; ++digits) {
    rewritten = QString::number(inUnit, 'g', digits) + (unit == "1" ? QString() : " " + shown);
    const auto again = parseQuantity(rewritten.toStdString(), info.quantity, unit);
    if (again && again->value == number->value) break;
  }
  return rewritten;
}

}  // namespace jw
