#include "widgets/theme/symbol_text.h"

#include <QFontMetricsF>

namespace jw {
namespace {

using Level = SymbolRun::Level;

bool belongs(QChar c, Level level) {
  if (c.category() == QChar::Number_Other) return false;  // "I_c²": the square is of the whole
  if (c.isLetterOrNumber() || c == u'′') return true;
  return level == Level::Superscript && (c == u'-' || c == u'−' || c == u'.' || c == u'/');
}

// Takes what a '_' or '^' at `at` governs; moves `at` behind it.
QString takeScript(const QString& text, qsizetype& at, Level level) {
  if (++at < text.size() && text[at] == u'{') {
    const qsizetype close = text.indexOf(u'}', at);
    const qsizetype end = close < 0 ? text.size() : close;
    const QString inside = text.mid(at + 1, end - at - 1);
    at = std::min(end + 1, text.size());
    return inside;
  }
  const qsizetype start = at;
  while (at < text.size() && belongs(text[at], level)) ++at;
  // "T_m,peak": a comma inside a subscript joins two words.
  if (level == Level::Subscript && at + 1 < text.size() && text[at] == u',' &&
      text[at + 1].isLetter() && at > start) {
    ++at;
    while (at < text.size() && belongs(text[at], level)) ++at;
  }
  return text.mid(start, at - start);
}

void append(std::vector<SymbolRun>& runs, const QString& text, Level level) {
  if (text.isEmpty()) return;
  if (!runs.empty() && runs.back().level == level)
    runs.back().text += text;
  else
    runs.push_back({text, level});
}

QFont fontOf(Level level, const QFont& font) {
  QFont small = font;
  if (level != Level::Base) small.setPixelSize(qMax(8, qRound(font.pixelSize() * 0.76)));
  return small;
}

double shiftOf(Level level, const QFont& font) {
  if (level == Level::Base) return 0;
  return font.pixelSize() * (level == Level::Subscript ? 0.24 : -0.38);
}

QString translated(const QString& text, const QString& from, const QString& to) {
  QString out;
  for (const QChar c : text) {
    const qsizetype i = from.indexOf(c);
    if (i < 0) return {};
    out += to[i];
  }
  return out;
}

QString plainOf(const SymbolRun& run) {
  if (run.level == Level::Base) return run.text;
  const bool below = run.level == Level::Subscript;
  const QString script =
      below ? translated(run.text, QStringLiteral("0123456789"), QStringLiteral("₀₁₂₃₄₅₆₇₈₉"))
            : translated(run.text, QStringLiteral("0123456789-−"), QStringLiteral("⁰¹²³⁴⁵⁶⁷⁸⁹⁻⁻"));
  if (!script.isEmpty()) return script;
  if (below) return u'_' + run.text;
  const bool compound = run.text.contains(u'/');  // "^{2/3}" is no quotient of a power
  return compound ? QStringLiteral("^(%1)").arg(run.text) : u'^' + run.text;
}

}  // namespace

std::vector<SymbolRun> symbolRuns(const QString& notation) {
  std::vector<SymbolRun> runs;
  for (qsizetype i = 0; i < notation.size();) {
    const QChar c = notation[i];
    const bool script = (c == u'_' || c == u'^') && i > 0;
    if (!script) {
      append(runs, c, Level::Base);
      ++i;
      continue;
    }
    const Level level = c == u'_' ? Level::Subscript : Level::Superscript;
    append(runs, takeScript(notation, i, level), level);
  }
  return runs;
}

QString symbolHtml(const QString& notation) {
  QString html;
  for (const SymbolRun& run : symbolRuns(notation)) {
    const QString text = run.text.toHtmlEscaped();
    if (run.level == Level::Base)
      html += text;
    else if (run.level == Level::Subscript)
      html += QStringLiteral("<sub>%1</sub>").arg(text);
    else
      html += QStringLiteral("<sup>%1</sup>").arg(text);
  }
  return html;
}

QString symbolPlain(const QString& notation) {
  QString plain;
  for (const SymbolRun& run : symbolRuns(notation)) plain += plainOf(run);
  return plain;
}

double symbolWidth(const QString& notation, const QFont& font) {
  double width = 0;
  for (const SymbolRun& run : symbolRuns(notation))
    width += QFontMetricsF(fontOf(run.level, font)).horizontalAdvance(run.text);
  return width;
}

void drawSymbol(QPainter& painter, const QPointF& at, const QString& notation, const QFont& font) {
  double x = at.x();
  for (const SymbolRun& run : symbolRuns(notation)) {
    const QFont small = fontOf(run.level, font);
    painter.setFont(small);
    painter.drawText(QPointF(x, at.y() + shiftOf(run.level, font)), run.text);
    x += QFontMetricsF(small).horizontalAdvance(run.text);
  }
  painter.setFont(font);
}

}  // namespace jw
