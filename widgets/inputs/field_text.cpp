#include "widgets/inputs/field_text.h"

#include <QRegularExpression>

#include "widgets/theme/symbol_text.h"

namespace jw {
namespace {

constexpr QChar kThinSpace(0x2009);
constexpr QChar kMinus(0x2212);

/// "-7000.5" with a real minus sign and grouped thousands; anything else as it is.
QString grouped(QString number) {
  static const QRegularExpression kPlain("^-?\\d+([.,]\\d*)?$");
  if (kPlain.match(number).hasMatch()) {
    const int first = number.startsWith('-') ? 1 : 0;
    int end = first;
    while (end < number.size() && number[end].isDigit()) ++end;
    for (int k = end - 3; k > first; k -= 3) number.insert(k, kThinSpace);
  }
  if (number.startsWith('-')) number[0] = kMinus;
  return number;
}

auto parsed(const FieldInfo& info, const QString& text) {
  return parseQuantity(text.toStdString(), info.quantity, info.unit);
}

QString digitsOf(const QString& text, const QString& unit) {
  const auto at = unit.isEmpty() ? text.size() : text.lastIndexOf(unit);
  return (at < 0 ? text : text.left(at)).trimmed();
}

QString paragraph(const QString& html) { return html.isEmpty() ? html : "<p>" + html + "</p>"; }

}  // namespace

QString toQString(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

ShownNumber shownNumber(const FieldInfo& info, const QString& text) {
  const auto value = parsed(info, text);
  if (!value) return {text, {}};
  const QString unit = toQString(value->unit);
  const std::string_view shownUnit = value->unit.empty() ? info.unit : value->unit;
  return {grouped(digitsOf(text, unit)), toQString(prettyUnit(shownUnit))};
}

ShownNumber roundedNumber(const FieldInfo& info, const QString& text, int digits) {
  const auto value = parsed(info, text);
  if (!value) return {text, {}};
  const std::string_view unit = value->unit.empty() ? info.unit : value->unit;
  const double inUnit = fromInternal(value->value, unit, info.quantity);
  return {toQString(formatNumber(inUnit, digits)), toQString(prettyUnit(unit))};
}

bool hasOwnUnit(const FieldInfo& info, const QString& text) {
  const auto value = parsed(info, text);
  return value && !value->unit.empty();
}

QString fieldToolTip(const FieldInfo& info) {
  QString title = "<b>" + symbolHtml(toQString(info.label)) + "</b>";
  if (!info.symbol.empty()) title += " &nbsp;" + symbolHtml(toQString(info.symbol));
  QString tip = title + paragraph(toQString(info.help).toHtmlEscaped());
  const bool isNumber = info.kind == FieldKind::Number || info.kind == FieldKind::Integer;
  if (isNumber) tip += paragraph(upperFirst(toQString(describeRange(info))).toHtmlEscaped());
  if (!info.source.empty())
    tip += paragraph("<i>" + toQString(info.source).toHtmlEscaped() + "</i>");
  return tip;
}

QString spokenName(const FieldInfo& info) {
  QString name = toQString(info.label);
  const QString unit = toQString(prettyUnit(info.unit));
  const bool isNumber = info.kind == FieldKind::Number || info.kind == FieldKind::Integer;
  return isNumber && !unit.isEmpty() ? name + ", " + unit : name;
}

QString errorText(const InputError& error) {
  constexpr int kLongest = 180;
  QString text = toQString(error.what);
  if (!error.remedy.empty()) text += "; " + toQString(error.remedy);
  if (text.size() > kLongest) text = text.left(kLongest - 1) + QChar(0x2026);
  return upperFirst(text);
}

QString lowerFirst(QString text) {
  const bool abbreviation = text.size() > 1 && !text[1].isLower() && text[1] != ' ';
  if (!text.isEmpty() && !abbreviation) text[0] = text[0].toLower();
  return text;
}

QString upperFirst(QString text) {
  if (!text.isEmpty()) text[0] = text[0].toUpper();
  return text;
}

}  // namespace jw
