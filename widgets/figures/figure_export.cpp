#include "widgets/figures/figure_export.h"

#include <array>
#include <cmath>
#include <utility>

#include <QBuffer>
#include <QFileInfo>
#include <QPageSize>
#include <QPdfWriter>
#include <QPicture>
#include <QSaveFile>
#include <QSvgGenerator>

#include "widgets/figures/drive_view.h"
#include "widgets/figures/figure_painting.h"
#include "widgets/pdf_date.h"
#include "widgets/theme/fonts.h"

namespace jw {
namespace {

using Written = tl::expected<QByteArray, InputError>;

const std::array<std::pair<QString, QString>, 20> kFigures{{
    {QStringLiteral("envelope"), QStringLiteral("Envelope")},
    {QStringLiteral("cycle"), QStringLiteral("Cycle")},
    {QStringLiteral("power"), QStringLiteral("Power path")},
    {QStringLiteral("heat"), QStringLiteral("Heat")},
    {QStringLiteral("overload"), QStringLiteral("Overload and duty")},
    {QStringLiteral("ratio"), QStringLiteral("Ratio")},
    {QStringLiteral("sweep"), QStringLiteral("One input varied")},
    {QStringLiteral("map"), QStringLiteral("Two inputs varied")},
    {QStringLiteral("drive"), QStringLiteral("Drive picture")},
    {QStringLiteral("precision"), QStringLiteral("Precision")},
    {QStringLiteral("efficiency"), QStringLiteral("Efficiency of the chain")},
    {QStringLiteral("response"), QStringLiteral("Frequency response")},
    {QStringLiteral("toolerror"), QStringLiteral("Error at the tool")},
    {QStringLiteral("tolerance"), QStringLiteral("Tolerance")},
    {QStringLiteral("distribution"), QStringLiteral("Distribution of the smallest margin")},
    {QStringLiteral("tornado"), QStringLiteral("What the smallest margin depends on")},
    {QStringLiteral("envelopeband"), QStringLiteral("Envelope and path with their bands")},
    {QStringLiteral("families"), QStringLiteral("Families")},
    {QStringLiteral("familymap"), QStringLiteral("Families, two properties")},
    {QStringLiteral("search"), QStringLiteral("Search")},
}};
constexpr double kUnitsPerInch = 96;
constexpr double kMmPerInch = 25.4;

QSizeF unitsOf(const ExportOptions& options) {
  return options.sizeMm * (kUnitsPerInch / kMmPerInch);
}

InputError error(const QString& what, const QString& where, const QString& remedy) {
  return {what.toStdString(), where.toStdString(), remedy.toStdString()};
}

// Strip, figure and cautions into a painter of 1/96 inch.
void paintSheet(QCPPainter& painter, const QSizeF& size, const Snapshot& snapshot,
                const QString& figureName, const QDate& date) {
  painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
  painter.fillRect(QRectF(QPointF(0, 0), size), Qt::white);
  const QRectF strip(0, 0, size.width(), kTitleStripHeight);
  paintTitleStrip(painter, strip, snapshot, figureName, date);
  const QRectF below(0, strip.bottom(), size.width(), size.height() - strip.height());
  const double foot = paintCautions(painter, below, figureName);
  paintFigureContent(painter, below.adjusted(0, 0, 0, -foot), snapshot, figureName);
}

QByteArray svgBytes(const Snapshot& snapshot, const QString& name, const ExportOptions& options) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  QSvgGenerator svg;
  const QSizeF size = unitsOf(options);
  svg.setOutputDevice(&buffer);
  svg.setResolution(int(kUnitsPerInch));
  svg.setSize(size.toSize());
  svg.setViewBox(QRectF(QPointF(0, 0), size));
  svg.setTitle(figureTitle(name));
  QCPPainter painter(&svg);
  paintSheet(painter, size, snapshot, name, options.date);
  painter.end();
  bytes.replace(applicationFamily().toUtf8(), "Inter");
  bytes.replace("<svg ", "<svg style=\"font-variant-numeric: tabular-nums\" ");
  return bytes;
}

QByteArray pdfBytes(const Snapshot& snapshot, const QString& name, const ExportOptions& options) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QPdfWriter pdf(&buffer);
  pdf.setPageSize(QPageSize(options.sizeMm, QPageSize::Millimeter, {}, QPageSize::ExactMatch));
  pdf.setPageMargins({});
  pdf.setResolution(1200);
  pdf.setTitle(figureTitle(name));
  pdf.setCreator(QStringLiteral("Jointwright"));
  QCPPainter painter;
  painter.begin(&pdf);
  painter.scale(pdf.resolution() / kUnitsPerInch, pdf.resolution() / kUnitsPerInch);
  paintSheet(painter, unitsOf(options), snapshot, name, options.date);
  painter.end();
  setPdfDate(bytes, options.date);
  return bytes;
}

