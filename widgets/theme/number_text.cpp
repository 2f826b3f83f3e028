#include "widgets/theme/number_text.h"

#include <cmath>

namespace jw {
namespace {

constexpr char16_t kMinus = u'\u2212';
constexpr char16_t kThinSpace = u'\u2009';

void groupThousands(QString& digits) {
  const qsizetype point = digits.indexOf(u'.');
  const qsizetype end = point < 0 ? digits.size() : point;
  if (end <= 3) return;
  for (qsizetype i = end - 3; i > 0; i -= 3) digits.insert(i, QChar(kThinSpace));
}

}  // namespace

QString fixedNumber(double value, int decimals) {
  if (std::isnan(value)) return QStringLiteral("–");
  if (std::isinf(value)) return value > 0 ? QStringLiteral("∞") : QStringLiteral("−∞");
  QString digits = QString::number(std::abs(value), 'f', decimals);
  const bool zero = digits.toDouble() == 0;
  groupThousands(digits);
  return value < 0 && !zero ? QChar(kMinus) + digits : digits;
}

QString numberText(double value, int digits) {
  return QString::fromStdString(formatNumber(value, digits));
}

QString quantityText(double internal, Quantity quantity, std::string_view unit, int digits) {
  return QString::fromStdString(formatQuantity(internal, quantity, unit, digits));
}

QString wattText(double power) {
  if (std::abs(power) < 1000)
    return quantityText(std::round(power * 10) / 10, Quantity::Power, "W");
  return quantityText(power, Quantity::Power, "kW");
}

QString durationText(double seconds) {
  const std::string_view unit = seconds < 60 ? "s" : seconds < 3600 ? "min" : "h";
  return quantityText(seconds, Quantity::Time, unit, 2);
}

QString marginText(double margin) {
  if (std::isnan(margin)) return QStringLiteral("–");
  if (std::isinf(margin)) return QStringLiteral("no demand");
  const double percent = 100 * margin;
  const int decimals = std::abs(percent) < 9.95 && std::round(percent) != percent ? 1 : 0;
  const QString number = fixedNumber(percent, decimals);
  return (margin > 0 ? QStringLiteral("+") : QString()) + number + QStringLiteral(" %");
}

}  // namespace jw
