#include "widgets/figures/figure_painting.h"

#include <cmath>

#include <QFontMetricsF>

#include "core/checks/cautions.h"
#include "widgets/figures/cycle_plot.h"
#include "widgets/figures/drive_painter.h"
#include "widgets/figures/envelope_plot.h"
#include "widgets/figures/family_view.h"
#include "widgets/figures/figure_export.h"
#include "widgets/figures/heat_view.h"
#include "widgets/figures/line_chart_plot.h"
#include "widgets/figures/plot_layers.h"
#include "widgets/figures/precision_view.h"
#include "widgets/figures/search_plot.h"
#include "widgets/figures/study_painting.h"
#include "widgets/figures/tolerance_painter.h"
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

void paintEnvelope(QCPPainter& painter, const QSizeF& size, EnvelopeView view) {
  QCustomPlot plot;
  EnvelopePlot envelope(plot);
  envelope.setStyle(printPlotStyle());
  envelope.show(std::move(view), false);
  paintPlot(painter, plot, size);
}

void paintRows(QCPPainter& painter, const QRectF& rect, CycleView view) {
  const MovedOrigin moved(painter, rect.topLeft());
  QCustomPlot plot;
  CyclePlot cycle(plot, true);
  cycle.setStyle(printPlotStyle());
  const QStringList rows = firstRows(view);
  cycle.show(std::move(view), rows, false);
  cycle.arrange(int(rect.height()));
  paintPlot(painter, plot, rect.size());
}

void paintChart(QCPPainter& painter, const QRectF& rect, LineChart chart, int rightMargin = 16) {
  const MovedOrigin moved(painter, rect.topLeft());
  QCustomPlot plot;
  LineChartPlot lines(plot, rightMargin);
  lines.setStyle(printPlotStyle());
  lines.show(std::move(chart), false);
  paintPlot(painter, plot, rect.size());
}

// Says that a figure is empty, so that the sheet is not taken for a fault.
void paintNothing(QCPPainter& painter, const QSizeF& size, const QString& reason = {}) {
  const QString words = QStringLiteral("Not enough is known to draw this");
  painter.setFont(textFont(12));
  painter.setPen(printPalette().muted);
  painter.drawText(
      QRectF(QPointF(0, 0), size).adjusted(20, 0, -20, 0), Qt::AlignCenter | Qt::TextWordWrap,
      words + (reason.isEmpty() ? QStringLiteral(".") : QStringLiteral(": ") + reason));
}

void paintHeat(QCPPainter& painter, const QSizeF& size, const Snapshot& snapshot) {
  HeatView view = heatView(snapshot);
  const bool rows = !view.cycle.rows.empty();
  if (view.warmUp.empty() && !rows) return paintNothing(painter, size);
  const double upper = view.warmUp.empty() ? 0 : rows ? 0.45 * size.height() : size.height();
  if (upper > 0)
    paintChart(painter, {0, 0, size.width(), upper}, std::move(view.warmUp), kRightMargin);
  if (rows)
    paintRows(painter, {0, upper, size.width(), size.height() - upper}, std::move(view.cycle));
}

void paintStage(QCPPainter& painter, const QSizeF& size, const Snapshot& snapshot,
                const QString& figureName) {
  if (!paintDrive(painter, size, snapshot, figureName, printPalette())) paintNothing(painter, size);
}

void paintOverload(QCPPainter& painter, const QSizeF& size, const Snapshot& snapshot) {
  HeatView view = heatView(snapshot);
  const double half = size.width() / 2;
  if (view.overload.empty()) return paintNothing(painter, size);
  paintChart(painter, {0, 0, half, size.height()}, std::move(view.overload));
  paintChart(painter, {half, 0, half, size.height()}, std::move(view.duty));
}

void paintPrecision(QCPPainter& painter, const QSizeF& size, const Snapshot& snapshot) {
  PrecisionView view = precisionView(snapshot);
  if (view.loop.empty()) return paintNothing(painter, size, view.loop.remark);
  const double upper = 0.5 * size.height();
  paintChart(painter, {0, 0, size.width(), upper}, std::move(view.loop));
  paintChart(painter, {0, upper, size.width(), size.height() - upper}, std::move(view.shares));
}

void paintEfficiency(QCPPainter& painter, const QSizeF& size, const Snapshot& snapshot) {
  PrecisionView view = precisionView(snapshot);
  if (view.efficiency.empty()) return paintNothing(painter, size, view.efficiency.remark);
  paintChart(painter, {{0, 0}, size}, std::move(view.efficiency));
}

void paintStudy(QCPPainter& painter, const QSizeF& size, const Snapshot& snapshot,
                bool (*paint)(QCPPainter&, const QSizeF&, const Snapshot&)) {
  if (!paint(painter, size, snapshot)) paintNothing(painter, size);
}

