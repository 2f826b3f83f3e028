#pragma once

#include <map>

#include <QString>
#include <QStringList>

// Reads a working as it is printed and computes it again, with other people's libraries: muParser
// for the expressions, UDUNITS-2 for the units. Nothing here knows how the program computes.

namespace jw::test {

/// A printed value in SI units (temperatures in °C) and half a unit of its last digit.
struct PrintedValue {
  double value = 0;
  double half = 0;
};

/// SI units in one `unit` as printed, "kg·cm²": 1e-4.
double unitScale(QString unit);

/// "7 000 h", "−0.0712 N·m/A", "12.5"; six significant digits are printed.
PrintedValue readPrinted(QString text);

/// What does not recompute in a printed working, a line for each; empty if all does. `truth` has
/// what the results have to be, by name: "Demand", "Capacity", "Result".
QStringList recompute(const QString& plain, const std::map<QString, double>& truth);

}  // namespace jw::test
