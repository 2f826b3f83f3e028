#pragma once

#include <QString>

#include "core/quantity/quantity.h"

namespace jw {

/// "1 058" or "−0.50": fixed decimals, a real minus sign and thin spaces between thousands, for
/// axis ticks. NaN reads "–".
QString fixedNumber(double value, int decimals);

/// formatNumber as QString.
QString numberText(double value, int digits = 3);

/// formatQuantity as QString.
QString quantityText(double internal, Quantity quantity, std::string_view unit = {},
                     int digits = 3);

/// A power for people: "54.1 W", "1.23 kW"; nothing finer than 0.1 W.
QString wattText(double power);

/// A time for people: "45 s", "12 min", "3.4 h".
QString durationText(double seconds);

/// A margin as people read it: "+84 %", "−31 %", "+1.4 %" when small; "no demand" when infinite
/// and "–" when unset.
QString marginText(double margin);

}  // namespace jw