void paintRatios(QCPPainter& painter, const QSizeF& size, const Snapshot& snapshot) {
  if (paintRatio(painter, size, snapshot)) return;
  const bool direct =
      snapshot.evaluatedProject && snapshot.evaluatedProject->active().transmission.empty();
  paintNothing(painter, size,
               direct ? QStringLiteral("a direct drive has no ratio to vary") : QString());
}

void paintOne(QCPPainter& painter, const QSizeF& size, LineChart chart) {
  if (chart.empty()) return paintNothing(painter, size, chart.remark);
  paintChart(painter, {{0, 0}, size}, std::move(chart));
}

void paintTolerance(QCPPainter& painter, const QSizeF& size, const Snapshot& snapshot,
                    const QString& figureName) {
  const auto drawn = toleranceOf(snapshot);
  if (!drawn || drawn->draws == 0)
    return paintNothing(painter, size, QStringLiteral("no input has a tolerance"));
  if (figureName == QLatin1String("tolerance"))
    return paintChances(painter, size, toleranceView(*drawn), printPalette());
  if (figureName == QLatin1String("tornado"))
    return paintTornado(painter, size, tornadoView(*drawn, drawn->worst), printPalette());
  paintOne(painter, size, distributionChart(*drawn, drawn->worst));
}

void paintEnvelopeBand(QCPPainter& painter, const QSizeF& size, const Snapshot& snapshot) {
  const auto bands = toleranceEnvelopeOf(snapshot);
  if (!bands) return paintNothing(painter, size, QStringLiteral("no input has a tolerance"));
  paintEnvelope(painter, size, bandedEnvelopeView(snapshot, *bands));
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

double paintCautions(QPainter& painter, const QRectF& rect, const QString& figureName) {
  constexpr double kMostOfHeight = 0.12;  // for more than the one sentence
  const auto words = [](std::string_view text) {
    return QString::fromUtf8(text.data(), qsizetype(text.size()));
  };
  const QFont font = textFont(9);
  const QRectF inner = rect.adjusted(14, 0, -14, -6);
  const auto heightOf = [&](const QString& text) {
    return QFontMetricsF(font).boundingRect(inner, Qt::TextWordWrap, text).height();
  };
  QString text = words(kCaution);
  const QString longer = text + u' ' + words(cautionOfFigure(figureName.toStdString()));
  if (heightOf(longer) <= kMostOfHeight * rect.height()) text = longer;
  painter.setFont(font);
  painter.setPen(printPalette().muted);
  painter.drawText(inner, Qt::AlignLeft | Qt::AlignBottom | Qt::TextWordWrap, text);
  return heightOf(text) + 10;
}

void paintFigureContent(QCPPainter& painter, const QRectF& rect, const Snapshot& snapshot,
                        const QString& figureName) {
  const MovedOrigin moved(painter, rect.topLeft());
  if (figureName == QLatin1String("envelope"))
    paintEnvelope(painter, rect.size(), envelopeView(snapshot, AxesAt::Motor));
  if (figureName == QLatin1String("cycle"))
    paintRows(painter, {{0, 0}, rect.size()}, cycleView(snapshot));
  if (figureName == QLatin1String("heat")) paintHeat(painter, rect.size(), snapshot);
  if (figureName == QLatin1String("overload")) paintOverload(painter, rect.size(), snapshot);
  if (figureName == QLatin1String("ratio")) paintRatios(painter, rect.size(), snapshot);
  if (figureName == QLatin1String("sweep")) paintStudy(painter, rect.size(), snapshot, paintSweep);
  if (figureName == QLatin1String("map")) paintStudy(painter, rect.size(), snapshot, paintMap);
  if (figureName == QLatin1String("precision")) paintPrecision(painter, rect.size(), snapshot);
  if (figureName == QLatin1String("efficiency")) paintEfficiency(painter, rect.size(), snapshot);
  if (figureName == QLatin1String("response"))
    paintOne(painter, rect.size(), precisionView(snapshot).swing);
  if (figureName == QLatin1String("toolerror"))
    paintOne(painter, rect.size(), precisionView(snapshot).toolError);
  if (figureName == QLatin1String("tolerance") || figureName == QLatin1String("distribution") ||
      figureName == QLatin1String("tornado"))
    paintTolerance(painter, rect.size(), snapshot, figureName);
  if (figureName == QLatin1String("envelopeband"))
    paintEnvelopeBand(painter, rect.size(), snapshot);
  if (figureName == QLatin1String("families")) paintFamilies(painter, rect.size(), snapshot);
  if (figureName == QLatin1String("familymap"))
    paintOne(painter, rect.size(), printedFamilyMap(snapshot));
  if (figureName == QLatin1String("search")) paintSearch(painter, rect.size(), snapshot);
  if (driveStageOf(figureName) > -2) paintStage(painter, rect.size(), snapshot, figureName);
  if (figureName == QLatin1String("power"))
    paintPowerPath(painter, rect.size(), snapshot, snapshot.instant, printPalette());
}

}  // namespace jw
