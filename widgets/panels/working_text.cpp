#include "widgets/panels/working_text.h"

#include "core/checks/acceptance_check.h"
#include "core/checks/cautions.h"
#include "widgets/theme/marks.h"
#include "widgets/theme/number_text.h"
#include "widgets/theme/symbol_text.h"

namespace jw {
namespace {

QString text(const std::string& s) { return QString::fromStdString(s); }

QString unitText(const WorkingSymbol& symbol) { return text(prettyUnit(symbol.unit)); }

QString numberOf(const WorkingSymbol& symbol) {
  return numberText(fromInternal(symbol.value, symbol.unit, symbol.quantity), 4);
}

QString originHtml(const WorkingSymbol& symbol, const Palette& p) {
  const QString origin = symbol.expression.empty()
                             ? text(symbol.origin).replace(u' ', QChar::Nbsp).toHtmlEscaped()
                             : QStringLiteral("= ") + symbolHtml(text(symbol.expression));
  if (symbol.path.empty())
    return QStringLiteral("<span style='color:%1'>%2</span>").arg(p.muted.name(), origin);
  return QStringLiteral("<a href='field:%1' style='color:%2; text-decoration:none'>%3</a>")
      .arg(text(symbol.path).toHtmlEscaped(), p.accent.name(), origin);
}

QString symbolRowHtml(const WorkingSymbol& symbol, const Palette& p) {
  return QStringLiteral(
             "<tr><td width='40'>%2</td><td><span style='color:%1'>%3 · </span>%6</td>"
             "<td align='right' style='padding-left:8px; white-space:nowrap'>%4 "
             "<span style='color:%1'>%5</span></td></tr>")
      .arg(p.muted.name(), symbolHtml(text(symbol.symbol)), text(symbol.label).toHtmlEscaped(),
           numberOf(symbol), unitText(symbol).toHtmlEscaped(), originHtml(symbol, p));
}

QString paragraph(const QString& style, const QString& body) {
  return QStringLiteral("<p style='margin-top:0px; margin-bottom:7px; %1'>%2</p>").arg(style, body);
}

QString mutedParagraph(const QString& body, const Palette& p) {
  return body.isEmpty() ? QString()
                        : paragraph(QStringLiteral("color:%1; font-size:11px").arg(p.muted.name()),
                                    symbolHtml(body));
}

constexpr int kPrinted = 6;  // digits of what is copied, enough to compute it again

/// "S_h · |T_stat| / N = 0.871234 N·m"; of a symbol that is given, its value alone.
QString stepText(const WorkingSymbol& symbol) {
  const QString value = symbolValue(symbol);
  if (symbol.expression.empty()) return value;
  return symbolPlain(text(symbol.expression)) + QStringLiteral(" = ") + value;
}

QString headMarkdown(const QString& title, const Working& working) {
  QString md =
      QStringLiteral("### %1\n\n%2\n\n| symbol | meaning | value | origin |\n|---|---|---:|---|\n")
          .arg(title, symbolPlain(text(working.formula)));
  const auto cell = [](QString content) { return content.replace(u'|', QStringLiteral("\\|")); };
  for (const WorkingSymbol& s : working.symbols)
    md += QStringLiteral("| %1 | %2 | %3 | %4 |\n")
              .arg(symbolPlain(text(s.symbol)), cell(text(s.label)), cell(stepText(s)),
                   text(s.origin));
  for (const WorkingSymbol& s : working.results)
    md += QStringLiteral("\n%1 = %2\n").arg(text(s.symbol), stepText(s));
  return md;
}

QString generalCaution() { return QString::fromUtf8(kCaution.data(), qsizetype(kCaution.size())); }

QString footMarkdown(const Working& working) {
  QString md;
  if (!working.caution.empty()) md += QStringLiteral("\n> %1\n").arg(text(working.caution));
  if (!working.note.empty()) md += QStringLiteral("\n%1\n").arg(text(working.note));
  if (!working.source.empty()) md += QStringLiteral("\nSource: %1\n").arg(text(working.source));
  return md + QStringLiteral("\n> %1\n").arg(generalCaution());
}

QString headPlain(const QString& title, const Working& working) {
  QString out = title + QStringLiteral("\n") + symbolPlain(text(working.formula)) + u'\n';
  for (const WorkingSymbol& s : working.symbols)
    out += QStringLiteral("%1 = %2  (%3, %4)\n")
               .arg(symbolPlain(text(s.symbol)), stepText(s), text(s.label), text(s.origin));
  for (const WorkingSymbol& s : working.results)
    out += QStringLiteral("%1 = %2\n").arg(text(s.symbol), stepText(s));
  return out;
}

QString footPlain(const Working& working) {
  QString out;
  if (!working.caution.empty()) out += text(working.caution) + u'\n';
  if (!working.note.empty()) out += text(working.note) + u'\n';
  if (!working.source.empty()) out += QStringLiteral("Source: ") + text(working.source) + u'\n';
  return out + generalCaution() + u'\n';
}

}  // namespace

QString symbolValue(const WorkingSymbol& symbol) {
  return quantityText(symbol.value, symbol.quantity, symbol.unit, kPrinted);
}

static QString wholeHtml(const QString& resultLine, const QColor& ink, const Working& working,
                         const Palette& p) {
  QString html = paragraph(QStringLiteral("font-size:13px; margin-bottom:9px"),
                           symbolHtml(text(working.formula)));
  html += QStringLiteral("<table width='100%' cellspacing='0' cellpadding='2'>");
  for (const WorkingSymbol& symbol : working.symbols) html += symbolRowHtml(symbol, p);
  html += QStringLiteral("</table>");
  html += paragraph(
      QStringLiteral("color:%1; font-weight:600; margin-top:9px").arg(inkOf(ink, p.panel).name()),
      resultLine);
  if (!working.caution.empty())
    html += paragraph(QStringLiteral("color:%1").arg(inkOf(p.close, p.panel).name()),
                      QStringLiteral("\u26a0 ") + symbolHtml(text(working.caution)));
  return html + mutedParagraph(text(working.note), p) + mutedParagraph(text(working.source), p);
}

QString workingHtml(const Check& check, const Working& working, const Palette& p) {
  return wholeHtml(stateCharacter(check.state) + u' ' + symbolHtml(text(working.result)),
                   stateColour(check.state, p), working, p);
}

QString figureHtml(const Working& working, const Palette& p) {
  return wholeHtml(symbolHtml(text(working.result)), p.text, working, p);
}

QString workingMarkdown(const Check& check, const Working& working) {
  QString md = headMarkdown(text(check.title), working);
  md += QStringLiteral("\n**%1 %2**\n")
            .arg(stateCharacter(check.state), symbolPlain(text(working.result)));
  if (check.accepted) md += QStringLiteral("\n%1\n").arg(text(acceptedText(check)));
  return md + footMarkdown(working);
}

QString figureMarkdown(const QString& title, const Working& working) {
  return headMarkdown(title, working) +
         QStringLiteral("\n**%1**\n").arg(symbolPlain(text(working.result))) +
         footMarkdown(working);
}

QString workingPlain(const Check& check, const Working& working) {
  QString out = headPlain(text(check.title), working);
  out += symbolPlain(text(working.result)) + u'\n';
  if (check.accepted) out += text(acceptedText(check)) + u'\n';
  return out + footPlain(working);
}

QString figurePlain(const QString& title, const Working& working) {
  return headPlain(title, working) + symbolPlain(text(working.result)) + u'\n' + footPlain(working);
}

}  // namespace jw
