#include "app/page_flow.h"

#include <QTextDocument>

#include "app/page_style.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

constexpr double kFooterHeight = 24;  // [pt]
constexpr double kMarginMm = 18;

double units(double points) { return points * PageFlow::kUnitsPerPoint; }

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

void PageFlow::newPage() {
  writer_.newPage();
  y_ = 0;
  ++page_;
  paintFooter();
}

void PageFlow::makeRoom(double height) {
  if (y_ > 0 && y_ + height > bottom()) newPage();
}

void PageFlow::needRoom(double heightPt) { makeRoom(units(heightPt)); }

void PageFlow::addHtml(const QString& html) {
  QTextDocument text;
  text.setDocumentMargin(0);
  text.setDefaultFont(textFont(units(9)));
  text.setDefaultStyleSheet(pageStyleSheet(kUnitsPerPoint));
  text.setTextWidth(writer_.width());
  text.setHtml(html);
  const double height = text.size().height();
  makeRoom(height);
  for (double shown = 0; shown < height;) {
    const double part = std::min(height - shown, bottom() - y_);
    painter_.save();
    painter_.translate(0, y_ - shown);
    text.drawContents(&painter_, QRectF(0, shown, writer_.width(), part));
    painter_.restore();
    shown += part;
    y_ += part;
    if (shown < height) newPage();
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
