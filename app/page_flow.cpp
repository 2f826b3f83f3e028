#include "app/page_flow.h"

#include <QAbstractTextDocumentLayout>
#include <QTextBlock>
#include <QTextDocument>

#include "app/page_style.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

constexpr double kFooterHeight = 24;  // [pt]
constexpr double kMarginMm = 18;
constexpr double kGap = 16;  // [pt] between columns

double units(double points) { return points * PageFlow::kUnitsPerPoint; }

/// The lowest place at or above `wanted` that cuts no paragraph in two; `wanted` if one reaches
/// from `from` beyond it.
double breakAbove(const QTextDocument& text, double from, double wanted) {
  double place = wanted;
  for (QTextBlock block = text.lastBlock(); block.isValid(); block = block.previous()) {
    const QRectF area = text.documentLayout()->blockBoundingRect(block);
    if (area.top() < place && area.bottom() > place) place = area.top();
  }
  return place > from ? place : wanted;
}

}  // namespace

PageFlow::PageFlow(QIODevice& device, const QString& title, QString footer)
    : writer_(&device), footer_(std::move(footer)) {
  writer_.setTitle(title);
  writer_.setCreator("Jointwright " JW_VERSION);
  writer_.setPageSize(QPageSize(QPageSize::A4));
  writer_.setPageMargins(QMarginsF(kMarginMm, kMarginMm, kMarginMm, kMarginMm),
                         QPageLayout::Millimeter);
  writer_.setResolution(72 * kUnitsPerPoint);
  painter_.begin(&writer_);
  paintFooter();
}

double PageFlow::bottom() const { return writer_.height() - units(kFooterHeight); }

double PageFlow::columnWidth() const {
  return (writer_.width() - (columns_ - 1) * units(kGap)) / columns_;
}

void PageFlow::setColumns(int count, double pointSize) {
  columns_ = count;
  pointSize_ = pointSize;
  newPage();
}

void PageFlow::nextColumn() {
  if (column_ + 1 == columns_) return newPage();
  ++column_;
  y_ = 0;
}

void PageFlow::newPage() {
  writer_.newPage();
  y_ = 0;
  column_ = 0;
  ++page_;
  paintFooter();
}

void PageFlow::makeRoom(double height) {
  if (y_ > 0 && y_ + height > bottom()) nextColumn();
}

void PageFlow::needRoom(double heightPt) { makeRoom(units(heightPt)); }

void PageFlow::addHtml(const QString& html) {
  QTextDocument text;
  text.setDocumentMargin(0);
  text.setDefaultFont(textFont(units(pointSize_)));
  text.setDefaultStyleSheet(pageStyleSheet(kUnitsPerPoint, pointSize_));
  text.setTextWidth(columnWidth());
  text.setHtml(html);
  const double height = text.size().height();
  makeRoom(height);
  for (double shown = 0; shown < height;) {
    const double room = bottom() - y_;
    const double part =
        height - shown <= room ? height - shown : breakAbove(text, shown, shown + room) - shown;
    painter_.save();
    painter_.translate(column_ * (columnWidth() + units(kGap)), y_ - shown);
    text.drawContents(&painter_, QRectF(0, shown, columnWidth(), part));
    painter_.restore();
    shown += part;
    y_ += part;
    if (shown < height) nextColumn();
  }
}

void PageFlow::addPicture(double heightPt,
                          const std::function<void(QCPPainter&, const QRectF&)>& paint) {
  makeRoom(units(heightPt));
  painter_.save();
  painter_.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
  painter_.translate(0, y_);
  constexpr double kPerPixel = 72.0 * kUnitsPerPoint / 96;  // a pixel is 1/96 inch
  painter_.scale(kPerPixel, kPerPixel);
  paint(painter_, QRectF(0, 0, writer_.width() / kPerPixel, units(heightPt) / kPerPixel));
  painter_.restore();
  y_ += units(heightPt);
}

void PageFlow::addSpace(double heightPt) { y_ = std::min(y_ + units(heightPt), bottom()); }

void PageFlow::paintFooter() {
  painter_.save();
  painter_.setFont(textFont(units(7.5)));
  painter_.setPen(printPalette().muted);
  const QRectF line(0, bottom() + units(8), writer_.width(), units(kFooterHeight - 8));
  painter_.drawText(line, Qt::AlignLeft | Qt::AlignBottom, footer_);
  painter_.drawText(line, Qt::AlignRight | Qt::AlignBottom, QString::number(page_));
  painter_.restore();
}

}  // namespace jw
