#pragma once

#include <vector>

#include <QFont>
#include <QPainter>
#include <QString>

namespace jw {

/// A stretch of a formula set at one height.
struct SymbolRun {
  enum class Level { Base, Subscript, Superscript };
  QString text;
  Level level = Level::Base;
  bool operator==(const SymbolRun&) const = default;
};

/// Splits trade notation: '_' sets the letters and digits after it below ("T_av"), '^' sets the
/// letters, digits, sign and point after it, or what stands in braces, above ("e^{-t/tau}").
std::vector<SymbolRun> symbolRuns(const QString& notation);

/// The same as HTML with <sub> and <sup>; everything else is escaped.
QString symbolHtml(const QString& notation);

/// The same as plain text: sub- and superscript characters where Unicode has them.
QString symbolPlain(const QString& notation);

/// Width [px] of `notation` set in `font`.
double symbolWidth(const QString& notation, const QFont& font);

/// Draws `notation` with its base line starting at `at`.
void drawSymbol(QPainter& painter, const QPointF& at, const QString& notation, const QFont& font);

}  // namespace jw
