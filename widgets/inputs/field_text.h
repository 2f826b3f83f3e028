#pragma once

#include <string_view>

#include <QString>

#include "core/model/field_catalogue.h"

namespace jw {

/// The UTF-8 text as a QString.
QString toQString(std::string_view text);

/// A number as a field shows it: digits on the left, unit in a lighter tone on the right.
struct ShownNumber {
  QString number;
  QString unit;
};

/// Splits the text of a number field. A bare number gets the field's own unit; the typed unit is
/// printed as people print it. Thousands are grouped and the minus sign is a real one. Text that is
/// no valid number is given back whole, with no unit.
ShownNumber shownNumber(const FieldInfo& info, const QString& text);

/// The same number rounded to `digits` significant digits, for places where all do not fit.
ShownNumber roundedNumber(const FieldInfo& info, const QString& text, int digits);

/// Whether the text of a number carries a unit of its own.
bool hasOwnUnit(const FieldInfo& info, const QString& text);

/// Step of an arrow key in the unit of the text: 1, 2 or 5 times a power of ten near a fiftieth of
/// the value (common practice, no source); for zero, a step that suits the quantity.
double nudgeStep(const FieldInfo& info, const QString& text);

/// The text moved by `amount`, counted in its own unit, which is kept. Empty when the text is no
/// number or the result would be out of range.
QString nudgedText(const FieldInfo& info, const QString& text, double amount);

/// The same value written in `unit`; exact where the unit allows it.
QString textInUnit(const FieldInfo& info, const QString& text, std::string_view unit);

/// Label, symbol, help, range and source for a tool tip (rich text).
QString fieldToolTip(const FieldInfo& info);

/// "Torque constant, N·m/A": what a screen reader calls the editor.
QString spokenName(const FieldInfo& info);

/// "What is wrong; what would be right", shortened when very long.
QString errorText(const InputError& error);

/// The text with a small, or with a capital, first letter; abbreviations stay as they are.
QString lowerFirst(QString text);
QString upperFirst(QString text);

}  // namespace jw
