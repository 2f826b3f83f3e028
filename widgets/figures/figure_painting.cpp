#include "widgets/figures/figure_painting.h"

#include <cmath>

#include <QFontMetricsF>

#include "widgets/figures/cycle_plot.h"
#include "widgets/figures/envelope_plot.h"
#include "widgets/figures/figure_export.h"
#include "widgets/panels/power_path_painter.h"
#include "widgets/theme/number_text.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

// The headline figures of a title strip, the most telling first.
constexpr const char* kKeyQuantities[] = {"joint.torque_peak", "motor.torque_peak",
                                          "motor.speed_peak", "chain.ratio", "supply.power_mean"};

// "peak joint torque 67.9 N·m"; empty if it is not known.
QString keyNumber(const Evaluation& evaluation, const char* id) {
  for (const NamedQuantity& quantity : evaluation.quantities) {
    if (quantity.id != id || !std::isfinite(quantity.value)) continue;
    QString label = QString::fromUtf8(quantity.label.data(), qsizetype(quantity.label.size()));
    label[0] = label[0].toLower();
    return label + u' ' + quantityText(quantity.value, quantity.quantity, quantity.unit);
  }
  return {};
}

// As many of them as fit on the line.
QString keyNumbers(const Evaluation& evaluation, const QFont& font, double width) {
  const QFontMetricsF metrics(font);
  QString line;
  for (const char* id : kKeyQuantities) {
    const QString one = keyNumber(evaluation, id);
    if (one.isEmpty()) continue;
    const QString longer = line.isEmpty() ? one : line + QStringLiteral("  ·  ") + one;
    if (metrics.horizontalAdvance(longer) <= width) line = longer;
  }
  return line;
}

QString projectName(const Project& project) {
  const QString title = QString::fromStdString(project.title);
  return title.isEmpty() ? QStringLiteral("Untitled joint") : title;
}

// The origin of the painter moves to the corner of `rect` for as long as this lives.
class MovedOrigin {
 public:
  MovedOrigin(QPainter& painter, const QPointF& corner) : m_painter(painter) {
    m_painter.save();
    m_painter.translate(corner);
  }
  ~MovedOrigin() { m_painter.restore(); }
  MovedOrigin(const MovedOrigin&) = delete;
  MovedOrigin& operator=(const MovedOrigin&) = delete;

 private:
  QPainter& m_painter;
};

void paintPlot(QCPPainter& painter, QCustomPlot& plot, const QSizeF& size) {
  painter.setModes(QCPPainter::pmVectorized | QCPPainter::pmNoCaching | QCPPainter::pmNonCosmetic);
  plot.toPainter(&painter, int(size.width()), int(size.height()));
}

void paintEnvelope(QCPPainter& painter, const QSizeF& size, const Snapshot& snapshot) {
  QCustomPlot plot;
  EnvelopePlot envelope(plot);
  envelope.setStyle(printPlotStyle());
  envelope.show(envelopeView(snapshot, AxesAt::Motor), false);
  paintPlot(painter, plot, size);
}

void paintCycle(QCPPainter& painter, const QSizeF& size, const Snapshot& snapshot) {
  QCustomPlot plot;
  CyclePlot cycle(plot, true);
  cycle.setStyle(printPlotStyle());
  cycle.show(cycleView(snapshot), {}, false);
  cycle.arrange(int(size.height()));
  paintPlot(painter, plot, size);
}

}  // namespace

void paintTitleStrip(QPainter& painter, const QRectF& rect, const Snapshot& snapshot,
                     const QString& figureName, const QDate& date) {
  const Palette& p = printPalette();
  const QRectF inner = rect.adjusted(14, 8, -14, 0);
  const QFont strong = textFont(13, QFont::DemiBold);
  const QFont plain = textFont(11);
  const Project* project = snapshot.evaluatedProject.get();
  const QString name = project ? projectName(*project) : QString();
  QString rest = QStringLiteral(" · ") + figureTitle(figureName);
  if (project)
    rest.prepend(QStringLiteral(" · variant ") + QString::fromStdString(project->active().name));
  painter.setPen(p.muted);
  painter.setFont(plain);
  painter.drawText(inner, Qt::AlignRight | Qt::AlignTop, date.toString(Qt::ISODate));
  const double room = inner.width() - 80 - QFontMetricsF(strong).horizontalAdvance(rest);
  painter.setFont(strong);
  painter.setPen(p.text);
  const QString shown = QFontMetricsF(strong).elidedText(name, Qt::ElideRight, room) + rest;
  painter.drawText(inner, Qt::AlignLeft | Qt::AlignTop, shown);
  painter.setFont(plain);
  painter.setPen(p.muted);
  if (snapshot.evaluation)
    painter.drawText(inner.adjusted(0, 19, 0, 0), Qt::AlignLeft | Qt::AlignTop,
                     keyNumbers(*snapshot.evaluation, plain, inner.width()));
  painter.setPen(QPen(p.line, 1));
  painter.drawLine(QLineF(inner.left(), rect.bottom() - 4, inner.right(), rect.bottom() - 4));
}

void paintFigureContent(QCPPainter& painter, const QRectF& rect, const Snapshot& snapshot,
                        const QString& figureName) {
  const MovedOrigin moved(painter, rect.topLeft());
  if (figureName == QLatin1String("envelope")) paintEnvelope(painter, rect.size(), snapshot);
  if (figureName == QLatin1String("cycle")) paintCycle(painter, rect.size(), snapshot);
  if (figureName == QLatin1String("power"))
    paintPowerPath(painter, rect.size(), snapshot, kUnset, printPalette());
}

}  // namespace jw
