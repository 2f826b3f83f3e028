#include "widgets/panels/remedy_text.h"

#include <algorithm>

#include <QStringList>

#include "widgets/theme/marks.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

constexpr int kFirst = 4;  // of each group, before "more"

QString text(const std::string& s) { return QString::fromStdString(s); }

QString link(const QString& href, const QString& label, const Palette& p) {
  return QStringLiteral("<a href='%1' style='color:%2; text-decoration:none'>%3</a>")
      .arg(href.toHtmlEscaped(), p.accent.name(), label.toHtmlEscaped());
}

QString percentText(double share) {
  const QString sign = share > 0 ? QStringLiteral("+") : QString();
  return sign + numberText(100 * share, 3) + QStringLiteral("\u202f%");
}

/// Two values with one unit.
template <class Changed>
QString fromTo(const Changed& one, double to) {
  const double shown = fromInternal(one.from, one.unit, one.quantity);
  return numberText(shown, 4) + QStringLiteral(" → ") + quantityText(to, one.quantity, one.unit, 4);
}

QString muted(const QString& body, const Palette& p) {
  return QStringLiteral("<span style='color:%1; font-size:11px'>%2</span>")
      .arg(p.muted.name(), body);
}

QString row(const QString& left, const QString& right, const QString& below) {
  return QStringLiteral(
             "<tr><td>%1</td><td align='right' style='padding-left:8px; white-space:nowrap'>%2</td>"
             "</tr><tr><td colspan='2'>%3</td></tr>")
      .arg(left, right, below);
}

QString remedyRow(const Remedy& remedy, int index, const RemedyFolds& folds, const Palette& p) {
  QString below = muted(changeText(remedy).toHtmlEscaped(), p);
  const QString consequences = consequencesText(remedy);
  if (!consequences.isEmpty()) {
    const bool worse = remedy.others.front().worsens();
    const QColor ink =
        worse ? inkOf(stateColour(remedy.others.front().becomes, p), p.panel) : p.muted;
    below += QStringLiteral("<br/><span style='color:%1; font-size:11px'>%2</span>")
                 .arg(ink.name(), consequences.toHtmlEscaped());
  }
  const QString apply = folds.apply
                            ? link(QLatin1String(kApplyLink) + QString::number(index), "apply", p)
                            : QString();
  return row(link("field:" + text(remedy.path), text(remedy.label), p), apply, below);
}

QString heading(const QString& words, const Palette& p) {
  return QStringLiteral("<p style='margin-top:6px; margin-bottom:2px; color:%1'>%2</p>")
      .arg(p.text.name(), words);
}

struct Group {
  QString rows;
  int count = 0, hidden = 0;
};

Group groupOf(const CheckRemedies& found, InputRole role, const RemedyFolds& folds,
              const Palette& p) {
  Group group;
  for (std::size_t k = 0; k < found.remedies.size(); ++k) {
    if (found.remedies[k].role != role) continue;
    const bool shown = folds.all || group.count < kFirst;
    if (shown) group.rows += remedyRow(found.remedies[k], int(k), folds, p);
    if (!shown) ++group.hidden;
    ++group.count;
  }
  return group;
}

QString table(const QString& rows) {
  return QStringLiteral("<table width='100%' cellspacing='0' cellpadding='2'>%1</table>").arg(rows);
}

QString noneRow(const NoRemedy& none, const Palette& p) {
  const QString best =
      QStringLiteral("at best %1, %2").arg(marginText(none.margin), fromTo(none, none.reached));
  return row(link("field:" + text(none.path), text(none.label), p), {},
             muted(best.toHtmlEscaped(), p));
}

QString cannotHtml(const CheckRemedies& found, const RemedyFolds& folds, const Palette& p) {
  const auto count = int(found.cannot.size());
  if (count == 0) return {};
  const QString label = QStringLiteral("%1 %2 cannot alone")
                            .arg(count)
                            .arg(count == 1 ? QStringLiteral("input") : QStringLiteral("inputs"));
  QString html =
      QStringLiteral("<p style='margin-top:4px; margin-bottom:2px'>%1</p>")
          .arg(link(kCannotLink,
                    label + (folds.cannot ? QStringLiteral(" ▾") : QStringLiteral(" ▸")), p));
  if (!folds.cannot) return html;
  QString rows;
  for (const NoRemedy& none : found.cannot) rows += noneRow(none, p);
  return html + table(rows);
}

}  // namespace

QString changeText(const Remedy& remedy) {
  return fromTo(remedy, remedy.to) + QStringLiteral(", ") + percentText(remedy.change);
}

QString consequencesText(const Remedy& remedy) {
  QStringList parts;
  int more = 0;
  for (const MovedVerdict& moved : remedy.others) {
    if (moved.was == moved.becomes) continue;
    const QString state = QString::fromUtf8(stateName(moved.becomes).data());
    const QString verb = moved.worsens()                      ? QStringLiteral(" gets ") + state
                         : moved.becomes == CheckState::Holds ? QStringLiteral(" holds too")
                                                              : QStringLiteral(" is only close");
    parts.size() < 3 ? void(parts << text(moved.title) + verb) : void(++more);
  }
  if (more > 0) parts << QStringLiteral("%1 more change").arg(more);
  return parts.join(QStringLiteral("; "));
}

QString remediesHtml(const CheckRemedies& found, const RemedyFolds& folds, const Palette& palette) {
  const Group design = groupOf(found, InputRole::Design, folds, palette);
  const Group less = groupOf(found, InputRole::AsksLess, folds, palette);
  QString html = design.count > 0
                     ? heading("What would make it hold, one change alone", palette)
                     : heading("No single change of the design makes it hold.", palette);
  html += table(design.rows);
  if (less.count > 0) html += heading("Asking for less", palette) + table(less.rows);
  const int hidden = design.hidden + less.hidden;
  if (hidden > 0)
    html += QStringLiteral("<p style='margin-top:2px; margin-bottom:2px'>%1</p>")
                .arg(link(kAllLink, QStringLiteral("%1 more ▸").arg(hidden), palette));
  return html + cannotHtml(found, folds, palette);
}

}  // namespace jw