QByteArray pngBytes(const Snapshot& snapshot, const QString& name, const ExportOptions& options) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  figureImage(snapshot, name, options).save(&buffer, "PNG");
  return bytes;
}

tl::expected<void, InputError> checkOptions(const ExportOptions& options) {
  const QSizeF size = options.sizeMm;
  if (!(size.width() >= 60 && size.height() >= 40 && size.width() <= 1200 && size.height() <= 1200))
    return tl::unexpected(error(
        QStringLiteral("%1 × %2 mm is no size for a figure").arg(size.width()).arg(size.height()),
        QStringLiteral("size"), QStringLiteral("give 60 × 40 mm to 1200 × 1200 mm")));
  if (options.dpi < 36 || options.dpi > 1200)
    return tl::unexpected(error(QStringLiteral("%1 dots per inch cannot be drawn").arg(options.dpi),
                                QStringLiteral("dpi"), QStringLiteral("give 36 to 1200")));
  return {};
}

Written figureBytes(const Snapshot& snapshot, const QString& name, const QString& fileName,
                    const ExportOptions& options) {
  const QString suffix = QFileInfo(fileName).suffix().toLower();
  if (suffix == QLatin1String("png")) return pngBytes(snapshot, name, options);
  if (suffix == QLatin1String("svg")) return svgBytes(snapshot, name, options);
  if (suffix == QLatin1String("pdf")) return pdfBytes(snapshot, name, options);
  return tl::unexpected(error(QStringLiteral("a figure cannot be written as \"%1\"").arg(suffix),
                              fileName, QStringLiteral("end the name in .png, .svg or .pdf")));
}

tl::expected<void, InputError> writeFile(const QString& fileName, const QByteArray& bytes) {
  QSaveFile file(fileName);
  if (file.open(QIODevice::WriteOnly) && file.write(bytes) == bytes.size() && file.commit())
    return {};
  return tl::unexpected(error(QStringLiteral("the file cannot be written: ") + file.errorString(),
                              fileName, QStringLiteral("choose a folder that you may write to")));
}

}  // namespace

QStringList figureNames() {
  QStringList names;
  for (const auto& [name, title] : kFigures) names << name;
  return names;
}

QString figureTitle(const QString& figureName) {
  for (const auto& [name, title] : kFigures)
    if (name == figureName) return title;
  const int stage = driveStageOf(figureName);
  return stage < 0 ? QString() : QStringLiteral("Drive picture, stage %1").arg(stage + 1);
}

void paintFigure(QPainter& painter, const QRectF& rect, const Snapshot& snapshot,
                 const QString& figureName) {
  QPicture picture;
  QCPPainter recorder;
  recorder.begin(&picture);
  recorder.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
  paintFigureContent(recorder, {{0, 0}, rect.size()}, snapshot, figureName);
  recorder.end();
  painter.save();
  painter.translate(rect.topLeft());
  painter.drawPicture(0, 0, picture);
  painter.restore();
}

QImage figureImage(const Snapshot& snapshot, const QString& figureName,
                   const ExportOptions& options) {
  const QSizeF pixels = options.sizeMm * (options.dpi / kMmPerInch);
  QImage image(pixels.toSize(), QImage::Format_RGB32);
  image.setDotsPerMeterX(qRound(options.dpi * 1000 / kMmPerInch));
  image.setDotsPerMeterY(image.dotsPerMeterX());
  image.fill(Qt::white);
  QCPPainter painter;
  painter.begin(&image);
  painter.scale(options.dpi / kUnitsPerInch, options.dpi / kUnitsPerInch);
  paintSheet(painter, unitsOf(options), snapshot, figureName, options.date);
  return image;
}

tl::expected<void, InputError> exportFigure(const Snapshot& snapshot, const QString& figureName,
                                            const QString& fileName, const ExportOptions& options) {
  if (figureTitle(figureName).isEmpty())
    return tl::unexpected(
        error(QStringLiteral("there is no figure \"%1\"").arg(figureName), QStringLiteral("figure"),
              QStringLiteral("choose one of ") + figureNames().join(QStringLiteral(", "))));
  if (const auto fit = checkOptions(options); !fit) return tl::unexpected(fit.error());
  const Written bytes = figureBytes(snapshot, figureName, fileName, options);
  if (!bytes) return tl::unexpected(bytes.error());
  return writeFile(fileName, *bytes);
}

}  // namespace jw
