#pragma once

#include <functional>

#include <QPdfWriter>
#include <QString>

#include <qcustomplot.h>

namespace jw {

/// Fills the pages of a PDF from top to bottom, in columns if wanted, with blocks that are not torn
/// apart, unless one is taller than a page. Lengths are in device units, kUnitsPerPoint to a point.
class PageFlow {
 public:
  static constexpr int kUnitsPerPoint = 10;

  /// `footer` goes to the left foot of every page, the page number to the right.
  PageFlow(QIODevice& device, const QString& title, QString footer);

  /// A block of HTML over the whole width, or that of a column. Sizes in it are in px = device
  /// units.
  void addHtml(const QString& html);
  /// From a new page on, so many columns side by side, in type of `pointSize`.
  void setColumns(int count, double pointSize);
  /// A picture of the given height [pt]; `paint` draws into the rectangle, in units of 1/96 inch.
  void addPicture(double heightPt, const std::function<void(QCPPainter&, const QRectF&)>& paint);
  /// Begins a new page unless `heightPt` [pt] are left on this one.
  void needRoom(double heightPt);
  /// Blank space [pt].
  void addSpace(double heightPt);
  void newPage();

 private:
  double bottom() const;
  double columnWidth() const;
  void makeRoom(double height);
  void nextColumn();
  void paintFooter();

  QPdfWriter writer_;
  QCPPainter painter_;
  QString footer_;
  double y_ = 0;
  int columns_ = 1;
  int column_ = 0;
  double pointSize_ = 9;
  int page_ = 1;
};

}  // namespace jw
